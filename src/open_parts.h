/* The half-written files of now: a signal that ends the program removes them
 * first.  Only a kill leaves them. */
#ifndef CG_OPEN_PARTS_H
#define CG_OPEN_PARTS_H

enum { CG_OPEN_PARTS = 8, CG_OPEN_PART_PATH = 4096 };

/* Notes a path, shorter than CG_OPEN_PART_PATH, that is about to be opened, and
 * watches SIGINT, SIGTERM, SIGHUP and SIGPIPE unless somebody else does or they
 * are ignored.  Past CG_OPEN_PARTS at once a path is not noted.  Cannot fail;
 * for one thread at a time. */
void cg_open_parts_add(const char *path);

/* Forgets it: it is whole, or gone. */
void cg_open_parts_drop(const char *path);

#endif

/* What is half-written now: a signal that ends the program removes it first,
 * and ends the child that writes for us.  Only a kill leaves it. */
#ifndef CG_OPEN_PARTS_H
#define CG_OPEN_PARTS_H

#include <sys/types.h>

enum { CG_OPEN_PARTS = 24, CG_OPEN_PART_PATH = 4096 };

/* Signals that end the program wait, but for what a thread takes, and then
 * come: in between something is made or renamed and noted, in one step. */
void cg_open_parts_wait(void);
void cg_open_parts_go(void);

/* Notes a path, shorter than CG_OPEN_PART_PATH: a file, a link, or a folder
 * that goes if it is empty by then.  Watches SIGINT, SIGTERM, SIGHUP and
 * SIGPIPE unless somebody else does or they are ignored.  Past CG_OPEN_PARTS at
 * once a path is not noted.  Cannot fail; for one thread at a time. */
void cg_open_parts_add(const char *path);

/* Forgets it: it is to stay, or gone. */
void cg_open_parts_drop(const char *path);

/* A file was renamed when it was whole: it stays, but in a passing folder. */
void cg_open_parts_whole(const char *part, const char *final);

/* Notes the one folder that is to pass with all that is noted in it, and
 * forgets both when it is gone. */
void cg_open_parts_pass(const char *folder);
void cg_open_parts_passed(void);

/* The child at work; 0: none. */
void cg_open_parts_child(pid_t child);

#endif

/* Looks through a config's text for what libconfig 1.5 does not report: an
 * include that is missing, a folder or too deep (the library ends the program
 * on a folder), and whole numbers beyond 32 bit (it wraps them silently).  And
 * for what it would take without end: its time grows as the square of the
 * settings in a group, and with files that include each other many ways, its
 * stack with lists inside each other. */
#ifndef CG_CONFIG_SCAN_H
#define CG_CONFIG_SCAN_H

#include "problems.h"

/* `text` is the content of `path`; includes are taken from `folder`, as
 * libconfig does, and are looked through too.  Trouble goes to `problems`. */
void cg_config_scan(const char *text, const char *path, const char *folder,
                    struct cg_problems *problems);

#endif

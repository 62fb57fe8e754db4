/* What wasi-libc does not declare, before every file of the program. */
#ifndef CG_NO_SYSTEM_H
#define CG_NO_SYSTEM_H

/* As POSIX has it; there are no links. */
char *realpath(const char *path, char *resolved);

#endif

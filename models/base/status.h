/* Status codes and the error record every fallible function fills.
 *
 * A function that can fail returns enum cg_status and takes a caller-owned
 * struct cg_error * as its last argument (NULL allowed).  Results go out
 * through pointers and are written last, so a failed call leaves them alone.
 * A broken promise by the caller is an assert, not a status.
 */
#ifndef CG_STATUS_H
#define CG_STATUS_H

/* name, exit status of the program, text */
#define CG_STATUS_LIST(X)                                                  \
    X(CG_OK, 0, "done")                                                    \
    X(CG_NOT_SAFE, 1, "done, and the answer is: not safe")                 \
    X(CG_BAD_INPUT, 2, "bad usage or input")                               \
    X(CG_NUMERICAL, 3, "the computation failed")                           \
    X(CG_STOPPED, 3, "stopped before the end")                             \
    X(CG_NO_MEMORY, 3, "out of memory")                                    \
    X(CG_FILE, 4, "a file could not be read or written")

enum cg_status {
#define CG_STATUS_NAME(name, code, text) name,
    CG_STATUS_LIST(CG_STATUS_NAME)
#undef CG_STATUS_NAME
};

struct cg_error {
    enum cg_status status;
    char text[512]; /* one line, no trailing newline; empty when CG_OK */
};

#if defined(__GNUC__)
#define CG_FORMAT(fmt, args) __attribute__((format(printf, fmt, args)))
#else
#define CG_FORMAT(fmt, args)
#endif

/* Records `status` and a formatted line in `error` (if not NULL); returns
 * `status`, so that a failing function can end with it.  Cannot fail. */
enum cg_status cg_error_set(struct cg_error *error, enum cg_status status,
                            const char *format, ...) CG_FORMAT(3, 4);

/* The fixed English text of a status.  Never NULL. */
const char *cg_status_text(enum cg_status status);

/* The program's exit status for a status: 0 to 4. */
int cg_status_exit(enum cg_status status);

#endif

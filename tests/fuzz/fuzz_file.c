#define _POSIX_C_SOURCE 200809L
#include "fuzz.h"

#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

static char path[64];

static void forget(void)
{
    unlink(path);
}

const char *fuzz_file(const uint8_t *bytes, size_t size)
{
    if (path[0] == '\0') {
        snprintf(path, sizeof path, "/tmp/coldgap_fuzz_%ld.txt",
                 (long)getpid());
        atexit(forget);
    }
    FILE *file = fopen(path, "wb");
    if (file == NULL || fwrite(bytes, 1, size, file) != size ||
        fclose(file) != 0) {
        perror(path);
        exit(1);
    }
    return path;
}

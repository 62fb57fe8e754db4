/* A fuzz target is one function over bytes.  libFuzzer calls it (-DCG_FUZZ=ON
 * with clang), or replay.c with the kept inputs in every test run. */
#ifndef CG_FUZZ_H
#define CG_FUZZ_H

#include <stddef.h>
#include <stdint.h>

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size);

/* The bytes as a file: the readers under test take paths.  The same path at
 * every call; it is removed when the process ends. */
const char *fuzz_file(const uint8_t *bytes, size_t size);

#endif

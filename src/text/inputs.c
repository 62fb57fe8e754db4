#define _POSIX_C_SOURCE 200809L /* fileno */
#include "inputs.h"

static struct {
    dev_t device;
    ino_t number;
} input[CG_INPUT_FILES];
static size_t inputs;
static bool noting;

void cg_inputs_begin(void)
{
    inputs = 0;
    noting = true;
}

void cg_inputs_end(void)
{
    noting = false;
}

bool cg_inputs_has(const struct stat *about)
{
    for (size_t i = 0; i < inputs; i++)
        if (input[i].device == about->st_dev &&
            input[i].number == about->st_ino)
            return true;
    return false;
}

bool cg_inputs_add(FILE *file)
{
    struct stat about;
    if (!noting || fstat(fileno(file), &about) != 0 || cg_inputs_has(&about))
        return true;
    if (inputs == CG_INPUT_FILES)
        return false;
    input[inputs].device = about.st_dev;
    input[inputs++].number = about.st_ino;
    return true;
}

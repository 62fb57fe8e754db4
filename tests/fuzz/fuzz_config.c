/* Any bytes as a config file: an answer or a line of error, never a crash. */
#include "fuzz.h"

#include <stdlib.h>

#include "case.h"
#include "config.h"

/* libconfig 1.5 leaks the text of a string that is never closed. */
const char *__lsan_default_suppressions(void);
const char *__lsan_default_suppressions(void)
{
    return "leak:libconfig";
}

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size)
{
    static struct cg_case c;
    struct cg_error error = {CG_OK, ""};
    const char *path = fuzz_file(bytes, size);
    enum cg_status status = cg_config_try(path, NULL, 0, NULL, &c, &error);
    if (status != CG_OK && status != CG_BAD_INPUT && status != CG_FILE)
        abort();
    if (status != CG_OK && error.text[0] == '\0')
        abort(); /* a refusal without a reason */
    cg_case_free(&c);
    return 0;
}

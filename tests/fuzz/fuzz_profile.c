/* Any bytes as a roughness profile, text or SMD. */
#include "fuzz.h"

#include <math.h>
#include <stdlib.h>

#include "profile_file.h"

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size)
{
    const struct cg_profile_ask ask = {0.0, 0.8e-3, true};
    struct cg_profile profile = {0};
    struct cg_profile_note note;
    struct cg_error error = {CG_OK, ""};
    enum cg_status status = cg_profile_file_read(fuzz_file(bytes, size), &ask,
                                                 &profile, &note, &error);
    if (status != CG_OK && status != CG_BAD_INPUT)
        abort();
    if (status != CG_OK)
        return error.text[0] == '\0' ? (abort(), 1) : 0;
    for (size_t i = 0; i < profile.points; i++)
        if (!isfinite(profile.height[i]))
            abort();
    free(profile.height);
    return 0;
}

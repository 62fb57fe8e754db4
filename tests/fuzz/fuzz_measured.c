/* Any bytes as a file of measured bores and gaps. */
#include "fuzz.h"

#include <math.h>
#include <stdlib.h>

#include "measured.h"
#include "setting.h"

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size)
{
    static struct cg_case c;
    if (c.engine.cylinders == 0) {
        cg_case_begin(&c);
        c.engine.bore = 0.0865;
        c.engine.cylinders = 6;
    }
    struct cg_gauged gauged;
    struct cg_csv_dialect dialect;
    struct cg_error error = {CG_OK, ""};
    enum cg_status status = cg_measured_read(fuzz_file(bytes, size), &c,
                                             &gauged, &dialect, &error);
    if (status != CG_OK && status != CG_BAD_INPUT)
        abort();
    if (status == CG_BAD_INPUT && error.text[0] == '\0')
        abort();
    return 0;
}

/* Gives every kept input to the target it is linked with: replay FILE... */
#include "fuzz.h"

#include <stdio.h>
#include <stdlib.h>

static uint8_t bytes[1 << 20];

int main(int argc, char **argv)
{
    for (int i = 1; i < argc; i++) {
        FILE *file = fopen(argv[i], "rb");
        if (file == NULL) {
            perror(argv[i]);
            return 1;
        }
        size_t size = fread(bytes, 1, sizeof bytes, file);
        fclose(file);
        LLVMFuzzerTestOneInput(bytes, size);
    }
    printf("%d inputs\n", argc - 1);
    return argc > 1 ? 0 : 1;
}

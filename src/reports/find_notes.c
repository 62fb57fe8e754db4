#include "find_notes.h"

#include <stdio.h>
#include <string.h>


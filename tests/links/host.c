/* This computer. */

#include <stdio.h>

#include "firmware.h"

void print(const char *text) {
    fputs(text, stdout);
}

/* A computer: cases on the standard input. */

#include <stdio.h>

#include "platform.h"

int next_byte(void) {
    return getchar();
}

void print(const char *text) {
    fputs(text, stdout);
}

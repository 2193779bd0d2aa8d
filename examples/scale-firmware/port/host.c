/* A computer, to try the firmware without a board. */

#include <stdio.h>

#include "../display.h"

void display_text(const char *text) {
    fputs(text, stdout);
}

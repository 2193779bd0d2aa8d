/* Memory as C expects it before main: the linker script has the symbols. */

#ifndef MEMORY_H
#define MEMORY_H

#include <stdint.h>

extern uint32_t data_start[], data_end[], bss_start[], bss_end[], stack_top[];
extern const uint32_t data_in_flash[];

static inline void memory_set_up(void) {
    const uint32_t *from = data_in_flash;
    for (uint32_t *word = data_start; word < data_end; word++) {
        *word = *from++;
    }
    for (uint32_t *word = bss_start; word < bss_end; word++) {
        *word = 0;
    }
}

#endif

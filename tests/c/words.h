/* Words of a file, numbers by their bits, memory that nobody wrote to. */

#ifndef WORDS_H
#define WORDS_H

#include <stdint.h>

#include "cupwright.h"
#include "platform.h"

/* Another program may look closer at each call. */
#if !defined(BEFORE_CALL)
#define BEFORE_CALL()
#define AFTER_CALL()
#endif

/* Memory that nobody has written to looks like this. */

enum { MARK = 0xA5 };

static void mark(void *memory, size_t size) {
    memset(memory, MARK, size);
}

static int is_marked(const void *memory, size_t size) {
    const unsigned char *bytes = memory;
    for (size_t at = 0; at < size; at++) {
        if (bytes[at] != MARK) {
            return 0;
        }
    }
    return 1;
}

static uint64_t bits_of(double number) {
    uint64_t bits;
    memcpy(&bits, &number, sizeof bits);
    return bits;
}

static double of_bits(uint64_t bits) {
    double number;
    memcpy(&number, &bits, sizeof number);
    return number;
}

static void print_number(uint64_t number, unsigned base) {
    char digits[24];
    size_t at = sizeof digits - 1;
    digits[at] = 0;
    do {
        digits[--at] = "0123456789abcdef"[number % base];
        number /= base;
    } while (number != 0 && at > 0);
    print(&digits[at]);
}

/** The next word of the cases: its length, 0 at their end. */
static size_t next_word(char *word, size_t size) {
    int byte = next_byte();
    size_t length = 0;
    while (byte == ' ' || byte == '\n') {
        byte = next_byte();
    }
    while (byte > ' ' && length + 1 < size) {
        word[length++] = (char)byte;
        byte = next_byte();
    }
    word[length] = 0;
    return length;
}

static uint64_t next_number(unsigned base) {
    char word[40];
    uint64_t number = 0;
    next_word(word, sizeof word);
    for (const char *letter = word; *letter != 0; letter++) {
        unsigned digit = *letter <= '9' ? (unsigned)(*letter - '0') : (unsigned)(*letter - 'a' + 10);
        number = number * base + digit;
    }
    return number;
}

#endif

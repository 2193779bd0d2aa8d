/*
 * Reads cases, calls the library, and compares every bit with what the core answered.
 *
 * A case is a line: the number of the function, how many numbers it takes, the numbers as the hexadecimal
 * digits of their bits, the status expected, how many numbers it gives, the numbers; after a refusal the
 * seven facts of the error and the field to blame. The last line is "end" and how many there were.
 */

#include <stdint.h>

#include "cupwright.h"
#include "platform.h"

#if !defined(BEFORE_CALL)
#define BEFORE_CALL()
#define AFTER_CALL()
#endif

enum { MOST_NUMBERS = 96, MOST_ITEMS = 16, WROTE_ON_FAILURE = -1, MARK = 0xA5 };

/** Numbers in a row. */
struct row {
    double numbers[MOST_NUMBERS];
    size_t count, at;
};

/** A function of the library: its name, a call with numbers, and calls without pointers. */
struct call {
    const char *name;
    int32_t (*with)(struct row *row, struct row *answer, cupwright_error *error);
    int (*without)(struct row *row);
};

static double take(struct row *row) {
    return row->at < row->count ? row->numbers[row->at++] : 0.0;
}

static void give(struct row *row, double number) {
    if (row->count < MOST_NUMBERS) {
        row->numbers[row->count++] = number;
    }
}

/* Memory that nobody has written to looks like this. */

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

static cupwright_error null_error;

static int refuses_null(int32_t status, const char *field) {
    int refuses = status == CUPWRIGHT_STATUS_NULL && null_error.status == status && null_error.field != NULL &&
                  strcmp(null_error.field, field) == 0;
    mark(&null_error, sizeof null_error);
    return refuses;
}

#include "calls.h"

enum { CALLS = sizeof calls / sizeof calls[0] };

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

/* One not-a-number is as good as another. */
static int is_nan(uint64_t bits) {
    return (bits & 0x7FFFFFFFFFFFFFFFu) > 0x7FF0000000000000u;
}

static int same(double number, double expected) {
    uint64_t a = bits_of(number), b = bits_of(expected);
    return a == b || (is_nan(a) && is_nan(b));
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

static void next_row(struct row *row) {
    row->count = (size_t)next_number(10);
    row->at = 0;
    for (size_t at = 0; at < row->count && at < MOST_NUMBERS; at++) {
        row->numbers[at] = of_bits(next_number(16));
    }
}

static int is_answer(const struct row *answer, const struct row *expected) {
    int is = answer->count == expected->count;
    for (size_t at = 0; is && at < expected->count; at++) {
        is = same(answer->numbers[at], expected->numbers[at]);
    }
    return is;
}

static int is_error(const cupwright_error *error, int32_t status, const struct row *expected, const char *field) {
    const double facts[] = {error->value,
                            error->lowest,
                            error->highest,
                            error->nearest,
                            (double)error->quantity,
                            (double)error->beside,
                            (double)error->limit};
    int is = error->status == status && expected->count == sizeof facts / sizeof facts[0];
    for (size_t at = 0; is && at < expected->count; at++) {
        is = same(facts[at], expected->numbers[at]);
    }
    return is && strcmp(error->field == NULL ? "-" : error->field, field) == 0;
}

/** Calls twice, with and without a place for the error, and compares. */
static int holds(const struct call *call, struct row *given, int32_t status, const struct row *expected,
                 const char *field) {
    static struct row answer, again;
    static cupwright_error error;
    mark(&error, sizeof error);
    answer.count = again.count = 0;
    given->at = 0;
    int32_t got = call->with(given, &answer, &error);
    given->at = 0;
    int32_t got_again = call->with(given, &again, NULL);
    if (got != status || got_again != status || !is_answer(&again, &answer)) {
        return 0;
    }
    if (status == CUPWRIGHT_STATUS_OK) {
        return is_answer(&answer, expected) && is_marked(&error, sizeof error);
    }
    return is_error(&error, status, expected, field);
}

static int check_versions(void) {
    int wrong = cupwright_abi_version() != CUPWRIGHT_ABI_VERSION;
    wrong += strcmp(cupwright_version_text(), CUPWRIGHT_VERSION) != 0;
    return wrong;
}

/** Every code has words, and what is no code has none. */
static int check_texts(void) {
    int wrong = 0;
    for (int32_t code = CUPWRIGHT_STATUS_OK; code <= CUPWRIGHT_STATUS_UNNAMED; code++) {
        wrong += cupwright_status_text(code) == NULL;
    }
    for (int32_t code = CUPWRIGHT_QUANTITY_DOSE; code <= LAST_QUANTITY; code++) {
        wrong += cupwright_quantity_text(code) == NULL || cupwright_unit_text(code) == NULL;
    }
    for (int32_t code = CUPWRIGHT_LIMIT_ADDING_WATER_WEAKENS; code <= CUPWRIGHT_LIMIT_EQUILIBRIUM_YIELD; code++) {
        wrong += cupwright_limit_text(code) == NULL;
    }
    for (int32_t code = CUPWRIGHT_CAUTION_SCALD; code <= CUPWRIGHT_CAUTION_ICE; code++) {
        wrong += cupwright_caution_text(code) == NULL;
    }
    wrong += strcmp(cupwright_status_text(CUPWRIGHT_STATUS_NULL), "a pointer is NULL") != 0;
    wrong += strcmp(cupwright_quantity_text(CUPWRIGHT_QUANTITY_BREW_WATER), "brew water") != 0;
    wrong += strcmp(cupwright_unit_text(CUPWRIGHT_QUANTITY_BREW_WATER), "g") != 0;
    wrong += strcmp(cupwright_unit_text(CUPWRIGHT_QUANTITY_SERVINGS), "") != 0;
    wrong += strcmp(cupwright_limit_text(CUPWRIGHT_LIMIT_CHAMBER), "the chamber does not hold it") != 0;
    wrong += strncmp(cupwright_caution_text(CUPWRIGHT_CAUTION_ICE), "Ice is food", 11) != 0;
    const int32_t none[] = {-1, 10000, INT32_MIN, INT32_MAX};
    for (size_t at = 0; at < sizeof none / sizeof none[0]; at++) {
        wrong += cupwright_status_text(none[at]) != NULL || cupwright_quantity_text(none[at]) != NULL ||
                 cupwright_unit_text(none[at]) != NULL || cupwright_limit_text(none[at]) != NULL ||
                 cupwright_caution_text(none[at]) != NULL;
    }
    return wrong + (cupwright_quantity_text(0) != NULL);
}

int main(void) {
    static struct row given, expected;
    static unsigned char met[CALLS];
    char word[48];
    uint64_t count = 0;
    int wrong = check_versions() + check_texts();
    if (wrong != 0) {
        print("a version or a text is wrong\n");
    }
    while (next_word(word, sizeof word) != 0 && strcmp(word, "end") != 0) {
        size_t number = 0;
        for (const char *letter = word; *letter != 0; letter++) {
            number = number * 10 + (size_t)(*letter - '0');
        }
        next_row(&given);
        int32_t status = (int32_t)next_number(10);
        next_row(&expected);
        if (status != CUPWRIGHT_STATUS_OK) {
            next_word(word, sizeof word);
        }
        count++;
        if (number >= CALLS || !holds(&calls[number], &given, status, &expected, word)) {
            print("case ");
            print_number(count, 10);
            print(number < CALLS ? " differs: " : " names no function");
            print(number < CALLS ? calls[number].name : "");
            print("\n");
            wrong++;
        } else if (!met[number] && status == CUPWRIGHT_STATUS_OK) {
            met[number] = 1;
            given.at = 0;
            int unrefused = calls[number].without(&given);
            if (unrefused != 0) {
                print(calls[number].name);
                print(" does not refuse NULL\n");
                wrong += unrefused;
            }
        }
        if (wrong > 20) {
            break;
        }
    }
    for (size_t at = 0; at < CALLS; at++) {
        if (!met[at]) {
            print(calls[at].name);
            print(" never answered\n");
            wrong++;
        }
    }
    if (next_number(10) != count) {
        print("the cases have no end\n");
        wrong++;
    }
    print_number(count, 10);
    print(" cases of ");
    print_number(CALLS, 10);
    print(" functions, ");
    print_number((uint64_t)wrong, 10);
    print(" wrong\n");
    return wrong != 0;
}

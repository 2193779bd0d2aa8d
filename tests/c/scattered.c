/*
 * Draws inputs of every function by whole numbers of 64 bits, as crates/formulas/src/scattered.rs describes,
 * calls, and hashes every status, every bit of the answers and the facts of every refusal (FNV-1a of 64 bits, each
 * number by its bytes, little endian; any not-a-number as 7FF8000000000000).
 *
 * A case is a line: the number of the function, how many points, and the hash in hexadecimal digits. The last line
 * is "end" and how many there were.
 */

#include "rows.h"

enum kind { NUMBER, WHOLE, CHOICE, FLAG, LIST, ITEM, WHOLE_ITEM };

/** An input, or a list of so many columns, which follow as items. */
struct input {
    uint64_t key;
    enum kind kind;
    /** Columns of a list, or codes of a choice. */
    int count;
    uint64_t low, high;
    /** Numbers of the example, by their bits. */
    size_t length;
    const uint64_t *base;
};

struct plan {
    uint64_t key;
    size_t count;
    const struct input *inputs;
};

#include "scattered.h"

static uint64_t word(uint64_t key, uint64_t k) {
    uint64_t z = key + k * 0x9E3779B97F4A7C15u;
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
    return z ^ (z >> 31);
}

static uint64_t hashed(uint64_t hash, uint64_t number) {
    for (int at = 0; at < 8; at++) {
        hash = (hash ^ (number & 0xFF)) * 0x100000001B3u;
        number >>= 8;
    }
    return hash;
}

enum { NEGATIVE = 63 };

/** The next number up or down, by its bits. */
static uint64_t next(uint64_t bits, int up) {
    int negative = (int)(bits >> NEGATIVE);
    if (bits << 1 == 0) {
        return 1 | (uint64_t)!up << NEGATIVE;
    }
    return negative == up ? bits - 1 : bits + 1;
}

static double drawn(uint64_t key, const struct input *input, int is_near, size_t place) {
    uint64_t a = word(key, 1) % 256, b = word(key, 2), c = word(key, 3);
    int is_whole = input->kind == WHOLE || input->kind == WHOLE_ITEM;
    double low = of_bits(input->low), high = of_bits(input->high);
    if (a < 2) {
        return low;
    }
    if (a < 4) {
        return high;
    }
    if (a == 4) {
        return is_whole ? low - 1.0 : of_bits(next(input->low, 0));
    }
    if (a == 5) {
        return is_whole ? high + 1.0 : of_bits(next(input->high, 1));
    }
    if (a == 6 && !is_whole) {
        return of_bits(0x7FF8000000000000u);
    }
    int has_base = is_near && a >= 32 && place < input->length;
    if (is_whole) {
        uint64_t span = (uint64_t)(high - low) >> (c % 8);
        return has_base ? of_bits(input->base[place]) : low + (double)(b % (span + 1));
    }
    if (has_base) {
        uint64_t base = input->base[place];
        return of_bits(base == 0 ? 0 : base + b % ((uint64_t)1 << 50) - ((uint64_t)1 << 49));
    }
    int low_is_negative = (int)(input->low >> NEGATIVE), high_is_negative = (int)(input->high >> NEGATIVE);
    int negative = high_is_negative || input->high == 0 || (low_is_negative && c >> NEGATIVE == 1);
    uint64_t sign = (uint64_t)1 << NEGATIVE;
    uint64_t top = negative ? input->low & ~sign : input->high;
    uint64_t bottom = negative ? (high_is_negative ? input->high & ~sign : 0) : (low_is_negative ? 0 : input->low);
    uint64_t span = (uint64_t)1 << (52 + (c % 8 > 0 ? c % 8 - 1 : 0));
    uint64_t floor = top > span ? top - span : 0;
    floor = floor > bottom ? floor : bottom;
    uint64_t magnitude = floor + b % (top - floor + 1);
    return of_bits(negative && magnitude > 0 ? magnitude | sign : magnitude);
}

/** The inputs of a point, in a row. */
static void draw(const struct plan *plan, uint64_t number, struct row *row) {
    uint64_t point = word(plan->key, number + 1);
    int is_near = word(point, 1) % 2 == 1;
    row->count = row->at = 0;
    for (const struct input *input = plan->inputs; input < plan->inputs + plan->count; input++) {
        uint64_t key = point ^ input->key, a = word(key, 1) % 256, b = word(key, 2);
        int has_base = is_near && a >= 32 && input->length > 0;
        switch (input->kind) {
        case FLAG:
            give(row, (double)(is_near && a >= 32 ? has_base && input->base[0] != 0 : b % 2 == 1));
            break;
        case CHOICE:
            give(row, has_base ? of_bits(input->base[0]) : (double)(1 + b % (uint64_t)input->count));
            break;
        case LIST: {
            size_t length = is_near ? input->length : (size_t)(word(point, 2) % 12);
            give(row, (double)length);
            for (size_t at = 0; at < length; at++) {
                for (int column = 1; column <= input->count; column++) {
                    give(row, drawn(word(point ^ input[column].key, 8 + at), &input[column], is_near, at));
                }
            }
            input += input->count;
            break;
        }
        default:
            give(row, drawn(key, input, is_near, 0));
        }
    }
}

static uint64_t hash_of(size_t function, uint64_t points) {
    static struct row row, answer;
    static cupwright_error error;
    uint64_t hash = 0xCBF29CE484222325u;
    for (uint64_t number = 0; number < points; number++) {
        draw(&plans[function], number, &row);
        answer.count = 0;
        int32_t status = calls[function].with(&row, &answer, &error);
        hash = hashed(hash, (uint64_t)(uint32_t)status);
        if (status != CUPWRIGHT_STATUS_OK) {
            answer.count = 0;
            give(&answer, error.value);
            give(&answer, error.lowest);
            give(&answer, error.highest);
            give(&answer, error.nearest);
            give(&answer, (double)error.quantity);
            give(&answer, (double)error.beside);
            give(&answer, (double)error.limit);
        }
        for (size_t at = 0; at < answer.count; at++) {
            uint64_t bits = bits_of(answer.numbers[at]);
            hash = hashed(hash, is_nan(bits) ? 0x7FF8000000000000u : bits);
        }
    }
    return hash;
}

int main(void) {
    char text[48];
    uint64_t count = 0;
    int wrong = 0;
    while (next_word(text, sizeof text) != 0 && strcmp(text, "end") != 0) {
        size_t number = 0;
        for (const char *letter = text; *letter != 0; letter++) {
            number = number * 10 + (size_t)(*letter - '0');
        }
        uint64_t points = next_number(10), wanted = next_number(16);
        count++;
        uint64_t hash = number < CALLS ? hash_of(number, points) : ~wanted;
        if (hash != wanted) {
            print(number < CALLS ? calls[number].name : "no function");
            print(" differs: ");
            print_number(hash, 16);
            print("\n");
            wrong++;
        }
    }
    if (next_number(10) != count || count != CALLS) {
        print("the cases have no end\n");
        wrong++;
    }
    print_number(count, 10);
    print(" hashes of functions, ");
    print_number((uint64_t)wrong, 10);
    print(" wrong\n");
    return wrong != 0;
}

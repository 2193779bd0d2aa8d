/* What calls of the functions cost. Reads cases, and prints a line for each function: costs.h. */

/* First: it says what is done about each call. */
#include "costs.h"

#include "cases.h"

int main(void) {
    static struct row given, expected, answer;
    static struct cost costs[CALLS];
    static cupwright_error error;
    char word[48];
    calibrate();
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
        answer.count = 0;
        if (number >= CALLS || calls[number].with(&given, &answer, &error) != status ||
            (status == CUPWRIGHT_STATUS_OK && !is_answer(&answer, &expected)) || deepest >= PAINTED) {
            print(number < CALLS ? calls[number].name : "no function");
            print(deepest >= PAINTED ? " takes more than can be measured\n" : " is not as expected\n");
            return 1;
        }
        count(&costs[number], status == CUPWRIGHT_STATUS_OK);
    }
    for (size_t at = 0; at < CALLS; at++) {
        tell_cost(calls[at].name, &costs[at]);
    }
    return 0;
}

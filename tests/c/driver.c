/*
 * Reads cases, calls the library, and compares every bit with what the core answered.
 *
 * A case is a line: the number of the function, how many numbers it takes, the numbers as the hexadecimal
 * digits of their bits, the status expected, how many numbers it gives, the numbers; after a refusal the
 * seven facts of the error and the field to blame. The last line is "end" and how many there were.
 */

#include "cases.h"

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
    static const char *const statuses[] = {
        "ok",
        "outside its range",
        "not a whole number",
        "impossible beside the other inputs",
        "an empty band",
        "the result leaves its range",
        "cannot be reached",
        "a pointer is NULL",
        "not one of the choices",
        "an error without a name",
        "measurements that cannot tell",
        "something else, or damaged",
        "a state that was never begun",
        "not in the profile",
    };
    int wrong = 0;
    for (int32_t code = CUPWRIGHT_STATUS_OK; code <= CUPWRIGHT_STATUS_NOT_KEPT; code++) {
        wrong += strcmp(cupwright_status_text(code), statuses[code]) != 0;
    }
    static const int32_t quantities[] = {QUANTITIES};
    for (size_t at = 0; at < sizeof quantities / sizeof quantities[0]; at++) {
        wrong += cupwright_quantity_text(quantities[at]) == NULL || cupwright_unit_text(quantities[at]) == NULL;
    }
    for (int32_t code = CUPWRIGHT_LIMIT_ADDING_WATER_WEAKENS; code <= CUPWRIGHT_LIMIT_EQUILIBRIUM_YIELD; code++) {
        wrong += cupwright_limit_text(code) == NULL;
    }
    for (int32_t code = CUPWRIGHT_UNTOLD_TOO_FEW; code <= CUPWRIGHT_UNTOLD_NOT_COOLING; code++) {
        wrong += cupwright_untold_text(code) == NULL || cupwright_wanting_text(code) == NULL;
    }
    for (int32_t code = CUPWRIGHT_UNREADABLE_LENGTH; code <= CUPWRIGHT_UNREADABLE_UNSOUND; code++) {
        wrong += cupwright_unreadable_text(code) == NULL;
    }
    for (int32_t code = CUPWRIGHT_CAUTION_SCALD; code <= CUPWRIGHT_CAUTION_ICE; code++) {
        wrong += cupwright_caution_text(code) == NULL;
    }
    for (int32_t code = CUPWRIGHT_DOING_STILL; code <= CUPWRIGHT_DOING_OVERLOADED; code++) {
        wrong += cupwright_doing_text(code) == NULL;
    }
    for (int32_t code = CUPWRIGHT_HAPPENING_POUR_STARTED; code <= CUPWRIGHT_HAPPENING_RESTLESS; code++) {
        wrong += cupwright_happening_text(code) == NULL;
    }
    for (int32_t code = CUPWRIGHT_STEP_RINSE; code <= CUPWRIGHT_STEP_BEVERAGE; code++) {
        wrong += cupwright_step_text(code) == NULL;
    }
    for (int32_t code = CUPWRIGHT_CUE_NOTHING; code <= CUPWRIGHT_CUE_WEIGH_BEVERAGE; code++) {
        wrong += cupwright_cue_text(code) == NULL;
    }
    for (int32_t code = CUPWRIGHT_WHY_NEXT; code <= CUPWRIGHT_WHY_DONE; code++) {
        wrong += cupwright_why_text(code) == NULL;
    }
    wrong += strcmp(cupwright_happening_text(CUPWRIGHT_HAPPENING_POUR_STARTED), "a pour began") != 0;
    wrong += strcmp(cupwright_cue_text(CUPWRIGHT_CUE_STOP_POURING), "stop pouring") != 0;
    wrong += strcmp(cupwright_quantity_text(CUPWRIGHT_QUANTITY_BREW_WATER), "brew water") != 0;
    wrong += strcmp(cupwright_unit_text(CUPWRIGHT_QUANTITY_BREW_WATER), "g") != 0;
    wrong += strcmp(cupwright_unit_text(CUPWRIGHT_QUANTITY_SERVINGS), "") != 0;
    wrong += strcmp(cupwright_limit_text(CUPWRIGHT_LIMIT_CHAMBER), "the chamber does not hold it") != 0;
    wrong += strcmp(cupwright_untold_text(CUPWRIGHT_UNTOLD_TOO_FEW), "there are too few") != 0;
    wrong += strcmp(cupwright_wanting_text(CUPWRIGHT_UNTOLD_TOO_FEW), "measurements") != 0;
    wrong += strcmp(cupwright_unreadable_text(CUPWRIGHT_UNREADABLE_FOREIGN), "they do not begin as they should") != 0;
    wrong += strncmp(cupwright_caution_text(CUPWRIGHT_CAUTION_ICE), "Ice is food", 11) != 0;
    const int32_t none[] = {-1, 10000, INT32_MIN, INT32_MAX};
    for (size_t at = 0; at < sizeof none / sizeof none[0]; at++) {
        wrong += cupwright_status_text(none[at]) != NULL || cupwright_quantity_text(none[at]) != NULL ||
                 cupwright_unit_text(none[at]) != NULL || cupwright_limit_text(none[at]) != NULL ||
                 cupwright_caution_text(none[at]) != NULL || cupwright_untold_text(none[at]) != NULL ||
                 cupwright_wanting_text(none[at]) != NULL || cupwright_doing_text(none[at]) != NULL ||
                 cupwright_happening_text(none[at]) != NULL || cupwright_step_text(none[at]) != NULL ||
                 cupwright_cue_text(none[at]) != NULL || cupwright_why_text(none[at]) != NULL ||
                 cupwright_unreadable_text(none[at]) != NULL;
    }
    return wrong + (cupwright_quantity_text(0) != NULL);
}

/** A count that is too high is refused before anything is read. */
static int refuses_count(size_t count) {
    const double readings[1] = {1.4};
    const cupwright_body bodies[1] = {{0.0, 20.0}};
    const cupwright_dried samples[1] = {{1.4, 1.2}};
    cupwright_combined combined;
    cupwright_fitted_refractive_factor factor;
    cupwright_error error;
    double number;
    int wrong = 0;
    wrong += cupwright_reading_combine(readings, count, 0.01, &combined, &error) != CUPWRIGHT_STATUS_OUT_OF_RANGE ||
             error.quantity != CUPWRIGHT_QUANTITY_READING_COUNT || strcmp(error.field, "count") != 0;
    wrong += cupwright_reading_repeatability(readings, count, &number, &error) != CUPWRIGHT_STATUS_OUT_OF_RANGE ||
             error.quantity != CUPWRIGHT_QUANTITY_READING_COUNT || strcmp(error.field, "count") != 0;
    wrong += cupwright_heat_settle(200.0, 90.0, bodies, count, &number, &error) != CUPWRIGHT_STATUS_OUT_OF_RANGE ||
             error.quantity != CUPWRIGHT_QUANTITY_BODY_COUNT || error.value != (double)count;
    wrong += cupwright_heat_before_settling(200.0, 80.0, bodies, count, &number, &error) !=
                 CUPWRIGHT_STATUS_OUT_OF_RANGE ||
             strcmp(error.field, "count") != 0;
    wrong += cupwright_heat_vessel_heat_capacity(200.0, 90.0, 80.0, 20.0, bodies, count, &number, &error) !=
                 CUPWRIGHT_STATUS_OUT_OF_RANGE ||
             strcmp(error.field, "count") != 0;
    wrong += cupwright_calibrate_refractive_factor(samples, count, &factor, &error) !=
                 CUPWRIGHT_STATUS_OUT_OF_RANGE ||
             error.quantity != CUPWRIGHT_QUANTITY_MEASUREMENTS || strcmp(error.field, "count") != 0;
    return wrong;
}

static int check_counts(void) {
    int wrong = refuses_count(31) + refuses_count(SIZE_MAX) + refuses_count(SIZE_MAX / 2 + 2);
#if SIZE_MAX > 0xFFFFFFFFu
    /* What is left of it in 32 bits would be accepted. */
    wrong += refuses_count(((size_t)1 << 32) + 3);
#endif
    return wrong;
}

static int are_alike(const void *some, const void *other, size_t size) {
    const unsigned char *a = some, *b = other;
    while (size > 0 && *a == *b) {
        a++, b++, size--;
    }
    return size == 0;
}

/* For the checks of profiles, one after the other: a small board has no memory for each. */
static const cupwright_profile nothing;
static cupwright_profile profile, back;
static uint8_t bytes[CUPWRIGHT_PROFILE_BYTES + 1];
static cupwright_error error;

/** A profile comes back from its bytes, and no other bytes are one. */
static int check_profile(void) {
    const cupwright_learned factor = {0.86, 0.4, 2.0};
    /* The number 0.86 to the last bit, little endian, in the place of the ninth field. */
    static const uint8_t number[] = {0x85, 0xEB, 0x51, 0xB8, 0x1E, 0x85, 0xEB, 0x3F};
    int wrong = 0;
    profile = nothing;
    profile.refractive_factor_pct_per_brix = factor;
    profile.has_refractive_factor = -1;
    wrong += cupwright_profile_to_bytes(&profile, bytes, NULL) != CUPWRIGHT_STATUS_OK;
    wrong += !are_alike(bytes, "CUPW\x01", 6) || !are_alike(&bytes[208], number, sizeof number);
    mark(&back, sizeof back);
    wrong += cupwright_profile_from_bytes(bytes, CUPWRIGHT_PROFILE_BYTES, &back, &error) != CUPWRIGHT_STATUS_OK;
    profile.has_refractive_factor = 1;
    wrong += !are_alike(&back, &profile, sizeof back);
    mark(&back, sizeof back);
    wrong += cupwright_profile_from_bytes(bytes, sizeof bytes, &back, &error) != CUPWRIGHT_STATUS_UNREADABLE ||
             error.limit != CUPWRIGHT_UNREADABLE_LENGTH || error.value != (double)sizeof bytes ||
             strcmp(error.field, "bytes") != 0;
    wrong += cupwright_profile_from_bytes(NULL, 0, &back, &error) != CUPWRIGHT_STATUS_UNREADABLE ||
             error.limit != CUPWRIGHT_UNREADABLE_LENGTH || error.value != 0.0;
    bytes[4] = 2;
    wrong += cupwright_profile_from_bytes(bytes, SIZE_MAX, &back, &error) != CUPWRIGHT_STATUS_UNREADABLE ||
             error.limit != CUPWRIGHT_UNREADABLE_VERSION || error.value != 2.0;
    bytes[4] = 1;
    for (size_t at = 0; at < CUPWRIGHT_PROFILE_BYTES; at++) {
        bytes[at] ^= 0x10;
        wrong += cupwright_profile_from_bytes(bytes, CUPWRIGHT_PROFILE_BYTES, &back, &error) !=
                 CUPWRIGHT_STATUS_UNREADABLE;
        bytes[at] ^= 0x10;
    }
    wrong += !is_marked(&back, sizeof back);
    profile.refractive_factor_pct_per_brix.u = -0.4;
    wrong += cupwright_profile_to_bytes(&profile, bytes, &error) != CUPWRIGHT_STATUS_OUT_OF_RANGE ||
             error.quantity != CUPWRIGHT_QUANTITY_FACTOR_UNCERTAINTY ||
             strcmp(error.field, "refractive_factor_pct_per_brix") != 0;
    wrong += !refuses_null(cupwright_profile_to_bytes(NULL, bytes, &null_error), "profile");
    wrong += !refuses_null(cupwright_profile_to_bytes(&profile, NULL, &null_error), "bytes");
    wrong += !refuses_null(cupwright_profile_from_bytes(NULL, 1, &back, &null_error), "bytes");
    wrong += !refuses_null(cupwright_profile_from_bytes(bytes, 1, NULL, &null_error), "profile");
    return wrong;
}

/** What a profile read from its bytes expects is what the line that was kept expects, to the last bit. */
static int check_kept(void) {
    static const cupwright_drained brews[] = {
        {12.0, 192.0, 164.1, 0.0}, {15.0, 240.0, 205.4, 0.0}, {20.0, 320.0, 276.6, 0.0}, {30.0, 480.0, 414.4, 0.0}};
    cupwright_retention_line line;
    cupwright_expected by_line, by_profile;
    int wrong = 0;
    wrong += cupwright_calibrate_retention_line(brews, 4, &line, NULL) != CUPWRIGHT_STATUS_OK;
    wrong += cupwright_profile_expected_beverage(&nothing, 18.0, 290.0, 0.0, &by_profile, &error) !=
                 CUPWRIGHT_STATUS_NOT_KEPT ||
             strcmp(error.field, "apparent_retention_g_per_g") != 0;
    wrong += cupwright_profile_keep_retention_line(&nothing, &line, &profile, NULL) != CUPWRIGHT_STATUS_OK;
    wrong += cupwright_profile_to_bytes(&profile, bytes, NULL) != CUPWRIGHT_STATUS_OK;
    wrong += cupwright_profile_from_bytes(bytes, CUPWRIGHT_PROFILE_BYTES, &profile, NULL) != CUPWRIGHT_STATUS_OK;
    wrong += cupwright_calibrate_expected_beverage(brews, 4, 18.0, 290.0, 0.0, &by_line, NULL) != CUPWRIGHT_STATUS_OK;
    wrong += cupwright_profile_expected_beverage(&profile, 18.0, 290.0, 0.0, &by_profile, NULL) != CUPWRIGHT_STATUS_OK;
    wrong += !are_alike(&by_line, &by_profile, sizeof by_line);
    return wrong;
}

int main(void) {
    static struct row given, expected;
    static unsigned char met[CALLS];
    char word[48];
    uint64_t count = 0;
    int wrong = check_versions() + check_texts() + check_counts() + check_profile() + check_kept();
    if (wrong != 0) {
        print("a version, a text, a profile or the refusal of a count is wrong\n");
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

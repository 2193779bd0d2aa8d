/* States that are refused, and brews whose every reading must have the core's answers. */

#include "brews.h"
#include "null.h"

/** What every function says to two states: the one status, or -1 where they differ. */
static int32_t of_states(cupwright_scale *of_scale, cupwright_follower *of_follower) {
    cupwright_live_seen seen;
    cupwright_live_now now;
    cupwright_live_accounts account;
    cupwright_live_weighed weighed;
    cupwright_outlook outlook;
    const cupwright_window window = CUPWRIGHT_HOME_BREWER_2018;
    int32_t expected = cupwright_follow_outlook(of_follower, &MEANT, &window, &outlook, NULL);
    /* Of a state that was begun: no water yet. */
    expected = expected == CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE ? CUPWRIGHT_STATUS_OK : expected;
    const int32_t statuses[] = {
        cupwright_live_take(of_scale, 1.0, 5.0, &seen, NULL),
        cupwright_live_zeroed(of_scale, 5.0, NULL),
        cupwright_live_count_anew(of_scale, NULL),
        cupwright_live_account(of_scale, &account, NULL),
        cupwright_follow_take(of_follower, NULL, 0, 1.0, 5.0, &now, NULL),
        cupwright_follow_go_on(of_follower, NULL),
        cupwright_follow_zeroed(of_follower, 5.0, NULL),
        cupwright_follow_set_dose(of_follower, 15.0, NULL),
        cupwright_follow_set_beverage(of_follower, 200.0, NULL),
        cupwright_follow_set_lead(of_follower, 0.5, NULL),
        cupwright_follow_weighed(of_follower, &weighed, NULL),
        cupwright_follow_account(of_follower, &account, NULL),
        expected,
    };
    int32_t all = statuses[0];
    for (size_t at = 1; at < sizeof statuses / sizeof statuses[0]; at++) {
        all = statuses[at] == all ? all : -1;
    }
    return all;
}

/** NULL and states that were never begun are refused by name; a copy of a state goes on as the state does. */
static int check_states(void) {
    static cupwright_scale copy;
    static uint8_t bytes[CUPWRIGHT_SCALE_BYTES];
    const cupwright_live_setup setup = {0.1, 2000.0, 15.0};
    const cupwright_live_setup wrong_setup = {0.1, 2000.0, 0.0};
    cupwright_live_seen seen, again;
    cupwright_live_now now;
    cupwright_live_accounts account;
    cupwright_live_weighed weighed;
    cupwright_outlook outlook;
    const cupwright_window window = CUPWRIGHT_HOME_BREWER_2018;
    cupwright_error error;
    int wrong = of_states(NULL, NULL) != CUPWRIGHT_STATUS_NULL;
    /* Both are zeros so far. */
    wrong += of_states(&scale, &follower) != CUPWRIGHT_STATUS_NOT_BEGUN;
    wrong += cupwright_live_take(&scale, 1.0, 5.0, &seen, &error) != CUPWRIGHT_STATUS_NOT_BEGUN ||
             error.status != CUPWRIGHT_STATUS_NOT_BEGUN || strcmp(error.field, "scale") != 0;
    wrong += cupwright_follow_go_on(&follower, &error) != CUPWRIGHT_STATUS_NOT_BEGUN ||
             strcmp(error.field, "follower") != 0;
    wrong += cupwright_live_begin(&wrong_setup, &scale, &error) != CUPWRIGHT_STATUS_OUT_OF_RANGE ||
             strcmp(error.field, "fastest_g_per_s") != 0;
    wrong += of_states(&scale, &follower) != CUPWRIGHT_STATUS_NOT_BEGUN;
    wrong += cupwright_live_begin(&setup, &scale, NULL) + cupwright_follow_begin(&setup, &follower, NULL);
    wrong += of_states(&scale, &follower) != CUPWRIGHT_STATUS_OK;
    wrong += cupwright_live_take(&scale, 1.0, 5.0, &seen, &error) != CUPWRIGHT_STATUS_IMPOSSIBLE ||
             error.quantity != CUPWRIGHT_QUANTITY_CLOCK || error.lowest != 1.0;
    copy = scale;
    wrong += cupwright_live_take(&scale, 2.0, 9.0, &seen, NULL) + cupwright_live_take(&copy, 2.0, 9.0, &again, NULL);
    wrong += bits_of(seen.level_g) != bits_of(again.level_g) || seen.doing != again.doing;
    wrong += cupwright_live_to_bytes(&scale, bytes, NULL);
    bytes[99] ^= 1;
    wrong += cupwright_live_from_bytes(bytes, sizeof bytes, &copy, &error) != CUPWRIGHT_STATUS_UNREADABLE ||
             error.limit != CUPWRIGHT_UNREADABLE_DAMAGED || strcmp(error.field, "bytes") != 0;
    wrong += cupwright_follow_from_bytes(bytes, sizeof bytes, &follower, &error) != CUPWRIGHT_STATUS_UNREADABLE ||
             error.limit != CUPWRIGHT_UNREADABLE_FOREIGN;
    wrong += cupwright_live_from_bytes(bytes, sizeof bytes - 1, &copy, &error) != CUPWRIGHT_STATUS_UNREADABLE ||
             error.limit != CUPWRIGHT_UNREADABLE_LENGTH || error.value != (double)sizeof bytes - 1.0;
    wrong += !refuses_null(cupwright_live_to_bytes(&scale, NULL, &null_error), "bytes");
    wrong += !refuses_null(cupwright_live_from_bytes(NULL, 1, &scale, &null_error), "bytes");
    wrong += !refuses_null(cupwright_live_from_bytes(bytes, 1, NULL, &null_error), "scale");
    wrong += !refuses_null(cupwright_follow_to_bytes(NULL, bytes, &null_error), "follower");
    wrong += !refuses_null(cupwright_follow_from_bytes(NULL, 1, &follower, &null_error), "bytes");
    wrong += !refuses_null(cupwright_live_begin(NULL, &scale, &null_error), "setup");
    wrong += !refuses_null(cupwright_live_begin(&setup, NULL, &null_error), "scale");
    wrong += !refuses_null(cupwright_live_take(NULL, 3.0, 5.0, &seen, &null_error), "scale");
    wrong += !refuses_null(cupwright_live_take(&scale, 3.0, 5.0, NULL, &null_error), "seen");
    wrong += !refuses_null(cupwright_live_account(&scale, NULL, &null_error), "account");
    wrong += !refuses_null(cupwright_follow_begin(NULL, &follower, &null_error), "setup");
    wrong += !refuses_null(cupwright_follow_begin(&setup, NULL, &null_error), "follower");
    wrong += !refuses_null(cupwright_follow_take(&follower, NULL, 1, 3.0, 5.0, &now, &null_error), "recipe");
    wrong += !refuses_null(cupwright_follow_take(&follower, NULL, 0, 3.0, 5.0, NULL, &null_error), "now");
    wrong += !refuses_null(cupwright_follow_weighed(NULL, &weighed, &null_error), "follower");
    wrong += !refuses_null(cupwright_follow_weighed(&follower, NULL, &null_error), "weighed");
    wrong += !refuses_null(cupwright_follow_account(&follower, NULL, &null_error), "account");
    wrong += !refuses_null(cupwright_follow_outlook(&follower, NULL, &window, &outlook, &null_error), "intended");
    wrong += !refuses_null(cupwright_follow_outlook(&follower, &MEANT, NULL, &outlook, &null_error), "window");
    wrong += !refuses_null(cupwright_follow_outlook(&follower, &MEANT, &window, NULL, &null_error), "outlook");
    wrong += cupwright_follow_take(&follower, recipe, 25, 3.0, 5.0, &now, &error) != CUPWRIGHT_STATUS_OUT_OF_RANGE ||
             error.quantity != CUPWRIGHT_QUANTITY_STEP_COUNT || strcmp(error.field, "count") != 0;
    /* A step of zeros is none. */
    wrong += cupwright_follow_take(&follower, recipe, 1, 3.0, 5.0, &now, &error) != CUPWRIGHT_STATUS_UNKNOWN_CHOICE ||
             strcmp(error.field, "step") != 0;
    return wrong + (cupwright_live_account(&scale, &account, NULL) != CUPWRIGHT_STATUS_OK);
}

int main(void) {
    int wrong = check_states();
    if (wrong != 0) {
        print("a state is not refused, or not copied\n");
    }
    uint64_t lines;
    wrong += play_brews(&lines) + (lines == 0);
    print_number(lines, 10);
    print(" lines of brews, ");
    print_number((uint64_t)wrong, 10);
    print(" wrong\n");
    return wrong != 0;
}

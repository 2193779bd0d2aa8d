#include "profile.h"

#include <stddef.h>
#include <stdint.h>

#include "display.h"
#include "flash.h"
#include "refusal.h"

/* Five brews of several doses, weighed before and after: invented. The vapour is a guess. */
static const cupwright_drained brews[] = {
    {.dose_g = 12.0, .water_g = 186.2, .beverage_g = 163.5, .vapour_g = 1.2},
    {.dose_g = 14.1, .water_g = 217.5, .beverage_g = 191.2, .vapour_g = 1.2},
    {.dose_g = 16.0, .water_g = 248.8, .beverage_g = 219.9, .vapour_g = 1.2},
    {.dose_g = 18.1, .water_g = 279.0, .beverage_g = 246.4, .vapour_g = 1.2},
    {.dose_g = 20.0, .water_g = 310.6, .beverage_g = 275.5, .vapour_g = 1.2},
};

/* Four cups, each read three times: invented. */
static const cupwright_repeat readings[] = {
    {1.31, 1}, {1.34, 1}, {1.30, 1}, {1.43, 2}, {1.40, 2}, {1.41, 2},
    {1.27, 3}, {1.25, 3}, {1.29, 3}, {1.38, 4}, {1.41, 4}, {1.37, 4},
};

static void show(const char *label, const cupwright_learned *learned, int places, int32_t quantity) {
    display_number(label, learned->value, places, quantity);
    display_number("  standard uncertainty", learned->u, places, quantity);
}

/* Retention and hold-up of the brewer, and how well one's own readings repeat. */
static bool learn(cupwright_profile *profile) {
    static const cupwright_profile nothing;
    cupwright_error error;
    cupwright_profile brewer;
    {
        cupwright_retention_line line;
        if (!refusal_none(cupwright_calibrate_retention_line(brews, sizeof brews / sizeof brews[0], &line, &error),
                          &error) ||
            !refusal_none(cupwright_profile_keep_retention_line(&nothing, &line, &brewer, &error), &error)) {
            return false;
        }
    }
    cupwright_fitted_repeatability fitted;
    return refusal_none(
               cupwright_calibrate_repeatability(readings, sizeof readings / sizeof readings[0], &fitted, &error),
               &error) &&
           refusal_none(cupwright_profile_keep_repeatability(&brewer, &fitted, profile, &error), &error);
}

static bool keep(const cupwright_profile *profile) {
    cupwright_error error;
    uint8_t bytes[CUPWRIGHT_PROFILE_BYTES];
    if (!refusal_none(cupwright_profile_to_bytes(profile, bytes, &error), &error)) {
        return false;
    }
    flash_write(FLASH_PROFILE, bytes, sizeof bytes);
    return true;
}

/* One bit of the page as it should not be: refused. */
static bool is_damage_found(void) {
    enum { DAMAGED = 42 };
    cupwright_error error;
    cupwright_profile unread;
    uint8_t bytes[CUPWRIGHT_PROFILE_BYTES];
    for (size_t at = 0; at < sizeof bytes; at++) {
        bytes[at] = flash_read(FLASH_PROFILE)[at];
    }
    bytes[DAMAGED] ^= 1;
    display_line("had a bit of the flash fallen over");
    if (cupwright_profile_from_bytes(bytes, sizeof bytes, &unread, &error) != CUPWRIGHT_STATUS_UNREADABLE) {
        return false;
    }
    refusal_show(&error);
    return true;
}

bool profile_learn_and_keep(cupwright_profile *profile) {
    cupwright_error error;
    display_line("learned from earlier brews, kept in flash and read back");
    if (!learn(profile) || !keep(profile) ||
        !refusal_none(cupwright_profile_from_bytes(flash_read(FLASH_PROFILE), CUPWRIGHT_PROFILE_BYTES, profile,
                                                   &error),
                      &error)) {
        return false;
    }
    show("retention", &profile->apparent_retention_g_per_g, 2, CUPWRIGHT_QUANTITY_APPARENT_RETENTION);
    show("hold-up", &profile->fitted_hold_up_g, 1, CUPWRIGHT_QUANTITY_FITTED_HOLD_UP);
    show("repeatability of readings", &profile->repeatability_pct, 3, CUPWRIGHT_QUANTITY_REPEATABILITY);
    return is_damage_found();
}

#include "refusal.h"

#include <stddef.h>

#include "display.h"

void refusal_show(const cupwright_error *error) {
    const char *unit = cupwright_unit_text(error->quantity);
    display_text("  ");
    if (error->field != NULL) {
        display_text(error->field);
        display_text(": ");
    }
    if (error->quantity != 0) {
        display_text(cupwright_quantity_text(error->quantity));
        /* An empty band has two edges and no value. */
        if (error->status != CUPWRIGHT_STATUS_EMPTY_BAND) {
            display_text(" ");
            display_decimal(error->value, 2);
            display_text(" ");
            display_text(unit);
        }
        display_text(": ");
    }
    display_text(cupwright_status_text(error->status));
    if (error->beside != 0) {
        display_text(", here the ");
        display_text(cupwright_quantity_text(error->beside));
    }
    if (error->status == CUPWRIGHT_STATUS_INFEASIBLE) {
        display_text(", ");
        display_text(cupwright_limit_text(error->limit));
        display_text("; the nearest is ");
        display_decimal(error->nearest, 2);
        display_text(" ");
        display_text(unit);
    } else if (error->status == CUPWRIGHT_STATUS_CANNOT_TELL) {
        display_text(", ");
        display_text(cupwright_untold_text(error->limit));
    } else if (error->status == CUPWRIGHT_STATUS_UNREADABLE && error->limit != 0) {
        display_text("; ");
        display_text(cupwright_unreadable_text(error->limit));
    } else if (error->quantity != 0) {
        display_text(", ");
        display_decimal(error->lowest, 2);
        display_text(" to ");
        display_decimal(error->highest, 2);
        display_text(" ");
        display_text(unit);
    }
    display_text("\n");
}

void refusal_show_bits(const cupwright_error *error) {
    refusal_show(error);
    display_text("    value, lowest, highest, nearest\n   ");
    display_bits(error->value);
    display_bits(error->lowest);
    display_text("\n   ");
    display_bits(error->highest);
    display_bits(error->nearest);
    display_text("\n");
}

bool refusal_none(int32_t status, const cupwright_error *error) {
    if (status != CUPWRIGHT_STATUS_OK) {
        refusal_show(error);
    }
    return status == CUPWRIGHT_STATUS_OK;
}

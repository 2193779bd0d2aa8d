/* Pointers that are NULL are refused. */

#ifndef NULL_H
#define NULL_H

#include "words.h"

static cupwright_error null_error;

static int has_no_facts(const cupwright_error *error) {
    return error->value == 0.0 && error->lowest == 0.0 && error->highest == 0.0 && error->nearest == 0.0 &&
           error->quantity == 0 && error->beside == 0 && error->limit == 0;
}

static int refuses_null(int32_t status, const char *field) {
    int refuses = status == CUPWRIGHT_STATUS_NULL && null_error.status == status && has_no_facts(&null_error) &&
                  null_error.field != NULL && strcmp(null_error.field, field) == 0;
    mark(&null_error, sizeof null_error);
    return refuses;
}

#endif

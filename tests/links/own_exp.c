/* A firmware may have an exp of its own. This one gives answers that no other gives. */

#include "firmware.h"

double exp(double x);

double exp(double x) {
    own_exp_calls++;
    return -x;
}

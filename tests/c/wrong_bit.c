/*
 * A function that answers one bit wrong, once: its first answer after so many calls. Linked with -Wl,--wrap, which
 * sends calls of the function here.
 */

#include <string.h>

#include "cupwright.h"

int32_t __real_cupwright_water_temperature_of_enthalpy(double enthalpy, double *temperature, cupwright_error *error);
int32_t __wrap_cupwright_water_temperature_of_enthalpy(double enthalpy, double *temperature, cupwright_error *error);

int32_t __wrap_cupwright_water_temperature_of_enthalpy(double enthalpy, double *temperature, cupwright_error *error) {
    static int calls, is_done;
    int32_t status = __real_cupwright_water_temperature_of_enthalpy(enthalpy, temperature, error);
    calls++;
    if (calls > AFTER && status == CUPWRIGHT_STATUS_OK && !is_done) {
        uint64_t bits;
        memcpy(&bits, temperature, sizeof bits);
        bits ^= 1;
        memcpy(temperature, &bits, sizeof bits);
        is_done = 1;
    }
    return status;
}

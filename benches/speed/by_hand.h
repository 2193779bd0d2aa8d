/* Formulas as one would write them by hand: no checks, no errors, the system's libm. */

#ifndef BY_HAND_H
#define BY_HAND_H

#include "cupwright.h"

uint32_t by_hand_nothing(void);

double by_hand_water_ratio(double dose_g, double water_g);
double by_hand_dose_for_water(double water_g, double ratio);
double by_hand_dose_per_litre(double ratio, double water_c);
double by_hand_flow_through_yield(double strength_pct, double beverage_g, double dose_g);
double by_hand_flow_through_strength(double yield_pct, double beverage_g, double dose_g);
double by_hand_steeped_yield(double strength_pct, double water_g, double dose_g);
double by_hand_steeped_strength(double yield_pct, double ratio);
double by_hand_yield(const struct cupwright_brew *brew, double strength_pct);
double by_hand_strength(const struct cupwright_brew *brew, double yield_pct);
double by_hand_yield_at_time(const struct cupwright_kinetics *kinetics, double time_s);
double by_hand_beverage(const struct cupwright_losses *losses, double dose_g, double water_g);
double by_hand_strength_after_water(double beverage_g, double strength_pct, double added_g,
                                    double water_solids_mg_per_l);
double by_hand_water_to_reach(double beverage_g, double strength_pct, double wanted_pct,
                              double water_solids_mg_per_l);
double by_hand_mixed_temperature(double hot_g, double hot_c, double cold_g, double cold_c);
double by_hand_density(double water_c);
double by_hand_specific_heat(double water_c);
double by_hand_enthalpy(double water_c);
double by_hand_temperature_of_enthalpy(double enthalpy_j_per_g);
double by_hand_vapour_pressure(double water_c);
double by_hand_boiling_point(double pressure_kpa);
double by_hand_latent_heat(double water_c);
double by_hand_pressure_at_altitude(double altitude_m);
double by_hand_altitude_at_pressure(double pressure_kpa);
double by_hand_after_pour(double water_c, double drop_k);
double by_hand_settle(double water_g, double water_c, const struct cupwright_body *bodies,
                      size_t count);
double by_hand_time_to_cool(double water_c, double to_c, double cooling_per_min,
                            const struct cupwright_surroundings *room);
double by_hand_cooling_rate(double water_c, double to_c, double time_s,
                            const struct cupwright_surroundings *room);
double by_hand_temperature_after(double water_c, double time_s, double cooling_per_min,
                                 const struct cupwright_surroundings *room);
double by_hand_brix_of_index(double refractive_index);
double by_hand_index_of_brix(double brix);
double by_hand_brix_at_20(double brix, double sample_c);
double by_hand_strength_of_brix(double brix, double factor);
double by_hand_total_strength(double strength_pct, double water_solids_mg_per_l);
double by_hand_strength_of_index(double refractive_index, double sample_c, double factor);

#endif

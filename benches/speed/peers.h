/* What established ways make of the same measurements. */

#ifndef PEERS_H
#define PEERS_H

#include "cupwright.h"

/* Least squares by MINPACK's Levenberg-Marquardt; each answers what its caller compares. */
double peer_retention_line(const struct cupwright_drained *brews, int count);
double peer_one_rate(const struct cupwright_timed *yields, int count);
double peer_two_rates(const struct cupwright_timed *yields, int count);
double peer_cooling(const struct cupwright_thermometer *readings, int count,
                    const struct cupwright_surroundings *room);

/* The last readings, and weights that make a slope of them. */
struct peer_slope {
    const double *weights;
    int window;
    int next;
    double recent[129];
};

/* Savitzky and Golay's slope at the newest reading, per reading; readings are evenly spaced. */
double peer_slope_take(struct peer_slope *slope, double reading_g);

#endif

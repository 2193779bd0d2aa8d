/*
 * Columns: every row as by the function for a single row, to the last bit, good rows and bad ones; NULL and no rows
 * at all. What a single row must give is the other driver's business. Reads how many columns of each kind to draw.
 */

#include "null.h"

enum { ROWS = 41, MOST = 8 };

static const cupwright_losses losses = {1.9, 3.0, 1.5, 3.0, 0.5, 1.5};
static const cupwright_window window = CUPWRIGHT_HOME_BREWER_2018;
static const double factor = 0.85;

static double in[MOST][ROWS];
static double out[ROWS];
static uint8_t row[ROWS];
static size_t refused;

/** How many rows were met that answer, have a bad input, or no answer though every input is good. */
static int met[3];

/** What is read of NULL is nothing: the column that is NULL, counted from 1 over inputs, answers and statuses. */
static size_t null_at;

static const double *from(size_t at) { return null_at == at + 1 ? NULL : in[at]; }

static double *to(size_t at) { return null_at == at + 1 ? NULL : out; }

static uint8_t *statuses(size_t at) { return null_at == at + 1 ? NULL : row; }

#define FROM3 from(0), from(1), from(2)
#define REST(at) to(at), statuses((at) + 1), &refused, error

static int32_t many_flow_through_yield(size_t count, cupwright_error *error) {
    return cupwright_columns_flow_through_yield(FROM3, count, REST(3));
}

static int32_t one_flow_through_yield(const double *of, double *answer, cupwright_error *error) {
    return cupwright_extraction_flow_through_yield(of[0], of[1], of[2], answer, error);
}

static int32_t many_flow_through_strength(size_t count, cupwright_error *error) {
    return cupwright_columns_flow_through_strength(FROM3, count, REST(3));
}

static int32_t one_flow_through_strength(const double *of, double *answer, cupwright_error *error) {
    return cupwright_extraction_flow_through_strength(of[0], of[1], of[2], answer, error);
}

static int32_t many_steeped_yield(size_t count, cupwright_error *error) {
    return cupwright_columns_steeped_yield(FROM3, count, REST(3));
}

static int32_t one_steeped_yield(const double *of, double *answer, cupwright_error *error) {
    return cupwright_extraction_steeped_yield(of[0], of[1], of[2], answer, error);
}

static int32_t many_extraction_yield(size_t count, cupwright_error *error) {
    return cupwright_columns_extraction_yield(FROM3, from(3), from(4), from(5), from(6), from(7), count, REST(8));
}

static int32_t one_extraction_yield(const double *of, double *answer, cupwright_error *error) {
    const cupwright_brew brew = {of[0], of[1], of[2], of[3], of[4], of[5], of[6]};
    return cupwright_extraction_yield(&brew, of[7], answer, error);
}

static int32_t many_water_ratio(size_t count, cupwright_error *error) {
    return cupwright_columns_water_ratio(from(0), from(1), count, REST(2));
}

static int32_t one_water_ratio(const double *of, double *answer, cupwright_error *error) {
    return cupwright_ratio_water_ratio(of[0], of[1], answer, error);
}

static int32_t many_water_to_reach(size_t count, cupwright_error *error) {
    return cupwright_columns_water_to_reach(FROM3, from(3), count, REST(4));
}

static int32_t one_water_to_reach(const double *of, double *answer, cupwright_error *error) {
    return cupwright_dilution_water_to_reach(of[0], of[1], of[2], of[3], answer, error);
}

static int32_t many_strength_of_brix(size_t count, cupwright_error *error) {
    return cupwright_columns_strength_of_brix(factor, from(0), count, REST(1));
}

static int32_t one_strength_of_brix(const double *of, double *answer, cupwright_error *error) {
    return cupwright_reading_strength_of_brix(of[0], factor, answer, error);
}

static int32_t many_beverage(size_t count, cupwright_error *error) {
    return cupwright_columns_beverage(&losses, from(0), from(1), count, REST(2));
}

static int32_t one_beverage(const double *of, double *answer, cupwright_error *error) {
    return cupwright_retention_beverage(&losses, of[0], of[1], answer, error);
}

/** A function on columns, the one for a single row, and what the columns hold. */
struct pair {
    const char *name;
    int32_t (*many)(size_t count, cupwright_error *error);
    int32_t (*one)(const double *of, double *answer, cupwright_error *error);
    size_t columns;
    struct {
        const char *name;
        double low, high;
    } column[MOST];
    const char *answer;
};

static const struct pair pairs[] = {
    {"flow_through_yield", many_flow_through_yield, one_flow_through_yield, 3,
     {{"strength_pct", 1.0, 9.0}, {"beverage_g", 100.0, 400.0}, {"dose_g", 8.0, 25.0}}, "yield_pct"},
    {"flow_through_strength", many_flow_through_strength, one_flow_through_strength, 3,
     {{"yield_pct", 10.0, 30.0}, {"beverage_g", 1.0, 40.0}, {"dose_g", 8.0, 25.0}}, "strength_pct"},
    {"steeped_yield", many_steeped_yield, one_steeped_yield, 3,
     {{"strength_pct", 1.0, 9.0}, {"water_g", 100.0, 400.0}, {"dose_g", 8.0, 25.0}}, "yield_pct"},
    {"extraction_yield", many_extraction_yield, one_extraction_yield, 8,
     {{"dose_g", 10.0, 25.0}, {"water_g", 200.0, 400.0}, {"beverage_g", 100.0, 250.0}, {"moisture_pct", 0.0, 6.0},
      {"water_solids_mg_per_l", 0.0, 900.0}, {"vapour_g", 0.0, 9.0}, {"held_strength_pct", 0.0, 99.0},
      {"strength_pct", 0.05, 2.0}}, "yield_pct"},
    {"water_ratio", many_water_ratio, one_water_ratio, 2, {{"dose_g", 0.5, 30.0}, {"water_g", 1.0, 900.0}},
     "water_ratio_g_per_g"},
    {"water_to_reach", many_water_to_reach, one_water_to_reach, 4,
     {{"beverage_g", 100.0, 400.0}, {"strength_pct", 0.5, 2.0}, {"wanted_pct", 0.1, 1.5},
      {"water_solids_mg_per_l", 0.0, 4000.0}}, "added_g"},
    {"strength_of_brix", many_strength_of_brix, one_strength_of_brix, 1, {{"brix", -2.0, 6.0}}, "strength_pct"},
    {"beverage", many_beverage, one_beverage, 2, {{"dose_g", 5.0, 90.0}, {"water_g", 20.0, 400.0}}, "beverage_g"},
};

/** Draws columns, the same ones everywhere: of twenty numbers one is bad. */
static void draw(size_t column, double low, double high) {
    static uint64_t seed = 1;
    for (size_t at = 0; at < ROWS; at++) {
        seed = seed * 6364136223846793005u + 1u;
        uint32_t drawn = (uint32_t)(seed >> 33);
        double number = low + (high - low) * ((double)(drawn >> 8) / 8388608.0);
        in[column][at] = drawn % 20 != 0 ? number : drawn % 3 != 0 ? -1000.0 : of_bits(0x7FF8000000000001u);
    }
}

enum { NAN_HIGH = 0x7FF80000 };

static int is_nan(double number) { return bits_of(number) == (uint64_t)NAN_HIGH << 32; }

/** Which row's status an error of a single row stands for. */
static uint8_t row_of(const struct pair *pair, const cupwright_error *error) {
    for (size_t at = 0; error->status == CUPWRIGHT_STATUS_OUT_OF_RANGE && at < pair->columns; at++) {
        if (error->field != NULL && strcmp(error->field, pair->column[at].name) == 0) {
            return (uint8_t)(at + 1);
        }
    }
    return CUPWRIGHT_ROW_NO_ANSWER;
}

static int check_row(const struct pair *pair, size_t at, size_t *without) {
    static cupwright_error error;
    double of[MOST], answer;
    for (size_t column = 0; column < pair->columns; column++) {
        of[column] = in[column][at];
    }
    if (pair->one(of, &answer, &error) == CUPWRIGHT_STATUS_OK) {
        met[0]++;
        return row[at] != CUPWRIGHT_ROW_ANSWERED || bits_of(out[at]) != bits_of(answer);
    }
    met[row_of(pair, &error) == CUPWRIGHT_ROW_NO_ANSWER ? 2 : 1]++;
    ++*without;
    return row[at] != row_of(pair, &error) || !is_nan(out[at]);
}

static int check_pair(const struct pair *pair) {
    size_t without = 0;
    int wrong = 0;
    for (size_t column = 0; column < pair->columns; column++) {
        draw(column, pair->column[column].low, pair->column[column].high);
    }
    mark(out, sizeof out);
    mark(row, sizeof row);
    /* All but the last row, which must stay as it was. */
    wrong += pair->many(ROWS - 1, NULL) != CUPWRIGHT_STATUS_OK;
    wrong += !is_marked(&out[ROWS - 1], sizeof out[0]) || !is_marked(&row[ROWS - 1], sizeof row[0]);
    for (size_t at = 0; at < ROWS - 1; at++) {
        wrong += check_row(pair, at, &without);
    }
    wrong += refused != without;
    mark(out, sizeof out);
    mark(row, sizeof row);
    for (null_at = 1; null_at <= pair->columns + 2; null_at++) {
        const char *field = null_at <= pair->columns ? pair->column[null_at - 1].name
                            : null_at == pair->columns + 1 ? pair->answer : "status";
        wrong += !refuses_null(pair->many(1, &null_error), field);
        wrong += pair->many(0, NULL) != CUPWRIGHT_STATUS_OK || refused != 0;
    }
    null_at = 0;
    return wrong + (!is_marked(out, sizeof out) || !is_marked(row, sizeof row));
}

static int is_place(const cupwright_place *place, uint8_t side, double lowest, double highest, double centre) {
    return place->side == side && bits_of(place->above_lowest) == bits_of(lowest) &&
           bits_of(place->below_highest) == bits_of(highest) && bits_of(place->above_centre) == bits_of(centre);
}

static int check_stand(const cupwright_window *in_window) {
    static double distance[6][ROWS];
    static uint8_t side[2][ROWS];
    static cupwright_standing standing;
    static cupwright_error error;
    size_t without = 0;
    int wrong = 0;
    draw(0, 1.0, 1.6);
    draw(1, 16.0, 24.0);
    wrong += cupwright_columns_stand(in_window, in[0], in[1], ROWS, side[0], distance[0], distance[1], distance[2],
                                     side[1], distance[3], distance[4], distance[5], row, &refused,
                                     NULL) != CUPWRIGHT_STATUS_OK;
    for (size_t at = 0; at < ROWS; at++) {
        if (cupwright_verdict_stand(in_window, in[0][at], in[1][at], &standing, &error) == CUPWRIGHT_STATUS_OK) {
            wrong += row[at] != CUPWRIGHT_ROW_ANSWERED;
            wrong += !is_place(&standing.strength, side[0][at], distance[0][at], distance[1][at], distance[2][at]);
            if (standing.has_yield) {
                wrong += !is_place(&standing.yield, side[1][at], distance[3][at], distance[4][at], distance[5][at]);
                continue;
            }
        } else {
            without++;
            wrong += row[at] != (strcmp(error.field, "strength_pct") == 0 ? 1 : 2);
            wrong += side[0][at] != 0 || !is_nan(distance[0][at]) || !is_nan(distance[1][at]) ||
                     !is_nan(distance[2][at]);
        }
        wrong += side[1][at] != 0 || !is_nan(distance[3][at]) || !is_nan(distance[4][at]) || !is_nan(distance[5][at]);
    }
    wrong += refused != without || without == 0;
    wrong += !refuses_null(cupwright_columns_stand(NULL, in[0], in[1], 1, side[0], distance[0], distance[1],
                                                   distance[2], side[1], distance[3], distance[4], distance[5], row,
                                                   &refused, &null_error), "window");
    wrong += !refuses_null(cupwright_columns_stand(in_window, in[0], in[1], 1, side[0], distance[0], distance[1],
                                                   distance[2], side[1], distance[3], NULL, distance[5], row,
                                                   &refused, &null_error), "yield_below_highest");
    return wrong;
}

/** What all rows share is refused like any input, and nothing is written. */
static int check_shared(void) {
    cupwright_window empty = window;
    cupwright_error error;
    int wrong = 0;
    empty.strength_lowest_pct = empty.strength_highest_pct;
    mark(row, sizeof row);
    wrong += cupwright_columns_stand(&empty, in[0], in[1], 0, row, out, out, out, row, out, out, out, row, &refused,
                                     &error) != CUPWRIGHT_STATUS_EMPTY_BAND;
    wrong += cupwright_columns_strength_of_brix(-1.0, in[0], ROWS, out, row, &refused, &error) !=
                 CUPWRIGHT_STATUS_OUT_OF_RANGE || strcmp(error.field, "refractive_factor_pct_per_brix") != 0;
    wrong += !refuses_null(cupwright_columns_beverage(NULL, in[0], in[1], ROWS, out, row, &refused, &null_error),
                           "losses");
    wrong += !refuses_null(cupwright_columns_water_ratio(in[0], in[1], ROWS, out, row, NULL, &null_error), "refused");
    return wrong + !is_marked(row, sizeof row);
}

int main(void) {
    uint64_t rounds = next_number(10);
    cupwright_window of_strength = window;
    of_strength.has_yield = 0;
    int wrong = 0;
    for (size_t at = 0; at < sizeof pairs / sizeof pairs[0]; at++) {
        int of_pair = 0;
        for (uint64_t round = 0; round < rounds; round++) {
            of_pair += check_pair(&pairs[at]);
        }
        if (of_pair != 0) {
            print(pairs[at].name);
            print(" differs\n");
        }
        wrong += of_pair;
    }
    int of_judge = check_stand(&window) + check_stand(&of_strength) + check_shared();
    if (of_judge != 0) {
        print("the judge differs\n");
    }
    wrong += of_judge;
    print_number((uint64_t)met[0], 10);
    print(" rows answered, ");
    print_number((uint64_t)met[1], 10);
    print(" with a bad input, ");
    print_number((uint64_t)met[2], 10);
    print(" without an answer, ");
    print_number((uint64_t)wrong, 10);
    print(" wrong\n");
    return wrong != 0 || met[0] < 500 || met[1] < 100 || met[2] < 20;
}

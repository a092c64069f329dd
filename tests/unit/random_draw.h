/* What all parts of a random build draw and write with: chances, steps, and quantities in the unit
 * that the variation wants. */
#ifndef TYRESUM_TESTS_RANDOM_DRAW_H
#define TYRESUM_TESTS_RANDOM_DRAW_H

#include <stdbool.h>
#include <stdint.h>

#include "base/units.h"
#include "random_build.h"

/* Draws go on through all of a build, whatever the variation leaves out of the text. */
struct draw {
    uint64_t state;
    const struct variation *how;
    unsigned quantities;
};

struct drawn_vehicle {
    double wheelbase_mm;
    int options, items;
    bool has_track, has_seats;
};

/* So many times in a hundred. */
bool chance(struct draw *draw, int percent);
/* A value of so many steps from low to high. */
double steps(struct draw *draw, double low, double high, double step);
/* Texts: none yet; more of it; a quantity as the variation's unit has it. */
void start(struct build_text *out);
void put(struct build_text *out, const char *format, ...) __attribute__((format(printf, 2, 3)));
/* `turn` chooses among the other units of the kind. */
void put_in_unit(const struct draw *draw, struct build_text *out, enum unit_kind kind, double value,
                 unsigned turn);
void quantity(struct draw *draw, struct build_text *out, enum unit_kind kind, double value);
/* "key: value, " of a flow mapping. */
void key(struct draw *draw, struct build_text *out, const char *name, enum unit_kind kind,
         double value);
void bare(struct build_text *out, const char *name, double value);
/* "key: value, ", where a draw says that it is there at all. */
void perhaps(struct draw *draw, struct build_text *out, int percent, const char *name,
             enum unit_kind kind, double value);
void front_and_rear(struct draw *draw, struct build_text *out, const char *name,
                    enum unit_kind kind, double front, double rear);
/* In the variation's scale. */
double mass(const struct draw *draw, double kg);
double place(const struct draw *draw, double mm);
/* {item: ..., NAME: low to high, height: ...}, in mm. */
void put_point(struct draw *draw, struct build_text *out, const char *name, double low, double high,
               double height);

/* The parts of a build file, each in a file of its own. */
void put_tyres(struct draw *draw, struct build_text *out, int options);
void put_drivetrain(struct draw *draw, struct build_text *out);
void put_speedometer(struct draw *draw, struct build_text *out, int options);
void put_suspension(struct draw *draw, struct build_text *out, const char *axle);
void put_measured(struct draw *draw, struct build_text *out, const struct drawn_vehicle *vehicle);
void put_limits(struct draw *draw, struct build_text *out);

#endif

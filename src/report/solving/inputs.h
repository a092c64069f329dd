/* The measured and assumed values that an option's outcome may hang on. */
#ifndef TYRESUM_REPORT_SOLVING_INPUTS_H
#define TYRESUM_REPORT_SOLVING_INPUTS_H

#include "report/plan.h"

/* What is judged by itself and makes an outcome: each part as a bit, but for clearance, whose
 * pieces have bits of their own. Angles make none. */
enum {
    JUDGED_PIECES_FROM = PART_SOLVING,
    JUDGED_BITS = PART_SOLVING + 4,
    JUDGED_OF_BOTH = CLEARANCE_OF_BOTH << JUDGED_PIECES_FROM,
    JUDGED_OF_TYRE = CLEARANCE_OF_TYRE << JUDGED_PIECES_FROM,
    JUDGED_OF_FRONT = CLEARANCE_OF_FRONT << JUDGED_PIECES_FROM,
    JUDGED_OF_REAR = CLEARANCE_OF_REAR << JUDGED_PIECES_FROM,
    JUDGED_CLEARANCE = JUDGED_OF_BOTH | JUDGED_OF_TYRE | JUDGED_OF_FRONT | JUDGED_OF_REAR,
    JUDGED_WHOLE = (((1 << PART_SOLVING) - 1) & ~(1 << PART_CLEARANCE)) | JUDGED_CLEARANCE
};

struct input {
    const char *path;  /* of the key, as --set takes it: "clearance.arch.front.above" */
    const char *words; /* for people: "arch front above", "water tank mass" */
    double *value;     /* in the copy that was collected from */
    enum unit_kind kind;
    double range;     /* what such a measurement is never off by more than */
    double low, high; /* that the key may have */
    unsigned read_by; /* bits of what is judged */
};

struct inputs {
    struct arena *arena;
    struct input *items;
    size_t count, capacity;
};

/* Of `copy`, whose lists become its own, so that a value changed in it changes nothing else; but for
 * its list of options, which is its own already, and of which those of `option` alone count, by its
 * number in the file. */
void inputs_collect(struct arena *arena, struct specification *copy, size_t option,
                    struct inputs *out);

#endif

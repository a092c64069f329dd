/* The measured and assumed values that an option's outcome may hang on. */
#ifndef TYRESUM_REPORT_SOLVING_INPUTS_H
#define TYRESUM_REPORT_SOLVING_INPUTS_H

#include "report/plan.h"

struct input {
    const char *path;  /* of the key, as --set takes it: "clearance.arch.front.above" */
    const char *words; /* for people: "arch front above", "water tank mass" */
    double *value;     /* in the copy that was collected from */
    enum unit_kind kind;
    double range;     /* what such a measurement is never off by more than */
    double low, high; /* that the key may have */
    unsigned parts;   /* bits of enum part: that read it */
};

struct inputs {
    struct arena *arena;
    struct input *items;
    size_t count, capacity;
};

/* Of `copy`, whose lists become its own, so that a value changed in it changes nothing else; of its
 * options those of `option` alone, by its number in the file. */
void inputs_collect(struct arena *arena, struct specification *copy, size_t option,
                    struct inputs *out);

#endif

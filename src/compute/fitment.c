#include "compute/fitment.h"

#include <stddef.h>

#include "base/known.h"

bool tyre_is_dual(const struct tyre *tyre)
{
    return tyre->dual == 1;
}

static void inherit(double *value, double from)
{
    if (!known(*value))
        *value = from;
}

/* The moulded load range counts as given. */
static void take_moulded_range(struct tyre *tyre)
{
    if (tyre->load_range == 0 && tyre->size_given)
        tyre->load_range = tyre->size.load_range;
}

/* The rear tyre: what its own mapping says, and the front's for all else. */
static struct tyre rear_of(const struct tyre *front, const struct tyre *rear)
{
    if (rear->given == NULL)
        return *front;
    struct tyre tyre = *rear;
    bool other_size = tyre.size_given;
    if (!other_size) {
        tyre.size = front->size;
        tyre.size_given = front->size_given;
        tyre.load_range = tyre.load_range ? tyre.load_range : front->load_range;
        if (tyre.data_book.given == NULL)
            tyre.data_book = front->data_book;
        inherit(&tyre.tread_depth_m, front->tread_depth_m);
        inherit(&tyre.new_tread_depth_m, front->new_tread_depth_m);
    }
    if (tyre.wheel.given == NULL)
        tyre.wheel = front->wheel;
    inherit(&tyre.mass_kg, front->mass_kg);
    inherit(&tyre.inertia_kg_m2, front->inertia_kg_m2);
    inherit(&tyre.snow_chains_m, front->snow_chains_m);
    if (tyre.dual == CHOICE_NONE)
        tyre.dual = front->dual;
    return tyre;
}

static void set_axles(const struct fitment *fitment, struct setup *out)
{
    out->axle[AXLE_FRONT] = fitment->tyre;
    take_moulded_range(&out->axle[AXLE_FRONT]);
    out->axle[AXLE_REAR] = rear_of(&out->axle[AXLE_FRONT], &fitment->rear);
    take_moulded_range(&out->axle[AXLE_REAR]);
    out->own_rear_size = fitment->rear.size_given;
}

bool same_rim_code(const struct tyre *one, const struct tyre *other)
{
    return one->size_given && other->size_given &&
           one->size.rim_code_tenths == other->size.rim_code_tenths &&
           one->size.rim_millimetric == other->size.rim_millimetric;
}

bool same_tyre(const struct tyre *one, const struct tyre *other)
{
    struct designation a = one->size, b = other->size;
    a.load_range = b.load_range = 0;
    bool ranged = one->load_range != 0 && other->load_range != 0;
    return one->size_given && other->size_given && designation_equal(&a, &b) &&
           (!ranged || one->load_range == other->load_range);
}

bool size_goes_on_rim(const struct designation *size, const struct search_rim *rim)
{
    return !size->rim_millimetric &&
           fabs(size->rim_code_tenths / 10.0 - rim->diameter_code) <= 1e-9;
}

bool rim_stands_as(const struct search_rim *rim, const struct wheel *wheel)
{
    return fabs(rim->width_m - wheel->width_m) < 1e-6 && fabs(rim->inset_m - wheel->inset_m) < 1e-6;
}

struct wheel wheel_of_rim(const struct search_rim *rim)
{
    struct wheel wheel = tyre_unknown().wheel;
    wheel.given = rim->given;
    wheel.width_m = rim->width_m;
    wheel.inset_m = rim->inset_m;
    wheel.max_load_kg = rim->max_load_kg;
    wheel.max_pressure_Pa = rim->max_pressure_Pa;
    return wheel;
}

/* A spare is as wide as the rim that it sits on, and its space may not hold the wider one. A
 * temporary spare (T) has a wheel of its own kind in any case. */
static void take_spare_wheel(struct setup *setup)
{
    struct tyre *spare = &setup->spare;
    if (!spare->size_given || spare->wheel.given != NULL)
        return;
    for (int axle = 0; axle < AXLE_COUNT && spare->size.prefix != PREFIX_T; axle++) {
        const struct wheel *wheel = &setup->axle[axle].wheel;
        if (wheel->given != NULL && same_rim_code(spare, &setup->axle[axle]) &&
            (spare->wheel.given == NULL || wheel->width_m > spare->wheel.width_m))
            spare->wheel = *wheel;
    }
    setup->assumptions |= spare->wheel.given != NULL ? ASSUMED_SPARE_WHEEL : ASSUMED_SPARE_RIM;
}

void setup_fitted(const struct specification *specification, struct setup *out)
{
    *out = (struct setup){.name = "fitted", .is_fitted = true};
    set_axles(&specification->tyres.fitted, out);
    out->spare = specification->tyres.spare;
    take_moulded_range(&out->spare);
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        inherit(&out->axle[axle].wheel.spacer_m, 0);
    take_spare_wheel(out);
    if (out->spare.given == NULL)
        out->assumptions |= ASSUMED_NO_SPARE;
}

/* An option's wheel, where it is not named: the fitted one if the rim code is the same. A wheel
 * that is named but not wholly described stays partly unknown. */
static void inherit_wheel(struct tyre *tyre, const struct tyre *fitted, unsigned *assumptions)
{
    if (tyre->wheel.given == NULL && same_rim_code(tyre, fitted)) {
        tyre->wheel = fitted->wheel;
        *assumptions |= ASSUMED_FITTED_WHEEL;
    }
    if (!known(tyre->wheel.spacer_m)) {
        tyre->wheel.spacer_m = 0;
        *assumptions |= ASSUMED_NO_SPACER;
    }
}

void setup_option(const struct fitment *option, const struct setup *fitted, struct setup *out)
{
    *out = (struct setup){.name = option->name,
                          .as_set = option->as_set.given != NULL ? &option->as_set : NULL};
    set_axles(option, out);
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        struct tyre *tyre = &out->axle[axle];
        inherit_wheel(tyre, &fitted->axle[axle], &out->assumptions);
        if (tyre->dual == CHOICE_NONE)
            tyre->dual = fitted->axle[axle].dual;
        if (!known(tyre->mass_kg) || !known(fitted->axle[axle].mass_kg))
            out->assumptions |= ASSUMED_SAME_MASS;
    }
    out->spare = option->spare;
    take_moulded_range(&out->spare);
    if (out->spare.given == NULL && fitted->spare.given != NULL) {
        out->spare = fitted->spare;
        if (out->spare.size_given)
            out->assumptions |= ASSUMED_SAME_SPARE;
    } else {
        take_spare_wheel(out);
    }
}

void setup_from_designation(const struct designation *size, const char *name, struct setup *out)
{
    *out = (struct setup){.name = name};
    struct tyre tyre = tyre_unknown();
    tyre.size = *size;
    tyre.size_given = true;
    take_moulded_range(&tyre);
    out->axle[AXLE_FRONT] = out->axle[AXLE_REAR] = tyre;
    out->spare = tyre_unknown();
}

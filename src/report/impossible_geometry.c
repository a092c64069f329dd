#include "report/impossible_geometry.h"

#include "base/units.h"
#include "compute/clearance.h"
#include "compute/dimensions.h"
#include "compute/fitment.h"

static void check_point(const struct body_point *point, double distance_m, double radius_m,
                        const char *key, const char *axle, struct diagnostics *diagnostics)
{
    bool named = is_given(point->given, key); /* a point has one of the places only */
    if (!named || !lies_within_tyre(distance_m, point->height_m, radius_m))
        return;
    diagnostics_add(diagnostics, place_of(point->given, key), 1,
                    "this point lies within the outline of the fitted %s tyre, whose static loaded "
                    "radius is %.0f mm; expected a point clear of the tyre",
                    axle, unit_from_si(UNIT_MM, radius_m));
}

static void check_points(const struct point_list *points, const double radius_m[AXLE_COUNT],
                         struct diagnostics *diagnostics)
{
    for (size_t i = 0; i < points->count; i++) {
        const struct body_point *point = &points->items[i];
        if (point->given == NULL)
            continue;
        check_point(point, point->ahead_m, radius_m[AXLE_FRONT], "ahead", "front", diagnostics);
        check_point(point, point->behind_m, radius_m[AXLE_REAR], "behind", "rear", diagnostics);
    }
}

bool impossible_geometry_check(const struct specification *specification,
                               struct diagnostics *diagnostics)
{
    const struct clearance_measured *measured = &specification->clearance;
    size_t before = diagnostics->count;
    struct setup fitted;
    setup_fitted(specification, &fitted);
    double radius_m[AXLE_COUNT];
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        struct tyre_measures measures;
        if (!fitted.axle[axle].size_given)
            return true; /* its own fault, or from arguments */
        tyre_measure(&fitted.axle[axle], &measures);
        radius_m[axle] = measures.stated.static_loaded_radius_m;
    }
    check_points(&measured->front_overhang, radius_m, diagnostics);
    check_points(&measured->rear_overhang, radius_m, diagnostics);
    for (size_t i = 0; i < specification->carried.count; i++)
        check_points(&specification->carried.items[i].points, radius_m, diagnostics);
    return diagnostics->count == before;
}

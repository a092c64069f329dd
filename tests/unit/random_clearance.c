/* Suspension, what was measured, and limits of a random build. */
#include "random_draw.h"
#include "support.h"

static void put_springs(struct draw *draw, struct build_text *out)
{
    double rate = steps(draw, 25, 120, 1), stiffer = rate * steps(draw, 1.1, 2, 0.1);
    int kind = random_whole(&draw->state, 0, 6);
    double motion = steps(draw, 0.6, 1.1, 0.05);
    if (kind < 3) {
        key(draw, out, "wheel_rate", KIND_STIFFNESS, rate);
    } else if (kind < 5) {
        put(out, "wheel_rate_%s: [[", kind == 3 ? "steps" : "curve");
        quantity(draw, out, KIND_LENGTH, 0);
        put(out, ", ");
        quantity(draw, out, KIND_STIFFNESS, rate);
        put(out, "], [");
        quantity(draw, out, KIND_LENGTH, 40);
        put(out, ", ");
        quantity(draw, out, KIND_STIFFNESS, stiffer);
        put(out, "]], ");
    } else if (kind < 6) {
        key(draw, out, "spring_rate", KIND_STIFFNESS, rate / (motion * motion));
        bare(out, "motion_ratio", motion);
    } else {
        key(draw, out, "wheel_rate", KIND_STIFFNESS, rate);
        key(draw, out, "helper_rate", KIND_STIFFNESS, stiffer);
        key(draw, out, "helper_closes_at", KIND_LENGTH, steps(draw, -10, 40, 5));
    }
}

void put_suspension(struct draw *draw, struct build_text *out, const char *axle)
{
    put(out, "  %s: {", axle);
    double lift = chance(draw, 50) ? steps(draw, -30, 80, 5) : 0;
    key(draw, out, "lift", KIND_LENGTH, lift + draw->how->more_lift_mm);
    if (chance(draw, 85))
        put_springs(draw, out);
    perhaps(draw, out, 40, "unsprung_mass", KIND_MASS, steps(draw, 60, 160, 5));
    perhaps(draw, out, 70, "travel_to_bump", KIND_LENGTH, steps(draw, 60, 140, 5));
    perhaps(draw, out, 50, "travel_to_droop", KIND_LENGTH, steps(draw, 90, 160, 5));
    perhaps(draw, out, 40, "bump_stop_change", KIND_LENGTH, steps(draw, 0, 30, 5));
    put(out, "}\n");
}

static void put_arch(struct draw *draw, struct build_text *out, const char *axle)
{
    put(out, "%s: {", axle);
    perhaps(draw, out, 80, "above", KIND_LENGTH, steps(draw, 60, 160, 5));
    perhaps(draw, out, 80, "inner", KIND_LENGTH, steps(draw, 5, 60, 1));
    perhaps(draw, out, 80, "outer", KIND_LENGTH, steps(draw, -5, 60, 1));
    perhaps(draw, out, 80, "at_lock", KIND_LENGTH, steps(draw, 3, 40, 1));
    put(out, "}, ");
}

static void put_points(struct draw *draw, struct build_text *out, const char *name,
                       const char *where, double low, double high, double height)
{
    int count = random_whole(&draw->state, 1, 3);
    put(out, "  %s: [", name);
    for (int i = 0; i < count; i++) {
        struct build_text point;
        start(&point);
        put_point(draw, &point, where, low, high, height);
        bool wanted = draw->how->one_point ? i == 0 : draw->how->last_point ? i == count - 1 : true;
        if (wanted)
            put(out, "%s, ", point.text);
    }
    put(out, "]\n");
}

void put_measured(struct draw *draw, struct build_text *out, const struct drawn_vehicle *vehicle)
{
    double wheelbase = vehicle->wheelbase_mm, ground = steps(draw, 140, 260, 5);
    put(out, "clearance:\n  ground: ");
    quantity(draw, out, KIND_LENGTH, ground);
    if (chance(draw, 50)) {
        put(out, "\n  ground_at: ");
        quantity(draw, out, KIND_LENGTH, steps(draw, 0, wheelbase, 50));
    }
    put(out, "\n  ");
    double front = steps(draw, 170, 260, 5), rear = steps(draw, 170, 260, 5);
    front_and_rear(draw, out, "under_axle", KIND_LENGTH, front, rear);
    put(out, "\n  arch: {");
    put_arch(draw, out, "front");
    put_arch(draw, out, "rear");
    put(out, "}\n");
    if (chance(draw, 50)) {
        put(out, "  steering: {");
        key(draw, out, "axis_to_centre", KIND_LENGTH, steps(draw, -20, 90, 1));
        key(draw, out, "lock", KIND_ANGLE, steps(draw, 28, 42, 0.5));
        perhaps(draw, out, 50, "kingpin_inclination", KIND_ANGLE, steps(draw, 0, 15, 0.5));
        put(out, "}\n");
    }
    put_points(draw, out, "front_overhang", "ahead", 700, 1100, 250);
    put_points(draw, out, "rear_overhang", "behind", 700, 1300, 280);
    put_points(draw, out, "belly", "at", 800, wheelbase - 800, 180);
    put(out, "  ");
    if (chance(draw, 70))
        put(out, "roof_height: "), quantity(draw, out, KIND_LENGTH, steps(draw, 1450, 2100, 5)),
            put(out, "\n  ");
    if (chance(draw, 40))
        put(out, "garage_entrance: "),
            quantity(draw, out, KIND_LENGTH, steps(draw, 1900, 2300, 10)), put(out, "\n  ");
    if (chance(draw, 40))
        put(out, "wading_depth: "), quantity(draw, out, KIND_LENGTH, steps(draw, 400, 800, 10)),
            put(out, "\n  ");
    if (chance(draw, 40))
        put(out, "step_height: "), quantity(draw, out, KIND_LENGTH, steps(draw, 350, 600, 10)),
            put(out, "\n  ");
    put(out, "headlamp: {");
    key(draw, out, "height", KIND_LENGTH, steps(draw, 600, 1100, 10));
    perhaps(draw, out, 70, "dip", KIND_FRACTION, steps(draw, 0.8, 1.6, 0.1));
    put(out, "}\n  spare_space: {");
    key(draw, out, "diameter", KIND_LENGTH, steps(draw, 640, 860, 5));
    key(draw, out, "width", KIND_LENGTH, steps(draw, 180, 320, 5));
    if (chance(draw, 50))
        key(draw, out, "at", KIND_LENGTH, place(draw, wheelbase + 700));
    put(out, "}\n");
}

static void put_window(struct draw *draw, struct build_text *out, const char *name,
                       enum unit_kind kind, double min, double max)
{
    bool low = chance(draw, 70), high = chance(draw, 80);
    if (!low && !high)
        return;
    put(out, "  %s: {", name);
    if (low)
        key(draw, out, "min", kind, min);
    if (high)
        key(draw, out, "max", kind, max);
    put(out, "}\n");
}

void put_limits(struct draw *draw, struct build_text *out)
{
    static const char *const published[] = {"au_passenger",  "au_offroad",   "au_nsw",
                                            "au_victoria",   "de_751",       "au_south_australia",
                                            "be_inspection", "es_inspection"};
    const char *one = published[random_whole(&draw->state, 0, 3)];
    const char *two = published[random_whole(&draw->state, 4, 7)];
    put(out, "limits:\n  published: [%s, %s]\n", one, two);
    if (chance(draw, 50))
        put_window(draw, out, "diameter_change", KIND_LENGTH, -26, 50);
    else
        put_window(draw, out, "diameter_change", KIND_FRACTION, -3, 3);
    put_window(draw, out, "ride_height_change", KIND_LENGTH, -50, 50);
    put_window(draw, out, "diameter_and_suspension", KIND_LENGTH, -75, 75);
    put_window(draw, out, "track_change", KIND_LENGTH, -20, 50);
    put_window(draw, out, "inset_change", KIND_LENGTH, -13, 30);
    if (chance(draw, 60))
        put(out, "  load_reserve: %d %%\n", random_whole(&draw->state, 0, 15));
    if (chance(draw, 50))
        put(out, "  speedometer: rule\n");
    static const char *const symbols[] = {"eu_winter", "de_36", "de_36_to_2024",
                                          "au_western_australia", "au_south_australia"};
    if (chance(draw, 50))
        put(out, "  speed_symbol: %s\n", symbols[random_whole(&draw->state, 0, 4)]);
}

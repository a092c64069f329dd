#include "random_build.h"

#include <math.h>

#include "random_draw.h"
#include "support.h"

const struct variation as_drawn = {
    .mass = 1, .place = 1, .diameter = 1, .option_diameter = 1, .more_torque = 1};

static void put_ratings(struct draw *draw, struct build_text *out, double front, double rear)
{
    put(out, "  ratings: {");
    perhaps(draw, out, 80, "front", KIND_MASS, mass(draw, front * 1.2));
    perhaps(draw, out, 80, "rear", KIND_MASS, mass(draw, rear * 1.4));
    perhaps(draw, out, 80, "gross", KIND_MASS, mass(draw, (front + rear) * 1.25));
    perhaps(draw, out, 70, "roof", KIND_MASS, mass(draw, steps(draw, 50, 150, 5)));
    perhaps(draw, out, 70, "tow_ball", KIND_MASS, mass(draw, steps(draw, 75, 350, 5)));
    perhaps(draw, out, 70, "combination", KIND_MASS, mass(draw, (front + rear) * 2));
    put(out, "}\n");
}

static void put_vehicle(struct draw *draw, struct build_text *out, struct drawn_vehicle *vehicle)
{
    static const char *const kinds[] = {"passenger_car", "light_truck"};
    static const char *const drives[] = {"front", "rear", "part_time_4wd", "full_time_4wd"};
    double front = steps(draw, 600, 1400, 10), rear = steps(draw, 500, 1300, 10);
    put(out, "vehicle:\n  name: a random build\n");
    vehicle->wheelbase_mm = steps(draw, 2200, 3600, 10);
    if (chance(draw, 92))
        put(out, "  wheelbase: "),
            quantity(draw, out, KIND_LENGTH, place(draw, vehicle->wheelbase_mm)), put(out, "\n");
    if (chance(draw, 92)) {
        put(out, "  ");
        front_and_rear(draw, out, "unladen", KIND_MASS, mass(draw, front), mass(draw, rear));
        put(out, "\n");
    }
    if (chance(draw, 70))
        put(out, "  includes: [driver, fuel]\n");
    if (chance(draw, 90))
        put_ratings(draw, out, front, rear);
    vehicle->has_seats = chance(draw, 80);
    double row_1 = steps(draw, 1200, 1600, 10), row_2 = steps(draw, 2000, 2500, 10);
    if (vehicle->has_seats) {
        put(out, "  seats: {");
        key(draw, out, "row_1", KIND_LENGTH, place(draw, row_1));
        key(draw, out, "row_2", KIND_LENGTH, place(draw, row_2));
        put(out, "}\n");
    }
    int kind = random_whole(&draw->state, 0, 1);
    int drive = random_whole(&draw->state, 0, 3);
    if (chance(draw, 85))
        put(out, "  kind: %s\n", kinds[kind]);
    put(out, "  drive: %s\n", drives[drive]);
    double top_speed_kmh = steps(draw, 110, 240, 5);
    if (chance(draw, 80))
        put(out, "  top_speed: "), quantity(draw, out, KIND_SPEED, top_speed_kmh), put(out, "\n");
    vehicle->has_track = chance(draw, 80);
    double track = steps(draw, 1350, 1750, 5), wider = steps(draw, -20, 40, 5);
    if (vehicle->has_track) {
        put(out, "  ");
        front_and_rear(draw, out, "track", KIND_LENGTH, place(draw, track),
                       place(draw, track + wider));
        put(out, "\n");
    }
    double warning = steps(draw, 120, 175, 5);
    if (chance(draw, 50))
        put(out, "  pressure_warning: "), quantity(draw, out, KIND_PRESSURE, warning),
            put(out, "\n");
    double drag = steps(draw, 0.25, 0.6, 0.01), area = steps(draw, 1.8, 3.6, 0.1);
    if (chance(draw, 70)) {
        put(out, "  drag: {");
        bare(out, "coefficient", drag);
        key(draw, out, "area", KIND_AREA, area);
        perhaps(draw, out, 40, "air_density", KIND_DENSITY, steps(draw, 0.0009, 0.00125, 0.00001));
        put(out, "}\n");
    }
}

/* What makes up an item's mass. */
static void put_item_mass(struct draw *draw, struct build_text *out,
                          const struct drawn_vehicle *vehicle)
{
    static const char *const liquids[] = {"petrol", "diesel", "water"};
    static const double densities[] = {0.745, 0.835, 1};
    const struct variation *how = draw->how;
    int kind = random_whole(&draw->state, 0, 9), liquid = random_whole(&draw->state, 0, 2);
    double amount = steps(draw, 5, 160, 1), at = steps(draw, -900, 4200, 10);
    bool told = chance(draw, 50) || how->masses_told;
    if (kind < 2) {
        key(draw, out, "volume", KIND_VOLUME, amount);
        if (told)
            key(draw, out, "density", KIND_DENSITY, mass(draw, densities[liquid]));
        else
            put(out, "of: %s, ", liquids[liquid]);
        perhaps(draw, out, 60, "dry_mass", KIND_MASS, mass(draw, floor(amount / 4)));
    } else if (kind == 2) {
        bare(out, "occupants", floor(amount / 60) + 1);
        if (told)
            key(draw, out, "occupant_mass", KIND_MASS, mass(draw, 60 + floor(amount / 4)));
        if (vehicle->has_seats) {
            put(out, "seat: %s, ", amount > 80 ? "row_1" : "row_2");
            return;
        }
    } else if (kind == 3) {
        key(draw, out, "tow_ball", KIND_MASS, mass(draw, amount));
        key(draw, out, "trailer_mass", KIND_MASS, mass(draw, amount * 10));
    } else {
        key(draw, out, "mass", KIND_MASS, mass(draw, amount));
    }
    key(draw, out, "at", KIND_LENGTH, place(draw, at));
}

static void put_item(struct draw *draw, struct build_text *out, const struct drawn_vehicle *vehicle,
                     int index)
{
    put(out, "{item: item %d, ", index);
    put_item_mass(draw, out, vehicle);
    double side = steps(draw, -600, 600, 10) * (draw->how->mirrored ? -1 : 1);
    if (vehicle->has_track)
        perhaps(draw, out, 40, "side", KIND_LENGTH, place(draw, side));
    bool roof = chance(draw, 20), removed = chance(draw, 10), point = chance(draw, 15);
    double top = steps(draw, 1800, 2400, 10);
    struct build_text points;
    start(&points);
    put_point(draw, &points, chance(draw, 50) ? "ahead" : "behind", 800, 1500, 350);
    if (roof)
        put(out, "on: roof, ");
    if (removed)
        put(out, "removed: true, ");
    else if (point)
        put(out, "point: %s, ", points.text);
    else
        perhaps(draw, out, 20, "top", KIND_LENGTH, top);
    put(out, "}");
}

/* Names of some of the items; the ballast is always aboard. */
static void put_state(struct draw *draw, struct build_text *out,
                      const struct drawn_vehicle *vehicle, int index)
{
    put(out, "  state %d: ", index);
    if (chance(draw, 25)) {
        put(out, "all\n");
        return;
    }
    put(out, "[ballast");
    for (int item = 0; item < vehicle->items; item++)
        if (chance(draw, 50))
            put(out, ", item %d", item);
    put(out, "]\n");
}

static void put_loads(struct draw *draw, struct build_text *out,
                      const struct drawn_vehicle *vehicle)
{
    static struct build_text item[BUILD_ITEMS_MAX];
    double ballast_at = steps(draw, 0.3, 0.7, 0.05) * vehicle->wheelbase_mm;
    put(out, "carried:\n  - {item: ballast, ");
    key(draw, out, "mass", KIND_MASS, mass(draw, draw->how->ballast_kg));
    key(draw, out, "at", KIND_LENGTH, place(draw, ballast_at));
    put(out, "}\n");
    for (int i = 0; i < vehicle->items; i++) {
        item[i].length = 0;
        put_item(draw, &item[i], vehicle, i);
    }
    for (int i = 0; i < vehicle->items; i++)
        put(out, "  - %s\n", item[draw->how->items_reversed ? vehicle->items - 1 - i : i].text);
    int states = random_whole(&draw->state, 0, 3);
    if (states > 0)
        put(out, "states:\n");
    for (int i = 0; i < states; i++)
        put_state(draw, out, vehicle, i);
    double at = steps(draw, -800, 4000, 50), pressure = steps(draw, 80, 170, 5);
    bool roof = chance(draw, 30);
    if (chance(draw, 70)) {
        put(out, "room_for: {item: something more, ");
        key(draw, out, "at", KIND_LENGTH, place(draw, at));
        perhaps(draw, out, 50, "mass", KIND_MASS, steps(draw, 10, 400, 10));
        put(out, "%s}\n", roof ? "on: roof, " : "");
    }
    if (!chance(draw, 50))
        return;
    put(out, "off_road: {");
    key(draw, out, "pressure", KIND_PRESSURE, pressure);
    perhaps(draw, out, 70, "speed", KIND_SPEED, steps(draw, 10, 60, 5));
    perhaps(draw, out, 70, "compressor_flow", KIND_FLOW, steps(draw, 30, 180, 5));
    put(out, "}\n");
}

void random_build(uint64_t seed, const struct variation *variation, struct build_text *out)
{
    struct draw draw = {.state = seed, .how = variation};
    struct drawn_vehicle vehicle = {.wheelbase_mm = 0};
    out->length = 0;
    vehicle.options = random_whole(&draw.state, 1, BUILD_OPTIONS_MAX);
    vehicle.items = random_whole(&draw.state, 0, BUILD_ITEMS_MAX);
    put_vehicle(&draw, out, &vehicle);
    put_tyres(&draw, out, vehicle.options);
    put_loads(&draw, out, &vehicle);
    if (chance(&draw, 85))
        put_drivetrain(&draw, out);
    if (chance(&draw, 90))
        put_speedometer(&draw, out, vehicle.options);
    if (chance(&draw, 80)) {
        put(out, "suspension:\n");
        put_suspension(&draw, out, "front");
        put_suspension(&draw, out, "rear");
    }
    if (chance(&draw, 85))
        put_measured(&draw, out, &vehicle);
    if (chance(&draw, 70))
        put_limits(&draw, out);
}

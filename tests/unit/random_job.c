/* A random job such as a shop has: all that an outcome needs is given, tyres are near the fitted
 * one, ratings and rooms are near what is asked of them, and the shop may do something about what
 * is short. Most of its options are go, go after work, or only just not. */
#include <math.h>
#include <stdio.h>

#include "base/units.h"
#include "random_draw.h"
#include "support.h"
#include "tables/lookup.h"

/* What the sizes go by. */
struct job {
    struct draw draw;
    int width_mm, aspect, rim; /* of the fitted tyre */
    double half_rating_kg;     /* of the heavier axle */
    double tyre_kg;            /* the same, by what a passenger tyre is divided by */
    double top_kmh;
    bool is_truck;
    int options, items;
    int setting; /* of `settings` */
};

static const struct {
    const char *text;
    double low, high, step; /* of what an option may be handed over with */
} settings[] = {
    {"{kind: pulses_per_km, now: 2548, step: 1}", 2450, 2650, 1},
    {"{kind: pulses_per_mile, now: 8000, step: 10, min: 7000, max: 9000}", 7700, 8300, 10},
    {"{kind: circumference_mm, now: 2200, step: 5}", 2100, 2300, 5},
    {"{kind: driven_gear_teeth, now: 34, step: 1}", 32, 36, 1}};

static double diameter_mm(int width_mm, int aspect, int rim)
{
    return rim * 25.4 + 2.0 * width_mm * aspect / 100;
}

/* The lowest index that carries so much. */
static int index_for_kg(double kg)
{
    int index = 70;
    while (index < 130 && load_index_kg(index) < kg)
        index++;
    return index;
}

/* Fast enough, or a step too slow. */
static char symbol_for(struct job *job, bool slow)
{
    static const char symbols[] = "QRSTUHVW";
    static const double kmh[] = {160, 170, 180, 190, 200, 210, 240, 270};
    int lowest = 0;
    while (kmh[lowest] < job->top_kmh)
        lowest++;
    if (slow && lowest > 0)
        return symbols[lowest - 1];
    return symbols[random_whole(&job->draw.state, lowest, 7)];
}

enum tyre_kind { KIND_STANDARD, KIND_EXTRA_LOAD, KIND_LT, KIND_COMMERCIAL, TYRE_KINDS };

static void put_size(struct job *job, struct build_text *out, int width_mm, int aspect, int rim)
{
    static const char *const marks[] = {"", "", "", " M+S", " 3PMSF"};
    struct draw *draw = &job->draw;
    int kind = chance(draw, 55) ? KIND_STANDARD : random_whole(&draw->state, 0, TYRE_KINDS - 1);
    int more = random_whole(&draw->state, -1, 7);
    bool slow = chance(draw, 12), winter = chance(draw, 60);
    char symbol = symbol_for(job, slow);
    const char *mark = slow && winter ? " 3PMSF" : marks[random_whole(&draw->state, 0, 4)];
    int index = index_for_kg(job->tyre_kg * 1.15) + more;
    double index_kg = load_index_kg(index);
    if (kind <= KIND_EXTRA_LOAD) {
        put(out, "size: %d/%dR%d %d%c%s%s, ", width_mm, aspect, rim, index, symbol,
            kind == KIND_EXTRA_LOAD ? " XL" : "", mark);
        if (kind == KIND_EXTRA_LOAD && chance(draw, 60))
            put(out, "data_book: {max_pressure: 340 kPa}, ");
    } else if (kind == KIND_LT) {
        index += 3;
        put(out, "size: LT%d/%dR%d %d/%d%c%s, load_range: E, ", width_mm, aspect, rim, index,
            index - 3, symbol, mark);
        if (chance(draw, 80))
            put(out, "data_book: {max_load: %.0f kg, at_pressure: 550 kPa}, ",
                load_index_kg(index));
    } else {
        put(out, "size: %d/%dR%dC %d/%d%c, ", width_mm, aspect, rim, index, index - 2, symbol);
        if (chance(draw, 90))
            put(out, "data_book: {max_load: %.0f kg, at_pressure: 475 kPa}, ", index_kg);
    }
}

static void put_job_wheel(struct job *job, struct build_text *out, double width_in, double inset_mm,
                          bool strong)
{
    struct draw *draw = &job->draw;
    put(out, "wheel: {width: %.1f in, inset: %.0f mm, ", width_in, inset_mm);
    double room = strong ? steps(draw, 1.02, 1.3, 0.01) : steps(draw, 0.9, 1, 0.01);
    if (chance(draw, 97))
        put(out, "max_load: %.0f kg, max_pressure: 550 kPa, ",
            floor(job->half_rating_kg * room + 1));
    if (chance(draw, 50))
        put(out, "mounting: {hub_bore: 67 mm, bolts: 5, bolt_circle: 114 mm, brake_room: 4 mm}, ");
    put(out, "}, ");
}

static double rim_width_in(int width_mm)
{
    return floor(width_mm * 0.78 / 12.7 + 0.5) / 2;
}

/* Another size, not far away. */
static void draw_near(struct job *job, int *width_mm, int *aspect, int *rim)
{
    struct draw *draw = &job->draw;
    double fitted = diameter_mm(job->width_mm, job->aspect, job->rim), off;
    do {
        *rim = job->rim + (chance(draw, 25) ? random_whole(&draw->state, -1, 1) : 0);
        *width_mm = job->width_mm + 10 * random_whole(&draw->state, -1, 2);
        *aspect = job->aspect + 5 * random_whole(&draw->state, -2, 2);
        off = diameter_mm(*width_mm, *aspect, *rim) - fitted;
    } while (off < -25 || off > 30);
}

static void put_job_option(struct job *job, struct build_text *out, int number)
{
    struct draw *draw = &job->draw;
    int width, aspect, rim;
    struct build_text *size = malloc(sizeof *size);
    ck_assert_ptr_nonnull(size);
    start(size);
    draw_near(job, &width, &aspect, &rim);
    put_size(job, size, width, aspect, rim);
    put(out, "    - {name: option %d, %s", number, size->text);
    put(out, "mass: %.0f kg, ", steps(draw, 20, 32, 1));
    bool wheel = rim != job->rim || chance(draw, 30), weak = chance(draw, 20);
    double inset = 30 + steps(draw, -12, 12, 1);
    if (weak && rim == job->rim) /* such as the listed one but for its rating */
        put_job_wheel(job, out, rim_width_in(job->width_mm), 30, false);
    else if (wheel)
        put_job_wheel(job, out, rim_width_in(width), inset, true);
    if (chance(draw, 12))
        put(out, "snow_chains: 9 mm, ");
    if (chance(draw, 40))
        put(out, "spare: {%s}, ", size->text);
    bool front = chance(draw, 15), setting = chance(draw, 15), dip = chance(draw, 10);
    if (front || setting || dip) {
        put(out, "as_set: {");
        if (front)
            put(out, "front: %.0f kPa, ", steps(draw, 200, 400, 10));
        if (setting)
            put(out, "setting: %.0f, ",
                steps(draw, settings[job->setting].low, settings[job->setting].high,
                      settings[job->setting].step));
        if (dip)
            put(out, "headlamp_dip: %.1f %%, ", steps(draw, 0.8, 2, 0.1));
        put(out, "}, ");
    }
    put(out, "}\n");
    free(size);
}

static void put_job_vehicle(struct job *job, struct build_text *out)
{
    static const char *const drives[] = {"front", "rear", "part_time_4wd", "full_time_4wd"};
    struct draw *draw = &job->draw;
    double front = steps(draw, 700, 1300, 10), rear = steps(draw, 600, 1200, 10);
    double front_rating = floor(front * steps(draw, 1.12, 1.3, 0.01));
    double rear_rating = floor(rear * steps(draw, 1.25, 1.6, 0.01));
    job->top_kmh = steps(draw, 150, 190, 5);
    job->is_truck = chance(draw, 50);
    job->half_rating_kg = fmax(front_rating, rear_rating) / 2;
    job->tyre_kg = job->half_rating_kg * (job->is_truck ? 1.1 : 1);
    put(out,
        "vehicle:\n  name: a random job\n  category: %s\n  kind: %s\n  drive: %s\n"
        "  wheelbase: 2800 mm\n  track: 1520 mm\n  top_speed: %.0f km/h\n"
        "  unladen: {front: %.0f kg, rear: %.0f kg}\n  includes: [driver, fuel]\n"
        "  ratings: {front: %.0f kg, rear: %.0f kg, gross: %.0f kg, roof: 100 kg, "
        "tow_ball: 150 kg, combination: 6000 kg}\n  seats: {row_1: 1300 mm, row_2: 2200 mm}\n",
        job->is_truck ? "NA" : "MA", job->is_truck ? "light_truck" : "passenger_car",
        drives[random_whole(&draw->state, 0, 3)], job->top_kmh, front, rear, front_rating,
        rear_rating, floor((front_rating + rear_rating) * steps(draw, 0.9, 1, 0.01)));
    if (chance(draw, 50))
        put(out, "  pressure_warning: %.0f kPa\n", steps(draw, 140, 200, 5));
}

static void put_job_tyres(struct job *job, struct build_text *out)
{
    struct draw *draw = &job->draw;
    job->width_mm = 185 + 10 * random_whole(&draw->state, 0, 8);
    job->aspect = 55 + 5 * random_whole(&draw->state, 0, 4);
    job->rim = random_whole(&draw->state, 15, 18);
    int index = index_for_kg(job->tyre_kg * 1.12) + random_whole(&draw->state, 0, 2);
    put(out, "tyres:\n  fitted: {size: %d/%dR%d %dH, placard: {front: %.0f kPa, rear: %.0f kPa}, ",
        job->width_mm, job->aspect, job->rim, index, steps(draw, 220, 240, 5),
        steps(draw, 225, 245, 5));
    put_job_wheel(job, out, rim_width_in(job->width_mm), 30, chance(draw, 90));
    put(out, "mass: 24 kg}\n");
    int spare = random_whole(&draw->state, 0, 3);
    if (spare < 3)
        put(out, "  spare: {size: %d/%dR%d %dH}\n", job->width_mm, job->aspect, job->rim,
            spare == 0 ? index - 6 : index);
    put(out, "  options:\n");
    for (int i = 1; i <= job->options; i++)
        put_job_option(job, out, i);
}

static void put_job_loads(struct job *job, struct build_text *out)
{
    struct draw *draw = &job->draw;
    put(out, "carried:\n");
    for (int i = 0; i < job->items; i++) {
        put(out, "  - {item: item %d, mass: %.0f kg, at: %.0f mm, ", i, steps(draw, 10, 110, 5),
            steps(draw, -600, 3600, 50));
        if (chance(draw, 20))
            put(out, "on: roof, ");
        else if (chance(draw, 20))
            put(out, "side: %.0f mm, ", steps(draw, -500, 500, 50));
        put(out, "%s}\n", chance(draw, 40) ? "can_be_left_out: true" : "");
    }
    int states = random_whole(&draw->state, 0, 2);
    if (states > 0)
        put(out, "states:\n");
    for (int state = 0; state < states; state++) {
        put(out, "  state %d: [item 0", state);
        for (int i = 1; i < job->items; i++)
            if (chance(draw, 60))
                put(out, ", item %d", i);
        put(out, "]\n");
    }
}

static void put_job_speedometer(struct job *job, struct build_text *out)
{
    static const char *const aims[] = {"lowest_lawful", "as_before", "2 %"};
    struct draw *draw = &job->draw;
    put(out, "speedometer:\n  unit: km/h\n  rule: %s\n", chance(draw, 80) ? "un_r39" : "adr_18_03");
    if (chance(draw, 70))
        put(out, "  fitted_error: %.1f %%\n", steps(draw, 0.5, 6, 0.1));
    else
        put(out,
            "  readings: [[50 km/h, %.1f km/h], [80 km/h, %.1f km/h], [100 km/h, %.1f "
            "km/h]]\n",
            steps(draw, 47.8, 49.2, 0.1), steps(draw, 77, 78.4, 0.1), steps(draw, 96, 98, 0.1));
    put(out, "  setting: %s\n", settings[job->setting].text);
    if (chance(draw, 40))
        put(out, "  aim: %s\n", aims[random_whole(&draw->state, 0, 2)]);
}

static void put_job_arch(struct job *job, struct build_text *out, const char *axle)
{
    struct draw *draw = &job->draw;
    put(out, "%s: {above: %.0f mm, inner: %.0f mm, outer: %.0f mm, at_lock: %.0f mm}, ", axle,
        steps(draw, 95, 150, 1), steps(draw, 12, 45, 1), steps(draw, 10, 45, 1),
        steps(draw, 12, 45, 1));
}

static void put_job_clearance(struct job *job, struct build_text *out)
{
    static const char *const meets[] = {"arch", "arch", "frame", "unknown"};
    struct draw *draw = &job->draw;
    put(out, "suspension:\n");
    for (int axle = 0; axle < 2; axle++)
        put(out,
            "  %s: {lift: %.0f mm, wheel_rate: %.0f N/mm, travel_to_bump: %.0f mm, "
            "bump_stop_change: %.0f mm}\n",
            axle == 0 ? "front" : "rear", steps(draw, 0, 40, 10), steps(draw, 45, 90, 1),
            steps(draw, 70, 100, 5), steps(draw, 0, 15, 5));
    put(out, "clearance:\n  ground: 220 mm\n  under_axle: 205 mm\n  arch: {");
    put_job_arch(job, out, "front");
    put_job_arch(job, out, "rear");
    put(out, "}\n  steering: {meets: %s}\n", meets[random_whole(&draw->state, 0, 3)]);
    double fitted = diameter_mm(job->width_mm, job->aspect, job->rim);
    if (chance(draw, 93))
        put(out, "  spare_space: {diameter: %.0f mm, width: %.0f mm}\n",
            fitted + steps(draw, 10, 90, 5), job->width_mm + steps(draw, 35, 120, 5));
    if (chance(draw, 60))
        put(out, "  headlamp: {height: %.0f mm, dip: %.1f %%}\n", steps(draw, 650, 900, 10),
            steps(draw, 0.9, 1.5, 0.1));
}

static void put_job_workshop(struct job *job, struct build_text *out)
{
    static const char *const rules[] = {"eu_winter", "de_36", "au_western_australia"};
    static const char *const switches[] = {"calibrate", "spare", "wheel", "pressure_warning"};
    struct draw *draw = &job->draw;
    put(out, "limits:\n  speedometer: rule\n");
    if (chance(draw, 50))
        put(out, "  load_reserve: %d %%\n", random_whole(&draw->state, 0, 10));
    if (chance(draw, 60))
        put(out, "  speed_symbol: %s\n", rules[random_whole(&draw->state, 0, 2)]);
    if (chance(draw, 30))
        put(out, "  track_change: {max: %.0f mm}\n", steps(draw, 10, 50, 5));
    put(out,
        "search:\n  rims: [{diameter: %d, width: %.1f in, inset: 30 mm, max_load: %.0f kg, "
        "max_pressure: 550 kPa}]\n",
        job->rim, rim_width_in(job->width_mm), job->half_rating_kg * 1.25);
    put(out, "allowed: {");
    static const double most_mm[] = {30, 40, 20};
    static const char *const lengths[] = {"trim", "bump_stop", "spacer"};
    for (size_t i = 0; i < LENGTH_OF(lengths); i++)
        if (chance(draw, 75))
            put(out, "%s: %.0f mm, ", lengths[i], steps(draw, 5, most_mm[i], 1));
    for (size_t i = 0; i < LENGTH_OF(switches); i++)
        if (chance(draw, 70))
            put(out, "%s: %s, ", switches[i], chance(draw, 85) ? "yes" : "no");
    put(out, "}\n");
    if (chance(draw, 30))
        put(out, "measured: {tape: %d mm, scale: %d kg}\n", random_whole(&draw->state, 1, 4),
            random_whole(&draw->state, 1, 10));
}

void random_job(uint64_t seed, struct build_text *out)
{
    struct job job = {.draw = {.state = seed, .how = &as_drawn}};
    start(out);
    job.options = random_whole(&job.draw.state, 1, BUILD_OPTIONS_MAX);
    job.items = random_whole(&job.draw.state, 1, BUILD_ITEMS_MAX / 2);
    job.setting = random_whole(&job.draw.state, 0, (int)LENGTH_OF(settings) - 1);
    put_job_vehicle(&job, out);
    put_job_tyres(&job, out);
    put_job_loads(&job, out);
    put_job_speedometer(&job, out);
    put_job_clearance(&job, out);
    put_job_workshop(&job, out);
}

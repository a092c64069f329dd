#include "random_build.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "base/units.h"
#include "support.h"

const struct variation as_drawn = {
    .mass = 1, .place = 1, .diameter = 1, .option_diameter = 1, .more_torque = 1};

/* Draws go on through all of a build, whatever the variation leaves out of the text. */
struct draw {
    uint64_t state;
    const struct variation *how;
    unsigned quantities;
};

static bool chance(struct draw *draw, int percent)
{
    return random_whole(&draw->state, 1, 100) <= percent;
}

/* A value of so many steps from low to high. */
static double steps(struct draw *draw, double low, double high, double step)
{
    return low + step * random_whole(&draw->state, 0, (int)floor((high - low) / step + 0.5));
}

static void start(struct build_text *out)
{
    out->length = 0;
    out->text[0] = '\0';
}

static void put(struct build_text *out, const char *format, ...)
    __attribute__((format(printf, 2, 3)));

static void put(struct build_text *out, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    int length =
        vsnprintf(out->text + out->length, sizeof out->text - out->length, format, arguments);
    va_end(arguments);
    if (length < 0 || out->length + (size_t)length >= sizeof out->text)
        ck_abort_msg("the text of a random build has no room");
    out->length += (size_t)length;
}

/* Exact definitions, apart from the program's own table: NIST SP 811 (2008), appendix B. The
 * first unit of a kind is the one that values are drawn in. */
#define FOOT_POUND (0.45359237 * 9.80665 * 0.3048)
static const struct {
    enum unit_kind kind;
    const char *name;
    double si;
    bool reciprocal;
} units[] = {
    {KIND_LENGTH, "mm", 1e-3, false},
    {KIND_LENGTH, "in", 0.0254, false},
    {KIND_LENGTH, "cm", 1e-2, false},
    {KIND_LENGTH, "ft", 0.3048, false},
    {KIND_LENGTH, "m", 1, false},
    {KIND_MASS, "kg", 1, false},
    {KIND_MASS, "lb", 0.45359237, false},
    {KIND_MASS, "t", 1e3, false},
    {KIND_PRESSURE, "kPa", 1e3, false},
    {KIND_PRESSURE, "psi", 0.45359237 * 9.80665 / (0.0254 * 0.0254), false},
    {KIND_PRESSURE, "bar", 1e5, false},
    {KIND_SPEED, "km/h", 1 / 3.6, false},
    {KIND_SPEED, "mph", 1609.344 / 3600, false},
    {KIND_SPEED, "m/s", 1, false},
    {KIND_VOLUME, "L", 1e-3, false},
    {KIND_VOLUME, "gal", 231 * 0.0254 * 0.0254 * 0.0254, false},
    {KIND_VOLUME, "gal_imp", 4.54609e-3, false},
    {KIND_TORQUE, "Nm", 1, false},
    {KIND_TORQUE, "lb-ft", FOOT_POUND, false},
    {KIND_STIFFNESS, "N/mm", 1e3, false},
    {KIND_STIFFNESS, "lb/in", 0.45359237 * 9.80665 / 0.0254, false},
    {KIND_ANGLE, "deg", 3.14159265358979323846 / 180, false},
    {KIND_ANGLE, "rad", 1, false},
    {KIND_FRACTION, "%", 1e-2, false},
    {KIND_ROTATION, "rpm", 1.0 / 60, false},
    {KIND_CONSUMPTION, "L/100km", 1e-8, false},
    {KIND_CONSUMPTION, "mpg", 231 * 0.0254 * 0.0254 * 0.0254 / 1609.344, true},
    {KIND_CONSUMPTION, "mpg_imp", 4.54609e-3 / 1609.344, true},
    {KIND_AREA, "m2", 1, false},
    {KIND_AREA, "ft2", 0.3048 * 0.3048, false},
    {KIND_DENSITY, "kg/L", 1e3, false},
    {KIND_DENSITY, "kg/m3", 1, false},
    {KIND_FLOW, "L/min", 1e-3 / 60, false},
    {KIND_FLOW, "ft3/min", 0.3048 * 0.3048 * 0.3048 / 60, false},
    {KIND_TIME, "s", 1, false},
    {KIND_TIME, "min", 60, false},
    {KIND_INERTIA, "kg-m2", 1, false},
    {KIND_INERTIA, "lb-ft2", 0.45359237 * 0.3048 * 0.3048, false},
};

static size_t first_unit(enum unit_kind kind)
{
    size_t i = 0;
    while (i < LENGTH_OF(units) && units[i].kind != kind)
        i++;
    if (i == LENGTH_OF(units))
        ck_abort_msg("no unit of kind %d", (int)kind);
    return i;
}

/* A plain decimal number of fifteen digits, as many as the program reads. */
static void put_number(struct build_text *out, double value)
{
    char text[40];
    int whole = value == 0 ? 1 : (int)floor(log10(fabs(value))) + 1;
    int decimals = 15 - (whole > 1 ? whole : 1);
    snprintf(text, sizeof text, "%.*f", decimals > 0 ? decimals : 0, value);
    if (strchr(text, '.') != NULL) {
        size_t end = strlen(text);
        while (text[end - 1] == '0')
            text[--end] = '\0';
        if (text[end - 1] == '.')
            text[end - 1] = '\0';
    }
    put(out, "%s", text);
}

/* `turn` chooses among the other units of the kind. */
static void put_in_unit(const struct draw *draw, struct build_text *out, enum unit_kind kind,
                        double value, unsigned turn)
{
    size_t first = first_unit(kind), count = 1, chosen = first;
    while (first + count < LENGTH_OF(units) && units[first + count].kind == kind)
        count++;
    if (draw->how->other_units && count > 1)
        chosen += 1 + turn % (count - 1);
    double si = value * units[first].si;
    if (chosen != first)
        value = units[chosen].reciprocal ? units[chosen].si / si : si / units[chosen].si;
    put_number(out, value);
    put(out, " %s", units[chosen].name);
}

static void quantity(struct draw *draw, struct build_text *out, enum unit_kind kind, double value)
{
    put_in_unit(draw, out, kind, value, draw->quantities++);
}

/* "key: value, " of a flow mapping. */
static void key(struct draw *draw, struct build_text *out, const char *name, enum unit_kind kind,
                double value)
{
    put(out, "%s: ", name);
    quantity(draw, out, kind, value);
    put(out, ", ");
}

static void bare(struct build_text *out, const char *name, double value)
{
    put(out, "%s: ", name);
    put_number(out, value);
    put(out, ", ");
}

/* The same, where a draw says that it is there at all. */
static void perhaps(struct draw *draw, struct build_text *out, int percent, const char *name,
                    enum unit_kind kind, double value)
{
    if (!chance(draw, percent))
        return;
    if (kind == KIND_BARE)
        bare(out, name, value);
    else
        key(draw, out, name, kind, value);
}

static void front_and_rear(struct draw *draw, struct build_text *out, const char *name,
                           enum unit_kind kind, double front, double rear)
{
    put(out, "%s: {", name);
    key(draw, out, "front", kind, front);
    key(draw, out, "rear", kind, rear);
    put(out, "}");
}

/* --- tyres */

struct drawn_tyre {
    char size[64];
    char load_range;              /* 0: none */
    double width_mm, diameter_mm; /* about */
    bool commercial;
};

static void metric_size(struct draw *draw, struct drawn_tyre *tyre)
{
    static const char *const marks[] = {"", "", " XL", " M+S", " 3PMSF", " XL M+S"};
    static const char symbols[] = "QRSTUHVWY";
    int width = 145 + 10 * random_whole(&draw->state, 0, 17);
    int aspect = 35 + 5 * random_whole(&draw->state, 0, 8);
    int rim = random_whole(&draw->state, 14, 21), kind = random_whole(&draw->state, 0, 9);
    int index = random_whole(&draw->state, 78, 116), less = random_whole(&draw->state, 1, 4);
    char symbol = symbols[random_whole(&draw->state, 0, 8)];
    const char *mark = marks[random_whole(&draw->state, 0, 5)];
    tyre->width_mm = width;
    tyre->diameter_mm = rim * 25.4 + 2.0 * width * aspect / 100;
    if (kind < 2) {
        snprintf(tyre->size, sizeof tyre->size, "P%d/%dR%d %d%c%s", width, aspect, rim, index,
                 symbol, mark);
    } else if (kind < 4) {
        tyre->commercial = true;
        tyre->load_range = "CDE"[random_whole(&draw->state, 0, 2)];
        snprintf(tyre->size, sizeof tyre->size, "LT%d/%dR%d %d/%d%c", width, aspect, rim, index,
                 index - less, symbol > 'T' && symbol != 'U' ? 'S' : symbol);
    } else if (kind < 5) {
        tyre->commercial = true;
        snprintf(tyre->size, sizeof tyre->size, "%d/%dR%dC %d/%dR", width, aspect, rim, index,
                 index - less);
    } else if (kind < 6) {
        snprintf(tyre->size, sizeof tyre->size, "%d/%dR%d", width, aspect, rim);
    } else {
        snprintf(tyre->size, sizeof tyre->size, "%d/%dR%d %d%c%s", width, aspect, rim, index,
                 symbol, mark);
    }
}

/* Forms whose figures come from tables or stand in the designation. */
static void other_size(struct draw *draw, struct drawn_tyre *tyre)
{
    static const struct {
        const char *size;
        char load_range;
        double width_mm, diameter_mm;
    } sizes[] = {
        {"31x10.50R15LT 109Q", 'C', 268, 775},
        {"33x12.50R15LT 108Q", 'C', 318, 826},
        {"35x12.50R20LT 121Q", 'E', 318, 877},
        {"37x13.50R17LT 121Q", 'D', 345, 927},
        {"7.50R16LT 112/107N", 'C', 210, 802},
        {"7.00R16LT 117/116N", 'D', 198, 778},
        {"165R13 82T", 0, 167, 596},
        {"185R14C 102/100R", 0, 188, 650},
        {"205R16C 110/108S", 0, 208, 736},
        {"HL245/40R20 102Y", 0, 245, 704},
        {"6.50-16", 0, 176, 748},
        {"33x10.50R15LT POR", 'C', 268, 826},
        {"255/55ZR18 (109Y)", 0, 255, 738},
        {"225/75R16CP 118R", 0, 225, 744},
        {"175/65R14C 90/88T", 0, 175, 584},
        {"LT265/75R16 116/113R", 'D', 265, 804},
        {"P255/70R16 109S", 0, 255, 763},
        {"215/65R15 96H", 0, 215, 661},
    };
    size_t i = (size_t)random_whole(&draw->state, 0, (int)LENGTH_OF(sizes) - 1);
    snprintf(tyre->size, sizeof tyre->size, "%s", sizes[i].size);
    tyre->load_range = sizes[i].load_range;
    tyre->width_mm = sizes[i].width_mm;
    tyre->diameter_mm = sizes[i].diameter_mm;
    tyre->commercial = strstr(sizes[i].size, "LT") != NULL || strchr(sizes[i].size, 'C') != NULL;
}

static void put_mounting(struct draw *draw, struct build_text *out)
{
    put(out, "mounting: {");
    perhaps(draw, out, 70, "hub_bore", KIND_LENGTH, steps(draw, 54, 110, 0.1));
    double circle = steps(draw, 100, 170, 0.1), bolts = steps(draw, 4, 8, 1);
    if (chance(draw, 70)) {
        bare(out, "bolts", bolts);
        key(draw, out, "bolt_circle", KIND_LENGTH, circle);
    }
    perhaps(draw, out, 70, "brake_room", KIND_LENGTH, steps(draw, -3, 20, 1));
    put(out, "}, ");
}

static void put_wheel(struct draw *draw, struct build_text *out, const struct drawn_tyre *tyre)
{
    double width_mm = floor(tyre->width_mm * 0.8 / 12.7 + 0.5) * 12.7;
    put(out, "wheel: {");
    perhaps(draw, out, 85, "width", KIND_LENGTH, width_mm + 12.7 * steps(draw, -1, 1, 1));
    perhaps(draw, out, 85, "inset", KIND_LENGTH, steps(draw, -30, 60, 1));
    perhaps(draw, out, 40, "spacer", KIND_LENGTH, steps(draw, 0, 30, 1));
    perhaps(draw, out, 70, "max_load", KIND_MASS, steps(draw, 600, 1500, 5));
    perhaps(draw, out, 70, "max_pressure", KIND_PRESSURE, steps(draw, 380, 700, 5));
    if (chance(draw, 40))
        put_mounting(draw, out);
    put(out, "}, ");
}

static void put_book(struct draw *draw, struct build_text *out, const struct drawn_tyre *tyre)
{
    double diameter = tyre->diameter_mm + steps(draw, -8, 8, 1);
    double turns = 1e6 / (3.05 * tyre->diameter_mm) * steps(draw, 0.98, 1.02, 0.001);
    double load = steps(draw, 700, 1500, 5), rim = floor(tyre->width_mm * 0.7 / 12.7) * 12.7;
    perhaps(draw, out, 60, "overall_diameter", KIND_LENGTH, diameter);
    perhaps(draw, out, 30, "section_width", KIND_LENGTH, tyre->width_mm + steps(draw, -5, 9, 1));
    double roll = steps(draw, 0, 9, 1);
    if (roll < 3)
        bare(out, "revs_per_km", floor(turns * 10) / 10);
    else if (roll < 6)
        bare(out, "revs_per_mile", floor(turns * 1.609344));
    perhaps(draw, out, 30, "static_loaded_radius", KIND_LENGTH, floor(diameter * 0.46));
    if (chance(draw, tyre->load_range != 0 ? 70 : 10)) {
        key(draw, out, "max_load", KIND_MASS, load);
        key(draw, out, "at_pressure", KIND_PRESSURE, steps(draw, 300, 450, 50));
        perhaps(draw, out, 50, "max_load_dual", KIND_MASS, load - steps(draw, 0, 150, 5));
    }
    if (chance(draw, 30)) {
        key(draw, out, "rim_min", KIND_LENGTH, rim);
        key(draw, out, "rim_max", KIND_LENGTH, rim + 12.7 * steps(draw, 0, 4, 1));
    }
}

/* All of a tyre but what is before it (a name) and behind it (a placard, a spare). */
static void put_tyre(struct draw *draw, struct build_text *out, double factor)
{
    struct drawn_tyre tyre = {.load_range = 0};
    struct build_text book;
    start(&book);
    if (chance(draw, 70))
        metric_size(draw, &tyre);
    else
        other_size(draw, &tyre);
    put(out, "size: %s, ", tyre.size);
    if (tyre.load_range != 0 && chance(draw, 85))
        put(out, "load_range: %c, ", tyre.load_range);
    if (chance(draw, 90))
        put_wheel(draw, out, &tyre);
    bool has_book = chance(draw, 35);
    put_book(draw, &book, &tyre);
    double told = tyre.diameter_mm + steps(draw, -8, 8, 1);
    if (draw->how->diameters_told) {
        put(out, "data_book: {");
        key(draw, out, "overall_diameter", KIND_LENGTH, told * factor);
        put(out, "}, ");
    } else if (has_book && book.length > 0) {
        put(out, "data_book: {%s}, ", book.text);
    }
    perhaps(draw, out, 70, "mass", KIND_MASS, steps(draw, 14, 45, 0.5) * draw->how->mass);
    perhaps(draw, out, 40, "inertia", KIND_INERTIA, steps(draw, 0.6, 3, 0.1));
    double tread = steps(draw, 1.6, 8, 0.1);
    perhaps(draw, out, 50, "tread_depth", KIND_LENGTH, tread);
    perhaps(draw, out, 50, "new_tread_depth", KIND_LENGTH, tread + steps(draw, 0, 5, 0.1));
    perhaps(draw, out, 30, "snow_chains", KIND_LENGTH, steps(draw, 7, 15, 1));
}

static void put_rear(struct draw *draw, struct build_text *out, double factor)
{
    struct build_text rear;
    start(&rear);
    bool has_rear = chance(draw, 15), dual = chance(draw, 30);
    put_tyre(draw, &rear, factor);
    if (has_rear)
        put(out, "rear: {%s%s}, ", rear.text, dual ? "dual: true, " : "");
}

static void put_spare(struct draw *draw, struct build_text *out, double factor)
{
    struct build_text spare;
    start(&spare);
    bool temporary = chance(draw, 20), rotated = chance(draw, 20), deflated = chance(draw, 20);
    put_tyre(draw, &spare, factor);
    if (temporary && !draw->how->diameters_told)
        put(out, "spare: {size: T125/70D16 96M}, ");
    else
        put(out, "spare: {%s%s%s}, ", spare.text, rotated ? "rotated: true, " : "",
            deflated ? "deflated: {diameter: 590 mm, width: 190 mm}, " : "");
}

static void put_tyres(struct draw *draw, struct build_text *out, int options)
{
    /* One more than there are options: the first is fitted. Static, as they are large. */
    static struct build_text tyre[1 + BUILD_OPTIONS_MAX], own[1 + BUILD_OPTIONS_MAX];
    const struct variation *how = draw->how;
    for (int i = 0; i <= options; i++) {
        double factor = how->diameter * (i > 0 ? how->option_diameter : 1);
        tyre[i].length = own[i].length = 0;
        own[i].text[0] = '\0';
        put_tyre(draw, &tyre[i], factor);
        put_rear(draw, &tyre[i], factor);
        if (chance(draw, 40))
            put_spare(draw, &own[i], how->diameter);
    }
    put(out, "tyres:\n  fitted: {%s", tyre[how->swapped ? 1 : 0].text);
    double front = steps(draw, 180, 240, 5), rear = steps(draw, 180, 240, 5);
    if (chance(draw, 90))
        front_and_rear(draw, out, "placard", KIND_PRESSURE, front, rear);
    put(out, "}\n");
    if (own[0].length > 0)
        put(out, "  %.*s\n", (int)own[0].length - 2, own[0].text);
    put(out, "  options:\n");
    for (int i = 1; i <= options; i++) {
        int index = how->options_reversed ? options + 1 - i : i;
        int from = how->swapped && index == 1 ? 0 : index;
        put(out, "    - {name: option %d, %s%s}\n", index, tyre[from].text,
            how->swapped ? "" : own[index].text);
    }
}

/* --- vehicle, loads */

struct drawn_vehicle {
    double wheelbase_mm;
    double top_speed_kmh;
    int kind, drive;
    int options, items;
    bool has_track, has_seats, roof;
};

static double mass(const struct draw *draw, double kg)
{
    return kg * draw->how->mass;
}

static double place(const struct draw *draw, double mm)
{
    return mm * draw->how->place;
}

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
    vehicle->kind = random_whole(&draw->state, 0, 1);
    vehicle->drive = random_whole(&draw->state, 0, 3);
    if (chance(draw, 85))
        put(out, "  kind: %s\n", kinds[vehicle->kind]);
    put(out, "  drive: %s\n", drives[vehicle->drive]);
    vehicle->top_speed_kmh = steps(draw, 110, 240, 5);
    if (chance(draw, 80))
        put(out, "  top_speed: "), quantity(draw, out, KIND_SPEED, vehicle->top_speed_kmh),
            put(out, "\n");
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

static void put_point(struct draw *draw, struct build_text *out, const char *name, double low,
                      double high, double height)
{
    put(out, "{item: part %u, ", draw->quantities);
    key(draw, out, name, KIND_LENGTH, steps(draw, low, high, 10));
    key(draw, out, "height", KIND_LENGTH, height + steps(draw, 0, 200, 5));
    put(out, "}");
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

/* --- drivetrain, instrument */

static void put_gearbox(struct draw *draw, struct build_text *out)
{
    int gears = random_whole(&draw->state, 4, 8);
    double ratio = steps(draw, 3, 5, 0.01), smaller = steps(draw, 0.68, 0.78, 0.01);
    if (chance(draw, 5)) {
        put(out, "  continuously_variable: {lowest_gear: 2.63, highest_gear: 0.53}\n");
    } else {
        put(out, "  gears: [");
        for (int i = 0; i < gears; i++, ratio *= smaller)
            put(out, "%s%.3f", i > 0 ? ", " : "", ratio);
        put(out, "]\n");
    }
    if (chance(draw, 70))
        put(out, "  reverse: 3.22\n");
    if (chance(draw, 50))
        put(out, "  transfer: {high: 1.00, low: %s}\n", chance(draw, 70) ? "2.48" : "[2.2, 4.1]");
    if (chance(draw, 20))
        put(out, "  hub_reduction: 1.2\n");
}

static void put_torque(struct draw *draw, struct build_text *out)
{
    int points = random_whole(&draw->state, 2, 6);
    double speed = steps(draw, 900, 1400, 50), torque = steps(draw, 120, 500, 10);
    put(out, "torque: [");
    for (int i = 0; i < points; i++) {
        put(out, "%s[%.0f rpm, ", i > 0 ? ", " : "", speed);
        quantity(draw, out, KIND_TORQUE, torque * draw->how->more_torque);
        put(out, "]");
        speed += steps(draw, 300, 900, 50);
        torque *= steps(draw, 0.85, 1.15, 0.01);
    }
    put(out, "], ");
}

static void put_engine(struct draw *draw, struct build_text *out)
{
    put(out, "  engine: {");
    perhaps(draw, out, 80, "idle", KIND_ROTATION, steps(draw, 600, 850, 10));
    perhaps(draw, out, 80, "limit", KIND_ROTATION, steps(draw, 3800, 6800, 100));
    if (chance(draw, 85))
        put_torque(draw, out);
    put(out, "}\n");
}

static void put_drivetrain(struct draw *draw, struct build_text *out)
{
    double axle = steps(draw, 2.8, 4.9, 0.01), other = axle + steps(draw, -0.02, 0.02, 0.01);
    put(out, "drivetrain:\n");
    put_gearbox(draw, out);
    if (chance(draw, 30))
        put(out, "  axle: {front: %.3f, rear: %.3f}\n", axle, other);
    else
        put(out, "  axle: %.3f\n", axle);
    if (chance(draw, 60))
        put(out, "  axle_choices: [%.2f, %.2f, %.2f]\n", axle + 0.3, axle - 0.25, axle + 0.65);
    put(out, "  ");
    if (chance(draw, 70))
        put(out, "efficiency: %d %%\n  ", random_whole(&draw->state, 80, 96));
    if (chance(draw, 40))
        put(out, "slip: %d %%\n  ", random_whole(&draw->state, 0, 8));
    if (chance(draw, 70))
        put(out, "grip: 0.%d\n  ", random_whole(&draw->state, 3, 9));
    if (chance(draw, 50))
        put(out, "rolling_resistance: 0.0%d\n  ", random_whole(&draw->state, 10, 40));
    put(out, "\n");
    if (chance(draw, 85))
        put_engine(draw, out);
    if (chance(draw, 40))
        put(out, "  cruising_speed: "), quantity(draw, out, KIND_SPEED, 105), put(out, "\n");
    if (chance(draw, 30))
        put(out, "  road_speeds: [40 km/h, 90 km/h]\n  engine_speeds: [1500 rpm, 3000 rpm]\n");
    if (chance(draw, 70))
        put(out, "  grades: [0 %%, 2 %%, 5 %%, 9 %%, 14 %%, 22 %%, 35 %%]\n");
}

static void put_setting(struct draw *draw, struct build_text *out)
{
    static const struct {
        const char *kind;
        double now, step;
    } settings[] = {
        {"pulses_per_km", 2548, 1}, {"pulses_per_mile", 4000, 10}, {"revs_per_km", 430, 1},
        {"revs_per_mile", 690, 1},  {"circumference_mm", 2280, 5}, {"driven_gear_teeth", 19, 1},
        {"constant_k", 8000, 1},
    };
    size_t i = (size_t)random_whole(&draw->state, 0, (int)LENGTH_OF(settings) - 1);
    bool limited = chance(draw, 50), has_step = chance(draw, 80);
    put(out, "  setting: {kind: %s, now: %g, ", settings[i].kind, settings[i].now);
    if (has_step)
        bare(out, "step", settings[i].step);
    if (limited)
        put(out, "min: %.0f, max: %.0f", floor(settings[i].now / 3), settings[i].now * 3);
    put(out, "}\n");
}

static void put_readings(struct draw *draw, struct build_text *out)
{
    int count = random_whole(&draw->state, 1, 5);
    double error = steps(draw, 0.94, 1.02, 0.001);
    put(out, "  readings: [");
    for (int i = 0; i < count; i++) {
        double shown = 40 + 20 * i, real = shown * error + steps(draw, -0.6, 0.6, 0.1);
        unsigned turn = draw->quantities++;
        put(out, "%s[", i > 0 ? ", " : "");
        put_in_unit(draw, out, KIND_SPEED, shown, turn);
        put(out, ", ");
        put_in_unit(draw, out, KIND_SPEED, real, turn);
        put(out, "]");
    }
    put(out, "]\n");
}

static void put_odometer(struct draw *draw, struct build_text *out)
{
    put(out, "  odometer: {");
    double shown = steps(draw, 9600, 10400, 1) * 1e3;
    bool readings = chance(draw, 50);
    if (readings && !draw->how->no_error) {
        unsigned turn = draw->quantities++;
        put(out, "readings: [[");
        put_in_unit(draw, out, KIND_LENGTH, shown, turn);
        put(out, ", ");
        put_in_unit(draw, out, KIND_LENGTH, 1e7, turn);
        put(out, "]], ");
    }
    if (chance(draw, 50))
        put(out, "rule: adr_18_02, ");
    perhaps(draw, out, 50, "since_change", KIND_LENGTH, steps(draw, 1e9, 9e9, 1e8));
    perhaps(draw, out, 50, "service_interval", KIND_LENGTH, steps(draw, 1e10, 2e10, 1e9));
    put(out, "}\n");
}

static void put_speedometer(struct draw *draw, struct build_text *out, int options)
{
    static const char *const rules[] = {"un_r39",    "eu_75_443", "adr_18_03",
                                        "adr_18_02", "us_393_82", "eu_recording"};
    static const char *const aims[] = {"lowest_lawful", "as_before", "2 %"};
    bool no_error = draw->how->no_error;
    put(out, "speedometer:\n  unit: %s\n", chance(draw, 60) ? "km/h" : "mph");
    if (chance(draw, 80))
        put(out, "  rule: %s\n", rules[random_whole(&draw->state, 0, 5)]);
    double error = steps(draw, -2, 8, 0.1);
    if (chance(draw, 60) && !no_error)
        put(out, "  fitted_error: %.1f %%\n", error);
    struct build_text readings;
    start(&readings);
    put_readings(draw, &readings);
    int on = random_whole(&draw->state, 0, options);
    if (chance(draw, 50) && !no_error)
        put(out, "%s", readings.text);
    if (chance(draw, 20) && !no_error)
        put(out, "  timed_readings: [[1 km, 36.9 s, 100 km/h]]\n");
    if (chance(draw, 40) && !no_error)
        on == 0 ? put(out, "  readings_on: fitted\n") : put(out, "  readings_on: option %d\n", on);
    if (chance(draw, 40))
        put(out, "  fit: %s\n", chance(draw, 50) ? "scale" : "scale_and_offset");
    if (chance(draw, 75))
        put_setting(draw, out);
    if (chance(draw, 75))
        put(out, "  aim: %s\n", aims[random_whole(&draw->state, 0, 2)]);
    if (chance(draw, 20) && !no_error)
        put(out, "  sensor: {on: shaft, pulses_per_turn: 8}\n");
    if (chance(draw, 60))
        put_odometer(draw, out);
    if (chance(draw, 30))
        put(out, "  range: {from: 20 km/h, to: 160 km/h, step: 10 km/h}\n");
    if (chance(draw, 40))
        put(out, "  posted_limits: [50 km/h, 80 km/h]\n");
    double consumption = steps(draw, 5, 18, 0.1);
    if (chance(draw, 50))
        put(out, "  consumption: "), quantity(draw, out, KIND_CONSUMPTION, consumption),
            put(out, "\n");
}

/* --- suspension, what was measured, limits */

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

static void put_suspension(struct draw *draw, struct build_text *out, const char *axle)
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

static void put_measured(struct draw *draw, struct build_text *out,
                         const struct drawn_vehicle *vehicle)
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

static void put_limits(struct draw *draw, struct build_text *out)
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

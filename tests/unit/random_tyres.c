/* Tyres of a random build: fitted, rear, spare, options. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "random_draw.h"
#include "support.h"

struct drawn_tyre {
    char size[64];
    char load_range;              /* 0: none */
    double width_mm, diameter_mm; /* about */
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
        tyre->load_range = "CDE"[random_whole(&draw->state, 0, 2)];
        snprintf(tyre->size, sizeof tyre->size, "LT%d/%dR%d %d/%d%c", width, aspect, rim, index,
                 index - less, symbol > 'T' && symbol != 'U' ? 'S' : symbol);
    } else if (kind < 5) {
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
    if (chance(draw, 25)) { /* not below what at_pressure may be */
        double highest = steps(draw, 450, 550, 10);
        key(draw, out, "max_pressure", KIND_PRESSURE, highest);
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

void put_tyres(struct draw *draw, struct build_text *out, int options)
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

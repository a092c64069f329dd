/* tyresum-build(5). */

#include "base/units.h"
#include "docgen/docgen.h"

/* Keys of a set that several mappings share are told once. */
enum { SETS_MAX = 64 };

struct told {
    const struct key_set *set;
    const char *path;
};

struct manual {
    struct arena *arena;
    struct outbuf *out;
    struct told told[SETS_MAX];
    size_t told_count;
};

static void put_readers(struct manual *manual, const struct key *key)
{
    if ((key->use & USE_ALL) == USE_ALL)
        return;
    const char *before = "Read by\n";
    for (size_t i = 0; i < command_count; i++) {
        const struct command *command = &command_table[i];
        if (command->keys == 0 || command->keys == USE_ALL || !(key->use & command->keys))
            continue;
        put_all(manual->out, before, ".Cm ", command->name, NULL);
        before = " ,\n";
    }
    if (*before == ' ')
        put_all(manual->out, " .\n", NULL);
}

static const char *told_at(const struct manual *manual, const struct key_set *set)
{
    for (size_t i = 0; i < manual->told_count; i++)
        if (manual->told[i].set == set)
            return manual->told[i].path;
    return NULL;
}

static void put_key(struct manual *manual, const struct key *key, const char *path)
{
    struct outbuf *out = manual->out;
    const char *example = key->example; /* that of the template */
    put_all(out, ".It Cm ", path, "\n", NULL);
    put_roff(out, key->doc);
    put_all(out, ":\n", NULL);
    put_roff(out, arena_format(manual->arena, "%s%s.\n", key_kind_text(manual->arena, key),
                               key_range_text(manual->arena, key)));
    put_readers(manual, key);
    if (example != NULL)
        put_all(out, "Such as\n.Ql \"", key->name, ": ", example, "\" .\n", NULL);
}

static void put_set(struct manual *manual, const struct key_set *set, const char *path)
{
    if (manual->told_count < SETS_MAX)
        manual->told[manual->told_count++] = (struct told){set, path};
    for (size_t i = 0; i < set->count; i++) {
        const struct key *key = &set->keys[i];
        const char *own = arena_format(manual->arena, "%s%s%s", path, *path ? "." : "", key->name);
        put_key(manual, key, own);
        if (key->set == NULL)
            continue;
        const char *told = told_at(manual, key->set);
        if (told == NULL)
            put_set(manual, key->set, own);
        else
            put_all(manual->out, "It has the keys of\n.Cm ", told, " .\n", NULL);
    }
}

static void put_units(struct outbuf *out)
{
    put_all(out, ".Sh UNITS\n.Bl -tag -width Ds\n", NULL);
    for (int kind = KIND_BARE + 1; kind < KIND_COUNT; kind++) {
        put_all(out, ".It ", unit_kind_name((enum unit_kind)kind), "\n", NULL);
        const char *before = "";
        for (int unit = UNIT_BARE + 1; unit < UNIT_COUNT; unit++) {
            if (unit_table[unit].kind != (enum unit_kind)kind)
                continue;
            put_all(out, before, unit_table[unit].name, " (", unit_table[unit].definition, ")",
                    NULL);
            before = ",\n";
        }
        put_all(out, "\n", NULL);
    }
    put_all(out, ".El\n", NULL);
}

/* A file as it grows: each step is told, and stands behind those before it. */
static void put_steps(struct outbuf *out)
{
    static const struct {
        const char *text, *lines;
    } steps[] = {
        {"Begin with what you read off the sidewall, the placard and the wheel.\nThis alone gives "
         "sizes, "
         "speedometer and drive beside the fitted tyre:\n.Ql \"tyresum compare FILE\" .\n",
         "tyres:\n  fitted:\n    size: 255/70R16 111S\n"
         "    placard: {front: 210 kPa, rear: 240 kPa}\n"
         "    wheel: {width: 7.5 in, inset: 30 mm, max_load: 1100 kg}\n  options:\n"
         "    - name: one step taller\n      size: 265/75R16 116S\n"
         "      wheel: {width: 7.5 in, inset: 25 mm, max_load: 1100 kg}\n"},
        {"Weigh each axle, empty but for what\n.Cm includes\nnames, and copy the ratings.\nNow\n"
         ".Ql \"tyresum load FILE\"\nsays the pressures to set.\n",
         "vehicle:\n  name: my vehicle\n  kind: light_truck\n  drive: part_time_4wd\n"
         "  wheelbase: 2917 mm\n  track: {front: 1520 mm, rear: 1530 mm}\n  top_speed: 165 km/h\n"
         "  unladen: {front: 1180 kg, rear: 960 kg}\n  includes: [driver, fuel]\n"
         "  ratings: {front: 1450 kg, rear: 1650 kg, gross: 2900 kg}\n"},
        {"Say what has been bolted on and where, rearward from the front axle,\nand what is aboard "
         "when.\n",
         "carried:\n  - {item: front guard, mass: 55 kg, at: -800 mm}\n"
         "  - {item: drawers, mass: 90 kg, at: 3000 mm, can_be_left_out: true}\n"
         "states:\n  empty: [front guard]\n  touring: all\n"},
        {"Drive past a measured distance:\nreadings are pairs of what was shown and what was "
         "true.\nThe setting is what the instrument holds now.\n"
         ".Ql \"tyresum speedometer FILE\"\nsays what to enter.\n",
         "speedometer:\n  unit: km/h\n  rule: un_r39\n"
         "  readings: [[50 km/h, 48.5 km/h], [100 km/h, 97 km/h]]\n"
         "  setting: {kind: pulses_per_km, now: 2548, step: 1}\n"},
        {"Measure the room round the fitted tyre, standing level and empty:\nabove the tread, "
         "towards "
         "the springs, towards the wing's edge,\nand the least room while the wheel is turned from "
         "lock "
         "to lock.\nThen\n.Ql \"tyresum clearance FILE\"\nsays what fits.\n",
         "suspension:\n  front: {travel_to_bump: 80 mm}\n  rear: {travel_to_bump: 90 mm}\n"
         "clearance:\n  ground: 220 mm\n  arch:\n"
         "    front: {above: 120 mm, inner: 30 mm, outer: 25 mm, at_lock: 16 mm}\n"
         "    rear: {above: 125 mm, inner: 32 mm, outer: 28 mm}\n"},
    };
    put_all(out, ".Sh STEP BY STEP\n", NULL);
    for (size_t i = 0; i < sizeof steps / sizeof steps[0]; i++)
        put_all(out, i > 0 ? ".Pp\n" : "", steps[i].text, ".Bd -literal -offset indent\n",
                steps[i].lines, ".Ed\n", NULL);
    put_all(
        out,
        ".Pp\nAsk\n.Ql \"tyresum check FILE\"\nafter each step what is assumed, and what a figure "
        "still waits for;\n.Ql \"tyresum tasks FILE\"\nlists the work on each option.\n",
        NULL);
}

void write_build_manual(struct arena *arena, struct outbuf *out)
{
    struct manual manual = {.arena = arena, .out = out};
    put_manual_head(out, "tyresum-build", "5", "the build file of tyresum");
    put_all(
        out,
        ".Sh DESCRIPTION\nA build file describes a vehicle, its tyres and what has been bolted "
        "on.\nIt is one YAML document of at most 1 MiB and 64 levels,\nwithout anchors, aliases "
        "or tags.\nWhatever a computation does not need may be left out:\n"
        ".Ql \"tyresum check FILE\"\nsays what is missing, assumed, or given but not used, "
        "and\n.Ql \"tyresum check --template\"\nprints a file to start from.\n.Pp\n"
        "A quantity is a plain decimal number and a unit; ratios and counts are bare.\n"
        "Distances along the vehicle run rearward from the front axle,\nso that what is ahead "
        "of it is negative;\nleft of the centre line is negative;\nheights are from the ground "
        "as the vehicle stands on its fitted tyres.\n",
        NULL);
    put_steps(out);
    put_units(out);
    put_all(out,
            ".Sh KEYS\nA key in a mapping is written behind the mapping's name and a point.\n"
            ".Bl -tag -width Ds\n",
            NULL);
    put_set(&manual, &build_file_keys, "");
    put_all(out, ".El\n.Sh SEE ALSO\n.Xr tyresum 1\n", NULL);
}

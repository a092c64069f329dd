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
    const char *example = key->set != NULL ? NULL : key->example;
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
    put_units(out);
    put_all(out,
            ".Sh KEYS\nA key in a mapping is written behind the mapping's name and a point.\n"
            ".Bl -tag -width Ds\n",
            NULL);
    put_set(&manual, &build_file_keys, "");
    put_all(out,
            ".El\n.Sh EXAMPLES\n.Bd -literal -offset indent\nvehicle:\n  name: my vehicle\n"
            "  top_speed: 175 km/h\ntyres:\n  fitted: {size: P255/70R16 109S}\n  options:\n"
            "    - {name: one step taller, size: LT255/75R16 111/108S}\n.Ed\n"
            ".Sh SEE ALSO\n.Xr tyresum 1\n",
            NULL);
}

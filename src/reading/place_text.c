#include "reading/place_text.h"

#include <string.h>

#include "base/known.h"
#include "base/units.h"

static const char *const tyres[] = {NULL,  "nominal",     "largest",       "smallest",
                                    "new", "as worn now", "worn to 1.6 mm"};
static const char *const postures[] = {NULL, "ride height", "bump", "droop", "lock"};
static const char *const gear_names[] = {NULL, "lowest gear", "highest gear", "reverse"};
static const char *const ranges[] = {NULL, "high", "low"};
static const char *const speeds[] = {NULL, "shown", "true", "posted"};
static const char *const settings[] = {NULL, "as set now", "as entered"};
static const char *const pressures[] = {NULL,      NULL,   "placard",  "recommended",
                                        "maximum", "road", "off road", "without air"};
static const char *const counted[] = {NULL, "assumption", "reading", "timed reading"};
static const char *const counted_keys[] = {NULL, "assumption", "reading", "timed_reading"};
static const char *const estimates[] = {NULL, "estimate", "standard error", "95 % from", "95 % to"};

/* One place: its key in json; its word, or its number and unit. */
struct item {
    const char *key;
    const char *word;
    double number;
    const char *text; /* what stands in `at`, where that is not the word */
};
enum { ITEMS_MAX = 20 };
struct items {
    struct item item[ITEMS_MAX];
    size_t count;
};

static void add_word(struct items *items, const char *key, const char *word)
{
    if (word != NULL)
        items->item[items->count++] = (struct item){key, word, UNKNOWN, word};
}

/* text: in `at`; NULL where another item's text tells it. */
static void add_number(struct items *items, const char *key, double number, const char *text)
{
    if (known(number))
        items->item[items->count++] = (struct item){key, NULL, number, text};
}

const char *ratio_text(struct arena *arena, double ratio)
{
    char *text = arena_format(arena, "%.3f", ratio);
    size_t length = strlen(text);
    if (text[length - 1] == '0')
        text[length - 1] = '\0';
    return text;
}

/* Nothing more of it in `at`: the item before tells it. */
static void told_before(struct items *items)
{
    items->item[items->count - 1].text = NULL;
}

static const char *range_text(struct arena *arena, const struct place *place)
{
    return known(place->low_ratio)
               ? arena_format(arena, "low %s", ratio_text(arena, place->low_ratio))
               : ranges[place->range];
}

static void add_range(struct items *items, const struct place *place)
{
    add_word(items, "range", ranges[place->range]);
    told_before(items);
    add_number(items, "low_ratio", place->low_ratio, NULL);
}

static void add_gear(struct items *items, struct arena *arena, const struct place *place)
{
    const char *name = gear_names[place->gear_name];
    if (place->to_gear > 0) {
        add_number(items, "gear", place->gear,
                   arena_format(arena, "gear %d to %d", place->gear, place->to_gear));
        add_number(items, "to_gear", place->to_gear, NULL);
    } else if (name != NULL) {
        add_word(items, "gear", name);
        items->item[items->count - 1].text =
            arena_format(arena, "%s %s", name, range_text(arena, place));
        add_range(items, place);
    } else if (place->gear > 0) {
        add_number(items, "gear", place->gear,
                   arena_format(arena, "gear %d %s", place->gear, range_text(arena, place)));
        add_range(items, place);
    }
}

static void add_speeds(struct items *items, struct arena *arena, const struct place *place, bool us)
{
    bool mph = place->instrument_mph || (us && !place->instrument_kmh);
    enum unit_id unit = mph ? UNIT_MPH : UNIT_KMH;
    const char *as = speeds[place->speed_as];
    double speed = unit_from_si(unit, place->road_speed_mps);
    if (known(place->engine_speed_per_s)) {
        double rpm = unit_from_si(UNIT_RPM, place->engine_speed_per_s);
        add_number(items, "engine_speed_rpm", rpm, arena_format(arena, "%.0f rpm", rpm));
    }
    if (!known(speed)) {
        add_word(items, "speed_as", as);
        return;
    }
    add_number(items, mph ? "road_speed_mph" : "road_speed_kmh", speed,
               arena_format(arena, "%s%s%.4g %s", as == NULL ? "" : as, as == NULL ? "" : " ",
                            speed, unit_table[unit].name));
    add_word(items, "speed_as", as);
    if (as != NULL)
        told_before(items);
}

static void add_pressure(struct items *items, struct arena *arena, const struct place *place,
                         bool us)
{
    if (place->pressure_as != AT_PRESSURE) {
        add_word(items, "pressure", pressures[place->pressure_as]);
        return;
    }
    double pressure = unit_from_si(us ? UNIT_PSI : UNIT_KPA, place->pressure_Pa);
    add_number(items, us ? "pressure_psi" : "pressure_kPa", pressure,
               arena_format(arena, us ? "%.0f psi" : "%.0f kPa", pressure));
}

static void find_items(struct arena *arena, const struct place *place, bool us, struct items *items)
{
    items->count = 0;
    add_word(items, "tyre", tyres[place->tyre]);
    add_word(items, "posture", postures[place->posture]);
    if (known(place->axle_ratio))
        add_number(items, "axle_ratio", place->axle_ratio,
                   arena_format(arena, "axle ratio %s", ratio_text(arena, place->axle_ratio)));
    add_gear(items, arena, place);
    add_speeds(items, arena, place, us);
    if (known(place->grade))
        add_number(items, "grade_percent", 100 * place->grade,
                   arena_format(arena, "%.4g %% grade", 100 * place->grade));
    add_word(items, "setting", settings[place->setting]);
    add_pressure(items, arena, place, us);
    add_word(items, "chains", place->snow_chains ? "snow chains" : NULL);
    if (place->counted != COUNTED_NOTHING)
        add_number(items, counted_keys[place->counted], place->number,
                   arena_format(arena, "%s %d", counted[place->counted], place->number));
    add_word(items, "name", place->name);
    add_word(items, "estimate", estimates[place->estimate]);
}

const char *place_text(struct arena *arena, const struct place *place, bool us)
{
    struct items items;
    const char *text = NULL;
    find_items(arena, place, us, &items);
    for (size_t i = 0; i < items.count; i++)
        if (items.item[i].text != NULL)
            text = text == NULL ? items.item[i].text
                                : arena_format(arena, "%s, %s", text, items.item[i].text);
    return text;
}

const struct member *place_members(struct arena *arena, const struct place *place, bool us)
{
    struct items items;
    find_items(arena, place, us, &items);
    if (items.count == 0)
        return NULL;
    struct member *members = arena_allocate_array(arena, items.count + 1, sizeof *members);
    for (size_t i = 0; i < items.count; i++) {
        const struct item *item = &items.item[i];
        members[i] =
            (struct member){item->key, item->word != NULL ? cell_text(item->word)
                                                          : (struct cell){.kind = CELL_NUMBER,
                                                                          .value = item->number}};
    }
    members[items.count] = (struct member){.name = NULL};
    return members;
}

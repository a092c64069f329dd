#include "cli/missing_sets.h"

#include "yaml/tree.h"

enum {
    WITH_SPEED = CMD_SPEEDOMETER | CMD_SHEET | CMD_TASKS,
    WITH_LOAD = CMD_LOAD | CMD_SHEET | CMD_TASKS
};

/* In the order in which they are most often known; each as it may be typed. */
static const struct {
    unsigned commands;
    const char *section, *key, *example;
    const char *instead; /* another key of the section that tells the same; NULL: none */
} wanted[] = {
    {WITH_LOAD, "vehicle", "wheelbase", "\"2870 mm\"", NULL},
    {WITH_LOAD, "vehicle", "unladen", "\"{front: 1310 kg, rear: 1160 kg}\"", NULL},
    {WITH_LOAD, "vehicle", "ratings", "\"{front: 1550 kg, rear: 1750 kg, gross: 3200 kg}\"", NULL},
    {CMD_SHEET | CMD_TASKS, "vehicle", "top_speed", "\"175 km/h\"", NULL},
    {WITH_SPEED, "speedometer", "rule", "un_r39", NULL},
    {WITH_SPEED, "speedometer", "readings", "\"[[50 km/h, 48.5 km/h]]\"", "fitted_error"},
    {WITH_SPEED, "speedometer", "setting", "\"pulses_per_km 2548 step 1\"", NULL},
    {CMD_GEARING | CMD_SHEET, "drivetrain", "axle", "3.83", NULL},
    {CMD_GEARING | CMD_SHEET, "drivetrain", "gears", "\"[3.87, 2.21, 1.49, 1]\"", NULL},
    {CMD_CLEARANCE | CMD_SHEET | CMD_TASKS, "clearance", "ground", "\"220 mm\"", NULL},
    {CMD_CLEARANCE | CMD_SHEET | CMD_TASKS, "clearance", "under_axle", "\"205 mm\"", NULL},
    {CMD_CLEARANCE | CMD_SHEET | CMD_TASKS, "clearance", "arch",
     "\"{front: {above: 110 mm, inner: 28 mm, outer: 22 mm, at_lock: 14 mm}, "
     "rear: {above: 115 mm, inner: 30 mm, outer: 25 mm}}\"",
     NULL},
    {CMD_SHORTLIST, "search", "rims", "\"[{diameter: 17, width: 8 in, inset: 25 mm}]\"", NULL},
};

const char *missing_sets(struct arena *arena, const struct build_case *build, const char *between)
{
    const char *text = "";
    for (size_t i = 0; build->source->path == NULL && i < sizeof wanted / sizeof wanted[0]; i++) {
        const struct node *section = tree_child(build->tree, wanted[i].section);
        if (!(wanted[i].commands & build->command->bit) ||
            tree_child(section, wanted[i].key) != NULL ||
            (wanted[i].instead != NULL && tree_child(section, wanted[i].instead) != NULL))
            continue;
        text = arena_format(arena, "%s%s--set %s.%s=%s", text, *text ? between : "",
                            wanted[i].section, wanted[i].key, wanted[i].example);
    }
    return text;
}

#include "cli/task_keys.h"

#include <string.h>

/* In workshop order. */
const struct task_key task_keys[] = {
    {TASK_TRY_WHEEL, "tyres.fitted.wheel.mounting", "tyres.options.wheel",
     "hub, bolts and room round the brake are tried by hand"},
    {TASK_SPARE, "tyres.spare", NULL, "no spare is judged and none is ordered"},
    {TASK_WHEEL, "allowed.wheel", "tyres.options.wheel", "no other wheel is ordered"},
    {TASK_WHEEL, "search.rims", "allowed.wheel", "there is none to choose from"},
    {TASK_AXLE_RATIO, "drivetrain.axle_choices", "drivetrain", "there is none to choose from"},
    {TASK_UNLOAD, "carried.can_be_left_out", "carried",
     "nothing is left out for a rating or a tyre"},
    {TASK_BUMP_STOP, "allowed.bump_stop", "clearance.arch", "none is fitted"},
    {TASK_TRIM_ARCH, "allowed.trim", "clearance.arch", "nothing is trimmed"},
    {TASK_SPACER, "allowed.spacer", "clearance.arch", "none is fitted"},
    {TASK_TYRE_PRESSURE, "tyres.fitted.placard", NULL, "the task tells no pressure as it is now"},
    {TASK_SPEEDOMETER_SETTING, "speedometer.setting", NULL, "the task gives no figure"},
    {TASK_PRESSURE_WARNING, "vehicle.pressure_warning", NULL,
     "no figure is given and the driver is told"},
    {TASK_PRESSURE_WARNING, "allowed.pressure_warning", "vehicle.pressure_warning",
     "it is not set and the driver is told"},
    {TASK_HEADLAMP_AIM, "clearance.headlamp.dip", NULL, "the task gives no figure"},
    {TASK_SPEED_LABEL, "limits.speed_symbol", "vehicle.top_speed",
     "a marked tyre below the top speed is refused"},
};
const size_t task_key_count = sizeof task_keys / sizeof task_keys[0];

/* Of a list, in any of its items. */
static bool holds(const struct given *at, const char *path)
{
    const char *end = strchr(path, '.');
    size_t length = end == NULL ? strlen(path) : (size_t)(end - path);
    for (const struct given *child = at->first; child != NULL; child = child->next) {
        if (at->form == GIVEN_LIST && holds(child, path))
            return true;
        if (child->key.length == length && memcmp(child->key.at, path, length) == 0)
            return end == NULL || holds(child, end + 1);
    }
    return false;
}

bool task_key_is_missing(const struct given *file, const struct task_key *row)
{
    return (row->when == NULL || holds(file, row->when)) && !holds(file, row->key);
}

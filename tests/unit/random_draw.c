#include "random_draw.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "support.h"

bool chance(struct draw *draw, int percent)
{
    return random_whole(&draw->state, 1, 100) <= percent;
}

/* A value of so many steps from low to high. */
double steps(struct draw *draw, double low, double high, double step)
{
    return low + step * random_whole(&draw->state, 0, (int)floor((high - low) / step + 0.5));
}

void start(struct build_text *out)
{
    out->length = 0;
    out->text[0] = '\0';
}

void put(struct build_text *out, const char *format, ...)
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
void put_in_unit(const struct draw *draw, struct build_text *out, enum unit_kind kind, double value,
                 unsigned turn)
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

/* Pairs that the Tire and Rim Association prints, one step each; `turn` chooses the unit. */
static bool put_nominal(struct build_text *out, double kPa, unsigned turn)
{
    static const int pairs[][2] = {{240, 35}, {280, 41}, {350, 50},
                                   {450, 65}, {550, 80}, {650, 95}};
    for (size_t i = 0; i < LENGTH_OF(pairs); i++)
        if (fabs(kPa - pairs[i][0]) < 20) {
            put(out, "%d %s", pairs[i][turn % 2], turn % 2 == 1 ? "psi" : "kPa");
            return true;
        }
    return false;
}

void quantity(struct draw *draw, struct build_text *out, enum unit_kind kind, double value)
{
    if (draw->how->nominal_pressures && kind == KIND_PRESSURE &&
        put_nominal(out, value, draw->quantities++))
        return;
    put_in_unit(draw, out, kind, value, draw->quantities++);
}

/* "key: value, " of a flow mapping. */
void key(struct draw *draw, struct build_text *out, const char *name, enum unit_kind kind,
         double value)
{
    put(out, "%s: ", name);
    quantity(draw, out, kind, value);
    put(out, ", ");
}

void bare(struct build_text *out, const char *name, double value)
{
    put(out, "%s: ", name);
    put_number(out, value);
    put(out, ", ");
}

/* The same, where a draw says that it is there at all. */
void perhaps(struct draw *draw, struct build_text *out, int percent, const char *name,
             enum unit_kind kind, double value)
{
    if (!chance(draw, percent))
        return;
    if (kind == KIND_BARE)
        bare(out, name, value);
    else
        key(draw, out, name, kind, value);
}

void front_and_rear(struct draw *draw, struct build_text *out, const char *name,
                    enum unit_kind kind, double front, double rear)
{
    put(out, "%s: {", name);
    key(draw, out, "front", kind, front);
    key(draw, out, "rear", kind, rear);
    put(out, "}");
}

double mass(const struct draw *draw, double kg)
{
    return kg * draw->how->mass;
}

double place(const struct draw *draw, double mm)
{
    return mm * draw->how->place;
}

void put_point(struct draw *draw, struct build_text *out, const char *name, double low, double high,
               double height)
{
    put(out, "{item: part %u, ", draw->quantities);
    key(draw, out, name, KIND_LENGTH, steps(draw, low, high, 10));
    key(draw, out, "height", KIND_LENGTH, height + steps(draw, 0, 200, 5));
    put(out, "}");
}

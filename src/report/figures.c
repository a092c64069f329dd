#include "report/figures.h"

#include "base/known.h"

#define QUANTITY_ROW(id, name, title, metric, us, decimals, decimals_us, policy, scale)            \
    [QUANTITY_##id] = {name, title, metric, us, decimals, decimals_us, policy, scale},
const struct quantity_row quantity_rows[QUANTITY_COUNT] = {QUANTITIES(QUANTITY_ROW)};
#undef QUANTITY_ROW

#define QUANTITY_FITS(id, name_, title_, ...)                                                      \
    _Static_assert(sizeof(name_) <= sizeof quantity_rows->name &&                                  \
                       sizeof(title_) <= sizeof quantity_rows->title,                              \
                   "the texts have room");
QUANTITIES(QUANTITY_FITS)
#undef QUANTITY_FITS

struct figure figure_of(enum quantity_id quantity, double value)
{
    return (struct figure){.quantity = quantity,
                           .state = STATE_NONE,
                           .axle = AXLE_NONE,
                           .place = place_none(),
                           .value = value,
                           .decimals = DECIMALS_OF_QUANTITY,
                           .limit = UNKNOWN,
                           .cure = {.now = UNKNOWN, .then = UNKNOWN}};
}

struct figure figure_by(enum quantity_id quantity, double value, struct remark basis)
{
    struct figure figure = figure_of(quantity, value);
    figure.basis = basis;
    return figure;
}

struct figure figure_on_axle(enum quantity_id quantity, double value, int axle, struct remark basis)
{
    struct figure figure = figure_by(quantity, value, basis);
    figure.axle = axle;
    return figure;
}

/* Assumptions are numbered within their part, so that each has a place of its own and the same
 * place with every setup. A setup that says one twice (of two axles) has two numbers of it. */
static int number_of(struct figures *figures, const struct remark *text)
{
    int number = 1;
    for (size_t i = 0; i < figures->taken_count; i++) {
        struct taken *taken = &figures->taken[i];
        if (taken->part != figures->part)
            continue;
        number++;
        if (taken->setup == figures->setup || !remark_same(&taken->text, text))
            continue;
        taken->setup = figures->setup;
        return taken->number;
    }
    figures->taken = arena_grow(figures->arena, figures->taken, figures->taken_count,
                                &figures->taken_capacity, sizeof *figures->taken);
    figures->taken[figures->taken_count++] =
        (struct taken){*text, figures->part, number, figures->setup};
    return number;
}

void figures_add_as_is(struct figures *figures, struct figure figure)
{
    figures->items =
        arena_grow(figures->room != NULL ? figures->room : figures->arena, figures->items,
                   figures->count, &figures->capacity, sizeof *figures->items);
    figures->items[figures->count++] = figure;
}

void figures_add(struct figures *figures, struct figure figure)
{
    if (figures->verdicts_only && figure.verdict == VERDICT_NONE &&
        !(quantity_rows[figure.quantity].policy & POLICY_LISTED))
        return;
    figure.part = figures->part;
    figure.setup = figures->setup;
    if (quantity_rows[figure.quantity].policy & POLICY_ASSUMED) {
        figure.place.counted = COUNTED_ASSUMPTION;
        figure.place.number = number_of(figures, &figure.advice);
    }
    figures_add_as_is(figures, figure);
}

void figures_restart(struct figures *figures, struct arena *arena)
{
    *figures = (struct figures){
        .arena = arena,
        .room = figures->room,
        .verdicts_only = figures->verdicts_only,
        .first_setup = figures->first_setup,
        .items = figures->items,
        .capacity = figures->capacity,
    };
}

void figures_assume(struct figures *figures, bool is_taken, struct remark taken)
{
    struct figure figure = figure_by(QUANTITY_ASSUMPTION, UNKNOWN, remark(BASIS_ASSUMPTION));
    figure.advice = taken;
    if (is_taken)
        figures_add(figures, figure);
}

static bool same_values(const struct figure *a, const struct figure *b)
{
    return same_value(a->value, b->value) && a->decimals == b->decimals &&
           a->instrument_mph == b->instrument_mph && a->instrument_kmh == b->instrument_kmh;
}

static bool same_basis(const struct figure *a, const struct figure *b)
{
    return remark_same(&a->basis, &b->basis) && a->governed_by.kind == b->governed_by.kind &&
           a->governed_by.number == b->governed_by.number;
}

static bool same_cures(const struct cures *a, const struct cures *b)
{
    if (a == NULL || b == NULL)
        return a == b;
    bool same = a->offered == b->offered;
    for (int i = 0; same && i < CURE_COUNT; i++)
        same =
            same_value(a->amount[i], b->amount[i]) && remark_same(&a->lacking[i], &b->lacking[i]);
    return same;
}

static bool same_advice(const struct figure *a, const struct figure *b)
{
    return remark_same(&a->advice, &b->advice) && same_cures(a->cures, b->cures);
}

/* What is most often different comes first. */
bool figure_same(const struct figure *a, const struct figure *b, unsigned fields)
{
    return (!(fields & SAME_QUANTITY) || a->quantity == b->quantity) &&
           (!(fields & SAME_PART) || a->part == b->part) &&
           (!(fields & SAME_SETUP) || a->setup == b->setup) &&
           (!(fields & SAME_STATE) || a->state == b->state) &&
           (!(fields & SAME_AXLE) || a->axle == b->axle) &&
           (!(fields & SAME_VERDICT) || a->verdict == b->verdict) &&
           (!(fields & SAME_LIMIT) || same_value(a->limit, b->limit)) &&
           (!(fields & SAME_VALUE) || same_values(a, b)) &&
           (!(fields & SAME_PLACE) || place_same(&a->place, &b->place)) &&
           (!(fields & SAME_BASIS) || same_basis(a, b)) &&
           (!(fields & SAME_ADVICE) || same_advice(a, b));
}

unsigned figure_matter(const struct figure *figure)
{
    unsigned policy = quantity_rows[figure->quantity].policy;
    return SAME_PART | SAME_QUANTITY | SAME_AXLE | (policy & POLICY_RULES ? SAME_BASIS : 0) |
           (policy & POLICY_PLACES ? SAME_PLACE : 0);
}

const char *part_name(enum part part)
{
    static const char *const names[PART_COUNT] = {"tyre",        "clearance", "load",
                                                  "speedometer", "gearing",   "solving"};
    return names[part];
}

const char *verdict_name(enum verdict verdict)
{
    static const char *const names[] = {"", "fail", "unknown", "task", "caution", "ok"};
    return names[verdict];
}

const char *axle_name(int axle)
{
    return axle == AXLE_FRONT ? "front" : axle == AXLE_REAR ? "rear" : "";
}

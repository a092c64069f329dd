#include "report/solving/may_be_off.h"

#include <string.h>

#include "base/known.h"
#include "build/keys.h"

/* What a measurement of each kind is never off by more than: how far is looked (common practice, no
 * source). A share of the value where that is said. */
static const struct {
    enum unit_kind kind;
    double range;
    bool share;
} ranges[] = {
    {KIND_LENGTH, 0.05, false},   {KIND_MASS, 100, false},     {KIND_ANGLE, 0.05, false},
    {KIND_FRACTION, 0.05, false}, {KIND_STIFFNESS, 0.3, true},
};

struct input {
    const char *path;
    double *value;
    enum unit_kind kind;
    double range;
};

struct inputs {
    struct arena *arena;
    struct input *items;
    size_t count, capacity;
};

static void add_input(struct inputs *inputs, const char *path, double *value, enum unit_kind kind)
{
    for (size_t i = 0; i < sizeof ranges / sizeof ranges[0]; i++) {
        if (ranges[i].kind != kind || !known(*value))
            continue;
        inputs->items = arena_grow(inputs->arena, inputs->items, inputs->count, &inputs->capacity,
                                   sizeof *inputs->items);
        inputs->items[inputs->count++] = (struct input){
            path, value, kind, ranges[i].range * (ranges[i].share ? fabs(*value) : 1)};
    }
}

static void collect(struct inputs *inputs, const struct key_set *set, void *target,
                    const char *path);

/* A list is copied, so that the plan's own stays what it is. */
static void collect_list(struct inputs *inputs, const struct key *key, struct mapping_list *list,
                         const char *path)
{
    char *copy = arena_allocate_array(inputs->arena, list->count, key->set->size);
    if (list->count > 0)
        memcpy(copy, list->items, list->count * key->set->size);
    list->items = copy;
    for (size_t i = 0; i < list->count; i++)
        collect(inputs, key->set, copy + i * key->set->size,
                arena_format(inputs->arena, "%s.%zu", path, i + 1));
}

/* What is measured: not what is only offered, asked for or rated. */
static bool is_measured(const char *path)
{
    static const char *const begins[] = {"vehicle.unladen", "carried", "suspension", "clearance",
                                         "speedometer.fitted_error"};
    if (strstr(path, "spring_choices") != NULL)
        return false;
    for (size_t i = 0; i < sizeof begins / sizeof begins[0]; i++) {
        size_t length = strlen(begins[i]), shorter = strlen(path);
        if (strncmp(path, begins[i], shorter < length ? shorter : length) == 0)
            return true;
    }
    return false;
}

static void collect_key(struct inputs *inputs, const struct key *key, void *field, const char *path)
{
    struct axle_pair *pair = field;
    if (key->kind == KEY_MAPPING)
        collect(inputs, key->set, field, path);
    else if (key->kind == KEY_MAPPING_LIST)
        collect_list(inputs, key, field, path);
    else if (key->kind == KEY_QUANTITY)
        add_input(inputs, path, field, key->unit);
    else if (key->kind == KEY_QUANTITY_PAIR) {
        add_input(inputs, arena_format(inputs->arena, "%s.front", path), &pair->front, key->unit);
        add_input(inputs, arena_format(inputs->arena, "%s.rear", path), &pair->rear, key->unit);
    }
}

static void collect(struct inputs *inputs, const struct key_set *set, void *target,
                    const char *path)
{
    for (size_t i = 0; i < set->count; i++) {
        const struct key *key = &set->keys[i];
        const char *here =
            *path ? arena_format(inputs->arena, "%s.%s", path, key->name) : key->name;
        if (is_measured(here))
            collect_key(inputs, key, (char *)target + key->offset, here);
    }
}

/* --- the outcome beside them */

enum {
    CLEARANCE = 1 << PART_CLEARANCE,
    LOAD = 1 << PART_LOAD,
    SPEEDOMETER = 1 << PART_SPEEDOMETER
};

/* Which parts an input is read by: no other part's findings change with it. */
static const struct {
    const char *begins;
    unsigned parts;
} read_by[] = {
    {"vehicle", CLEARANCE | LOAD}, {"carried", CLEARANCE | LOAD}, {"suspension", CLEARANCE},
    {"clearance", CLEARANCE},      {"speedometer", SPEEDOMETER},
};

struct question {
    const struct plan *plan;
    struct specification *copy; /* that the inputs point into */
    size_t index;
    unsigned parts;      /* that read the input */
    enum outcome others; /* of all other parts */
    enum outcome outcome;
};

static enum outcome worse_of(enum outcome a, enum outcome b)
{
    return a > b ? a : b;
}

static enum outcome outcome_at(const struct question *question, const struct input *input,
                               double off)
{
    struct arena scratch = ARENA_EMPTY;
    struct plan plan = *question->plan;
    struct figures figures = {.arena = &scratch};
    struct option_outcome found;
    double before = *input->value;
    plan.arena = &scratch;
    plan.specification = question->copy;
    plan.count = 2;
    plan.setups = arena_allocate_array(&scratch, 2, sizeof *plan.setups);
    plan.setups[0] = question->plan->setups[0];
    plan.setups[1] = question->plan->setups[question->index];
    *input->value = before + off;
    plan_set_beside(&plan);
    if (question->parts & CLEARANCE)
        report_clearance(&plan, &figures);
    if (question->parts & LOAD)
        report_load(&plan, &figures);
    if (question->parts & SPEEDOMETER)
        report_speedometer(&plan, &figures);
    option_outcome_make(&plan, &plan_group_figures(&plan, &figures)[1], &found);
    *input->value = before;
    arena_free(&scratch);
    return worse_of(found.outcome, question->others);
}

/* By the figures of the whole plan: what the parts that do not read the input make of the setup. */
static enum outcome outcome_of_others(const struct plan *plan, const struct setup_figures *figures,
                                      unsigned parts)
{
    struct setup_figures rest = {
        arena_allocate_array(plan->arena, figures->count, sizeof *rest.items), 0};
    struct option_outcome found;
    for (size_t i = 0; i < figures->count; i++)
        if (!(parts & 1u << figures->items[i]->part))
            rest.items[rest.count++] = figures->items[i];
    option_outcome_make(plan, &rest, &found);
    return found.outcome;
}

/* Between none and the whole range, to 1/256 of it; INFINITY: the outcome stays. */
static double nearest_change(const struct question *question, const struct input *input, int sign,
                             enum outcome *becomes)
{
    double low = 0, high = 1;
    *becomes = outcome_at(question, input, sign * input->range);
    if (*becomes == question->outcome)
        return INFINITY;
    while (high - low > 1. / 256) {
        double middle = (low + high) / 2;
        enum outcome there = outcome_at(question, input, sign * middle * input->range);
        if (there == question->outcome) {
            low = middle;
        } else {
            high = middle;
            *becomes = there;
        }
    }
    return high;
}

/* In its place among the most delicate. */
static size_t keep(struct input_margin out[INPUTS_TOLD_MAX], size_t count,
                   const struct input_margin *margin)
{
    size_t at = count;
    while (at > 0 && margin->share < out[at - 1].share)
        at--;
    if (at == INPUTS_TOLD_MAX)
        return count;
    count += count < INPUTS_TOLD_MAX;
    memmove(&out[at + 1], &out[at], (count - 1 - at) * sizeof *out);
    out[at] = *margin;
    return count;
}

static size_t reader_of(const char *path)
{
    size_t i = 0;
    while (strncmp(path, read_by[i].begins, strlen(read_by[i].begins)) != 0)
        i++;
    return i;
}

size_t may_be_off_find(const struct plan *plan, size_t index, const struct setup_figures *figures,
                       enum outcome outcome, struct input_margin out[INPUTS_TOLD_MAX])
{
    enum { READERS = sizeof read_by / sizeof read_by[0] };
    struct specification copy = *plan->specification;
    struct inputs inputs = {.arena = plan->arena};
    struct question question = {.plan = plan, .copy = &copy, .index = index, .outcome = outcome};
    enum outcome others[READERS];
    size_t count = 0;
    collect(&inputs, &build_file_keys, &copy, "");
    for (size_t i = 0; i < READERS; i++)
        others[i] = outcome_of_others(plan, figures, read_by[i].parts);
    for (size_t i = 0; i < inputs.count; i++) {
        const struct input *input = &inputs.items[i];
        size_t reader = reader_of(input->path);
        question.parts = read_by[reader].parts;
        question.others = others[reader];
        struct input_margin margin = {.path = input->path, .kind = input->kind, .share = INFINITY};
        for (int sign = -1; sign <= 1; sign += 2) {
            enum outcome becomes;
            double share = nearest_change(&question, input, sign, &becomes);
            if (share < margin.share) {
                margin.share = share;
                margin.off = sign * share * input->range;
                margin.becomes = becomes;
            }
        }
        if (isfinite(margin.share))
            count = keep(out, count, &margin);
    }
    return count;
}

#include "workshop.h"

#include "base/known.h"
#include "reading/task_text.h"
#include "support.h"

/* One option of a build that is being worked on. */
struct workshop {
    struct run *run;
    struct specification *specification;
    struct fitment *option;
    struct setup now; /* with what has been done to its wheels */
};

static double as_listed(const struct plan *plan, const struct task *task)
{
    struct task_number then = task_then(plan, task, false);
    double scale = pow(10, then.decimals), value = floor(then.value * scale + 0.5) / scale;
    enum unit_id unit = task_rows[task->cure.task].metric;
    return unit == UNIT_BARE ? value : unit_to_si(unit, value);
}

/* The option names what it has on each axle. */
static void name_both_axles(struct workshop *shop)
{
    option_name_axles(shop->option, &shop->now);
}

static void order_wheel(struct workshop *shop, int axle)
{
    if (axle == AXLE_NONE) { /* for the whole set */
        order_wheel(shop, AXLE_FRONT);
        axle = AXLE_REAR;
    }
    const struct search_rim *rim = &shop->specification->search.rims.items[0];
    struct wheel *wheel = &shop->now.axle[axle].wheel;
    wheel->given = rim->given;
    wheel->max_load_kg = rim->max_load_kg;
    wheel->max_pressure_Pa = rim->max_pressure_Pa;
    wheel->mounting = tyre_unknown().wheel.mounting;
    name_both_axles(shop);
}

/* It goes on as the one before did. */
static void try_wheel(struct workshop *shop, int axle)
{
    static const struct mounting tried = {
        .hub_bore_m = 0.067, .bolts = 5, .bolt_circle_m = 0.114, .brake_room_m = 0.004};
    struct fitment *fitted = &shop->specification->tyres.fitted;
    fitted->tyre.wheel.mounting = fitted->rear.wheel.mounting = tried;
    shop->now.axle[axle].wheel.mounting = tried;
    name_both_axles(shop);
}

static void carry_spare_of_set(struct workshop *shop)
{
    shop->option->spare = shop->now.axle[AXLE_FRONT];
    shop->option->spare.mass_kg = shop->now.spare.mass_kg; /* what it weighs is another matter */
}

static bool is_text(const char *a, const char *b)
{
    return strcmp(a, b) == 0;
}

static void remove_item(struct carried_list *carried, const char *name)
{
    size_t kept = 0;
    for (size_t i = 0; i < carried->count; i++)
        if (!is_text(carried->items[i].item, name))
            carried->items[kept++] = carried->items[i];
    carried->count = kept;
}

/* Out of one state; without states there is one with everything. */
static void leave_behind(struct workshop *shop, const struct figure *reason)
{
    struct arena *arena = &shop->run->arena;
    struct specification *specification = shop->specification;
    const char *name = reason->place.name;
    if (specification->states.count == 0) {
        remove_item(&specification->carried, name);
        return;
    }
    struct state *state = &specification->states.items[reason->state];
    const struct text_list all = state->items;
    state->items.items = arena_allocate_array(arena, all.count, sizeof *all.items);
    state->items.count = 0;
    for (size_t i = 0; i < all.count; i++)
        if (!is_text(all.items[i], name))
            state->items.items[state->items.count++] = all.items[i];
}

static void lengthen_bump_stop(struct workshop *shop, int axle, double amount_m)
{
    struct suspension *suspension = &shop->specification->suspension;
    double *change = axle == AXLE_FRONT ? &suspension->front.bump_stop_change_m
                                        : &suspension->rear.bump_stop_change_m;
    *change = known_or(*change, 0) + amount_m;
}

/* Measured anew, with the fitted tyre. */
static void trim(struct workshop *shop, int axle, double amount_m)
{
    struct clearance_measured *clearance = &shop->specification->clearance;
    struct arch *arch = axle == AXLE_FRONT ? &clearance->arch.front : &clearance->arch.rear;
    arch->above_m += amount_m;
    arch->outer_m += amount_m;
    if (clearance->steering.meets == MEETS_ARCH)
        arch->at_lock_m += amount_m;
}

static void set_pressure(struct as_set *as_set, int axle, double pressure_Pa)
{
    *(axle == AXLE_FRONT ? &as_set->pressure_Pa.front : &as_set->pressure_Pa.rear) = pressure_Pa;
}

static void do_task(struct workshop *shop, const struct task *task)
{
    struct as_set *as_set = &shop->option->as_set;
    double amount = as_listed(&shop->run->plan, task);
    switch (task->cure.task) {
    case TASK_TRY_WHEEL:
        try_wheel(shop, task->axle);
        break;
    case TASK_SPARE:
        carry_spare_of_set(shop);
        break;
    case TASK_WHEEL:
        order_wheel(shop, task->axle);
        break;
    case TASK_UNLOAD:
        leave_behind(shop, task->reason);
        break;
    case TASK_BUMP_STOP:
        lengthen_bump_stop(shop, task->axle, amount);
        break;
    case TASK_TRIM_ARCH:
        trim(shop, task->axle, amount);
        break;
    case TASK_SPACER:
        shop->now.axle[task->axle].wheel.spacer_m = amount;
        name_both_axles(shop);
        break;
    case TASK_TYRE_PRESSURE:
        set_pressure(as_set, task->axle, amount);
        break;
    case TASK_SPEEDOMETER_SETTING:
        as_set->setting = task->cure.then;
        break;
    case TASK_PRESSURE_WARNING:
        as_set->pressure_warning_Pa = amount;
        break;
    case TASK_HEADLAMP_AIM:
        as_set->headlamp_dip = amount;
        break;
    case TASK_SPEED_LABEL:
        as_set->speed_label = 1;
        break;
    case TASK_PRESSURE_LABEL:
    case TASK_TELL:
        break;
    default:
        ck_abort_msg("seed %llu: %s is no work", (unsigned long long)shop->run->seed,
                     task_rows[task->cure.task].name);
    }
}

static const struct given named_as_set;

void do_tasks(struct run *run, const struct judged_build *before, size_t setup, size_t left_out,
              struct judged_build *out)
{
    struct arena *arena = &run->arena;
    struct specification *specification = &out->specification;
    copy_specification(arena, &before->specification, specification);
    struct workshop shop = {run, specification, &specification->tyres.options.items[setup - 1],
                            before->plan.setups[setup]};
    if (shop.option->as_set.given == NULL)
        shop.option->as_set.given = &named_as_set; /* named now */
    const struct option_outcome *outcome = &before->outcomes[setup];
    /* Wheels come before what stands on them, and are tried on when they are there. */
    const enum task_id first_and_last[] = {TASK_WHEEL, TASK_NONE, TASK_TRY_WHEEL};
    for (size_t pass = 0; pass < LENGTH_OF(first_and_last); pass++)
        for (size_t i = 0; i < outcome->task_count; i++) {
            enum task_id id = outcome->tasks[i].cure.task;
            bool now =
                id == TASK_WHEEL || id == TASK_TRY_WHEEL ? id == first_and_last[pass] : pass == 1;
            if (i != left_out && now)
                do_task(&shop, &outcome->tasks[i]);
        }
    judge_build(run, out);
}

/* tyresum compare: each option beside the fitted tyre, from designations or a build file. */
#include <string.h>

#include "base/diagnostics.h"
#include "base/known.h"
#include "cli/commands.h"
#include "reading/findings_text.h"
#include "cli/mistakes.h"
#include "cli/input.h"
#include "cli/parts.h"
#include "reading/prose.h"
#include "cli/row_stream.h"
#include "cli/stream.h"
#include "compute/gearing.h"
#include "report/plan.h"
#include "tables/lookup.h"

struct compare_row {
    const char *option;
    char designation[DESIGNATION_CANONICAL_SIZE];
    struct tyre_figures before, after;
    double width_change_m;
    double revs_per_m; /* data book where given */
    double diameter_m;
    double error, true_at_100, effective, restoring;
    double load_kg, load_before_kg;
    enum verdict worst;
    size_t reasons;              /* how many findings have that verdict */
    const struct figure *reason; /* the first of them, the setup's own before what the fitted tyre
                                    has too; NULL where it is not a finding of the file */
    const char *beside;          /* the reason where it is not */
    const char *unread;          /* why: of a stream's line that could not be read */
};

#define COMPARE_NUMBER(name, expression)                                                           \
    static struct column_value name(const void *data, bool us)                                     \
    {                                                                                              \
        const struct compare_row *row = data;                                                      \
        (void)us;                                                                                  \
        return (struct column_value){.value = row->unread ? UNKNOWN : (expression)};               \
    }
#define COMPARE_TEXT(name, expression)                                                             \
    static struct column_value name(const void *data, bool us)                                     \
    {                                                                                              \
        const struct compare_row *row = data;                                                      \
        (void)us;                                                                                  \
        return (struct column_value){.text = (expression)};                                        \
    }

static double diameter_change(const struct compare_row *row)
{
    return row->after.overall_diameter_m - row->before.overall_diameter_m;
}

COMPARE_TEXT(get_option, row->option)
COMPARE_TEXT(get_designation, row->designation)
COMPARE_NUMBER(get_diameter, row->diameter_m)
COMPARE_NUMBER(get_change, diameter_change(row))
COMPARE_NUMBER(get_change_percent, 100 * diameter_change(row) / row->before.overall_diameter_m)
COMPARE_NUMBER(get_width_change, row->width_change_m)
COMPARE_NUMBER(get_revs, row->revs_per_m)
COMPARE_NUMBER(get_error, 100 * row->error)
COMPARE_NUMBER(get_true, row->true_at_100)
COMPARE_NUMBER(get_effective, row->effective)
COMPARE_NUMBER(get_restoring, row->restoring)
COMPARE_NUMBER(get_load, row->load_kg)
COMPARE_NUMBER(get_load_change, 100 * (row->load_kg / row->load_before_kg - 1))
COMPARE_NUMBER(get_ground, row->after.static_loaded_radius_m - row->before.static_loaded_radius_m)
COMPARE_TEXT(get_error_text, row->unread)
COMPARE_TEXT(get_verdict, verdict_name(row->worst))

#define TEXT_COLUMN(name, title, priority, get)                                                    \
    {                                                                                              \
        name, NULL, title, UNIT_BARE, UNIT_BARE, 0, 0, true, 12, priority, get                     \
    }
#define LENGTH(name, title, decimals, priority, get)                                               \
    {                                                                                              \
        name "_mm", name "_in", title, UNIT_MM, UNIT_IN, decimals, 2, false, 9, priority, get      \
    }
#define BARE(name, title, decimals, priority, get)                                                 \
    {                                                                                              \
        name, NULL, title, UNIT_BARE, UNIT_BARE, decimals, decimals, false, 9, priority, get       \
    }

const struct column compare_columns[] = {
    TEXT_COLUMN("option", "option", 0, get_option),
    TEXT_COLUMN("designation", "designation", 0, get_designation),
    LENGTH("overall_diameter", "overall diameter", 1, 5, get_diameter),
    LENGTH("overall_diameter_change", "diameter change", 1, 0, get_change),
    BARE("overall_diameter_change_percent", "diameter change %", 2, 8, get_change_percent),
    LENGTH("section_width_change", "width change", 1, 4, get_width_change),
    {"revs_per_km", "revs_per_mile", "revolutions", UNIT_PER_KM, UNIT_PER_MILE, 1, 1, false, 9, 7,
     get_revs},
    BARE("speedometer_error_percent", "speedometer error %", 2, 1, get_error),
    BARE("true_speed_at_100", "true speed at 100", 1, 3, get_true),
    BARE("effective_axle_ratio", "effective axle ratio", 3, 9, get_effective),
    BARE("restoring_axle_ratio", "restoring axle ratio", 3, 6, get_restoring),
    {"load_kg", "load_lb", "load", UNIT_KG, UNIT_LB, 0, 0, false, 7, 2, get_load},
    BARE("load_change_percent", "load change %", 1, 5, get_load_change),
    LENGTH("ground_clearance_change", "ground clearance change", 1, 4, get_ground),
    TEXT_COLUMN("verdict", "verdict", 0, get_verdict),
    TEXT_COLUMN("error", "error", 0, get_error_text), /* of a stream only */
};
static const size_t stream_column_count = sizeof compare_columns / sizeof compare_columns[0];
const size_t compare_column_count = sizeof compare_columns / sizeof compare_columns[0] - 1;

static double load_of(const struct setup *setup, enum axle axle)
{
    return load_index_kg(setup->axle[axle].size.service.load_index);
}

static enum verdict worse(enum verdict a, enum verdict b)
{
    if (a == VERDICT_NONE || b == VERDICT_NONE)
        return a == VERDICT_NONE ? b : a;
    return a < b ? a : b;
}

/* What the file describes is asked for, and what of it is unknown is no ok. */
static bool is_asked(const struct specification *specification, const struct figure *figure)
{
    const bool described[PART_COUNT] = {
        [PART_TYRE] = specification->tyres.fitted.tyre.wheel.given != NULL,
        [PART_CLEARANCE] = specification->clearance.given != NULL,
        [PART_LOAD] = known(specification->tyres.fitted.placard_Pa.front),
        [PART_SPEEDOMETER] = specification->speedometer.given != NULL,
        [PART_GEARING] = specification->drivetrain.given != NULL,
    };
    return described[figure->part] && !(quantity_rows[figure->quantity].policy & POLICY_BY_HAND);
}

/* What `compare` judges: whatever fails or needs care, what is unknown of what was asked, and of
 * designations alone the marks of the tyre, the limits on its diameter and the speedometer. */
static bool judged_here(const struct plan *plan, const struct figure *figure)
{
    const struct specification *specification = plan->specification;
    if (figure->verdict == VERDICT_FAIL || figure->verdict == VERDICT_CAUTION)
        return true;
    if (figure->verdict == VERDICT_UNKNOWN && is_asked(specification, figure))
        return true;
    if (quantity_rows[figure->quantity].policy & POLICY_OF_SIZE)
        return true;
    switch (figure->quantity) {
    case QUANTITY_SPEED_SYMBOL:
        return known(specification->vehicle.top_speed_mps);
    case QUANTITY_SPEEDOMETER_ERROR:
        return specification->speedometer.rule != NULL;
    default:
        return false;
    }
}

/* Where the file does not say what is needed, beside the fitted tyre: a caution for a lower speed
 * symbol, and for an instrument that would read under if the fitted tyre reads true. */
static void judge_beside(const struct plan *plan, size_t index, struct compare_row *row)
{
    const struct specification *specification = plan->specification;
    const struct service_description *before = &plan->fitted.axle[AXLE_FRONT].size.service;
    const struct service_description *after = &plan->setups[index].axle[AXLE_FRONT].size.service;
    row->worst = VERDICT_NONE;
    if (specification->speedometer.rule == NULL && row->error < -1e-9)
        row->beside = "the speedometer would read under";
    if (!known(specification->vehicle.top_speed_mps) &&
        speed_symbol_order(after->speed_symbol) < speed_symbol_order(before->speed_symbol))
        row->beside = "its speed symbol is below the fitted tyre's";
    if (row->beside != NULL) {
        row->worst = VERDICT_CAUTION;
        row->reasons = 1;
    }
}

/* Whether the fitted tyre has the same finding. */
static bool is_shared(const struct setup_figures *fitted, const struct figure *figure)
{
    for (size_t i = 0; i < fitted->count; i++) {
        const struct figure *other = fitted->items[i];
        if (figure_same(other, figure,
                        SAME_QUANTITY | SAME_VERDICT | SAME_AXLE | SAME_STATE | SAME_PLACE))
            return true;
    }
    return false;
}

/* groups: of the plan's setups, the fitted one first. */
static void judge(const struct plan *plan, const struct setup_figures *groups, size_t index,
                  struct compare_row *row)
{
    judge_beside(plan, index, row);
    bool shared = true;
    for (size_t i = 0; i < groups[index].count; i++) {
        const struct figure *figure = groups[index].items[i];
        if (figure->verdict == VERDICT_NONE || !judged_here(plan, figure))
            continue;
        if (worse(row->worst, figure->verdict) != row->worst) {
            row->worst = figure->verdict;
            row->beside = NULL;
            row->reason = NULL;
            row->reasons = 0;
            shared = true;
        }
        if (figure->verdict != row->worst)
            continue;
        row->reasons++;
        if (row->beside == NULL && shared && row->worst != VERDICT_OK) {
            shared = is_shared(&groups[0], figure);
            if (row->reason == NULL || !shared)
                row->reason = figure;
        }
    }
}

/* The error of the instrument with this setup at 100 in its unit. */
static double nominal_error(const struct setup_figures *figures)
{
    double error = UNKNOWN;
    for (size_t i = 0; i < figures->count; i++) {
        const struct figure *figure = figures->items[i];
        if (figure->quantity == QUANTITY_SPEEDOMETER_ERROR && figure->place.tyre == AT_NOMINAL)
            error = figure->value;
    }
    return error;
}

/* On the rims in use where both are known, otherwise nominal to nominal. */
static double width_change(const struct plan *plan, const struct setup *setup, enum axle axle,
                           const struct compare_row *row)
{
    if (known(plan->fitted.axle[axle].wheel.width_m) && known(setup->axle[axle].wheel.width_m))
        return row->after.width_on_rim_m - row->before.width_on_rim_m;
    return row->after.section_width_m - row->before.section_width_m;
}

static void fill_row(const struct plan *plan, const struct setup_figures *groups,
                     double true_at_100, size_t index, struct compare_row *row)
{
    const struct setup *setup = &plan->setups[index];
    const struct drivetrain *drivetrain = &plan->specification->drivetrain;
    enum axle axle = plan_driven_axle(plan);
    double ratio = of_axle(drivetrain->axle, axle);
    struct tyre_measures measures;
    tyre_measure(&setup->axle[axle], &measures);
    *row = (struct compare_row){
        .option = setup->name,
        .before = plan->beside[index].before[axle],
        .after = plan->beside[index].after[axle],
        .revs_per_m = 1 / measures.stated.rolling_circumference_m,
        .diameter_m = measures.stated.overall_diameter_m,
        .load_kg = load_of(setup, axle),
        .load_before_kg = load_of(&plan->fitted, axle),
    };
    double from = row->before.rolling_circumference_m, to = row->after.rolling_circumference_m;
    row->width_change_m = width_change(plan, setup, axle, row);
    row->effective = effective_axle_ratio(known_or(ratio, 1), from, to);
    row->restoring = restoring_axle_ratio(known_or(ratio, 1), from, to);
    designation_canonical(&setup->axle[axle].size, row->designation);
    row->error = nominal_error(&groups[index]);
    row->true_at_100 = true_at_100;
    judge(plan, groups, index, row);
}

/* Whether a table is written, which has room for words below it. */
static bool has_notes(const struct options *options)
{
    return strcmp(options->format, "table") == 0;
}

static void write_reason(struct arena *arena, const struct plan *plan, struct prose *prose,
                         const struct compare_row *row)
{
    const char *reason =
        row->beside != NULL ? row->beside : finding_name(arena, plan, row->reason, 0);
    const char *more =
        row->reasons < 2 ? "" : arena_format(arena, ", and %zu more", row->reasons - 1);
    prose_line(
        prose, 0, 4,
        arena_format(arena, "%s: %s: %s%s", row->option, verdict_name(row->worst), reason, more));
}

/* Below the table: why a verdict is what it is, and what was taken as so. */
static void write_notes(struct arena *arena, const struct plan *plan,
                        const struct compare_row *rows, struct rows_out *out)
{
    struct prose prose = {.out = &out->sink.out, .width = sink_page_width(&out->sink)};
    prose_end(&prose);
    for (size_t i = 1; i < plan->count; i++) {
        if (rows[i].reasons > 0 && rows[i].worst != VERDICT_OK)
            write_reason(arena, plan, &prose, &rows[i]);
        if (plan_shows_both_axles(plan, i))
            prose_line(&prose, 0, 4,
                       arena_format(arena, "%s: its row is that of the %s axle%s", rows[i].option,
                                    axle_name((int)plan_driven_axle(plan)),
                                    plan_drives_all_wheels(plan) ? "" : ", which is driven"));
    }
    if (report_takes_true(plan))
        prose_line(&prose, 0, 4, "taken so: the speedometer reads true on the fitted tyre");
}

/* A file's verdict is that of all its parts; designations alone tell of the tyre only. */
static void report_all(const struct plan *plan, struct figures *figures)
{
    if (plan->specification->given != NULL) {
        parts_report(CMD_ANY, plan, figures);
        return;
    }
    report_tyre(plan, figures);
    for (size_t i = 0; i < plan->count; i++)
        report_size_limits(plan, i, figures);
    report_speedometer_verdicts(plan, figures);
}

static enum exit_status write_plan(struct arena *arena, const struct options *options,
                                   const struct plan *plan)
{
    struct figures figures = {.arena = arena};
    report_all(plan, &figures);
    struct rows_out *rows = arena_allocate(arena, sizeof *rows);
    enum exit_status begun =
        rows_begin(arena, rows, options, compare_columns, compare_column_count, false);
    if (begun != EXIT_COMPUTED)
        return begun;
    double *true_at_100 = arena_allocate_array(arena, plan->count, sizeof *true_at_100);
    report_true_at_100(plan, true_at_100);
    const struct setup_figures *groups = plan_group_figures(plan, &figures);
    struct compare_row *filled = arena_allocate_array(arena, plan->count, sizeof *filled);
    bool failed = false;
    for (size_t i = 1; i < plan->count; i++) {
        fill_row(plan, groups, true_at_100[i], i, &filled[i]);
        failed = failed || filled[i].worst == VERDICT_FAIL;
        rows_add(rows, &filled[i]);
    }
    writer_end(&rows->writer);
    if (has_notes(options))
        write_notes(arena, plan, filled, rows);
    if (!sink_close(&rows->sink, true))
        return EXIT_NOT_WRITTEN;
    return options->strict && failed ? EXIT_FINDING_FAIL : EXIT_COMPUTED;
}

static enum exit_status compare_file(struct arena *arena, const struct options *options)
{
    struct specification *specification = arena_allocate(arena, sizeof *specification);
    struct plan plan;
    if (!input_read_build_file(arena, operand(options, 0), specification))
        return EXIT_INPUT_WRONG;
    if (!plan_make(arena, specification, options->units == UNITS_US, options->option, &plan)) {
        report_unknown_option(specification, options->option);
        return EXIT_INPUT_WRONG;
    }
    return write_plan(arena, options, &plan);
}

/* Setups from designations: a specification that says nothing else. */
struct bare_plan {
    struct specification specification;
    struct designation fitted;
};

static void plan_from_sizes(struct arena *arena, const struct specification *specification, bool us,
                            size_t count, struct plan *out)
{
    *out = (struct plan){.arena = arena,
                         .specification = specification,
                         .us = us,
                         .setups = arena_allocate_array(arena, count, sizeof *out->setups),
                         .count = count};
}

static enum exit_status compare_arguments(struct arena *arena, const struct options *options)
{
    size_t count = operand_count(options);
    struct specification *specification = arena_allocate(arena, sizeof *specification);
    specification_clear(specification);
    struct plan plan;
    plan_from_sizes(arena, specification, options->units == UNITS_US, count, &plan);
    bool all_read = true;
    for (size_t i = 0; i < count; i++) {
        struct designation size;
        const char *name = i == 0 ? "fitted" : arena_format(arena, "option %zu", i);
        if (argument_designation(arena, operand(options, i),
                                 arena_format(arena, "argument %zu", i + 1), &size))
            setup_from_designation(&size, name, &plan.setups[i]);
        else
            all_read = false;
    }
    if (!all_read) {
        hint_at_arguments(options);
        return EXIT_INPUT_WRONG;
    }
    plan_set_beside(&plan);
    return write_plan(arena, options, &plan);
}

static bool add_option(struct span text, struct rows_out *rows, void *context)
{
    struct bare_plan *bare = context;
    struct designation size;
    struct designation_error error;
    if (!designation_parse(text, &size, &error)) {
        char unread[UNREAD_SIZE], message[UNREAD_MESSAGE_SIZE];
        unread_text(text, &error, unread, message);
        struct compare_row row = {.unread = message};
        memcpy(row.designation, unread, sizeof row.designation - 1);
        rows_add(rows, &row);
        return false;
    }
    struct arena scratch = ARENA_EMPTY;
    struct plan plan;
    plan_from_sizes(&scratch, &bare->specification, false, 2, &plan);
    setup_from_designation(&bare->fitted, "fitted", &plan.setups[0]);
    setup_from_designation(&size, "option", &plan.setups[1]);
    plan_set_beside(&plan);
    struct figures figures = {.arena = &scratch};
    report_tyre(&plan, &figures);
    report_speedometer_verdicts(&plan, &figures);
    double true_at_100[2];
    report_true_at_100(&plan, true_at_100);
    struct compare_row row;
    fill_row(&plan, plan_group_figures(&plan, &figures), true_at_100[1], 1, &row);
    rows_add(rows, &row);
    arena_free(&scratch);
    return true;
}

static enum exit_status compare_stream(struct arena *arena, const struct options *options)
{
    struct bare_plan *bare = arena_allocate(arena, sizeof *bare);
    specification_clear(&bare->specification);
    if (!argument_designation(arena, options->fitted, "--fitted", &bare->fitted))
        return EXIT_INPUT_WRONG;
    return row_stream_run(arena, options, compare_columns, stream_column_count, add_option, bare);
}

enum exit_status run_compare(struct arena *arena, const struct command *command,
                             const struct options *options)
{
    (void)command;
    bool stream = span_is(span_of(operand(options, 0)), "-") && options->fitted != NULL;
    if (options->fitted != NULL && (!stream || operand_count(options) > 1)) {
        diagnostics_plain("--fitted goes with `compare -`, a stream of options; expected no other "
                          "arguments");
        return EXIT_INPUT_WRONG;
    }
    if (stream)
        return compare_stream(arena, options);
    return operand_count(options) == 1 ? compare_file(arena, options)
                                       : compare_arguments(arena, options);
}

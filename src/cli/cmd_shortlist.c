/* tyresum shortlist: every listed size on every wheel, with every spring, height and axle ratio,
 * that goes, best first. */
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include "base/diagnostics.h"
#include "base/known.h"
#include "cli/cases.h"
#include "cli/missing_sets.h"
#include "cli/progress.h"
#include "reading/prose.h"
#include "cli/stock_list.h"
#include "output/number.h"
#include "report/shortlist/shortlist.h"
#include "size/quantity_text.h"

struct shortlist_row {
    const char **carried; /* first, as columns.h wants it */
    const struct shortlisted *item;
    size_t rank;
    char designation[DESIGNATION_CANONICAL_SIZE];
    const char *closest;
    const char *tasks, *records;
};

struct shown {
    const struct shortlisted *items;
    size_t count;
};

#define SHORTLIST_NUMBER(name, expression)                                                         \
    static struct column_value name(const void *data, bool us)                                     \
    {                                                                                              \
        const struct shortlist_row *row = data;                                                    \
        (void)us;                                                                                  \
        return (struct column_value){.value = (expression)};                                       \
    }
#define SHORTLIST_TEXT(name, expression)                                                           \
    static struct column_value name(const void *data, bool us)                                     \
    {                                                                                              \
        const struct shortlist_row *row = data;                                                    \
        (void)us;                                                                                  \
        return (struct column_value){.text = (expression)};                                        \
    }

SHORTLIST_NUMBER(get_rank, (double)row->rank)
SHORTLIST_TEXT(get_designation, row->designation)
SHORTLIST_NUMBER(get_rim_width, row->item->rim_width_m)
SHORTLIST_NUMBER(get_inset, row->item->inset_m)
SHORTLIST_NUMBER(get_axle_ratio, row->item->axle_ratio)
SHORTLIST_NUMBER(get_drive_remains, 100 * row->item->drive_remains)
SHORTLIST_NUMBER(get_diameter, row->item->diameter_m)
SHORTLIST_NUMBER(get_diameter_change, row->item->diameter_change_m)
SHORTLIST_NUMBER(get_load, row->item->load_kg)
SHORTLIST_NUMBER(get_pressure_front, row->item->pressure_Pa.front)
SHORTLIST_NUMBER(get_pressure_rear, row->item->pressure_Pa.rear)
SHORTLIST_NUMBER(get_error, 100 * row->item->speedometer_error)
SHORTLIST_TEXT(get_closest, row->closest)
SHORTLIST_NUMBER(get_margin, 100 * row->item->closest_margin)
SHORTLIST_NUMBER(get_unknowns, (double)row->item->found.counts[VERDICT_UNKNOWN])
SHORTLIST_TEXT(get_verdict, verdict_name(option_outcome_verdict(&row->item->found)))
SHORTLIST_TEXT(get_outcome, outcome_name(row->item->found.outcome))
SHORTLIST_TEXT(get_tasks, row->tasks)

static const char *spring_name(const struct spring_choice *spring)
{
    return spring == NULL ? NULL : spring->name;
}
SHORTLIST_TEXT(get_spring_front, spring_name(row->item->spring[AXLE_FRONT]))
SHORTLIST_TEXT(get_spring_rear, spring_name(row->item->spring[AXLE_REAR]))
SHORTLIST_NUMBER(get_lift_front, row->item->lift_m[AXLE_FRONT])
SHORTLIST_NUMBER(get_lift_rear, row->item->lift_m[AXLE_REAR])
SHORTLIST_TEXT(get_records, row->records)

#define BARE(name, title, decimals, priority, get)                                                 \
    {                                                                                              \
        name, NULL, title, UNIT_BARE, UNIT_BARE, decimals, decimals, false, 8, priority, GET(get)  \
    }
#define LENGTH(name, title, priority, get)                                                         \
    {                                                                                              \
        name "_mm", name "_in", title, UNIT_MM, UNIT_IN, 0, 2, false, 8, priority, GET(get)        \
    }
#define TEXT_COLUMN(name, title, priority, get)                                                    \
    {                                                                                              \
        name, NULL, title, UNIT_BARE, UNIT_BARE, 0, 0, true, 20, priority, GET(get)                \
    }
#define SPRING(name, title, get)                                                                   \
    {                                                                                              \
        name, NULL, title, UNIT_BARE, UNIT_BARE, 0, 0, true, 20, PRIORITY_BELOW, get, 0, 0,        \
            COLUMN_SOMETIMES                                                                       \
    }
#define PRESSURE(name, title, get)                                                                 \
    {                                                                                              \
        name "_kPa", name "_psi", title, UNIT_KPA, UNIT_PSI, 0, 0, false, 8, 3, GET(get)           \
    }

/* What is chosen for a row is left out last, and early where no row has it otherwise than now. */
enum { PRIORITY_UNTOLD = 6 };

const struct column shortlist_columns[] = {
    BARE("rank", "rank", 0, 0, get_rank),
    TEXT_COLUMN("designation", "designation", 0, get_designation),
    {"rim_width_in", NULL, "rim width", UNIT_IN, UNIT_IN, 2, 2, false, 6, PRIORITY_BELOW,
     GET(get_rim_width)},
    LENGTH("inset", "inset", PRIORITY_BELOW, get_inset),
    BARE("axle_ratio", "axle ratio", 3, PRIORITY_BELOW, get_axle_ratio),
    BARE("drive_remains_percent", "drive remains %", 2, 3, get_drive_remains),
    LENGTH("overall_diameter", "overall diameter", 4, get_diameter),
    LENGTH("overall_diameter_change", "diameter change", 3, get_diameter_change),
    {"load_kg", "load_lb", "load", UNIT_KG, UNIT_LB, 0, 0, false, 6, 4, GET(get_load)},
    PRESSURE("pressure_front", "pressure front", get_pressure_front),
    PRESSURE("pressure_rear", "pressure rear", get_pressure_rear),
    BARE("speedometer_error_percent", "speedometer error %", 2, 5, get_error),
    TEXT_COLUMN("closest_limit", "closest limit", 2, get_closest),
    BARE("closest_margin_percent", "margin %", 1, 4, get_margin),
    BARE("unknowns", "unknown", 0, 6, get_unknowns),
    TEXT_COLUMN("verdict", "verdict", 7, get_verdict),
    TEXT_COLUMN("outcome", "outcome", 0, get_outcome),
    TEXT_COLUMN("tasks", "tasks", 1, get_tasks),
    SPRING("spring_front", "spring front", get_spring_front), /* of a file with choices: */
    SPRING("spring_rear", "spring rear", get_spring_rear),
    LENGTH("lift_front", "lift front", PRIORITY_BELOW, get_lift_front),
    LENGTH("lift_rear", "lift rear", PRIORITY_BELOW, get_lift_rear),
    TEXT_COLUMN("records", "records", 8, get_records), /* of a stock list */
};
const size_t shortlist_column_count = sizeof shortlist_columns / sizeof shortlist_columns[0];

static void tell_outcomes(FILE *to, const struct shortlist *list)
{
    const size_t *counts = list->outcomes;
    fprintf(to, "tyresum: %zu combinations tried: %zu go, %zu go after work, %zu open\n",
            list->tried, counts[OUTCOME_GO], counts[OUTCOME_WORK], counts[OUTCOME_OPEN]);
    if (list->asked_only)
        fprintf(to, "changes that no limit asks for are not counted\n");
    if (list->count == 0)
        fprintf(to, "none is left: %s\n",
                list->miss_count > 0 ? "the nearest misses are shown" : "none could be judged");
    if (list->reason_count > 0)
        fprintf(to, "sizes on wheels dropped by\n");
}

/* "12 by arch_inner (4 by that alone, from 3 mm short)": what would let more in. */
static void tell_reasons(FILE *to, const struct shortlist *list)
{
    tell_outcomes(to, list);
    for (size_t i = 0; i < list->reason_count; i++) {
        const struct drop_reason *reason = &list->reasons[i];
        fprintf(to, "  %6zu  %s", reason->count, reason->name);
        if (reason->alone > 0)
            fprintf(to, " (%zu by that alone", reason->alone);
        if (reason->alone > 0 && known(reason->short_m))
            fprintf(to, ", from %.1f mm short", reason->short_m * 1000);
        fprintf(to, "%s\n", reason->alone > 0 ? ")" : "");
    }
}

static bool best_of(const struct options *options, size_t *best)
{
    *best = SHORTLIST_ROWS_MAX;
    if (options->best == NULL)
        return true;
    double value;
    struct span text = span_of(options->best);
    if (decimal_read(text, &value) == text.length && value >= 1 && value <= 1e9 &&
        value == (double)(size_t)value) {
        *best = (size_t)value;
        return true;
    }
    diagnostics_plain("\"%s\" is no number for --best; expected a whole one such as 10",
                      options->best);
    return false;
}

/* "14 mm left", "7 mm short". */
static const char *amount_left(struct arena *arena, const struct options *options,
                               const struct shortlisted *item)
{
    bool us = options->units == UNITS_US;
    const struct quantity_row *row = item->closest_limit;
    enum unit_id unit = us ? row->us : row->metric;
    char text[NUMBER_SIZE];
    if (!known(item->closest_left))
        return item->found.outcome == OUTCOME_NO_GO ? "none that is allowed" : "not known";
    number_fixed(unit_from_si(unit, fabs(item->closest_left)),
                 us ? row->decimals_us : row->decimals_metric, options->decimal == 1 ? ',' : '.',
                 text);
    return arena_format(arena, "%s %s %s", text, unit_table[unit].name,
                        item->closest_left < 0 ? "short" : "left");
}

/* The limit's name as scripts have it; for reading its title, and how much is left. */
static const char *closest_text(struct arena *arena, const struct options *options,
                                const struct shortlisted *item, bool for_reading)
{
    const struct quantity_row *limit = item->closest_limit;
    const char *axle = axle_name(item->closest_axle);
    if (limit == NULL)
        return NULL;
    const char *name = arena_format(arena, "%s%s%s", for_reading ? limit->title : limit->name,
                                    *axle ? " " : "", axle);
    return for_reading ? arena_format(arena, "%s: %s", name, amount_left(arena, options, item))
                       : name;
}

/* "1 order, 2 set": how many of each kind, in workshop order; NULL: none. */
static const char *tasks_text(struct arena *arena, const struct option_outcome *found)
{
    const char *text = NULL;
    for (int kind = TASK_TO_MEASURE; kind <= TASK_TO_TELL; kind++)
        if (found->work[kind] > 0)
            text = arena_format(arena, "%s%s%zu %s", text == NULL ? "" : text,
                                text == NULL ? "" : ", ", found->work[kind],
                                task_kind_name((enum task_kind)kind));
    return text;
}

/* What is chosen among nothing has no column, unless it is asked for or other builds may have it.
 */
static bool is_shown(const struct column *column, const struct build_case *build)
{
    const struct suspension *suspension = &build->specification->suspension;
    const struct axle_suspension *front = &suspension->front, *rear = &suspension->rear;
    if (build->options->columns != NULL || build->options->cases)
        return true;
    return column->get == get_spring_front  ? front->spring_choices.count > 0
           : column->get == get_spring_rear ? rear->spring_choices.count > 0
           : column->get == get_lift_front  ? front->lift_choices.count > 0
           : column->get == get_lift_rear   ? rear->lift_choices.count > 0
                                            : true;
}

/* Whether a row has there what the vehicle has not: by that the rows are told apart, and ordered.
 */
static bool tells(const struct column *column, const struct plan *plan, const struct shown *shown)
{
    enum axle axle = plan_driven_axle(plan);
    const struct wheel *wheel = &plan->fitted.axle[axle].wheel;
    const struct shortlisted as_it_is = {.rim_width_m = wheel->width_m,
                                         .inset_m = wheel->inset_m,
                                         .axle_ratio =
                                             of_axle(plan->specification->drivetrain.axle, axle)};
    const struct column_value now = column->get(&(struct shortlist_row){.item = &as_it_is}, false);
    for (size_t i = 0; i < shown->count; i++) {
        const struct column_value value =
            column->get(&(struct shortlist_row){.item = &shown->items[i]}, false);
        if (value.text != now.text || !same_value(value.value, now.value))
            return true;
    }
    return false;
}

/* One whose name the stock list has too is told apart from it. */
static void tell_apart(struct arena *arena, const struct stock_list *stock, struct column *column)
{
    for (int us = 0; us < 2; us++) {
        const char **name = us ? &column->name_us : &column->name, *ours = *name;
        if (ours == NULL)
            continue;
        *name = csv_heading_own(arena, &stock->carry, ours);
        csv_heading_tell_own(ours, *name);
    }
}

/* Ours and, behind them, the carried columns of the stock list. */
static struct column *with_carried(const struct build_case *build, const struct plan *plan,
                                   const struct stock_list *stock, const struct shown *shown,
                                   size_t *count)
{
    size_t carried = stock->carry.shape.fields;
    struct column *columns =
        arena_allocate_array(build->shared, shortlist_column_count + carried, sizeof *columns);
    *count = 0;
    for (size_t i = 0; i < shortlist_column_count; i++) {
        columns[*count] = shortlist_columns[i];
        if (columns[*count].priority == PRIORITY_BELOW &&
            !tells(&shortlist_columns[i], plan, shown))
            columns[*count].priority = PRIORITY_UNTOLD;
        tell_apart(build->shared, stock, &columns[*count]);
        *count += is_shown(&shortlist_columns[i], build);
    }
    for (size_t i = 0; i < carried; i++)
        columns[(*count)++] = (struct column){.name = stock->carry.names[i],
                                              .title = stock->carry.names[i],
                                              .kind = COLUMN_TEXT,
                                              .width = 12,
                                              .at = (unsigned)i,
                                              .needs = COLUMN_BROUGHT};
    return columns;
}

static void write_list(struct arena *arena, const struct options *options, struct rows_out *rows,
                       const struct stock_list *stock, const struct shown *shown,
                       const struct designation *kept)
{
    bool for_reading = strcmp(options->format, "table") == 0;
    const struct shortlisted *items = shown->items;
    for (size_t i = 0; i < shown->count; i++) {
        struct shortlist_row row = {NULL,
                                    &items[i],
                                    i + 1,
                                    "",
                                    closest_text(arena, options, &items[i], for_reading),
                                    tasks_text(arena, &items[i].found),
                                    NULL};
        if (stock->records != NULL) {
            size_t at = (size_t)(items[i].candidate - stock->items);
            row.records = stock->records[at];
            row.carried = stock->carried[at];
        }
        designation_canonical(items[i].candidate == NULL ? kept : &items[i].candidate->size,
                              row.designation);
        rows_add(rows, &row);
    }
}

/* What is left, or the nearest misses where nothing is. */
static struct shown shown_of(const struct shortlist *list, size_t best)
{
    bool left = list->count > 0;
    size_t count = left ? list->count : list->miss_count;
    return (struct shown){left ? list->items : list->misses, count < best ? count : best};
}

static bool has_search(struct arena *arena, const struct build_case *build)
{
    const struct search *search = &build->specification->search;
    if (search->given != NULL && search->rims.count > 0)
        return true;
    const char *sets = missing_sets(arena, build, " ");
    diagnostics_plain(
        "%s %s no key \"search\" with rims, which `shortlist` needs; expected %s",
        build_source_name(build->source), *sets ? "have" : "has",
        *sets ? sets : "such as search: {rims: [{diameter: 17, width: 8 in, inset: 25 mm}]}");
    return false;
}

/* --option keeps that tyre and its wheel, and nothing is listed. */
static bool has_tyres(struct arena *arena, const struct build_case *build, struct stock_list *stock)
{
    const struct options *options = build->options;
    const struct search *search = &build->specification->search;
    *stock = (struct stock_list){.count = 0};
    if (options->option == NULL)
        return has_search(arena, build) &&
               stock_list_read(arena, search, build->source, options->carry, stock);
    bool fitted = strcmp(options->option, "fitted") == 0;
    if (fitted)
        diagnostics_plain("--option fitted: the fitted tyre is no option; expected the name or "
                          "letter of one, which may have the same size");
    if (options->carry != NULL)
        diagnostics_plain("--carry goes with a stock list, and --option with none");
    return !fitted && options->carry == NULL;
}

/* So many that nobody would wait for them. */
static bool are_too_many(struct arena *arena, const struct build_case *build,
                         const struct plan *plan, const struct shortlist_request *request)
{
    const struct suspension *suspension = &build->specification->suspension;
    size_t count = shortlist_size(plan, request);
    bool front = suspension->front.spring_choices.count + suspension->front.lift_choices.count > 0;
    if (count <= SHORTLIST_SIZE_MAX)
        return false;
    build_source_fault(
        arena, build->source, place_of(suspension->given, front ? "front" : "rear"),
        arena_format(arena,
                     "sizes on wheels x springs x heights x axle ratios are %zu combinations; "
                     "expected at most %d: fewer spring_choices, lift_choices or axle_choices, or "
                     "fewer sizes by search: forms, overall_diameter or rims",
                     count, SHORTLIST_SIZE_MAX));
    return true;
}

static void tell_rest(const struct options *options, const struct stock_list *stock,
                      const struct shortlist *list)
{
    if (options->quiet)
        return;
    tell_reasons(stderr, list);
    if (options->best == NULL && list->count == SHORTLIST_ROWS_MAX)
        fprintf(stderr, "tyresum: only the best %d are shown; --best N shows N\n",
                SHORTLIST_ROWS_MAX);
    if (stock->unread > 0)
        fprintf(stderr, "tyresum: %zu of %zu records of the stock list could not be read\n",
                stock->unread, stock->read);
}

static enum exit_status shortlist_case(struct arena *arena, const struct build_case *build)
{
    const struct options *options = build->options;
    struct plan plan;
    struct stock_list stock;
    struct shortlist list;
    struct progress progress = progress_begin(stderr, options->quiet);
    struct shortlist_request request = {.progress = progress_tell, .progress_of = &progress};
    if (!best_of(options, &request.best) || !has_tyres(arena, build, &stock) ||
        !case_plan(arena, build, &plan))
        return EXIT_INPUT_WRONG;
    request.candidates = stock.items;
    request.count = stock.count;
    if (are_too_many(arena, build, &plan, &request))
        return EXIT_INPUT_WRONG;
    shortlist_make(&plan, &request, &list);
    progress_end(&progress);
    size_t column_count;
    const struct shown shown = shown_of(&list, request.best);
    struct column *columns = with_carried(build, &plan, &stock, &shown, &column_count);
    struct rows_out *rows = case_table(arena, build, columns, column_count);
    if (rows == NULL)
        return case_not_begun(build);
    write_list(arena, options, rows, &stock, &shown,
               &plan.setups[plan.count - 1].axle[AXLE_FRONT].size);
    struct sink *sink = case_table_end(build, rows);
    if (!outbuf_flush(sink == NULL ? &rows->sink.out : &sink->out)) /* before words on it */
        return EXIT_NOT_WRITTEN;
    tell_rest(options, &stock, &list);
    return stock.unread > 0 ? EXIT_LINES_UNREAD : EXIT_COMPUTED;
}

enum exit_status run_shortlist(struct arena *arena, const struct command *command,
                               const struct options *options)
{
    return cases_run(arena, command, options, shortlist_case);
}

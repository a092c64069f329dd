/* tyresum compare: each option beside the fitted tyre, from designations or a build file. */
#include <string.h>

#include "base/diagnostics.h"
#include "base/known.h"
#include "cli/cases.h"
#include "cli/mistakes.h"
#include "cli/row_stream.h"
#include "cli/stream.h"
#include "reading/compare_text.h"
#include "reading/prose.h"
#include "report/compare.h"

struct compare_row {
    struct compared is; /* nothing of a line that could not be read */
    const char *option;
    char designation[DESIGNATION_CANONICAL_SIZE];
    const char *unread; /* why: of a stream's line that could not be read */
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
    return row->is.after.overall_diameter_m - row->is.before.overall_diameter_m;
}

static double ground_change(const struct compare_row *row)
{
    return row->is.after.static_loaded_radius_m - row->is.before.static_loaded_radius_m;
}

/* None that is allowed is told below the table. */
static double equal_load_Pa(const struct compare_row *row)
{
    return isfinite(row->is.equal_load.pressure_Pa) ? row->is.equal_load.pressure_Pa : UNKNOWN;
}

COMPARE_TEXT(get_option, row->option)
COMPARE_TEXT(get_designation, row->designation)
COMPARE_NUMBER(get_diameter, row->is.diameter_m)
COMPARE_NUMBER(get_change, diameter_change(row))
COMPARE_NUMBER(get_change_percent, 100 * diameter_change(row) / row->is.before.overall_diameter_m)
COMPARE_NUMBER(get_width_change, row->is.width_change_m)
COMPARE_NUMBER(get_revs, row->is.revs_per_m)
COMPARE_NUMBER(get_error, 100 * row->is.error)
COMPARE_NUMBER(get_true, row->is.true_at_100)
COMPARE_NUMBER(get_effective, row->is.effective)
COMPARE_NUMBER(get_restoring, row->is.restoring)
COMPARE_NUMBER(get_load, row->is.load_kg)
COMPARE_NUMBER(get_load_change, 100 * (row->is.load_kg / row->is.load_before_kg - 1))
COMPARE_NUMBER(get_reference, row->is.equal_load.reference_Pa)
COMPARE_NUMBER(get_equal_load, equal_load_Pa(row))
COMPARE_NUMBER(get_ground, ground_change(row))
COMPARE_TEXT(get_outcome, row->unread ? NULL : outcome_name(row->is.outcome))
COMPARE_TEXT(get_verdict, verdict_name(row->is.worst))
COMPARE_TEXT(get_error_text, row->unread)

#define TEXT_COLUMN(name, title, priority, get)                                                    \
    {                                                                                              \
        name, NULL, title, UNIT_BARE, UNIT_BARE, 0, 0, true, 12, priority, GET(get)                \
    }
#define LENGTH(name, title, decimals, priority, get)                                               \
    {                                                                                              \
        name "_mm", name "_in", title, UNIT_MM, UNIT_IN, decimals, 2, false, 9, priority, GET(get) \
    }
#define PRESSURE(name, title, priority, get)                                                       \
    {                                                                                              \
        name "_kPa", name "_psi", title, UNIT_KPA, UNIT_PSI, 0, 1, false, 9, priority, GET(get)    \
    }
#define BARE(name, title, decimals, priority, get)                                                 \
    {                                                                                              \
        name, NULL, title, UNIT_BARE, UNIT_BARE, decimals, decimals, false, 9, priority, GET(get)  \
    }

const struct column compare_columns[] = {
    TEXT_COLUMN("option", "option", 0, get_option),
    TEXT_COLUMN("designation", "designation", 0, get_designation),
    LENGTH("overall_diameter", "overall diameter", 1, 5, get_diameter),
    LENGTH("overall_diameter_change", "diameter change", 1, 0, get_change),
    BARE("overall_diameter_change_percent", "diameter change %", 2, 8, get_change_percent),
    LENGTH("section_width_change", "width change", 1, 4, get_width_change),
    {"revs_per_km", "revs_per_mile", "revolutions", UNIT_PER_KM, UNIT_PER_MILE, 1, 1, false, 9, 7,
     GET(get_revs)},
    BARE("speedometer_error_percent", "speedometer error %", 2, 1, get_error),
    BARE("true_speed_at_100", "true speed at 100", 1, 3, get_true),
    BARE("effective_axle_ratio", "effective axle ratio", 3, 9, get_effective),
    BARE("restoring_axle_ratio", "restoring axle ratio", 3, 6, get_restoring),
    {"load_kg", "load_lb", "load by the index", UNIT_KG, UNIT_LB, 0, 0, false, 7, 2, GET(get_load)},
    BARE("load_change_percent", "load by the index, change %", 1, 8, get_load_change),
    PRESSURE("reference_pressure", "pressure of its index, not to set", 6, get_reference),
    PRESSURE("equal_load_pressure", "equal-load pressure, not to set", 2, get_equal_load),
    LENGTH("ground_clearance_change", "ground clearance change", 1, 4, get_ground),
    TEXT_COLUMN("outcome", "outcome", 0, get_outcome),
    TEXT_COLUMN("verdict", "verdict", 1, get_verdict),
    TEXT_COLUMN("error", "error", 0, get_error_text), /* of a stream only */
};
static const size_t stream_column_count = sizeof compare_columns / sizeof compare_columns[0];
const size_t compare_column_count = sizeof compare_columns / sizeof compare_columns[0] - 1;

static void fill_row(const struct comparison *comparison, size_t index, struct compare_row *row)
{
    *row = (struct compare_row){.option = comparison->plan->setups[index].name};
    comparison_row(comparison, index, &row->is);
    designation_canonical(&row->is.setup->axle[row->is.axle].size, row->designation);
}

/* Below a table, which has room for words. */
static void write_notes(struct arena *arena, const struct plan *plan,
                        const struct compare_row *rows, struct sink *sink, bool page)
{
    const struct compared **compared = arena_allocate_array(arena, plan->count, sizeof *compared);
    for (size_t i = 0; i < plan->count; i++)
        compared[i] = &rows[i].is;
    struct prose prose = {.out = &sink->out, .width = sink_page_width(sink), .markup = page};
    compare_notes_text(arena, plan, compared, &prose);
}

/* An option that is no go; of designations alone, one with a finding that fails. The fitted tyre is
 * asked of only where it stands alone. */
static bool any_fails(const struct plan *plan, const struct compare_row *rows)
{
    for (size_t i = plan->count > 1; i < plan->count; i++)
        if (rows[i].is.worst == VERDICT_FAIL)
            return true;
    return false;
}

/* A table of each case with its notes, or rows of all of them. */
static bool write_plan(struct arena *arena, const struct build_case *build, const struct plan *plan,
                       struct compare_row *filled)
{
    struct comparison comparison;
    comparison_begin(plan, &comparison);
    const bool for_reading = strcmp(build->options->format, "table") == 0;
    struct rows_out *rows = case_table(arena, build, compare_columns, compare_column_count);
    if (rows == NULL)
        return false;
    for (size_t i = 0; i < plan->count; i++) {
        fill_row(&comparison, i, &filled[i]);
        if (for_reading)
            filled[i].option =
                compare_option_text(arena, &plan->setups[i], sink_page_width(&rows->sink));
        rows_add(rows, &filled[i]);
    }
    struct sink *sink = case_table_end(build, rows);
    if (sink != NULL && (for_reading || rows->page))
        write_notes(arena, plan, filled, sink, rows->page);
    return true;
}

static enum exit_status compare_case(struct arena *arena, const struct build_case *build)
{
    struct plan plan;
    if (!case_plan(arena, build, &plan))
        return EXIT_INPUT_WRONG;
    struct compare_row *filled = arena_allocate_array(arena, plan.count, sizeof *filled);
    if (!write_plan(arena, build, &plan, filled))
        return case_not_begun(build);
    return build->options->strict && any_fails(&plan, filled) ? EXIT_FINDING_FAIL : EXIT_COMPUTED;
}

/* Setups from designations: a specification that says nothing else. */
struct bare_plan {
    struct specification specification;
    struct designation fitted;
    bool failed;          /* a finding of an option */
    struct arena scratch; /* of one row after the other */
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

static bool add_option(struct span text, struct rows_out *rows, void *context)
{
    struct bare_plan *bare = context;
    struct designation size;
    struct designation_error error;
    char taken[TAKEN_SIZE];
    if (!designation_read(text, &size, &error, taken)) {
        char unread[UNREAD_SIZE], message[UNREAD_MESSAGE_SIZE];
        unread_text(text, &error, unread, message);
        struct compare_row row = {.unread = message};
        memcpy(row.designation, unread, sizeof row.designation - 1);
        rows_add(rows, &row);
        return false;
    }
    struct plan plan;
    plan_from_sizes(&bare->scratch, &bare->specification, false, 2, &plan);
    setup_from_designation(&bare->fitted, "fitted", &plan.setups[0]);
    setup_from_designation(&size, "option", &plan.setups[1]);
    plan_set_beside(&plan);
    struct comparison comparison;
    comparison_begin(&plan, &comparison);
    struct compare_row row;
    fill_row(&comparison, 1, &row);
    bare->failed = bare->failed || row.is.worst == VERDICT_FAIL;
    rows_add(rows, &row);
    arena_reuse(&bare->scratch);
    return true;
}

static enum exit_status compare_stream(struct arena *arena, const struct options *options)
{
    struct bare_plan *bare = arena_allocate(arena, sizeof *bare);
    specification_clear(&bare->specification);
    char taken[TAKEN_SIZE];
    struct designation_error error;
    if (!designation_read(span_of(options->fitted), &bare->fitted, &error, taken)) {
        argument_unread(arena, options->fitted, "--fitted", &error);
        return EXIT_INPUT_WRONG;
    }
    enum exit_status status = row_stream_run(arena, options, compare_columns, stream_column_count,
                                             add_option, bare, true);
    arena_free(&bare->scratch);
    bool written = status == EXIT_COMPUTED || status == EXIT_LINES_UNREAD;
    return written && options->strict && bare->failed ? EXIT_FINDING_FAIL : status;
}

enum exit_status run_compare(struct arena *arena, const struct command *command,
                             const struct options *options)
{
    bool stream = span_is(span_of(operand(options, 0)), "-") && options->fitted != NULL;
    if (options->fitted != NULL && (!stream || operand_count(options) > 1)) {
        diagnostics_plain("--fitted goes with `compare -`, a stream of options; expected no other "
                          "arguments");
        return EXIT_INPUT_WRONG;
    }
    if (stream)
        return compare_stream(arena, options);
    if (operand_count(options) == 1 && !operand_is_file(operand(options, 0))) {
        hint_at_designation(operand(options, 0));
        return EXIT_INPUT_WRONG;
    }
    return cases_run(arena, command, options, compare_case);
}

/* tyresum speedometer, gearing, load, clearance and sheet: the parts of a build file. */
#include "base/diagnostics.h"
#include "base/known.h"
#include "build/keys.h"
#include "cli/cases.h"
#include "cli/figure_rows.h"
#include "reading/figure_value.h"
#include "reading/findings_text.h"
#include "reading/page.h"
#include "reading/part_table.h"
#include "cli/layout_out.h"
#include "cli/missing_sets.h"
#include "cli/parts.h"
#include "compute/gearing.h"
#include "reading/picture.h"
#include "reading/prose.h"
#include "reading/sheet_text.h"
#include "report/even_places.h"
#include "report/solving/solving.h"

const struct part_row part_rows[PART_ROW_COUNT] = {
    {CMD_SHEET, 0, report_tyre, PART_TYRE},
    {CMD_CLEARANCE | CMD_SHEET, USE_CLEARANCE, report_clearance, PART_CLEARANCE},
    {CMD_LOAD | CMD_SHEET, USE_LOAD, report_load, PART_LOAD},
    {CMD_SPEEDOMETER | CMD_SHEET, USE_SPEEDOMETER, report_speedometer, PART_SPEEDOMETER},
    {CMD_GEARING | CMD_SHEET, USE_GEARING, report_gearing, PART_GEARING},
};

void parts_report(unsigned commands, const struct plan *plan, struct figures *figures)
{
    for (size_t i = 0; i < PART_ROW_COUNT; i++)
        if (part_rows[i].command & commands)
            part_rows[i].report(plan, figures);
}

/* A single command needs its part of the file; a sheet says what is missing and goes on. */
static bool has_its_part(struct arena *arena, const struct build_case *build)
{
    const struct command *command = build->command;
    const struct specification *specification = build->specification;
    const struct {
        unsigned command;
        const struct given *given;
        const char *key, *example;
    } needed[] = {
        {CMD_GEARING, specification->drivetrain.given, "drivetrain", "gears and axle"},
        {CMD_GEARING,
         has_gearbox(&specification->drivetrain) ? specification->drivetrain.given : NULL, "gears",
         "axle, such as gears: [3.87, 2.21, 1.49]"},
        {CMD_LOAD, specification->vehicle.given, "vehicle", "wheelbase and unladen"},
        {CMD_CLEARANCE, specification->clearance.given, "clearance", "ground, under_axle and arch"},
    };
    for (size_t i = 0; i < sizeof needed / sizeof needed[0]; i++) {
        if (!(needed[i].command & command->bit) || needed[i].given != NULL)
            continue;
        const char *sets = missing_sets(arena, build, " ");
        diagnostics_plain("%s %s no key \"%s\", which `%s` needs; expected %s%s",
                          build_source_name(build->source), *sets ? "have" : "has", needed[i].key,
                          command->name, *sets ? "" : "it with ", *sets ? sets : needed[i].example);
        return false;
    }
    return true;
}

/* What to do, in a line an option, before all that it rests on: the fitted tyre's where there is
 * no option. */
static void write_answers(const struct layout *layout)
{
    const struct plan *plan = layout->plan;
    for (size_t i = 0; i < layout->figures->count; i++) {
        const struct figure *figure = &layout->figures->items[i];
        if (!(quantity_rows[figure->quantity].policy & POLICY_ANSWER) ||
            (plan->count > 1 && figure->setup == 0))
            continue;
        const char *label = option_label(layout, (size_t)figure->setup);
        struct prose prose = {.out = layout->out, .width = layout->width};
        prose_line(&prose, 0, 3,
                   arena_format(layout->arena, "%s: %s", label,
                                figure_action(layout->arena, plan, figure)));
    }
    outbuf_text(layout->out, "\n");
}

static void write_tables(const struct command *command, const struct layout *layout)
{
    outbuf_text(layout->out, "\n");
    for (size_t i = 0; i < PART_ROW_COUNT; i++) {
        if (!(part_rows[i].command & command->bit))
            continue;
        if (part_table(layout, part_rows[i].part, command->bit == CMD_SHEET))
            outbuf_text(layout->out, "\n");
    }
    outbuf_text(layout->out, "! fail   ? unknown   + task   ~ caution\n");
}

/* A part alone has few findings: they stand before its table. */
static void write_part(const struct command *command, const struct layout *layout)
{
    const char *name = layout->plan->specification->vehicle.name;
    if (command->bit == CMD_SPEEDOMETER)
        write_answers(layout);
    put_shown(layout->out, span_of(name == NULL ? "vehicle" : name));
    outbuf_text(layout->out, layout->plan->count > 2 ? ", best tyre first\n" : "\n");
    sheet_options_text(layout);
    write_tables(command, layout);
}

/* A sheet answers first, on one screen; then each option's work, then the figures. */
static void write_sheet(const struct command *command, const struct layout *layout)
{
    sheet_head_text(layout);
    sheet_options_text(layout);
    write_tables(command, layout);
}

static void write_terminal(const struct command *command, const struct layout *layout)
{
    if (command->bit == CMD_SHEET)
        write_sheet(command, layout);
    else
        write_part(command, layout);
    assumptions_text(layout);
    cautions_text(layout);
}

typedef void (*picture_writer)(const struct picture *picture);

static picture_writer picture_for(unsigned command)
{
    return command == CMD_GEARING     ? picture_gearing
           : command == CMD_LOAD      ? picture_load
           : command == CMD_CLEARANCE ? picture_clearance
                                      : NULL;
}

static void write_page(const struct command *command, const struct layout *layout)
{
    struct page_part chosen[PART_ROW_COUNT];
    size_t count = 0;
    for (size_t i = 0; i < PART_ROW_COUNT; i++)
        if (part_rows[i].command & command->bit)
            chosen[count++] = (struct page_part){part_rows[i].part, command->bit == CMD_SHEET};
    if (layout->format == FOR_MARKDOWN)
        page_markdown(layout, chosen, count);
    else if (count > 1)
        page_html_sheet(layout, chosen, count);
    else
        page_html_part(layout, chosen[0].part, picture_for(command->bit));
}

static void write_picture(const struct command *command, const struct layout *layout)
{
    struct drawing drawing = {.out = layout->out, .arena = layout->arena};
    const struct picture picture = picture_of(&drawing, layout);
    picture_for(command->bit)(&picture);
}

static void write_layout(const struct command *command, const struct options *options,
                         const struct layout *layout)
{
    if (layout->format != FOR_TERMINAL)
        write_page(command, layout);
    else if (span_is(span_of(options->format), "svg"))
        write_picture(command, layout);
    else
        write_terminal(command, layout);
}

/* Below all else: how to say what designations do not. */
static void write_missing(struct arena *arena, const struct build_case *build,
                          const struct layout *layout)
{
    struct span format = span_of(build->options->format);
    const char *sets = missing_sets(arena, build, "\n  ");
    if (*sets == '\0' || (!span_is(format, "table") && !span_is(format, "markdown")))
        return;
    outbuf_text(layout->out, "\nNot given, such as:\n  ");
    outbuf_text(layout->out, sets);
    outbuf_text(layout->out, "\n");
}

static bool write_for_reading(struct arena *arena, const struct build_case *build,
                              const struct plan *plan, const struct figures *figures)
{
    struct sink *sink = case_sink(build);
    if (sink == NULL)
        return false;
    struct figures every_part = {.arena = arena};
    bool is_whole = build->command->bit == CMD_SHEET;
    if (!is_whole)
        parts_report(CMD_SHEET, plan, &every_part);
    struct layout layout =
        layout_of(arena, build->options, plan, figures, is_whole ? NULL : &every_part);
    layout_on(&layout, build->options, sink);
    write_layout(build->command, build->options, &layout);
    write_missing(arena, build, &layout);
    return true;
}

static bool write_rows(const struct build_case *build, const struct plan *plan,
                       const struct figures *figures)
{
    struct arena texts = ARENA_EMPTY;
    struct span format = span_of(build->options->format);
    struct figures even = *figures;
    if (span_is(format, "csv") || span_is(format, "json")) /* a page needs no empty lines */
        figures_even_places(plan, figures, &even);
    arena_allocate(&texts, 1); /* while nothing is written yet that would be left in halves */
    struct rows_out *rows = case_rows(build, figure_columns, figure_column_count);
    for (size_t i = 0; rows != NULL && i < even.count; i++)
        figure_rows_add(rows, &texts, plan, &even.items[i], build->options->units);
    arena_free(&texts);
    return rows != NULL;
}

/* Of an option that is shown; of the fitted tyre where there is none. */
static bool any_fail(const struct plan *plan, const struct figures *figures)
{
    for (size_t i = 0; i < figures->count; i++)
        if (figures->items[i].verdict == VERDICT_FAIL &&
            (figures->items[i].setup > 0 || plan->count == 1))
            return true;
    return false;
}

static enum exit_status part_of_case(struct arena *arena, const struct build_case *build)
{
    const struct options *options = build->options;
    struct plan plan;
    if (!has_its_part(arena, build) || !case_plan(arena, build, &plan))
        return EXIT_INPUT_WRONG;
    struct figures figures = {.arena = arena};
    parts_report(build->command->bit, &plan, &figures);
    if (build->command->bit == CMD_SHEET)
        report_solving(&plan, &figures);
    if (!(layout_is_rows(options) ? write_rows(build, &plan, &figures)
                                  : write_for_reading(arena, build, &plan, &figures)))
        return case_not_begun(build);
    return options->strict && any_fail(&plan, &figures) ? EXIT_FINDING_FAIL : EXIT_COMPUTED;
}

enum exit_status run_part(struct arena *arena, const struct command *command,
                          const struct options *options)
{
    return cases_run(arena, command, options, part_of_case);
}

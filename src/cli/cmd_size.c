/* tyresum size: what each designation means and measures. */
#include <stdio.h>
#include <string.h>

#include "base/diagnostics.h"
#include "base/known.h"
#include "base/seldom.h"
#include "cli/commands.h"
#include "cli/mistakes.h"
#include "cli/row_stream.h"
#include "cli/stream.h"
#include "compute/capacity.h"
#include "compute/dimensions.h"
#include "output/number.h"
#include "reading/prose.h"
#include "report/basis.h"
#include "size/designation_listed.h"
#include "tables/lookup.h"

/* What only some columns ask for. */
enum {
    NEEDS_RIM = 1,
    NEEDS_BASIS = 2,
    NEEDS_REFERENCE = 4,
    NEEDS_REFERENCE_US = 8,
    NEEDS_MOULDED = 16
};

enum { VALUE_AT = 24 };

struct size_row {
    struct span designation; /* as it came where it could not be read */
    struct span taken, error;
    struct word form, construction, speed_symbol;
    struct shared_text *basis;
    double aspect_percent, rim_code, revs_per_m, load_index, load_kg, load_index_dual, load_dual_kg;
    double speed_mps, reference_Pa, reference_us_Pa;
    struct tyre_dimensions figures;
};

/* What many sizes have alike, worked out where it is met first: the texts of the bases, of which a
 * list of a million lines has a handful; the reference pressures of the classes, in both systems.
 */
struct met {
    struct reference {
        bool met;
        double Pa;
    } references[inflation_count][2];
    struct word forms[FORM_COUNT];
    struct arena *arena;
    struct basis {
        uint64_t kind;
        struct shared_text text;
        struct basis *next;
    } * bases;
};

static double positive(int value)
{
    return value > 0 ? value : UNKNOWN;
}

static double index_value(int load_index)
{
    return load_index == LOAD_INDEX_NONE ? UNKNOWN : load_index;
}

static struct word form_word(enum tyre_form form, struct met *met)
{
    struct word *word = &met->forms[form];
    if (word->length == 0) {
        const struct span name = span_of(designation_form_name(form));
        word->length = (unsigned char)name.length;
        memcpy(word->text, name.at, name.length);
    }
    return *word;
}

static struct word construction_word(const struct designation *size)
{
    static const struct word plain[CONSTRUCTION_COUNT] = {{"R", 1}, {"D", 1}, {"B", 1}};
    static const struct word hyphen = {"-", 1},
                             marked[2][2] = {{{"R", 1}, {"RF", 2}}, {{"ZR", 2}, {"ZRF", 3}}};
    if (size->hyphen)
        return hyphen;
    if (size->construction != CONSTRUCTION_RADIAL)
        return plain[size->construction];
    return marked[size->z_marked][size->run_flat];
}

static double symbol_speed_mps(const struct designation *size)
{
    const char *symbol = size->service.speed_symbol;
    double kmh;
    if (*symbol == '\0')
        symbol = size->z_marked ? "ZR" : "";
    return speed_symbol_kmh(symbol, &kmh) ? unit_to_si(UNIT_KMH, kmh) : UNKNOWN;
}

/* Straight into the row: a word that is put together and then copied is waited for. */
static void set_symbol_word(const struct designation *size, struct word *word)
{
    const char *symbol = size->service.speed_symbol;
    if (size->service.speed_above && symbol[0] == 'Y') {
        *word = (struct word){"(Y)", 3};
        return;
    }
    word->text[0] = symbol[0];
    word->text[1] = symbol[1];
    word->text[2] = '\0';
    word->length = (symbol[0] != '\0') + (symbol[1] != '\0');
}

#define READY_IF(needs, field)                                                                     \
    NULL, offsetof(struct size_row, field), offsetof(struct size_row, field), needs
#define READY(field) READY_IF(0, field)

#define LENGTH(name, title, decimals, width, priority, ready)                                      \
    {                                                                                              \
        name "_mm", name "_in", title, UNIT_MM, UNIT_IN, decimals, 2, COLUMN_NUMBER, width,        \
            priority, ready                                                                        \
    }
#define MASS(name, title, width, priority, field)                                                  \
    {                                                                                              \
        name "_kg", name "_lb", title, UNIT_KG, UNIT_LB, 0, 0, COLUMN_NUMBER, width, priority,     \
            READY_IF(NEEDS_MOULDED, field)                                                         \
    }
#define TEXT_COLUMN(name, title, width, priority, ready)                                           \
    {                                                                                              \
        name, NULL, title, UNIT_BARE, UNIT_BARE, 0, 0, COLUMN_TEXT, width, priority, ready         \
    }
#define BARE(name, title, decimals, width, priority, field)                                        \
    {                                                                                              \
        name, NULL, title, UNIT_BARE, UNIT_BARE, decimals, decimals, COLUMN_NUMBER, width,         \
            priority, READY_IF(NEEDS_MOULDED, field)                                               \
    }
#define RIM(name, title, width, priority, field)                                                   \
    {                                                                                              \
        name, NULL, title, UNIT_IN, UNIT_IN, 2, 2, COLUMN_NUMBER, width, priority,                 \
            READY_IF(NEEDS_RIM, figures.field)                                                     \
    }

/* Priorities: what a counter asks first stays longest; what the designation itself says goes
 * first. */
const struct column size_columns[] = {
    TEXT_COLUMN("designation", "designation", 24, 0, READY(designation)),
    TEXT_COLUMN("form", "form", 12, 16, READY_IF(NEEDS_MOULDED | COLUMN_WORD, form)),
    LENGTH("section_width", "section width", 1, 7, 3, READY(figures.section_width_m)),
    BARE("aspect_percent", "aspect ratio", 0, 6, 18, aspect_percent),
    TEXT_COLUMN("construction", "build", 5, 18,
                READY_IF(NEEDS_MOULDED | COLUMN_WORD, construction)),
    BARE("rim_diameter_code", "rim code", 1, 5, 18, rim_code),
    LENGTH("overall_diameter", "overall diameter", 1, 8, 0, READY(figures.overall_diameter_m)),
    LENGTH("overall_diameter_min", "least diameter", 1, 8, 12,
           READY_IF(NEEDS_RIM, figures.overall_diameter_min_m)),
    LENGTH("overall_diameter_max", "largest diameter", 1, 8, 4,
           READY_IF(NEEDS_RIM, figures.overall_diameter_max_m)),
    LENGTH("section_height", "section height", 1, 7, 13, READY(figures.section_height_m)),
    LENGTH("section_width_max", "largest width", 1, 7, 6,
           READY_IF(NEEDS_RIM, figures.width_on_rim_max_m)),
    LENGTH("rolling_circumference", "rolling circumference", 0, 8, 12,
           READY(figures.rolling_circumference_m)),
    {"revs_per_km", "revs_per_mile", "revolutions", UNIT_PER_KM, UNIT_PER_MILE, 1, 1, COLUMN_NUMBER,
     8, 2, READY(revs_per_m)},
    LENGTH("static_loaded_radius", "loaded radius", 1, 7, 8, READY(figures.static_loaded_radius_m)),
    RIM("measuring_rim_in", "measuring rim", 7, 11, measuring_rim_m),
    RIM("rim_min_in", "least rim", 5, 9, rim_min_m),
    RIM("rim_max_in", "largest rim", 7, 9, rim_max_m),
    BARE("load_index", "load index", 0, 5, 14, load_index),
    MASS("load", "load", 6, 0, load_kg),
    BARE("load_index_dual", "dual index", 0, 5, 17, load_index_dual),
    MASS("load_dual", "load dual", 6, 5, load_dual_kg),
    TEXT_COLUMN("speed_symbol", "speed symbol", 6, 15,
                READY_IF(NEEDS_MOULDED | COLUMN_WORD, speed_symbol)),
    {"speed_kmh", "speed_mph", "speed", UNIT_KMH, UNIT_MPH, 0, 0, COLUMN_NUMBER, 5, 1,
     READY_IF(NEEDS_MOULDED, speed_mps)},
    {"reference_pressure_kPa", "reference_pressure_psi", "reference pressure", UNIT_KPA, UNIT_PSI,
     0, 0, COLUMN_NUMBER, 9, 10, NULL, offsetof(struct size_row, reference_Pa),
     offsetof(struct size_row, reference_us_Pa), NEEDS_REFERENCE},
    TEXT_COLUMN("basis", "basis", 40, 20, READY_IF(NEEDS_RIM | NEEDS_BASIS | COLUMN_SHARED, basis)),
    TEXT_COLUMN("taken", "taken", 40, 15, READY(taken)),
    TEXT_COLUMN("error", "error", 40, 21, READY(error)),
};
const size_t size_column_count = sizeof size_columns / sizeof size_columns[0];

static struct shared_text *basis_of(const struct designation *size,
                                    const struct tyre_dimensions *figures, struct met *met)
{
    const uint64_t kind = basis_kind(size, figures);
    struct basis *basis = met->bases;
    while (basis != NULL && basis->kind != kind)
        basis = basis->next;
    if (basis == NULL) {
        char *text = arena_allocate(met->arena, BASIS_SIZE);
        basis = arena_allocate(met->arena, sizeof *basis);
        *basis = (struct basis){kind, {.text = {text, basis_text(kind, text)}}, met->bases};
        met->bases = basis;
    }
    return &basis->text;
}

SELDOM static double rated_Pa(const struct designation *size, bool us)
{
    struct tyre_rating rating;
    size_rate(size, size->load_range, &rating);
    return nominal_told_Pa(rating.reference_Pa, us);
}

/* Without a load range it is that of the class. */
static double reference_Pa(const struct designation *size, bool us, struct met *met)
{
    if (size->completed) /* its class is not known */
        return UNKNOWN;
    if (size->load_range != '\0')
        return rated_Pa(size, us);
    struct reference *of_class = &met->references[inflation_class(size, size->load_range)][us];
    if (!of_class->met)
        *of_class = (struct reference){true, rated_Pa(size, us)};
    return of_class->Pa;
}

/* What the designation says by itself. */
static void fill_moulded(const struct designation *size, struct met *met, struct size_row *row)
{
    const struct service_description *service = &size->service;
    row->form = form_word(size->form, met);
    row->construction = construction_word(size);
    set_symbol_word(size, &row->speed_symbol);
    row->aspect_percent = positive(size->aspect_percent);
    row->rim_code = size->rim_code_tenths / 10.0;
    row->load_index = index_value(service->load_index);
    row->load_kg = load_index_kg(service->load_index);
    row->load_index_dual = index_value(service->load_index_dual);
    row->load_dual_kg = load_index_kg(service->load_index_dual);
    row->speed_mps = symbol_speed_mps(size);
}

/* A size as it was read, and what was added or passed over for that. */
struct read_size {
    struct designation size;
    char taken[TAKEN_SIZE];
};

/* The load index that the tables list for the load range, where none is moulded. */
static void take_listed(struct read_size *read)
{
    struct service_description *service = &read->size.service;
    char note[LISTED_NOTE_SIZE];
    if (!designation_listed(&read->size, LISTED_LOWEST, &service->load_index,
                            &service->load_index_dual))
        return;
    designation_listed_note(service->load_index, read->size.load_range, LISTED_LOWEST, note);
    size_t used = strlen(read->taken);
    snprintf(read->taken + used, TAKEN_SIZE - used, "%s%s", used > 0 ? "; " : "", note);
}

/* All but how it is spelled and what was taken for it. */
static void fill_row(const struct designation *size, unsigned needs, struct met *met,
                     struct size_row *row)
{
    struct tyre_dimensions *figures = &row->figures;
    figures_without_rim(size, figures);
    row->revs_per_m = 1 / figures->rolling_circumference_m;
    row->error = (struct span){NULL, 0};
    if (needs & NEEDS_MOULDED)
        fill_moulded(size, met, row);
    if (needs & NEEDS_RIM)
        figures_on_rim(size, UNKNOWN, figures);
    if (needs & NEEDS_BASIS)
        row->basis = basis_of(size, figures, met);
    if (needs & NEEDS_REFERENCE)
        row->reference_Pa = reference_Pa(size, false, met);
    if (needs & NEEDS_REFERENCE_US)
        row->reference_us_Pa = reference_Pa(size, true, met);
}

static void set_unknown(void *row, size_t at, size_t at_us)
{
    const double unknown = UNKNOWN;
    memcpy((char *)row + at, &unknown, sizeof unknown);
    memcpy((char *)row + at_us, &unknown, sizeof unknown);
}

/* No figure of a line that could not be read is known. */
static struct size_row unread_row(struct span line, struct span why)
{
    struct size_row row = {.designation = line, .error = why};
    for (size_t i = 0; i < size_column_count; i++)
        if (size_columns[i].kind == COLUMN_NUMBER)
            set_unknown(&row, size_columns[i].at, size_columns[i].at_us);
    return row;
}

/* The text, which its spelling has room in, and what was read outlive the row. */
static void fill_read(struct read_size *read, unsigned needs, struct met *met,
                      char text[DESIGNATION_CANONICAL_SIZE], struct size_row *row)
{
    row->designation = (struct span){text, designation_canonical(&read->size, text)};
    take_listed(read);
    row->taken = span_of(read->taken);
    fill_row(&read->size, needs, met, row);
}

SELDOM static bool add_loosely(struct span text, struct rows_out *rows, struct met *met)
{
    struct size_row row;
    struct read_size read;
    struct designation_error error;
    char canonical[DESIGNATION_CANONICAL_SIZE], message[UNREAD_MESSAGE_SIZE], unread[UNREAD_SIZE];
    bool read_well = designation_read(text, &read.size, &error, read.taken);
    if (read_well) {
        fill_read(&read, rows->choice.needs, met, canonical, &row);
    } else {
        unread_text(text, &error, unread, message);
        row = unread_row(span_of(unread), span_of(message));
    }
    rows_add(rows, &row);
    return read_well;
}

/* What is spelled plainly is its own canonical text, and nothing is taken for it. */
static bool add_designation(struct span text, struct rows_out *rows, void *context)
{
    struct size_row row;
    struct designation size;
    if (!designation_read_plain(text, &size))
        return add_loosely(text, rows, context);
    row.designation = text;
    row.taken = (struct span){NULL, 0};
    fill_row(&size, rows->choice.needs, context, &row);
    rows_add(rows, &row);
    return true;
}

/* What the load range of one tyre means, in words. */
static void write_load_range(struct arena *arena, struct prose *prose,
                             const struct designation *size, bool us)
{
    const struct load_range_row *range = load_range_find(size->load_range);
    if (range == NULL)
        return;
    prose_begin(prose, 2, arena_format(arena, "load range %c", size->load_range), VALUE_AT);
    double pressure = us ? range->lt_reference_psi : range->lt_reference_kPa;
    prose_words(prose,
                known(pressure)
                    ? arena_format(arena, "ply rating %d; an LT tyre carries its load at %.0f %s",
                                   range->ply_rating, pressure, us ? "psi" : "kPa")
                    : arena_format(arena, "ply rating %d", range->ply_rating));
    prose_end(prose);
}

/* One tyre to read: what is known of it, a line each. */
static enum exit_status write_list(struct arena *arena, const struct options *options,
                                   struct read_size *read, struct met *met)
{
    struct size_row row;
    char text[DESIGNATION_CANONICAL_SIZE];
    struct column_choice choice;
    static struct sink sink; /* too large for the stack */
    if (!columns_choose(arena, size_columns, size_column_count, options, &choice))
        return EXIT_INPUT_WRONG;
    if (!sink_open(arena, &sink, options->output))
        return EXIT_NOT_WRITTEN;
    struct cell *cells = arena_allocate_array(arena, choice.count, sizeof *cells);
    fill_read(read, choice.needs, met, text, &row);
    columns_fill(&choice, &row, cells);
    struct prose prose = {.out = &sink.out, .width = sink_page_width(&sink)};
    for (size_t i = 0; i < choice.count; i++) {
        const struct heading *heading = &choice.headings[i];
        if (cell_is_absent(&cells[i]))
            continue;
        if (i == 0) {
            prose_line(&prose, 0, 2, cells[i].text.at);
            continue;
        }
        char number[NUMBER_SIZE];
        bool is_number = cells[i].kind == CELL_NUMBER;
        if (is_number)
            number_fixed(cells[i].value, cells[i].decimals, options->decimal == 1 ? ',' : '.',
                         number);
        prose_begin(&prose, 2, heading->title, VALUE_AT);
        prose_words(&prose, is_number ? number : cells[i].text.at); /* ends in a NUL */
        prose_words(&prose, heading->unit);
        prose_end(&prose);
    }
    write_load_range(arena, &prose, &read->size, options->units == UNITS_US);
    return sink_close(&sink, true) ? EXIT_COMPUTED : EXIT_NOT_WRITTEN;
}

enum exit_status run_size(struct arena *arena, const struct command *command,
                          const struct options *options)
{
    (void)command;
    size_t count = operand_count(options);
    struct met met = {.arena = arena};
    if (count == 1 && span_is(span_of(operand(options, 0)), "-"))
        return row_stream_run(arena, options, size_columns, size_column_count, add_designation,
                              &met, false);
    struct read_size *sizes = arena_allocate_array(arena, count, sizeof *sizes);
    bool all_read = true;
    for (size_t i = 0; i < count; i++) {
        struct designation_error error;
        const char *text = operand(options, i);
        if (designation_read(span_of(text), &sizes[i].size, &error, sizes[i].taken))
            continue;
        argument_unread(arena, text, arena_format(arena, "argument %zu", i + 1), &error);
        all_read = false;
    }
    if (!all_read) {
        hint_at_arguments(options);
        return EXIT_INPUT_WRONG;
    }
    if (count == 1 && options->columns == NULL && !options->wide && !options->no_header &&
        strcmp(options->format, "table") == 0)
        return write_list(arena, options, sizes, &met);
    static struct rows_out rows; /* too large for the stack, and most of it is never touched */
    enum exit_status begun =
        rows_begin(arena, &rows, options, size_columns, size_column_count, false);
    if (begun != EXIT_COMPUTED)
        return begun;
    for (size_t i = 0; i < count; i++) {
        struct size_row row;
        char text[DESIGNATION_CANONICAL_SIZE];
        fill_read(&sizes[i], rows.choice.needs, &met, text, &row);
        rows_add(&rows, &row);
    }
    return rows_end(&rows, true) ? EXIT_COMPUTED : EXIT_NOT_WRITTEN;
}

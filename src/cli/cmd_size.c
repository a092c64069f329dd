/* tyresum size: what each designation means and measures. */
#include <unistd.h>

#include "base/diagnostics.h"
#include "base/known.h"
#include "cli/commands.h"
#include "cli/mistakes.h"
#include "cli/row_stream.h"
#include "cli/stream.h"
#include "compute/capacity.h"
#include "compute/dimensions.h"
#include "compute/fitment.h"
#include "report/basis.h"
#include "tables/lookup.h"

struct size_row {
    struct designation size;
    struct tyre_dimensions figures;
    char text[DESIGNATION_CANONICAL_SIZE];
    char *basis;        /* BASIS_SIZE characters of room */
    const char *unread; /* the line as it came, where it could not be read */
    const char *error;
};

static struct column_value text_value(const char *text)
{
    return (struct column_value){.text = text};
}

static struct column_value number_value(const struct size_row *row, double value)
{
    return (struct column_value){.value = row->error == NULL ? value : UNKNOWN};
}

#define GETTER(name) static struct column_value name(const void *data, bool us)
#define ROW const struct size_row *row = data
#define NUMBER_GETTER(name, expression)                                                            \
    GETTER(name)                                                                                   \
    {                                                                                              \
        ROW;                                                                                       \
        (void)us;                                                                                  \
        return number_value(row, expression);                                                      \
    }
#define TEXT_GETTER(name, expression)                                                              \
    GETTER(name)                                                                                   \
    {                                                                                              \
        ROW;                                                                                       \
        (void)us;                                                                                  \
        return text_value(row->error == NULL ? (expression) : NULL);                               \
    }

static double positive(int value)
{
    return value > 0 ? value : UNKNOWN;
}

static double index_value(int load_index)
{
    return load_index == LOAD_INDEX_NONE ? UNKNOWN : load_index;
}

static const char *construction_text(const struct designation *size)
{
    static const char *const plain[CONSTRUCTION_COUNT] = {"R", "D", "B"};
    if (size->hyphen)
        return "-";
    if (size->construction != CONSTRUCTION_RADIAL)
        return plain[size->construction];
    if (size->z_marked)
        return size->run_flat ? "ZRF" : "ZR";
    return size->run_flat ? "RF" : "R";
}

static double symbol_speed_mps(const struct designation *size)
{
    const char *symbol = size->service.speed_symbol;
    double kmh;
    if (*symbol == '\0')
        symbol = size->z_marked ? "ZR" : "";
    return speed_symbol_kmh(symbol, &kmh) ? unit_to_si(UNIT_KMH, kmh) : UNKNOWN;
}

static const char *symbol_text(const struct designation *size)
{
    if (size->service.speed_above)
        return size->service.speed_symbol[0] == 'Y' ? "(Y)" : size->service.speed_symbol;
    return size->service.speed_symbol;
}

GETTER(get_designation)
{
    ROW;
    (void)us;
    return text_value(row->error == NULL ? row->text : row->unread);
}
/* Only where the column is asked for: a stream pays for what it prints. */
GETTER(get_reference)
{
    ROW;
    struct tyre tyre = tyre_unknown();
    struct tyre_rating rating;
    tyre.size = row->size;
    tyre.load_range = row->size.load_range;
    if (row->error != NULL)
        return number_value(row, UNKNOWN);
    tyre_rate(&tyre, CHOICE_NONE, UNKNOWN, &rating);
    return number_value(row, nominal_told_Pa(rating.reference_Pa, us));
}
/* Made only where its column is asked for, in the room that the row has for it. */
GETTER(get_basis)
{
    ROW;
    (void)us;
    if (row->error != NULL)
        return text_value(NULL);
    basis_of_figures(&row->size, &row->figures, row->basis);
    return text_value(row->basis);
}
GETTER(get_error)
{
    ROW;
    (void)us;
    return text_value(row->error);
}
TEXT_GETTER(get_form, designation_form_name(row->size.form))
TEXT_GETTER(get_construction, construction_text(&row->size))
TEXT_GETTER(get_symbol, symbol_text(&row->size))
NUMBER_GETTER(get_width, row->figures.section_width_m)
NUMBER_GETTER(get_aspect, positive(row->size.aspect_percent))
NUMBER_GETTER(get_rim_code, row->size.rim_code_tenths / 10.0)
NUMBER_GETTER(get_diameter, row->figures.overall_diameter_m)
NUMBER_GETTER(get_diameter_min, row->figures.overall_diameter_min_m)
NUMBER_GETTER(get_diameter_max, row->figures.overall_diameter_max_m)
NUMBER_GETTER(get_height, row->figures.section_height_m)
NUMBER_GETTER(get_width_max, row->figures.width_on_rim_max_m)
NUMBER_GETTER(get_circumference, row->figures.rolling_circumference_m)
NUMBER_GETTER(get_revs, 1 / row->figures.rolling_circumference_m)
NUMBER_GETTER(get_radius, row->figures.static_loaded_radius_m)
NUMBER_GETTER(get_measuring_rim, row->figures.measuring_rim_m)
NUMBER_GETTER(get_rim_min, row->figures.rim_min_m)
NUMBER_GETTER(get_rim_max, row->figures.rim_max_m)
NUMBER_GETTER(get_index, index_value(row->size.service.load_index))
NUMBER_GETTER(get_load, load_index_kg(row->size.service.load_index))
NUMBER_GETTER(get_index_dual, index_value(row->size.service.load_index_dual))
NUMBER_GETTER(get_load_dual, load_index_kg(row->size.service.load_index_dual))
NUMBER_GETTER(get_speed, symbol_speed_mps(&row->size))

#define LENGTH(name, title, decimals, width, priority, get)                                        \
    {                                                                                              \
        name "_mm", name "_in", title, UNIT_MM, UNIT_IN, decimals, 2, false, width, priority, get  \
    }
#define MASS(name, title, width, priority, get)                                                    \
    {                                                                                              \
        name "_kg", name "_lb", title, UNIT_KG, UNIT_LB, 0, 0, false, width, priority, get         \
    }
#define TEXT_COLUMN(name, title, width, priority, get)                                             \
    {                                                                                              \
        name, NULL, title, UNIT_BARE, UNIT_BARE, 0, 0, true, width, priority, get                  \
    }
#define BARE(name, title, decimals, width, priority, get)                                          \
    {                                                                                              \
        name, NULL, title, UNIT_BARE, UNIT_BARE, decimals, decimals, false, width, priority, get   \
    }
#define RIM(name, title, width, priority, get)                                                     \
    {                                                                                              \
        name, NULL, title, UNIT_IN, UNIT_IN, 2, 2, false, width, priority, get                     \
    }

/* Priorities: what a counter asks first stays longest; what the designation itself says goes
 * first. */
const struct column size_columns[] = {
    TEXT_COLUMN("designation", "designation", 24, 0, get_designation),
    TEXT_COLUMN("form", "form", 12, 16, get_form),
    LENGTH("section_width", "section width", 1, 7, 3, get_width),
    BARE("aspect_percent", "aspect ratio", 0, 6, 18, get_aspect),
    TEXT_COLUMN("construction", "build", 5, 18, get_construction),
    BARE("rim_diameter_code", "rim code", 1, 5, 18, get_rim_code),
    LENGTH("overall_diameter", "overall diameter", 1, 8, 0, get_diameter),
    LENGTH("overall_diameter_min", "least diameter", 1, 8, 12, get_diameter_min),
    LENGTH("overall_diameter_max", "largest diameter", 1, 8, 4, get_diameter_max),
    LENGTH("section_height", "section height", 1, 7, 13, get_height),
    LENGTH("section_width_max", "largest width", 1, 7, 6, get_width_max),
    LENGTH("rolling_circumference", "rolling circumference", 0, 8, 12, get_circumference),
    {"revs_per_km", "revs_per_mile", "revolutions", UNIT_PER_KM, UNIT_PER_MILE, 1, 1, false, 8, 2,
     get_revs},
    LENGTH("static_loaded_radius", "loaded radius", 1, 7, 8, get_radius),
    RIM("measuring_rim_in", "measuring rim", 7, 11, get_measuring_rim),
    RIM("rim_min_in", "least rim", 5, 9, get_rim_min),
    RIM("rim_max_in", "largest rim", 7, 9, get_rim_max),
    BARE("load_index", "load index", 0, 5, 14, get_index),
    MASS("load", "load", 6, 0, get_load),
    BARE("load_index_dual", "dual index", 0, 5, 17, get_index_dual),
    MASS("load_dual", "load dual", 6, 5, get_load_dual),
    TEXT_COLUMN("speed_symbol", "speed symbol", 6, 15, get_symbol),
    {"speed_kmh", "speed_mph", "speed", UNIT_KMH, UNIT_MPH, 0, 0, false, 5, 1, get_speed},
    {"reference_pressure_kPa", "reference_pressure_psi", "reference pressure", UNIT_KPA, UNIT_PSI,
     0, 0, false, 9, 10, get_reference},
    TEXT_COLUMN("basis", "basis", 40, 20, get_basis),
    TEXT_COLUMN("error", "error", 40, 21, get_error),
};
const size_t size_column_count = sizeof size_columns / sizeof size_columns[0];

static void fill_row(const struct designation *size, char basis[BASIS_SIZE], struct size_row *row)
{
    row->size = *size;
    row->basis = basis;
    row->error = row->unread = NULL;
    figures_by_rule(size, UNKNOWN, &row->figures);
    designation_canonical(size, row->text);
}

static bool add_designation(struct span text, struct rows_out *rows, void *context)
{
    (void)context;
    struct size_row row;
    struct designation size;
    struct designation_error error;
    char message[UNREAD_MESSAGE_SIZE], unread[UNREAD_SIZE], basis[BASIS_SIZE];
    bool read_well = designation_parse(text, &size, &error);
    if (read_well) {
        fill_row(&size, basis, &row);
    } else {
        unread_text(text, &error, unread, message);
        row = (struct size_row){.unread = unread, .error = message};
    }
    rows_add(rows, &row);
    return read_well;
}

enum exit_status run_size(struct arena *arena, const struct command *command,
                          const struct options *options)
{
    (void)command;
    size_t count = operand_count(options);
    if (count == 1 && span_is(span_of(operand(options, 0)), "-"))
        return row_stream_run(arena, options, size_columns, size_column_count, add_designation,
                              NULL);
    struct size_row *row = arena_allocate_array(arena, count, sizeof *row);
    bool all_read = true;
    for (size_t i = 0; i < count; i++) {
        struct designation size;
        if (argument_designation(arena, operand(options, i),
                                 arena_format(arena, "argument %zu", i + 1), &size))
            fill_row(&size, arena_allocate_array(arena, BASIS_SIZE, 1), &row[i]);
        else
            all_read = false;
    }
    if (!all_read) {
        hint_at_arguments(options);
        return EXIT_INPUT_WRONG;
    }
    struct rows_out rows;
    enum exit_status begun =
        rows_begin(arena, &rows, options, size_columns, size_column_count, false);
    if (begun != EXIT_COMPUTED)
        return begun;
    for (size_t i = 0; i < count; i++)
        rows_add(&rows, &row[i]);
    return rows_end(&rows, true) ? EXIT_COMPUTED : EXIT_NOT_WRITTEN;
}

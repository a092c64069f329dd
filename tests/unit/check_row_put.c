/* Rows that are written at once against the cells of the same rows: the same bytes, in every
 * format, unit system and decimal mark, whatever the values. */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/known.h"
#include "cli/columns.h"
#include "cli/row_put.h"
#include "suites.h"
#include "support.h"

enum { ROWS = 40000, ROWS_AT_ONCE = 200, TEXT_ROOM = 400 };

struct row {
    double metres, kilograms, revolutions, bare, inches, consumption;
    struct span text;
    struct word word;
    struct shared_text *shared;
    double got;
    char room[TEXT_ROOM];
};

static struct column_value get_either(const void *at, bool us)
{
    const struct row *row = at;
    (void)us;
    if (known(row->got))
        return (struct column_value){.value = row->got, .own_decimals = true, .decimals = 4};
    return (struct column_value){.text = row->text.length > 0 ? "a \"text\", of its own" : NULL,
                                 .value = UNKNOWN};
}

#define AT(field) NULL, offsetof(struct row, field), offsetof(struct row, field)
#define NUMBER(name, name_us, unit, unit_us, decimals, decimals_us, field)                         \
    {                                                                                              \
        name, name_us, "title", unit, unit_us, decimals, decimals_us, COLUMN_NUMBER, 8, 0,         \
            AT(field), 0                                                                           \
    }
#define TEXT_OF(name, needs, field)                                                                \
    {                                                                                              \
        name, NULL, "title", UNIT_BARE, UNIT_BARE, 0, 0, COLUMN_TEXT, 8, 0, AT(field), needs       \
    }
static const struct column columns[] = {
    NUMBER("metres_mm", "metres_in", UNIT_MM, UNIT_IN, 1, 2, metres),
    NUMBER("mass_kg", "mass_lb", UNIT_KG, UNIT_LB, 0, 0, kilograms),
    TEXT_OF("text", 0, text),
    NUMBER("revolutions_per_km", "revolutions_per_mile", UNIT_PER_KM, UNIT_PER_MILE, 1, 3,
           revolutions),
    TEXT_OF("word", COLUMN_WORD, word),
    NUMBER("bare", NULL, UNIT_BARE, UNIT_BARE, 2, 2, bare),
    TEXT_OF("shared", COLUMN_SHARED, shared),
    NUMBER("inches", NULL, UNIT_IN, UNIT_IN, 4, 4, inches),
    NUMBER("consumption_l_per_100km", "consumption_mpg", UNIT_L_PER_100KM, UNIT_MPG, 1, 1,
           consumption),
    {"either", NULL, "title", UNIT_BARE, UNIT_BARE, 1, 1, COLUMN_EITHER, 8, 0, get_either, 0, 0, 0},
    TEXT_OF("a_text_of_a_name_that_is_longer_than_what_is_copied", 0, text),
};
enum { COLUMNS = sizeof columns / sizeof columns[0] };

/* Halves, whole numbers, tenths, what no format has room for, and anything between. */
static double any_number(uint64_t *state)
{
    static const double odd[] = {0,       -0.0, 0.05, -0.049, 0.5, 9999.5,
                                 9999.95, 1e15, -3,   1e300,  1e-9};
    double whole = (double)(random_bits(state) % 20000);
    switch (random_bits(state) % 8) {
    case 0:
        return UNKNOWN;
    case 1:
        return odd[random_bits(state) % (sizeof odd / sizeof odd[0])];
    case 2:
        return (whole + 0.5) / 10;
    case 3:
        return whole;
    case 4:
        return whole / 1000;
    case 5:
        return random_between(state, -100, 1e6);
    default:
        return random_between(state, 0, 12000);
    }
}

static struct span any_text(uint64_t *state, char room[TEXT_ROOM])
{
    static const char bytes[] = "abcXYZ 019.,;\t\"\\|_*<&\n\r\x01\x7F\xC3\xA9\xFF/()-";
    static const size_t most[] = {0, 3, 9, 16, 40, TEXT_ROOM};
    size_t limit = most[random_bits(state) % 6],
           length = limit > 0 ? random_bits(state) % limit : 0;
    bool plain = random_bits(state) % 2 == 0;
    for (size_t i = 0; i < length; i++)
        room[i] = bytes[random_bits(state) % (plain ? 11 : sizeof bytes - 1)];
    return (struct span){room, length};
}

static struct word any_word(uint64_t *state)
{
    static const struct word words[] = {
        {"", 0}, {"R", 1}, {"ZRF", 3}, {"(Y)", 3}, {"full_profile", 12}, {"fifteen-letters", 15}};
    return words[random_bits(state) % (sizeof words / sizeof words[0])];
}

static void fill(uint64_t *state, struct shared_text shared[2], struct row *row)
{
    *row = (struct row){
        .metres = any_number(state) / 1000,
        .kilograms = any_number(state),
        .revolutions = any_number(state) / 1000,
        .bare = any_number(state),
        .inches = any_number(state) * 0.0254,
        .consumption = random_bits(state) % 4 == 0 ? UNKNOWN : random_between(state, 1e-8, 1e-6),
        .word = any_word(state),
        .shared = random_bits(state) % 3 == 0 ? NULL : &shared[random_bits(state) % 2],
        .got = any_number(state),
    };
    row->text = any_text(state, row->room);
}

/* A buffer that is large enough never writes. */
static void begin(struct writer *writer, struct outbuf *out, struct arena *arena,
                  const struct column_choice *choice, const char *format,
                  struct writer_options options)
{
    outbuf_open(out, STDERR_FILENO);
    writer_begin(writer, writer_find(format), out, arena, options, choice->headings, choice->count);
}

static int compare(uint64_t *state, const struct options *chosen, const char *format,
                   struct writer_options options, size_t count)
{
    static struct outbuf quick_out, plain_out;
    static struct row row;
    struct arena arena = ARENA_EMPTY;
    struct writer quick, plain;
    struct column_choice choice;
    struct cell cells[2 * COLUMNS];
    struct shared_text shared[] = {{.text = span_of("one of two, with \"quotes\"")},
                                   {.text = span_of("the other_one; a | of markdown")}};
    int at_once = 0;
    ck_assert(columns_choose(&arena, columns, count, chosen, &choice));
    begin(&quick, &quick_out, &arena, &choice, format, options);
    begin(&plain, &plain_out, &arena, &choice, format, options);
    for (int i = 0; i < ROWS_AT_ONCE; i++) {
        fill(state, shared, &row);
        const char *const from = outbuf_room(&plain_out, 1);
        bool put = row_put(&quick, &choice, &row);
        columns_fill(&choice, &row, cells);
        if (!put)
            writer_row(&quick, cells);
        writer_row(&plain, cells);
        at_once += put;
        size_t start = (size_t)(from - plain_out.data), length = plain_out.used - start;
        if (quick_out.used != plain_out.used || memcmp(quick_out.data + start, from, length) != 0)
            ck_abort_msg("%s, row %d: at once\n%.*s\nby its cells\n%.*s", format, i,
                         (int)(quick_out.used - start), quick_out.data + start, (int)length, from);
        if (plain_out.used > OUTBUF_BLOCK / 2)
            quick_out.used = plain_out.used = 0;
    }
    ck_assert_uint_eq(quick.rows, plain.rows);
    quick_out.used = plain_out.used = 0;
    arena_free(&arena);
    return at_once;
}

START_TEST(at_once_as_by_cells)
{
    static const char *const formats[] = {"csv", "markdown", "json", "table"};
    uint64_t state = random_start("rows at once");
    int at_once[4] = {0};
    for (int i = 0; i < rounds(ROWS) / ROWS_AT_ONCE; i++)
        for (int format = 0; format < 4; format++) {
            struct options chosen = {.format = formats[format],
                                     .units = (int)(random_bits(&state) % 3)};
            struct writer_options options = {.with_header = random_bits(&state) % 2 == 0,
                                             .decimal_mark = random_bits(&state) % 2 ? ',' : '.',
                                             .streaming = random_bits(&state) % 4 > 0,
                                             .separator = "\0\0\t,"[random_bits(&state) % 4]};
            if (format == 3)
                options.streaming = true;
            /* The last column's name is too long for json to be written at once. */
            size_t count = random_bits(&state) % 4 == 0 ? COLUMNS : COLUMNS - 1;
            at_once[format] += compare(&state, &chosen, formats[format], options, count);
        }
    for (int format = 0; format < 3; format++)
        ck_assert_int_gt(at_once[format], rounds(ROWS) / 4);
    ck_assert_int_eq(at_once[3], 0);
}
END_TEST

Suite *row_put_suite(void)
{
    Suite *suite = suite_create("row_put");
    TCase *tcase = tcase_create("rows");
    tcase_set_timeout(tcase, 300);
    tcase_add_test(tcase, at_once_as_by_cells);
    suite_add_tcase(suite, tcase);
    return suite;
}

/* Writers and the buffer under them. Expected texts: RFC 4180 and RFC 8259 by section, the tables
 * of ill-formed UTF-8 in the Unicode Standard, section 3.9, and layouts drawn by hand. */
#include <check.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include "base/known.h"
#include "output/writer.h"
#include "suites.h"

static const struct writer_options plain = {.with_header = true, .decimal_mark = '.'};

static struct cell number(double value, int decimals)
{
    return (struct cell){.kind = CELL_NUMBER, .value = value, .decimals = decimals};
}

/* Text of that many bytes, NUL among them. */
static struct cell bytes(const char *at, size_t length)
{
    return (struct cell){.kind = CELL_TEXT, .text = {at, length}};
}

/* What a format writes for these rows; to be freed. */
static char *written(const char *format, struct writer_options options,
                     const struct heading *headings, size_t columns, const struct cell *cells,
                     size_t rows)
{
    static struct outbuf out;
    struct arena arena = ARENA_EMPTY;
    struct writer writer;
    FILE *file = tmpfile();
    ck_assert_ptr_nonnull(file);
    outbuf_open(&out, fileno(file));
    ck_assert_ptr_nonnull(writer_find(format));
    writer_begin(&writer, writer_find(format), &out, &arena, options, headings, columns);
    for (size_t i = 0; i < rows; i++)
        writer_row(&writer, cells + i * columns);
    writer_end(&writer);
    ck_assert_uint_eq(writer.rows, rows);
    ck_assert(outbuf_flush(&out));
    struct stat about;
    ck_assert_int_eq(fstat(fileno(file), &about), 0);
    char *text = calloc(1, (size_t)about.st_size + 1);
    ck_assert_ptr_nonnull(text);
    ck_assert_int_eq(pread(fileno(file), text, (size_t)about.st_size, 0), about.st_size);
    fclose(file);
    arena_free(&arena);
    return text;
}

#define EXPECT(text, format, options, headings, cells)                                             \
    do {                                                                                           \
        const size_t columns_ = sizeof(headings) / sizeof(headings)[0];                            \
        char *written_ = written(format, options, headings, columns_, cells,                       \
                                 sizeof(cells) / sizeof(cells)[0] / columns_);                     \
        ck_assert_str_eq(written_, text);                                                          \
        free(written_);                                                                            \
    } while (0)

static const struct heading three[] = {{"aaa", "aaa", "", false, 5, 0},
                                       {"bbb", "bbb", "", false, 5, 0},
                                       {"ccc", "ccc", "", false, 5, 0}};

START_TEST(formats_by_name)
{
    ck_assert_str_eq(writer_find("csv")->name, "csv");
    ck_assert_str_eq(writer_find("json")->name, "json");
    ck_assert_str_eq(writer_find("table")->name, "table");
    ck_assert_ptr_null(writer_find("CSV"));
    ck_assert_ptr_null(writer_find(""));
}
END_TEST

/* RFC 4180, section 2, rule 6 (line break and comma) and rule 7 (doubled quotation mark), with
 * the fields of its examples; quotation marks only round what needs them (rule 5). */
START_TEST(csv_quoting)
{
    const struct cell cells[] = {
        cell_text("aaa"),   cell_text("b\r\nbb"), cell_text("ccc"),  cell_text("aaa"),
        cell_text("b\"bb"), cell_text("ccc"),     cell_text("a,a"),  cell_text("b b"),
        cell_text("c;c"),   cell_text("\""),      cell_text("b\nb"), cell_text("c\r"),
    };
    EXPECT("aaa,bbb,ccc\n"
           "aaa,\"b\r\nbb\",ccc\n"
           "aaa,\"b\"\"bb\",ccc\n"
           "\"a,a\",b b,c;c\n"
           "\"\"\"\",\"b\nb\",\"c\r\"\n",
           "csv", plain, three, cells);
}
END_TEST

START_TEST(csv_decimal_comma)
{
    struct writer_options options = plain;
    options.decimal_mark = ',';
    const struct cell cells[] = {number(-12.5, 2), cell_text("a;b"), cell_text("a,b")};
    EXPECT("aaa;bbb;ccc\n-12,50;\"a;b\";a,b\n", "csv", options, three, cells);
}
END_TEST

START_TEST(csv_absent_and_no_header)
{
    struct writer_options options = plain;
    options.with_header = false;
    const struct cell cells[] = {cell_absent(),      number(0, 1),      cell_absent(),
                                 number(UNKNOWN, 2), cell_text("last"), number(INFINITY, 0)};
    EXPECT(",0.0,\n,last,\n", "csv", options, three, cells);
}
END_TEST

/* An empty line would be passed over by many readers; RFC 4180 allows an empty quoted field. */
START_TEST(csv_empty_row_of_one_column)
{
    const struct heading one[] = {{"error", "error", "", false, 5, 0}};
    const struct cell cells[] = {cell_absent(), cell_text("x"), bytes("", 0)};
    EXPECT("error\n\"\"\nx\n\"\"\n", "csv", plain, one, cells);
}
END_TEST

/* RFC 8259, section 5 (arrays), section 4 (objects), section 3 (null). */
START_TEST(json_array)
{
    const struct cell cells[] = {cell_text("a"),     number(1.0 / 3, 1), cell_absent(),
                                 number(UNKNOWN, 1), number(-0.0, 2),    number(1e20, 0)};
    EXPECT("[\n{\"aaa\":\"a\",\"bbb\":0.3333333333,\"ccc\":null},\n"
           "{\"aaa\":null,\"bbb\":0,\"ccc\":1e+20}\n]\n",
           "json", plain, three, cells);
    char *empty = written("json", plain, three, 3, NULL, 0);
    ck_assert_str_eq(empty, "[]\n");
    free(empty);
}
END_TEST

/* The decimal mark of JSON is a point, whatever was asked for: section 6. */
START_TEST(json_stream)
{
    struct writer_options options = {.streaming = true, .decimal_mark = ','};
    const struct heading one[] = {{"a", "a", "", true, 5, 0}};
    const struct cell cells[] = {number(1.5, 1), cell_absent()};
    EXPECT("{\"a\":1.5}\n{\"a\":null}\n", "json", options, one, cells);
    char *empty = written("json", options, one, 1, NULL, 0);
    ck_assert_str_eq(empty, "");
    free(empty);
}
END_TEST

/* RFC 8259, section 7: quotation mark, reverse solidus and U+0000 to U+001F must be escaped,
 * these with two characters or six; all else may stand as it is, and does unless it steers. */
START_TEST(json_escapes)
{
    const struct heading one[] = {{"a\"b", "a", "", false, 5, 0}};
    const char text[] = "\"\\/\b\f\n\r\t\0\x1f\x7f\xC3\xA9\xF0\x9D\x84\x9E";
    const struct cell cells[] = {bytes(text, sizeof text - 1)};
    EXPECT(
        "[\n{\"a\\\"b\":\"\\\"\\\\/\\b\\f\\n\\r\\t\\u0000\\u001f\\u007f\xC3\xA9\xF0\x9D\x84\x9E\"}"
        "\n]\n",
        "json", plain, one, cells);
}
END_TEST

#define R "\xEF\xBF\xBD"

/* The Unicode Standard, section 3.9, tables of U+FFFD for: non-shortest forms, surrogates, other
 * ill-formed sequences, truncated sequences; and a first byte alone at the end. */
static const struct {
    const char *bytes, *text;
} ill_formed[] = {
    {"\xC0\xAF\xE0\x80\xBF\xF0\x81\x82\x41", R R R R R R R R "A"},
    {"\xED\xA0\x80\xED\xBF\xBF\xED\xAF\x41", R R R R R R R R "A"},
    {"\xF4\x91\x92\x93\xFF\x41\x80\xBF\x42", R R R R R "A" R R "B"},
    {"\xE1\x80\xE2\xF0\x91\x92\xF1\xBF\x41", R R R R "A"},
    {"x\xE2\x82", "x" R},
    {"x\xF0", "x" R},
};

START_TEST(ill_formed_utf8)
{
    const struct heading one[] = {{"a", "", "", false, 5, 0}};
    const struct cell cells[] = {cell_text(ill_formed[_i].bytes)};
    char expected[100];
    snprintf(expected, sizeof expected, "[\n{\"a\":\"%s\"}\n]\n", ill_formed[_i].text);
    EXPECT(expected, "json", plain, one, cells);
}
END_TEST

static const struct heading layout[] = {
    {"designation", "designation", "", false, 12, 0},
    {"overall_diameter_mm", "overall diameter", "mm", true, 8, 0},
    {"change_percent", "change", "%", true, 6, 1},
    {"load_kg", "load", "kg", true, 5, 2},
    {"basis", "basis", "", false, 10, 3},
};

static const struct cell layout_cells[] = {
    {CELL_TEXT, .text = {"205/55R16", 9}},
    {CELL_NUMBER, 1, .value = 631.9},
    {CELL_ABSENT},
    {CELL_NUMBER, 0, .value = 615},
    {CELL_TEXT, .text = {"computed  ", 10}},
    {CELL_TEXT, .text = {"31x10.50R15LT", 13}},
    {CELL_NUMBER, 2, .value = 775.25},
    {CELL_NUMBER, 1, .value = -22.7},
    {CELL_NUMBER, 0, .value = 1030},
    {CELL_TEXT, .text = {"data\tbook\x1b[", 11}},
};

START_TEST(table_aligned)
{
    EXPECT("                overall\n"
           "designation    diameter  change  load  basis\n"
           "                     mm       %    kg\n"
           "-----------------------------------------------------\n"
           "205/55R16        631.9      -     615  computed\n"
           "31x10.50R15LT    775.25   -22.7  1030  data book\\x1B[\n",
           "table", plain, layout, layout_cells);
}
END_TEST

START_TEST(table_without_header_and_with_comma)
{
    const struct writer_options options = {.decimal_mark = ','};
    EXPECT("205/55R16      631,9     -     615  computed\n"
           "31x10.50R15LT  775,25  -22,7  1030  data book\\x1B[\n",
           "table", options, layout, layout_cells);
}
END_TEST

/* The whole table takes 53 characters, without the last column 37, without the last two 31. */
START_TEST(table_leaves_out_columns)
{
    struct writer_options options = plain;
    options.width = 53;
    EXPECT("                overall\n"
           "designation    diameter  change  load  basis\n"
           "                     mm       %    kg\n"
           "-----------------------------------------------------\n"
           "205/55R16        631.9      -     615  computed\n"
           "31x10.50R15LT    775.25   -22.7  1030  data book\\x1B[\n",
           "table", options, layout, layout_cells);
    options.width = 52;
    EXPECT("                overall\n"
           "designation    diameter  change  load\n"
           "                     mm       %    kg\n"
           "-------------------------------------\n"
           "205/55R16        631.9      -     615\n"
           "31x10.50R15LT    775.25   -22.7  1030\n"
           "(left out for width: basis; --wide or --columns\n"
           "shows them)\n",
           "table", options, layout, layout_cells);
    options.width = 36;
    EXPECT("                overall\n"
           "designation    diameter  change\n"
           "                     mm       %\n"
           "-------------------------------\n"
           "205/55R16        631.9      -\n"
           "31x10.50R15LT    775.25   -22.7\n"
           "(left out for width: load_kg, basis;\n"
           "--wide or --columns shows them)\n",
           "table", options, layout, layout_cells);
}
END_TEST

/* Priority 0 is never left out, however narrow the terminal. */
START_TEST(table_keeps_what_must_stay)
{
    struct writer_options options = plain;
    options.width = 1;
    options.with_header = false;
    char *text = written("table", options, layout, 5, layout_cells, 2);
    const char *expected = "205/55R16      631.9\n"
                           "31x10.50R15LT  775.25\n"
                           "(left\nout\nfor\nwidth:\nchange_percent,\nload_kg,\nbasis;\n";
    ck_assert_int_eq(strncmp(text, expected, strlen(expected)), 0);
    free(text);
}
END_TEST

/* Two lines need 16 + 2 + 5 characters, three 11 + 2 + 5. */
START_TEST(table_breaks_titles_further_before_it_leaves_out)
{
    const struct heading headings[] = {
        {"a", "speedometer shows too little", "", true, 5, 1},
        {"b", "true speed", "", true, 8, 1},
    };
    const struct cell cells[] = {number(1, 0), number(2, 0)};
    struct writer_options options = plain;
    EXPECT("     speedometer   true\n"
           "shows too little  speed\n"
           "-----------------------\n"
           "               1      2\n",
           "table", options, headings, cells);
    options.width = 20;
    EXPECT("speedometer\n"
           "  shows too   true\n"
           "     little  speed\n"
           "------------------\n"
           "          1      2\n",
           "table", options, headings, cells);
}
END_TEST

/* Columns begin at 0, 14, 24, 32 and 39; a text that is too long moves what follows it, and only
 * as far as it must. */
/* A column is as wide as its longest word, in heading or cells, and a gap of two: 5 + 5 + 12 = 22.
 * The highest priority goes first. */
START_TEST(paper_leaves_out_columns)
{
    static const struct heading headings[] = {{"aaa", "aaa", "", false, 5, 0},
                                              {"bbb", "bbb", "", false, 5, 1},
                                              {"ccc", "ccc", "", false, 5, 2}};
    const struct cell a = cell_text("1"),
                      cells[] = {a, a, cell_text("abcdefghij k"), a, a, a, a, a, a};
    for (size_t width = 21; width <= 22; width++) {
        struct writer_options options = plain;
        options.paper_width = width;
        char *text = written("html", options, headings, 3, cells, 3);
        ck_assert((strstr(text, "abcdefghij") != NULL) == (width == 22));
        ck_assert((strstr(text, "in csv: ccc.") != NULL) == (width == 21));
        ck_assert_ptr_nonnull(strstr(text, ">bbb</th>"));
        free(text);
    }
}
END_TEST

START_TEST(table_stream)
{
    struct writer_options options = plain;
    options.streaming = true;
    const struct cell cells[] = {
        cell_text("205/55R16"), number(631.9, 1), cell_absent(),
        number(615, 0),         cell_absent(),    cell_text("not a designation at"),
        number(631.9, 1),       number(-22.7, 1), number(615, 0),
        cell_text("x"),
    };
    EXPECT("               overall\n"
           "designation   diameter  change   load  basis\n"
           "                    mm       %     kg\n"
           "-------------------------------------------------\n"
           "205/55R16        631.9       -    615  -\n"
           "not a designation at  631.9  -22.7  615  x\n",
           "table", options, layout, cells);
}
END_TEST

/* Cells that are blank or end in blanks, in any column. */
START_TEST(table_never_trails_blanks)
{
    static const char *const words[] = {"", " ", "a ", "\t", "b  c", "\xE8\xBB\x8A ", "\n"};
    struct cell cells[35];
    for (size_t i = 0; i < 35; i++)
        cells[i] = cell_text(words[(i * 5 + i / 7) % 7]);
    struct writer_options options = plain;
    for (options.width = 0; options.width < 60; options.width++) {
        options.streaming = options.width % 2 != 0;
        char *text = written("table", options, layout, 5, cells, 7);
        ck_assert_ptr_null(strstr(text, " \n"));
        free(text);
    }
}
END_TEST

START_TEST(full_device)
{
    static struct outbuf out;
    int descriptor = open("/dev/full", O_WRONLY);
    ck_assert_int_ge(descriptor, 0);
    outbuf_open(&out, descriptor);
    outbuf_text(&out, "kept back");
    ck_assert_int_eq(out.error, 0);
    ck_assert(!outbuf_flush(&out));
    ck_assert_int_eq(out.error, ENOSPC);
    close(descriptor);
    /* It sticks, even where the descriptor would take bytes again. */
    FILE *file = tmpfile();
    out.descriptor = fileno(file);
    for (int i = 0; i < 2 * OUTBUF_SIZE; i++)
        outbuf_char(&out, 'x');
    ck_assert(!outbuf_flush(&out));
    ck_assert_int_eq(out.error, ENOSPC);
    struct stat about;
    ck_assert_int_eq(fstat(fileno(file), &about), 0);
    ck_assert_int_eq(about.st_size, 0);
    fclose(file);
}
END_TEST

START_TEST(closed_pipe)
{
    static struct outbuf out;
    int ends[2];
    ck_assert_int_eq(pipe(ends), 0);
    ck_assert(signal(SIGPIPE, SIG_IGN) != SIG_ERR);
    close(ends[0]);
    outbuf_open(&out, ends[1]);
    outbuf_char(&out, 'x');
    ck_assert(!outbuf_flush(&out));
    ck_assert_int_eq(out.error, EPIPE);
    close(ends[1]);
}
END_TEST

static void do_nothing(int signal_number)
{
    (void)signal_number;
}

/* Reads in small pieces what must be a repeated alphabet, and interrupts its parent meanwhile. */
static void read_slowly(int descriptor, size_t expected)
{
    size_t total = 0, wrong = 0;
    char some[777];
    for (int i = 0; i < 5; i++) {
        nanosleep(&(struct timespec){.tv_nsec = 10000000}, NULL);
        kill(getppid(), SIGUSR1);
    }
    for (ssize_t got; (got = read(descriptor, some, sizeof some)) > 0;)
        for (ssize_t i = 0; i < got; i++, total++)
            wrong += some[i] != (char)('a' + total % 26);
    _exit(wrong == 0 && total == expected ? 0 : 1);
}

/* A slow reader makes writes short, EINTR where the pipe blocks and EAGAIN where it does not.
 * The texts are as long as the buffer, longer, and one character more than what is left. */
START_TEST(slow_reader)
{
    static struct outbuf out;
    static char block[OUTBUF_SIZE + 1];
    const size_t lengths[] = {1, OUTBUF_SIZE - 1, 1, OUTBUF_SIZE, OUTBUF_SIZE + 1, 3};
    int ends[2], status;
    struct sigaction action = {.sa_handler = do_nothing};
    ck_assert_int_eq(sigaction(SIGUSR1, &action, NULL), 0);
    ck_assert_int_eq(pipe(ends), 0);
    pid_t reader = fork();
    ck_assert_int_ge(reader, 0);
    if (reader == 0) {
        close(ends[1]);
        read_slowly(ends[0], 3u * OUTBUF_SIZE + 5);
    }
    close(ends[0]);
    if (_i == 1)
        ck_assert_int_ge(fcntl(ends[1], F_SETFL, O_NONBLOCK), 0);
    outbuf_open(&out, ends[1]);
    for (size_t i = 0, total = 0; i < sizeof lengths / sizeof lengths[0]; i++) {
        for (size_t j = 0; j < lengths[i]; j++)
            block[j] = (char)('a' + total++ % 26);
        outbuf_put(&out, (struct span){block, lengths[i]});
    }
    ck_assert(outbuf_flush(&out));
    close(ends[1]);
    ck_assert_int_eq(waitpid(reader, &status, 0), reader);
    ck_assert_int_eq(status, 0);
}
END_TEST

Suite *writer_suite(void)
{
    Suite *suite = suite_create("writer");
    TCase *tests = tcase_create("writer");
    tcase_add_test(tests, formats_by_name);
    tcase_add_test(tests, csv_quoting);
    tcase_add_test(tests, csv_decimal_comma);
    tcase_add_test(tests, csv_absent_and_no_header);
    tcase_add_test(tests, csv_empty_row_of_one_column);
    tcase_add_test(tests, json_array);
    tcase_add_test(tests, json_stream);
    tcase_add_test(tests, json_escapes);
    tcase_add_loop_test(tests, ill_formed_utf8, 0, (int)(sizeof ill_formed / sizeof ill_formed[0]));
    tcase_add_test(tests, table_aligned);
    tcase_add_test(tests, table_without_header_and_with_comma);
    tcase_add_test(tests, table_leaves_out_columns);
    tcase_add_test(tests, table_keeps_what_must_stay);
    tcase_add_test(tests, table_breaks_titles_further_before_it_leaves_out);
    tcase_add_test(tests, paper_leaves_out_columns);
    tcase_add_test(tests, table_stream);
    tcase_add_test(tests, table_never_trails_blanks);
    tcase_add_test(tests, full_device);
    tcase_add_test(tests, closed_pipe);
    tcase_add_loop_test(tests, slow_reader, 0, 2);
    suite_add_tcase(suite, tests);
    return suite;
}

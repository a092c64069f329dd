/* Every size of tables/standard_sizes.csv is read as its columns say, in three spellings. The
 * columns were written from knowledge of the standards, not by this scanner. */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "designation_cases.h"
#include "size/designation.h"
#include "size/designation_listed.h"

#ifndef TABLES_DIR
#define TABLES_DIR "tables"
#endif

enum { LINE = 512, COLUMNS = 15, LEAST_ROWS = 420, ROWS_MAX = 2000 };

enum column {
    DESIGNATION,
    FORM,
    PREFIX,
    SUFFIX,
    CONSTRUCTION,
    SECTION_WIDTH,
    ASPECT,
    OVERALL_DIAMETER,
    RIM_CODE,
    LOAD_INDEX,
    LOAD_INDEX_DUAL,
    SPEED_SYMBOL,
    CAPACITY,
    LOAD_RANGE,
    CERTAINTY
};

static FILE *open_table(void)
{
    char path[1024];
    const char *folder = getenv("TYRESUM_TABLES_DIR");
    snprintf(path, sizeof path, "%s/standard_sizes.csv", folder != NULL ? folder : TABLES_DIR);
    FILE *file = fopen(path, "r");
    ck_assert_msg(file != NULL, "cannot open %s; set TYRESUM_TABLES_DIR", path);
    return file;
}

static void split(char *line, char *cells[COLUMNS])
{
    line[strcspn(line, "\r\n")] = '\0';
    for (int i = 0; i < COLUMNS; i++) {
        cells[i] = line;
        char *comma = strchr(line, ',');
        ck_assert_msg((comma == NULL) == (i == COLUMNS - 1), "%s: not %d columns", cells[0],
                      COLUMNS);
        if (comma != NULL) {
            *comma = '\0';
            line = comma + 1;
        }
    }
}

/* A cell in the unit that the scanner keeps; an empty one is `empty`. */
static int scaled(const char *cell, double scale, int empty)
{
    return cell[0] == '\0' ? empty : (int)(strtod(cell, NULL) * scale + 0.5);
}

static const char *construction_text(const struct designation *d)
{
    if (d->construction == CONSTRUCTION_BIAS_BELTED)
        return "B";
    if (d->construction == CONSTRUCTION_DIAGONAL)
        return d->hyphen ? "-" : "D";
    return d->z_marked ? d->run_flat ? "ZRF" : "ZR" : d->run_flat ? "RF" : "R";
}

static void must_say(char *cells[COLUMNS], const struct designation *d, const char *spelling)
{
    static const char *const PREFIXES[PREFIX_COUNT] = {"", "P", "LT", "ST", "T", "HL"};
    static const char *const SUFFIXES[SUFFIX_COUNT] = {"", "C", "CP", "LT", "ST", "NHS"};
    static const char *const CAPACITIES[CAPACITY_COUNT] = {"", "SL", "XL", "HL", "LL"};
    char load_range[2] = {d->load_range, '\0'};
    bool inches = d->form == FORM_FLOTATION || d->form == FORM_NUMERIC;
    bool same = strcmp(cells[FORM], designation_form_name(d->form)) == 0 &&
                strcmp(cells[PREFIX], PREFIXES[d->prefix]) == 0 &&
                strcmp(cells[SUFFIX], SUFFIXES[d->suffix]) == 0 &&
                strcmp(cells[CONSTRUCTION], construction_text(d)) == 0 &&
                scaled(cells[SECTION_WIDTH], inches ? 100 : 1, 0) == d->section_width &&
                scaled(cells[ASPECT], 1, 0) == d->aspect_percent &&
                scaled(cells[OVERALL_DIAMETER], inches ? 100 : 1, 0) == d->overall_diameter &&
                scaled(cells[RIM_CODE], 10, 0) == d->rim_code_tenths &&
                d->rim_millimetric == (strtod(cells[RIM_CODE], NULL) > 100) &&
                scaled(cells[LOAD_INDEX], 1, LOAD_INDEX_NONE) == d->service.load_index &&
                scaled(cells[LOAD_INDEX_DUAL], 1, LOAD_INDEX_NONE) == d->service.load_index_dual &&
                strcmp(cells[SPEED_SYMBOL], d->service.speed_symbol) == 0 &&
                strcmp(cells[CAPACITY], CAPACITIES[d->capacity]) == 0 &&
                strcmp(cells[LOAD_RANGE], load_range) == 0 &&
                d->second_service.speed_symbol[0] == '\0' && d->ply_rating == 0 &&
                d->service.speed_above == (strchr(cells[DESIGNATION], '(') != NULL);
    ck_assert_msg(same, "%s, spelled \"%s\", is not read as its columns say", cells[DESIGNATION],
                  spelling);
}

static void must_read(char *cells[COLUMNS], const char *spelling)
{
    struct designation d;
    struct designation_error error;
    if (!designation_parse(span_of(spelling), &d, &error))
        ck_abort_msg("\"%s\" column %zu: %s", spelling, error.column, error.message);
    must_say(cells, &d, spelling);
    char canonical[DESIGNATION_CANONICAL_SIZE];
    designation_canonical(&d, canonical);
    ck_assert_str_eq(canonical, cells[DESIGNATION]);
}

static void spell_small_and_close(const char *text, char *to)
{
    for (; *text != '\0'; text++)
        if (*text != ' ')
            *to++ = *text >= 'A' && *text <= 'Z' ? (char)(*text - 'A' + 'a') : *text;
    *to = '\0';
}

static int class_of(char c)
{
    return is_digit(c) || c == '.' ? 0 : is_letter(c) ? 1 : 2;
}

/* Two blanks wherever a number, a word or a sign ends. */
static void spell_wide(const char *text, char *to)
{
    for (size_t i = 0; text[i] != '\0'; i++) {
        if (i > 0 && (class_of(text[i]) != class_of(text[i - 1]) || class_of(text[i]) == 2)) {
            *to++ = ' ';
            *to++ = ' ';
        }
        *to++ = text[i];
    }
    *to = '\0';
}

START_TEST(every_listed_size_in_three_spellings)
{
    FILE *file = open_table();
    char line[LINE], spelling[2 * LINE], *cells[COLUMNS];
    int rows = -1; /* the header row */
    while (fgets(line, sizeof line, file) != NULL) {
        if (line[0] == '#' || rows++ < 0)
            continue;
        split(line, cells);
        must_read(cells, cells[DESIGNATION]);
        spell_small_and_close(cells[DESIGNATION], spelling);
        must_read(cells, spelling);
        spell_wide(cells[DESIGNATION], spelling);
        must_read(cells, spelling);
    }
    fclose(file);
    ck_assert_int_ge(rows, LEAST_ROWS);
}
END_TEST

/* A row's size, without what is marked behind it, and its load index. */
struct listed_size {
    char size[64];
    struct designation designation;
    int load_index;
};

static int read_sizes(struct listed_size sizes[ROWS_MAX])
{
    FILE *file = open_table();
    char line[LINE], *cells[COLUMNS];
    struct designation_error error;
    int rows = -1; /* the header row */
    while (fgets(line, sizeof line, file) != NULL) {
        if (line[0] == '#' || rows++ < 0)
            continue;
        ck_assert_int_le(rows, ROWS_MAX);
        struct listed_size *to = &sizes[rows - 1];
        split(line, cells);
        snprintf(to->size, sizeof to->size, "%s %s %s %s %s %s %s", cells[FORM], cells[PREFIX],
                 cells[SUFFIX], cells[SECTION_WIDTH], cells[ASPECT], cells[OVERALL_DIAMETER],
                 cells[RIM_CODE]);
        to->load_index = scaled(cells[LOAD_INDEX], 1, LOAD_INDEX_NONE);
        ck_assert(designation_parse(span_of(cells[DESIGNATION]), &to->designation, &error));
    }
    fclose(file);
    return rows;
}

START_TEST(highest_of_all_that_list_the_size)
{
    static struct listed_size sizes[ROWS_MAX];
    int rows = read_sizes(sizes), above_its_own = 0;
    struct designation unlisted;
    struct designation_error error;
    for (int i = 0; i < rows; i++) {
        int highest = LOAD_INDEX_NONE;
        for (int j = 0; j < rows; j++)
            if (strcmp(sizes[i].size, sizes[j].size) == 0 && sizes[j].load_index > highest)
                highest = sizes[j].load_index;
        ck_assert_msg(designation_listed_highest(&sizes[i].designation) == highest, "%s",
                      sizes[i].size);
        above_its_own += highest > sizes[i].load_index;
    }
    ck_assert_int_gt(above_its_own, 20);
    ck_assert(designation_parse(span_of("215/55R21 104H"), &unlisted, &error));
    ck_assert_int_eq(designation_listed_highest(&unlisted), LOAD_INDEX_NONE);
}
END_TEST

TCase *designation_listed_case(void)
{
    TCase *listed = tcase_create("listed sizes");
    tcase_set_tags(listed, "text");
    tcase_add_test(listed, every_listed_size_in_three_spellings);
    tcase_add_test(listed, highest_of_all_that_list_the_size);
    return listed;
}

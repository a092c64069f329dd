/* The compiled tables against their files. */
#include <check.h>
#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/known.h"
#include "suites.h"
#include "tables/tables.h"

#ifndef TABLES_DIR
#define TABLES_DIR "tables"
#endif

enum { LINE_SIZE = 4096 };

/* Reads the next cell of a CSV line without its quotes; returns what follows it, or NULL where
 * the line ends with it. On purpose not tablegen's reader. */
static const char *next_cell(const char *at, char cell[LINE_SIZE])
{
    size_t length = 0;
    int quoted = 0;
    for (; *at; at++) {
        if (*at == '"' && quoted && at[1] == '"')
            cell[length++] = *++at;
        else if (*at == '"')
            quoted = !quoted;
        else if (*at == ',' && !quoted)
            break;
        else
            cell[length++] = *at;
    }
    cell[length] = '\0';
    return *at == ',' ? at + 1 : NULL;
}

static FILE *open_table(const struct table *table)
{
    char path[1024];
    FILE *file;
    snprintf(path, sizeof path, "%s/%s.csv", TABLES_DIR, table->name);
    file = fopen(path, "r");
    ck_assert_msg(file != NULL, "%s cannot be opened", path);
    return file;
}

static int next_line(FILE *file, char line[LINE_SIZE])
{
    if (!fgets(line, LINE_SIZE, file))
        return 0;
    ck_assert_msg(strchr(line, '\n') != NULL, "a line is longer than the test's buffer");
    line[strcspn(line, "\n")] = '\0';
    return 1;
}

/* Compares a "# key: value" line with the field compiled from it. */
static void compare_comment(const struct table *table, const char *line, const char *key,
                            const char *compiled, int *seen)
{
    size_t length = strlen(key);
    if (strncmp(line, key, length) != 0)
        return;
    ck_assert_msg(strcmp(line + length, compiled) == 0, "%s: %s", table->name, line);
    ++*seen;
}

static void compare_header(const struct table *table, const char *line)
{
    char cell[LINE_SIZE];
    for (size_t column = 0; column < table->column_count; column++) {
        ck_assert_msg(line != NULL, "%s: too few columns", table->name);
        line = next_cell(line, cell);
        ck_assert_str_eq(cell, table->columns[column].name);
    }
    ck_assert_msg(line == NULL, "%s: too many columns", table->name);
}

static void compare_row(const struct table *table, size_t row, const char *line)
{
    char cell[LINE_SIZE], text[TABLE_CELL_SIZE];
    ck_assert_msg(row < table->rows, "%s: the file has more rows", table->name);
    for (size_t column = 0; column < table->column_count; column++) {
        ck_assert_ptr_nonnull(line);
        line = next_cell(line, cell);
        ck_assert_uint_eq(table_cell(table, row, column, text), strlen(cell));
        ck_assert_msg(strcmp(text, cell) == 0, "%s row %zu %s: file \"%s\", compiled \"%s\"",
                      table->name, row, table->columns[column].name, cell, text);
    }
    ck_assert_ptr_null(line);
}

static void compare_table(const struct table *table)
{
    char line[LINE_SIZE];
    FILE *file = open_table(table);
    size_t row = 0;
    int seen = 0, header = 0;
    while (next_line(file, line)) {
        compare_comment(table, line, "# title: ", table->title, &seen);
        compare_comment(table, line, "# source: ", table->source, &seen);
        compare_comment(table, line, "# edition: ", table->edition, &seen);
        compare_comment(table, line, "# certainty: ", table->certainty, &seen);
        if (strncmp(line, "# note: ", 8) == 0)
            ck_assert_ptr_nonnull(strstr(table->note, line + 8));
        if (line[0] == '#')
            continue;
        if (header++ == 0)
            compare_header(table, line);
        else
            compare_row(table, row++, line);
    }
    fclose(file);
    ck_assert_int_eq(seen, 4);
    ck_assert_msg(row == table->rows, "%s: the file has fewer rows", table->name);
}

START_TEST(compiled_tables_equal_their_files)
{
    for (size_t i = 0; i < tables_count(); i++)
        compare_table(table_at(i));
}
END_TEST

/* Numbers in the rows are the decimals of the file, as the C library reads them. */
START_TEST(compiled_numbers_equal_their_decimals)
{
    for (size_t i = 0; i < tables_count(); i++) {
        const struct table *table = table_at(i);
        for (size_t cell = 0; cell < table->rows * table->column_count; cell++) {
            const struct table_column *column = &table->columns[cell % table->column_count];
            size_t row = cell / table->column_count;
            char text[TABLE_CELL_SIZE];
            double value;
            if (column->type != TABLE_NUMBER)
                continue;
            memcpy(&value, (const char *)table->data + row * table->row_size + column->offset,
                   sizeof value);
            if (table_cell(table, row, cell % table->column_count, text) == 0)
                ck_assert(!known(value));
            else
                ck_assert(value == strtod(text, NULL));
        }
    }
}
END_TEST

START_TEST(every_file_is_compiled_in)
{
    DIR *directory = opendir(TABLES_DIR);
    struct dirent *entry;
    size_t files = 0;
    ck_assert_ptr_nonnull(directory);
    while ((entry = readdir(directory))) {
        char *dot = strrchr(entry->d_name, '.');
        if (!dot || strcmp(dot, ".csv") != 0)
            continue;
        *dot = '\0';
        ck_assert_msg(table_find(entry->d_name) != NULL, "%s.csv is not in", entry->d_name);
        files++;
    }
    closedir(directory);
    ck_assert_uint_eq(files, tables_count());
    ck_assert_ptr_null(table_find("no_such_table"));
    ck_assert_ptr_null(table_at(tables_count()));
}
END_TEST

Suite *table_files_suite(void)
{
    Suite *suite = suite_create("table_files");
    TCase *files = tcase_create("files");
    tcase_add_test(files, compiled_tables_equal_their_files);
    tcase_add_test(files, compiled_numbers_equal_their_decimals);
    tcase_add_test(files, every_file_is_compiled_in);
    suite_add_tcase(suite, files);
    return suite;
}

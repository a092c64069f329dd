/* The C that tablegen makes of its tables. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "tablegen.h"

static const char *const type_enums[TYPE_COUNT] = {"TABLE_INTEGER", "TABLE_NUMBER", "TABLE_TEXT"};

static void write_string(FILE *out, const char *text)
{
    fputc('"', out);
    for (; *text; text++) {
        if (*text == '\n') {
            fputs("\\n", out);
            continue;
        }
        if (*text == '"' || *text == '\\' || *text == '?')
            fputc('\\', out);
        fputc(*text, out);
    }
    fputc('"', out);
}

static void write_upper(FILE *out, const char *text)
{
    for (; *text; text++)
        fputc(*text >= 'a' && *text <= 'z' ? *text - 'a' + 'A' : *text, out);
}

/* A name for each row: the number that its place is. */
static void write_keys(FILE *out, const struct table *table)
{
    fprintf(out, "enum %s_key {\n", table->name);
    for (size_t row = 0; row < table->row_count; row++) {
        fputs("    ", out);
        write_upper(out, table->name);
        fputc('_', out);
        write_upper(out, table->cells[row * table->column_count]);
        fputs(",\n", out);
    }
    fputs("};\n", out);
}

static void write_struct(FILE *out, const struct table *table)
{
    fprintf(out, "\n/* %s.csv: certainty and source in its struct table. */\n", table->name);
    fprintf(out, "struct %s_row {\n", table->name);
    for (size_t i = 0; i < table->column_count; i++) {
        const struct column *column = &table->columns[i];
        if (column->type == INTEGER)
            fprintf(out, "    int %s;\n", column->name);
        else if (column->type == NUMBER)
            fprintf(out, "    double %s;\n", column->name);
        else
            fprintf(out, "    char %s[%zu];\n", column->name, column->length_max + 1);
    }
    fprintf(out, "};\nenum { %s_count = %zu };\n", table->name, table->row_count);
    if (table->key_named)
        write_keys(out, table);
    fprintf(out, "extern const struct %s_row %s_rows[%s_count];\n", table->name, table->name,
            table->name);
}

static void write_cell(FILE *out, enum type type, const char *cell)
{
    if (type == TEXT)
        write_string(out, cell);
    else if (*cell)
        fputs(cell, out);
    else
        fputs(type == INTEGER ? "-1" : "NAN", out);
}

static void write_rows(FILE *out, const struct table *table)
{
    fprintf(out, "\nconst struct %s_row %s_rows[%s_count] = {\n", table->name, table->name,
            table->name);
    for (size_t row = 0; row < table->row_count; row++) {
        fputs("    {", out);
        for (size_t i = 0; i < table->column_count; i++) {
            fputs(i > 0 ? ", " : "", out);
            write_cell(out, table->columns[i].type, table->cells[row * table->column_count + i]);
        }
        fputs("},\n", out);
    }
    fputs("};\n", out);
    fprintf(out, "\nstatic const struct table_column %s_columns[] = {\n", table->name);
    for (size_t i = 0; i < table->column_count; i++) {
        const struct column *column = &table->columns[i];
        fprintf(out, "    {\"%s\", %s, offsetof(struct %s_row, %s), %d},\n", column->name,
                type_enums[column->type], table->name, column->name, column->decimals);
    }
    fputs("};\n", out);
}

static void write_descriptor(FILE *out, const struct table *table)
{
    fprintf(out, "    {\n        .name = \"%s\",\n", table->name);
    for (int field = 0; field < FIELD_COUNT; field++) {
        fprintf(out, "        .%s = ", field_names[field]);
        write_string(out, table->fields[field]);
        fputs(",\n", out);
    }
    fputs("        .note = ", out);
    write_string(out, table->note ? table->note : "");
    fprintf(out, ",\n        .rows = %s_count,\n        .row_size = sizeof(struct %s_row),\n",
            table->name, table->name);
    fprintf(out, "        .data = %s_rows,\n        .column_count = %zu,\n", table->name,
            table->column_count);
    fprintf(out, "        .columns = %s_columns,\n    },\n", table->name);
}

static FILE *open_output(const char *directory, const char *name, char **path)
{
    FILE *out;
    *path = grown(NULL, strlen(directory) + strlen(name) + 2);
    sprintf(*path, "%s/%s", directory, name);
    out = fopen(*path, "w");
    if (!out)
        fail(*path);
    fprintf(out,
            "/* %s: written by tablegen from the CSV files of tables/. Do not edit: edit the "
            "tables. */\n",
            name);
    return out;
}

static void close_output(FILE *out, char *path)
{
    bool failed = ferror(out) != 0;
    if (fclose(out) != 0 || failed) {
        remove(path);
        fail(path);
    }
    free(path);
}

void write_header(const char *directory, const struct table *tables, size_t count)
{
    char *path;
    FILE *out = open_output(directory, "tables_data.h", &path);
    fputs("#ifndef TYRESUM_TABLES_TABLES_DATA_H\n#define TYRESUM_TABLES_TABLES_DATA_H\n\n"
          "#include \"tables/tables.h\"\n\n"
          "/* In the rows: an empty number is NaN, an empty integer -1, an empty text \"\". */\n",
          out);
    for (size_t i = 0; i < count; i++)
        write_struct(out, &tables[i]);
    fprintf(out, "\nenum { all_tables_count = %zu };\n", count);
    fputs("extern const struct table all_tables[all_tables_count];\n\n#endif\n", out);
    close_output(out, path);
}

void write_data(const char *directory, const struct table *tables, size_t count)
{
    char *path;
    FILE *out = open_output(directory, "tables_data.c", &path);
    fputs("#include <math.h>\n#include <stddef.h>\n\n#include \"tables/tables_data.h\"\n", out);
    for (size_t i = 0; i < count; i++)
        write_rows(out, &tables[i]);
    fputs("\nconst struct table all_tables[all_tables_count] = {\n", out);
    for (size_t i = 0; i < count; i++)
        write_descriptor(out, &tables[i]);
    fputs("};\n", out);
    close_output(out, path);
}

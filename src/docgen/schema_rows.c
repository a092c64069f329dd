/* JSON Schema of what the commands print as json: an array of objects, from the column tables. */
#include "cli/column_words.h"
#include "docgen/docgen.h"

static void put_column(struct outbuf *out, const char *name, const struct column *column,
                       bool first)
{
    static const char *const kinds[] = {"number", "string", "object", "number\", \"string"};
    put_all(out, first ? "" : ",\n    ", "\"", name, "\": {", NULL);
    if (column_word(column, 0) == NULL)
        put_all(out, "\"type\": [\"", kinds[column->kind], "\", \"null\"]", NULL);
    else
        put_all(out, "\"enum\": [null", NULL);
    for (size_t i = 0; column_word(column, i) != NULL; i++)
        put_all(out, ", \"", column_word(column, i), "\"", NULL);
    put_all(out, column_word(column, 0) == NULL ? "" : "]", ", \"description\": ", NULL);
    put_json(out, column_meaning(column));
    put_all(out, "}", NULL);
}

/* A column with one unit is there, but for those of some builds; of two units, those that --units
 * asks for. */
static void put_row(struct outbuf *out, const struct command *command)
{
    bool first = true;
    put_all(out, "{\"type\": \"object\", \"additionalProperties\": false,\n    \"properties\": {",
            NULL);
    if (command->bit & CMD_BUILD)
        put_all(out,
                "\"case\": {\"type\": \"string\", \"description\": \"of several builds, which\"}",
                NULL);
    for (size_t i = 0; i < *command->column_count; i++) {
        const struct column *column = &command->columns[i];
        put_column(out, column->name, column, i == 0 && !(command->bit & CMD_BUILD));
        if (column->name_us != NULL)
            put_column(out, column->name_us, column, false);
    }
    put_all(out, "},\n    \"required\": [", NULL);
    for (size_t i = 0; i < *command->column_count; i++) {
        if (command->columns[i].name_us != NULL || command->columns[i].needs == COLUMN_SOMETIMES)
            continue;
        put_all(out, first ? "\"" : ", \"", command->columns[i].name, "\"", NULL);
        first = false;
    }
    put_all(out, "]}", NULL);
}

void write_rows_schema(struct arena *arena, struct outbuf *out)
{
    (void)arena;
    put_all(out,
            "{\"$schema\": \"https://json-schema.org/draft/2020-12/schema\",\n"
            "\"title\": \"json output of tyresum, without --columns: the rows of one command; a "
            "stream has such an object a line\",\n\"anyOf\": [",
            NULL);
    for (size_t i = 0; i < command_count; i++)
        if (*command_table[i].column_count > 0)
            put_all(out, i > 0 ? ", " : "", "{\"$ref\": \"#/$defs/", command_table[i].name, "\"}",
                    NULL);
    put_all(out, "],\n\"$defs\": {", NULL);
    for (size_t i = 0; i < command_count; i++) {
        if (*command_table[i].column_count == 0)
            continue;
        put_all(out, i > 0 ? ",\n\"" : "\n\"", command_table[i].name,
                "\": {\"type\": \"array\", \"items\":\n  ", NULL);
        put_row(out, &command_table[i]);
        put_all(out, "}", NULL);
    }
    put_all(out, "}}\n", NULL);
}

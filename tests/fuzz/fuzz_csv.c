/* libFuzzer entry: any bytes as a stream of lines, or of CSV records, through the program. One row
 * comes out for every line or record, in its order, with the tyre that stands there or a reason;
 * what a CSV holds besides passes through untouched. */
#include "program.h"

#include "base/utf8.h"
#include "cli/csv_record.h"
#include "rendered.h"
#include "size/designation_loose.h"

enum { MODES = 8, UNREAD_KEPT = 90, UNREAD_CUT = 200, COLUMNS_MAX = 8 };

struct lines {
    struct span rest;
    bool records;
    char separator; /* once the heading has been read */
};

static bool csv_field(struct span record, const struct csv_shape *shape, size_t index, char *out)
{
    return csv_field_cut(record, shape, index, out, record.length + 1).at != NULL;
}

static bool ends_field(const struct lines *lines, char byte)
{
    return lines->separator != '\0' ? byte == lines->separator
                                    : byte == ',' || byte == ';' || byte == '\t';
}

/* Bytes of the record at the head of the text, by RFC 4180's grammar: field after field, each
 * quoted (up to the last of its quotes, and what stray text follows) or not. */
static size_t record_length(const struct lines *lines, struct span text)
{
    size_t at = 0;
    while (at < text.length) {
        bool field_quoted = text.at[at] == '"', open = field_quoted;
        for (at += field_quoted; at < text.length; at++) {
            if (field_quoted && text.at[at] == '"')
                open = !open;
            else if (!open && (text.at[at] == '\n' || ends_field(lines, text.at[at])))
                break;
        }
        if (at < text.length && text.at[at] == '\n')
            break;
        at++;
    }
    return at < text.length ? at : text.length;
}

/* The next line (or record: quotes may hold line feeds), without what ends it. */
static bool next_line(struct lines *lines, struct span *text, struct span *end)
{
    struct span rest = lines->rest;
    if (rest.length == 0)
        return false;
    const char *stop = memchr(rest.at, '\n', rest.length);
    size_t at = lines->records ? record_length(lines, rest)
                : stop != NULL ? (size_t)(stop - rest.at)
                               : rest.length;
    bool feed = at < rest.length, carriage = feed && at > 0 && rest.at[at - 1] == '\r';
    *text = (struct span){rest.at, at - carriage};
    *end = (struct span){rest.at + at - carriage, (size_t)carriage + feed};
    lines->rest = (struct span){rest.at + at + feed, rest.length - at - feed};
    if (lines->separator == '\0')
        lines->separator = csv_shape_of(*text).separator;
    return true;
}

static struct lines lines_of(const char *text, size_t size, bool records)
{
    if (size >= 3 && memcmp(text, "\xEF\xBB\xBF", 3) == 0)
        return (struct lines){{text + 3, size - 3}, records, '\0'};
    return (struct lines){{text, size}, records, '\0'};
}

/* Ours may stand behind "tyresum_", once or more. */
static size_t column_named(const struct span *fields, size_t count, const char *name)
{
    const size_t more = strlen("tyresum_");
    for (size_t i = 0; i < count; i++) {
        struct span field = fields[i];
        while (field.length > more && memcmp(field.at, "tyresum_", more) == 0)
            field = (struct span){field.at + more, field.length - more};
        if (span_is(field, name))
            return i;
    }
    fuzz_broken("the heading lacks a column", name, strlen(name));
    return 0;
}

/* The beginning of a line that could not be read stands in its row, NUL as a question mark. */
static bool quotes_line(struct span field, struct span line)
{
    size_t at = field.length > 0 && field.at[0] == '"';
    const size_t end = field.length - at;
    for (size_t i = 0; i < line.length && i < UNREAD_KEPT; i++, at++) {
        if (at >= end)
            return line.length > UNREAD_CUT; /* by a whole character, however many bytes it has */
        if (field.at[at] != (line.at[i] == '\0' ? '?' : line.at[i]))
            return false;
        at += line.at[i] == '"'; /* doubled, since the field is in quotes */
    }
    return true;
}

/* The designation that a row tells: the canonical one where the line can be read. */
static const char *row_broken(struct span line, const struct span *fields, size_t count,
                              size_t designation, size_t error, bool *read)
{
    struct designation size;
    struct designation_error fault;
    char canonical[DESIGNATION_CANONICAL_SIZE], taken[TAKEN_SIZE];
    *read = designation_read(line, &size, &fault, taken);
    if (count <= error)
        return "a row is short of fields";
    if (*read) {
        designation_canonical(&size, canonical);
        if (!span_is(fields[designation], canonical))
            return "a row tells another tyre than its line";
        return fields[error].length > 0 ? "a row that was read has an error" : NULL;
    }
    if (fields[error].length < strlen("column 1: ") || strstr(fields[error].at, "column ") == NULL)
        return "a row that was not read does not say why";
    return quotes_line(fields[designation], line) ? NULL : "a row quotes another line than its own";
}

static bool is_blank_or_comment(struct span line)
{
    size_t at = 0;
    while (at < line.length && is_blank(line.at[at]))
        at++;
    return at == line.length || line.at[at] == '#';
}

static const char *status_broken(const struct run *run, size_t unread)
{
    if (run->status != (unread > 0 ? EXIT_LINES_UNREAD : EXIT_COMPUTED))
        return "the exit status is wrong";
    return (unread > 0) != (run->err_length > 0) ? "standard error is wrong" : NULL;
}

static const char *csv_of_lines_broken(const struct run *run, struct lines lines, bool skip)
{
    struct span out = {run->out, run->out_length}, fields[CSV_FIELDS_MAX], line, end;
    size_t columns, count, unread = 0, length = csv_record(out, ',', fields, &columns);
    if (length == 0)
        return "there is no heading";
    size_t designation = column_named(fields, columns, "designation");
    size_t error = column_named(fields, columns, "error");
    while (next_line(&lines, &line, &end)) {
        bool read;
        if (skip && is_blank_or_comment(line))
            continue;
        out = (struct span){out.at + length, out.length - length};
        length = csv_record(out, ',', fields, &count);
        if (length == 0 || count != columns)
            return "a row of csv is none";
        const char *broken = row_broken(line, fields, count, designation, error, &read);
        if (broken != NULL)
            return broken;
        unread += !read;
    }
    return length != out.length ? "there are more rows than lines" : status_broken(run, unread);
}

static const char *json_of_lines_broken(const struct run *run, struct lines lines)
{
    struct span line, end;
    struct designation size;
    struct designation_error fault;
    char taken[TAKEN_SIZE];
    size_t rows, expected = 0, unread = 0;
    const char *broken = json_broken((struct span){run->out, run->out_length}, true, &rows);
    if (broken != NULL)
        return broken;
    for (; next_line(&lines, &line, &end); expected++)
        unread += !designation_read(line, &size, &fault, taken);
    return rows != expected ? "there are not as many objects as lines" : status_broken(run, unread);
}

/* The last record of a stream where it does not close its quote: it is refused, by its number of
 * quotes where the field begins with one. */
static bool is_open(struct span record, struct span end, char separator)
{
    bool quoted = false, open = false, begins = true;
    for (size_t i = 0; i < record.length; i++) {
        quoted = begins ? record.at[i] == '"' : quoted;
        open = open != (quoted && record.at[i] == '"');
        begins = !open && record.at[i] == separator;
    }
    return open && end.length == 0;
}

static const char *refusal_broken(const struct run *run, struct span rest)
{
    return run->status == EXIT_INPUT_WRONG && run->err_length > 0 && rest.length == 0
               ? NULL
               : "a record with an open quote is not refused";
}

static bool takes(struct span *out, struct span expected)
{
    if (out->length < expected.length || memcmp(out->at, expected.at, expected.length) != 0)
        return false;
    *out = (struct span){out->at + expected.length, out->length - expected.length};
    return true;
}

/* The computed fields behind a record end as the record does; a line feed stands in for it. */
static bool takes_row(struct span *out, struct span end, char separator, struct span *fields,
                      size_t *count)
{
    if (end.length == 0)
        end = span_of("\n");
    for (size_t at = 0;; (*count)++) {
        struct span rest = {out->at + at, out->length - at};
        size_t length = 0;
        bool quoted = false;
        while (length < rest.length &&
               (quoted || (rest.at[length] != separator && rest.at[length] != '\n' &&
                           rest.at[length] != '\r')))
            quoted = quoted != (rest.at[length++] == '"');
        if (*count == CSV_FIELDS_MAX || length == rest.length)
            return false;
        fields[*count] = (struct span){rest.at, length};
        at += length + 1;
        if (rest.at[length] == separator)
            continue;
        ++*count;
        *out = (struct span){rest.at + length, rest.length - length};
        return takes(out, end);
    }
}

/* A record's own fields: empty ones are added where the heading has more, and where it has fewer,
 * the last one is all the rest in quotes. */
static bool takes_own_fields(struct span *out, struct span record, const struct csv_shape *shape)
{
    const struct span separator = {&shape->separator, 1};
    size_t count = csv_count_fields(record, shape), at = 0, before = shape->fields - 1;
    if (count <= shape->fields) {
        bool passed = takes(out, record);
        for (; passed && count < shape->fields; count++)
            passed = takes(out, separator);
        return passed;
    }
    struct csv_place place = {false, false, false};
    for (; before > 0; at++) {
        bool separates = record.at[at] == shape->separator;
        before -= separates && !place.open;
        csv_step(&place, record.at[at], separates);
    }
    bool passed = takes(out, (struct span){record.at, at}) && takes(out, span_of("\""));
    for (; passed && at < record.length; at++)
        passed = takes(out, (struct span){record.at + at, 1}) &&
                 (record.at[at] != '"' || takes(out, span_of("\"")));
    return passed && takes(out, span_of("\""));
}

/* What a list is refused for: a heading that is no text, a quote that is not closed at its end, or
 * two columns of the name. */
static const char *list_refusal_broken(const struct run *run, struct lines lines,
                                       const char *column)
{
    struct span record, end;
    struct csv_shape shape = {',', 0};
    size_t named = 0;
    bool open = false;
    while (next_line(&lines, &record, &end)) {
        char *field = malloc(record.length + 1);
        bool heading = shape.fields == 0;
        if (heading)
            shape = csv_shape_of(record);
        for (size_t i = 0; heading && csv_field(record, &shape, i, field); i++)
            named += strcmp(field, column) == 0;
        open = open || is_open(record, end, shape.separator) ||
               (heading && memchr(record.at, '\0', record.length) != NULL);
        free(field);
    }
    return (open || named > 1) && run->err_length > 0 ? NULL : "a good list is refused";
}

static const char *csv_of_records_broken(const struct run *run, struct lines lines,
                                         const char *column)
{
    if (run->status == EXIT_INPUT_WRONG && run->out_length == 0)
        return list_refusal_broken(run, lines, column);
    struct span out = {run->out, run->out_length}, fields[CSV_FIELDS_MAX], record, end;
    size_t columns = 0, index = 0, unread = 0;
    if (!next_line(&lines, &record, &end))
        return run->out_length > 0 ? "rows come from nothing" : NULL;
    const struct csv_shape shape = csv_shape_of(record);
    const struct span separator = {&shape.separator, 1};
    if (is_open(record, end, shape.separator))
        return refusal_broken(run, out);
    char *field = malloc(lines.rest.length + record.length + 1);
    while (csv_field(record, &shape, index, field) && strcmp(field, column) != 0)
        index++;
    if (!takes(&out, record) || !takes(&out, separator) ||
        !takes_row(&out, end, shape.separator, fields, &columns)) {
        free(field);
        return "the heading is not passed through";
    }
    size_t designation = column_named(fields, columns, "designation");
    size_t error = column_named(fields, columns, "error");
    const char *broken = NULL;
    while (broken == NULL && next_line(&lines, &record, &end)) {
        if (is_open(record, end, shape.separator)) {
            free(field);
            return refusal_broken(run, out);
        }
        size_t computed = 0;
        bool read = false;
        if (!takes_own_fields(&out, record, &shape) || !takes(&out, separator) ||
            !takes_row(&out, end, shape.separator, fields, &computed)) {
            broken = "a record is not passed through";
            break;
        }
        struct span text = csv_field_cut(record, &shape, index, field, record.length + 1);
        if (text.at == NULL)
            text = span_of("");
        broken = computed != columns
                     ? "a row has not the heading's fields"
                     : row_broken(text, fields, computed, designation, error, &read);
        unread += !read || csv_count_fields(record, &shape) > shape.fields;
    }
    free(field);
    if (broken == NULL && out.length > 0)
        return "there are more rows than records";
    return broken != NULL ? broken : status_broken(run, unread);
}

/* The fields of a record joined again, each in quotes, are the same fields. */
static const char *record_broken(struct span record)
{
    const struct csv_shape shape = csv_shape_of(record);
    char *field = malloc(record.length + 1);
    char *joined = malloc(3 * record.length + 8);
    size_t length = 0, count = 0;
    const char *broken = NULL;
    for (; csv_field(record, &shape, count, field); count++) {
        char cut[COLUMNS_MAX];
        csv_field_cut(record, &shape, count, cut, sizeof cut);
        if (strncmp(cut, field, sizeof cut - 1) != 0)
            broken = "a field that is cut is another";
        if (count > 0)
            joined[length++] = shape.separator;
        joined[length++] = '"';
        for (const char *at = field; *at != '\0'; at++) {
            if (*at == '"')
                joined[length++] = '"';
            joined[length++] = *at;
        }
        joined[length++] = '"';
        if (length > 3 * record.length + 8)
            abort();
    }
    if (count != shape.fields || count != csv_count_fields(record, &shape))
        broken = "fields are not counted as they are given";
    struct span quoted = {joined, length};
    char *once = malloc(length + 1);
    for (size_t i = 0; broken == NULL && i < count; i++) {
        csv_field(record, &shape, i, field);
        csv_next_field(&quoted, &shape, once);
        if (strcmp(once, field) != 0)
            broken = "a field that is quoted is another";
    }
    free(once);
    free(field);
    free(joined);
    return broken;
}

/* A name from the heading, as --column takes it: the one that the second byte chooses. */
static bool choose_column(struct lines lines, size_t choice, char **column)
{
    struct span record, end;
    if (!next_line(&lines, &record, &end))
        return false;
    const struct csv_shape shape = csv_shape_of(record);
    *column = malloc(record.length + 1);
    if (csv_field(record, &shape, choice % shape.fields, *column) && **column != '\0')
        return true;
    free(*column);
    return false;
}

/* Whatever it holds, text in another encoding is refused whole. */
static const char *encoding_broken(const struct run *run)
{
    return run->status == EXIT_INPUT_WRONG && run->out_length == 0 &&
                   strstr(run->err, "; save it as UTF-8") != NULL
               ? NULL
               : "another encoding is read";
}

static const char *const line_modes[MODES][10] = {
    {"size", "-", "--format", "csv", NULL},
    {"size", "-", "--format", "csv", "--skip-blank", NULL},
    {"size", "-", "--format", "json", NULL},
    {"size", "-", "--units", "both", NULL},
    {"compare", "-", "--fitted", "205/55R16 91V", "--format", "csv", NULL},
    {"compare", "-", "--fitted", "P255/70R16 109S", "--format", "json", NULL},
};

static const char *stream_broken(unsigned mode, size_t choice, const char *text, size_t size)
{
    struct run run;
    bool records = mode >= 6;
    struct lines lines = lines_of(text, size, records);
    char *column = NULL;
    if (records && !choose_column(lines, choice, &column))
        return NULL;
    const char *const by_column[] = {mode == 6 ? "size" : "compare",
                                     "-",
                                     "--from",
                                     "csv",
                                     "--column",
                                     column,
                                     mode == 6 ? NULL : "--fitted",
                                     "205/55R16 91V",
                                     NULL};
    program_run(records ? by_column : line_modes[mode], text, size, &run);
    const char *broken =
        rendered_numbers_broken((struct span){run.out, run.out_length}, (struct span){text, size});
    if (broken != NULL)
        ;
    else if (other_encoding((struct span){text, size}) != NULL)
        broken = encoding_broken(&run);
    else if (records)
        broken = csv_of_records_broken(&run, lines, column);
    else if (mode == 2 || mode == 5)
        broken = json_of_lines_broken(&run, lines);
    else if (mode != 3)
        broken = csv_of_lines_broken(&run, lines, mode == 1);
    program_forget(&run);
    free(column);
    return broken;
}

/* The first byte chooses what is run, the second the column; the rest is standard input. */
int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    if (size < 2)
        return 0;
    char *text = fuzz_copy(data + 2, size - 2);
    const char *broken = record_broken((struct span){text, size - 2});
    if (broken == NULL)
        broken = stream_broken(data[0] % MODES, data[1] % COLUMNS_MAX, text, size - 2);
    if (broken != NULL)
        fuzz_broken(broken, text, size - 2);
    free(text);
    return 0;
}

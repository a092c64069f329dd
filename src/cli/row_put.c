#include "cli/row_put.h"

#include <string.h>

#include "base/known.h"
#include "output/markdown_text.h"
#include "output/number.h"

enum { COLUMNS_AT_ONCE = 128, VALUE_ROOM = NUMBER_SIZE + JSON_NAME_ROOM };

enum format { FORMAT_CSV, FORMAT_MARKDOWN, FORMAT_JSON };

static void put_text(struct writer *writer, enum format format, struct span text)
{
    if (format == FORMAT_CSV)
        csv_put_field(writer->out, text, csv_separator(writer));
    else if (format == FORMAT_JSON)
        json_put_string(writer->out, text);
    else
        markdown_text(writer->out, text);
}

static void put_cell(struct writer *writer, enum format format, const struct cell *cell)
{
    if (format == FORMAT_CSV)
        csv_put_cell(writer, cell);
    else if (format == FORMAT_JSON)
        json_put_value(writer->out, cell);
    else
        markdown_put_value(writer, cell);
}

/* Written once; then what was written is. */
static void put_shared(struct writer *writer, enum format format, struct shared_text *shared)
{
    struct outbuf *buffer = writer->out;
    if (shared->written.at != NULL) {
        outbuf_put(buffer, shared->written);
        return;
    }
    /* It stays in one piece: there is room for each byte twice, which is more than quotes take. */
    const char *from = outbuf_room(buffer, 2 * shared->text.length + VALUE_ROOM);
    put_text(writer, format, shared->text);
    size_t length = (size_t)(buffer->data + buffer->used - from);
    char *copy = arena_allocate(writer->arena, length + 1);
    memcpy(copy, from, length);
    shared->written = (struct span){copy, length};
}

/* What is not written at once. Returns where it ends, with room for all that may follow. */
static char *put_other(struct writer *writer, const struct column_choice *choice,
                       enum format format, const struct chosen_column *chosen, const void *row,
                       const char *to)
{
    struct outbuf *buffer = writer->out;
    const void *at = (const char *)row + chosen->at;
    buffer->used = (size_t)(to - buffer->data);
    if (chosen->put == PUT_TEXT) {
        put_text(writer, format, *(const struct span *)at);
    } else if (chosen->put == PUT_SHARED) {
        put_shared(writer, format, *(struct shared_text *const *)at);
    } else {
        struct cell cell = column_cell(choice, chosen, row);
        put_cell(writer, format, &cell);
    }
    return outbuf_room(buffer, choice->count * VALUE_ROOM);
}

/* Each format has code of its own, in which `format` is a constant. */
#define EACH_ITS_OWN __attribute__((always_inline)) static inline

EACH_ITS_OWN char *put_absent(enum format format, char *to)
{
    if (format == FORMAT_CSV)
        return to;
    if (format == FORMAT_JSON) {
        memcpy(to, "null", 4);
        return to + 4;
    }
    *to = '-';
    return to + 1;
}

EACH_ITS_OWN char *put_word(enum format format, const struct word *word, char *to)
{
    if (word->length == 0)
        return put_absent(format, to);
    if (format == FORMAT_JSON)
        *to++ = '"';
    memcpy(to, word, WORD_SIZE);
    to += word->length;
    if (format == FORMAT_JSON)
        *to++ = '"';
    return to;
}

EACH_ITS_OWN char *put_number(enum format format, const struct chosen_column *chosen, double value,
                              char mark, char *to)
{
    if (format == FORMAT_JSON) {
        double in_unit = unit_from_si(chosen->unit, value);
        char *end = number_of_hundredths(in_unit, to);
        return end != NULL || !isfinite(in_unit) ? end : to + number_significant(in_unit, to);
    }
    if (chosen->put == PUT_TENTHS)
        return number_of_raised(value * chosen->raise, 1, mark, to);
    if (chosen->put == PUT_UNITS)
        return number_of_raised(value * chosen->raise, 0, mark, to);
    return number_of_raised(value * chosen->raise, 2, mark, to);
}

/* NULL where it was not written yet, or does not end before `behind`. */
EACH_ITS_OWN char *put_written(const struct shared_text *shared, const char *behind, char *to)
{
    const struct span written = shared->written;
    if (written.at == NULL || written.length > (size_t)(behind - to))
        return NULL;
    memcpy(to, written.at, written.length);
    return to + written.length;
}

/* What is ready and common is written at once, a text that is shared where it ends before `behind`:
 * returns its end, or NULL for all else. */
EACH_ITS_OWN char *put_ready(struct writer *writer, enum format format,
                             const struct chosen_column *chosen, const void *at, const char *behind,
                             char *to)
{
    if (chosen->put <= PUT_HUNDREDTHS) {
        const double value = *(const double *)at;
        char *end = put_number(format, chosen, value, writer->options.decimal_mark, to);
        return end == NULL && !known(value) ? put_absent(format, to) : end;
    }
    if (chosen->put == PUT_WORD)
        return format == FORMAT_MARKDOWN ? NULL : put_word(format, at, to);
    if (chosen->put == PUT_TEXT) {
        const struct span *text = at;
        if (text->length == 0)
            return put_absent(format, to);
        return format == FORMAT_CSV ? csv_text(*text, csv_separator(writer), to) : NULL;
    }
    if (chosen->put == PUT_SHARED) {
        const struct shared_text *shared = *(struct shared_text *const *)at;
        return shared == NULL ? put_absent(format, to) : put_written(shared, behind, to);
    }
    return NULL;
}

EACH_ITS_OWN char *begin_value(enum format format, const struct json_name *name, char *to)
{
    if (format == FORMAT_MARKDOWN)
        *to++ = ' ';
    if (format != FORMAT_JSON)
        return to;
    memcpy(to, name->text, JSON_NAME_ROOM);
    return to + name->length;
}

EACH_ITS_OWN char *end_value(enum format format, char separator, char *to)
{
    if (format == FORMAT_CSV)
        *to++ = separator;
    if (format != FORMAT_MARKDOWN)
        return to;
    memcpy(to, " |", 2);
    return to + 2;
}

EACH_ITS_OWN char *end_row(enum format format, bool streaming, char *to)
{
    if (format == FORMAT_CSV)
        to--; /* the last separator */
    if (format == FORMAT_JSON)
        *to++ = '}';
    if (format != FORMAT_JSON || streaming)
        *to++ = '\n';
    return to;
}

EACH_ITS_OWN void put_row(struct writer *writer, const struct column_choice *choice,
                          const void *row, const enum format format, const struct json_name *names)
{
    struct outbuf *buffer = writer->out;
    const struct chosen_column *chosen = choice->items, *end = chosen + choice->count;
    const char separator = csv_separator(writer);
    const size_t room = choice->count * VALUE_ROOM + 1;
    const char *const behind_texts = buffer->data + OUTBUF_SIZE - room; /* all that is short fits */
    char *to = outbuf_room(buffer, room);
    if (format == FORMAT_MARKDOWN)
        *to++ = '|';
    for (; chosen < end; chosen++) {
        to = begin_value(format, names, to);
        if (format == FORMAT_JSON)
            names++;
        char *behind =
            put_ready(writer, format, chosen, (const char *)row + chosen->at, behind_texts, to);
        to = behind != NULL ? behind : put_other(writer, choice, format, chosen, row, to);
        to = end_value(format, separator, to);
    }
    to = end_row(format, writer->options.streaming, to);
    buffer->used = (size_t)(to - buffer->data);
    writer->rows++;
}

bool row_put(struct writer *writer, const struct column_choice *choice, const void *row)
{
    if (choice->count >= COLUMNS_AT_ONCE)
        return false;
    if (writer->functions == &writer_csv) {
        if (choice->count == 1 || csv_separator(writer) == writer->options.decimal_mark)
            return false;
        put_row(writer, choice, row, FORMAT_CSV, NULL);
    } else if (writer->functions == &writer_markdown) {
        put_row(writer, choice, row, FORMAT_MARKDOWN, NULL);
    } else if (writer->functions == &writer_json) {
        const struct json_name *names = json_row_begin(writer);
        if (names == NULL)
            return false;
        put_row(writer, choice, row, FORMAT_JSON, names);
    } else {
        return false;
    }
    return true;
}

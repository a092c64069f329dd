/* RFC 8259. One array, an object a line in it; a stream has the objects alone. */
#include "output/writer.h"

#include <stdio.h>

#include "base/eight.h"
#include "base/utf8.h"
#include "output/number.h"

/* Section 7: quotation mark, reverse solidus and U+0000 to U+001F must be escaped. What else would
 * steer a terminal is so too. */
static void put_escaped(struct outbuf *out, uint32_t code)
{
    static const char letters[] = "\"\"\\\\\bb\ff\nn\rr\tt";
    for (const char *at = letters; *at != '\0'; at += 2)
        if ((unsigned char)*at == code) {
            outbuf_char(out, '\\');
            outbuf_char(out, at[1]);
            return;
        }
    out->used += (size_t)sprintf(outbuf_room(out, sizeof "\\u0000"), "\\u%04x", (unsigned)code);
}

static inline bool is_plain(char c)
{
    return (unsigned char)c >= 0x20 && (unsigned char)c < 0x7F && c != '"' && c != '\\';
}

/* Whether one of eight bytes is not plain. */
static inline bool escape_in(uint64_t bytes)
{
    uint64_t found = ascii_below(bytes, 0x20) | ascii_is(bytes, '"') | ascii_is(bytes, '\\') |
                     ascii_is(bytes, 0x7F) | bytes;
    return (found & EIGHT(0x80)) != 0;
}

/* How many bytes from here on can go out as they are. */
static size_t unescaped_length(struct span text)
{
    size_t length = 0;
    for (;;) {
        while (length + 8 <= text.length && !escape_in(eight_at(text.at + length)))
            length += 8;
        while (length < text.length && is_plain(text.at[length]))
            length++;
        if (length == text.length || (unsigned char)text.at[length] < 0x80)
            break;
        struct shown_character character = shown_first(span_from(text, length));
        if (character.escaped)
            break;
        length += character.taken;
    }
    return length;
}

void json_put_string(struct outbuf *out, struct span text)
{
    outbuf_char(out, '"');
    while (text.length > 0) {
        size_t length = unescaped_length(text);
        outbuf_put(out, (struct span){text.at, length});
        if (length == 0) {
            struct utf8_character character = utf8_first(text);
            if (character.valid)
                put_escaped(out, character.code);
            else
                outbuf_text(out, UTF8_REPLACEMENT); /* section 8.1: text must be UTF-8 */
            length = character.length;
        }
        text = span_from(text, length);
    }
    outbuf_char(out, '"');
}

static void put_object(struct outbuf *out, const struct member *members)
{
    outbuf_char(out, '{');
    for (const struct member *member = members; member->name != NULL; member++) {
        if (member > members)
            outbuf_char(out, ',');
        json_put_string(out, span_of(member->name));
        outbuf_char(out, ':');
        json_put_value(out, &member->cell);
    }
    outbuf_char(out, '}');
}

void json_put_value(struct outbuf *out, const struct cell *cell)
{
    if (cell->kind == CELL_OBJECT) {
        put_object(out, cell->members);
    } else if (cell_is_absent(cell)) {
        outbuf_text(out, "null");
    } else if (cell->kind == CELL_TEXT) {
        json_put_string(out, cell->text);
    } else {
        char *to = outbuf_room(out, NUMBER_SIZE);
        out->used += number_significant(cell->value, to);
    }
}

static void begin(struct writer *writer)
{
    if (!writer->options.streaming)
        outbuf_char(writer->out, '[');
}

struct names {
    bool all;
    struct json_name of[];
};

/* A name that is too long, or has to be escaped, has none. The names may have changed since the
 * beginning: those of the first row are made. */
static const struct names *names_of(struct writer *writer)
{
    if (writer->state != NULL)
        return writer->state;
    struct names *names =
        arena_allocate(writer->arena, sizeof *names + writer->columns * sizeof names->of[0]);
    names->all = true;
    for (size_t i = 0; i < writer->columns; i++) {
        const char *name = writer->headings[i].name;
        size_t length = strlen(name);
        if (unescaped_length(span_of(name)) == length && length + sizeof ",\"\":" <= JSON_NAME_ROOM)
            names->of[i].length =
                (size_t)sprintf(names->of[i].text, i == 0 ? "{\"%s\":" : ",\"%s\":", name);
        names->all = names->all && names->of[i].length > 0;
    }
    writer->state = names;
    return names;
}

static void begin_row(struct writer *writer)
{
    if (!writer->options.streaming)
        outbuf_text(writer->out, writer->rows == 0 ? "\n" : ",\n");
}

const struct json_name *json_row_begin(struct writer *writer)
{
    const struct names *names = names_of(writer);
    if (!names->all)
        return NULL;
    begin_row(writer);
    return names->of;
}

static void begin_member(struct writer *writer, size_t i)
{
    const struct json_name *name = &names_of(writer)->of[i];
    if (name->length > 0) {
        outbuf_put(writer->out, (struct span){name->text, name->length});
        return;
    }
    outbuf_char(writer->out, i == 0 ? '{' : ',');
    json_put_string(writer->out, span_of(writer->headings[i].name));
    outbuf_char(writer->out, ':');
}

static void row(struct writer *writer, const struct cell *cells)
{
    struct outbuf *out = writer->out;
    begin_row(writer);
    for (size_t i = 0; i < writer->columns; i++) {
        begin_member(writer, i);
        json_put_value(out, &cells[i]);
    }
    outbuf_char(out, '}');
    if (writer->options.streaming)
        outbuf_char(out, '\n');
}

static void end(struct writer *writer)
{
    if (!writer->options.streaming)
        outbuf_text(writer->out, writer->rows == 0 ? "]\n" : "\n]\n");
}

const struct writer_functions writer_json = {"json", begin, row, end, NULL};

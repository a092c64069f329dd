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

static void put_value(struct outbuf *out, const struct cell *cell);

static void put_object(struct outbuf *out, const struct member *members)
{
    outbuf_char(out, '{');
    for (const struct member *member = members; member->name != NULL; member++) {
        if (member > members)
            outbuf_char(out, ',');
        json_put_string(out, span_of(member->name));
        outbuf_char(out, ':');
        put_value(out, &member->cell);
    }
    outbuf_char(out, '}');
}

static void put_value(struct outbuf *out, const struct cell *cell)
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

/* What stands before the value of each column; nothing where the name has to be escaped, or is too
 * long to be copied at once. */
enum { BEGUN_ROOM = 48 };
struct begun {
    size_t length;
    char text[BEGUN_ROOM];
};

static struct begun *begun_members(struct writer *writer)
{
    struct begun *begun = arena_allocate_array(writer->arena, writer->columns, sizeof *begun);
    for (size_t i = 0; i < writer->columns; i++) {
        const char *name = writer->headings[i].name;
        size_t length = strlen(name);
        if (unescaped_length(span_of(name)) == length && length + sizeof ",\"\":" <= BEGUN_ROOM)
            begun[i].length = (size_t)sprintf(begun[i].text, i == 0 ? "\"%s\":" : ",\"%s\":", name);
    }
    return begun;
}

static void begin_member(struct writer *writer, size_t i)
{
    const struct begun *begun = writer->state;
    if (begun[i].length > 0) {
        memcpy(outbuf_room(writer->out, BEGUN_ROOM), begun[i].text, BEGUN_ROOM);
        writer->out->used += begun[i].length;
        return;
    }
    if (i > 0)
        outbuf_char(writer->out, ',');
    json_put_string(writer->out, span_of(writer->headings[i].name));
    outbuf_char(writer->out, ':');
}

static void row(struct writer *writer, const struct cell *cells)
{
    struct outbuf *out = writer->out;
    if (writer->state == NULL) /* the names may have changed since the beginning */
        writer->state = begun_members(writer);
    if (!writer->options.streaming)
        outbuf_text(out, writer->rows == 0 ? "\n" : ",\n");
    outbuf_char(out, '{');
    for (size_t i = 0; i < writer->columns; i++) {
        begin_member(writer, i);
        put_value(out, &cells[i]);
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

const struct writer_functions writer_json = {"json", begin, row, end};

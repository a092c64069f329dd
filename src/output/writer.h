/* Output formats behind one record of functions: adding a format is one file and one row in
 * the list in writer.c. A writer never computes and never judges: it gets typed cells. */
#ifndef TYRESUM_OUTPUT_WRITER_H
#define TYRESUM_OUTPUT_WRITER_H

#include <math.h>
#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "base/span.h"
#include "output/outbuf.h"

enum cell_kind { CELL_ABSENT, CELL_TEXT, CELL_NUMBER, CELL_OBJECT };

struct member;

/* One value as it leaves: already in the unit of its column. */
struct cell {
    enum cell_kind kind;
    int decimals; /* of a number in tables and csv; json carries ten significant digits */
    union {
        struct span text;             /* CELL_TEXT */
        double value;                 /* CELL_NUMBER, finite */
        const struct member *members; /* CELL_OBJECT, of json alone: up to one without a name */
    };
};

struct member {
    const char *name;
    struct cell cell;
};

enum { PRIORITY_BELOW = -1 };

struct heading {
    const char *name;  /* csv and json: overall_diameter_mm */
    const char *title; /* table, first line: "overall diameter" */
    const char *unit;  /* table, second line: "mm", "" without */
    bool numeric;      /* right-aligned in tables */
    int width;         /* characters that a streamed table gives the column */
    /* 0: never left out; the highest goes first when a table is too wide; PRIORITY_BELOW: last, and
     * on a terminal stands under its row then. */
    int priority;
};

struct writer_options {
    bool with_header;
    char decimal_mark;    /* '.' or ','; csv separates by ';' where it is ',' */
    bool streaming;       /* rows come one at a time: fixed widths, one json object a line */
    int width;            /* of the terminal, 0 for no limit */
    char separator;       /* of csv; 0: by the decimal mark */
    bool byte_order_mark; /* csv only, for a spreadsheet that takes it as the sign of UTF-8 */
    size_t paper_width;   /* of html that is to fit the paper, in characters; 0: as it comes */
    const char *caption;  /* html only; NULL: none */
};

struct writer {
    const struct writer_functions *functions;
    struct outbuf *out;
    struct arena
        *arena; /* for what must be kept until the end (a table's rows, unless streaming) */
    struct writer_options options;
    const struct heading *headings;
    size_t columns;
    size_t rows;
    void *state; /* the format's own */
};

struct writer_functions {
    const char *name;
    void (*begin)(struct writer *writer);
    void (*row)(struct writer *writer, const struct cell *cells);
    void (*end)(struct writer *writer);
    bool (*reads)(const struct writer *writer, size_t column); /* NULL: every column */
};

extern const struct writer_functions writer_table, writer_csv, writer_json, writer_markdown,
    writer_html;

/* The format of that name, or NULL. */
const struct writer_functions *writer_find(const char *name);

void writer_begin(struct writer *writer, const struct writer_functions *functions,
                  struct outbuf *out, struct arena *arena, struct writer_options options,
                  const struct heading *headings, size_t columns);
/* Writes the heading where begin was told to leave it out: behind something else, say. */
void writer_begin_again(struct writer *writer);
/* Whether the rows' cells of that column are looked at, now that it began. */
bool writer_reads(const struct writer *writer, size_t column);
void writer_row(struct writer *writer, const struct cell *cells);
void writer_end(struct writer *writer);

/* Characters that a text takes on a terminal (combining marks none, wide ones two), as put_shown
 * writes it. */
size_t display_width(struct span text);
/* A text as it is shown in one line (base/utf8.h), breaks in it as blanks. */
void put_shown(struct outbuf *out, struct span text);
/* A text as it is; on a terminal, as it is shown, with its breaks. */
void put_data(struct outbuf *out, struct span text);

/* No writer prints an unknown value as a number, even if one gets this far. */
static inline bool cell_is_absent(const struct cell *cell)
{
    return cell->kind == CELL_ABSENT || cell->kind == CELL_OBJECT ||
           (cell->kind == CELL_NUMBER && !isfinite(cell->value));
}

/* A string of json with its quotes; a value. */
void json_put_string(struct outbuf *out, struct span text);
void json_put_value(struct outbuf *out, const struct cell *cell);
/* What stands before the value of a column in its row, the brace of the first one with it: of fixed
 * size, and so copied at once. */
enum { JSON_NAME_ROOM = 48 };
struct json_name {
    size_t length;
    char text[JSON_NAME_ROOM];
};
/* Writes what stands before a row, and gives those of all columns; NULL, and nothing written, where
 * a name is too long for that or has to be escaped. */
const struct json_name *json_row_begin(struct writer *writer);

/* A value of a markdown table. */
void markdown_put_value(struct writer *writer, const struct cell *cell);

/* A field of csv in quotes, each quote within doubled; in quotes where it needs them; a cell; and
 * what stands between two. */
void csv_put_quoted(struct outbuf *out, struct span text);
void csv_put_field(struct outbuf *out, struct span text, char separator);
void csv_put_cell(struct writer *writer, const struct cell *cell);
/* A field that is short and needs no quotes; returns its end. NULL for any other, and for one with
 * a control character, with nothing of use at `to`. */
enum { CSV_TEXT_ROOM = 32 };
char *csv_text(struct span text, char separator, char to[CSV_TEXT_ROOM]);
static inline char csv_separator(const struct writer *writer)
{
    if (writer->options.separator != '\0')
        return writer->options.separator;
    return writer->options.decimal_mark == ',' ? ';' : ',';
}

static inline struct cell cell_absent(void)
{
    return (struct cell){.kind = CELL_ABSENT};
}

static inline struct cell cell_object(const struct member *members)
{
    return members == NULL ? cell_absent() : (struct cell){.kind = CELL_OBJECT, .members = members};
}

static inline struct cell cell_span(struct span text)
{
    return text.length == 0 ? cell_absent() : (struct cell){.kind = CELL_TEXT, .text = text};
}

static inline struct cell cell_text(const char *text)
{
    return text == NULL ? cell_absent() : cell_span(span_of(text));
}

#endif

#include "output/table_layout.h"

static size_t larger(size_t a, size_t b)
{
    return a > b ? a : b;
}

static struct span next_word(struct span *rest)
{
    while (rest->length > 0 && *rest->at == ' ') {
        rest->at++;
        rest->length--;
    }
    struct span word = {rest->at, 0};
    while (word.length < rest->length && word.at[word.length] != ' ')
        word.length++;
    rest->at += word.length;
    rest->length -= word.length;
    return word;
}

/* Breaks a title into lines no wider than width, where its words allow that. Returns how many
 * there are, and keeps the first TITLE_LINES_MAX. */
static size_t break_title(const char *title, size_t width, struct span lines[TITLE_LINES_MAX])
{
    struct span rest = span_of(title), line = next_word(&rest);
    size_t count = 0;
    while (line.length > 0) {
        struct span word = next_word(&rest);
        struct span longer = {line.at, (size_t)(word.at + word.length - line.at)};
        if (word.length > 0 && display_width(longer) <= width) {
            line = longer;
            continue;
        }
        if (count < TITLE_LINES_MAX)
            lines[count] = line;
        count++;
        line = word;
    }
    return count;
}

size_t longest_word(const char *title)
{
    struct span rest = span_of(title);
    size_t longest = 0;
    for (struct span word = next_word(&rest); word.length > 0; word = next_word(&rest))
        longest = larger(longest, display_width(word));
    return longest;
}

/* The narrowest width at which the title takes no more than so many lines. */
static void set_title(struct layout_column *column, const struct heading *heading, size_t lines)
{
    size_t width = larger(column->width, display_width(span_of(heading->unit)));
    width = larger(width, longest_word(heading->title));
    for (;; width++) {
        column->title_count = break_title(heading->title, width, column->title);
        if (column->title_count <= lines)
            break;
    }
    column->width = width;
}

static void set_columns(struct table_layout *layout, const struct writer *writer, size_t lines)
{
    layout->width = 0;
    layout->title_lines = 0;
    for (size_t i = 0; i < writer->columns; i++) {
        struct layout_column *column = &layout->columns[i];
        if (column->left_out)
            continue;
        column->width = larger(column->body, column->left + column->right);
        if (writer->options.with_header)
            set_title(column, &writer->headings[i], lines);
        layout->title_lines = larger(layout->title_lines, column->title_count);
        column->start = layout->width == 0 ? 0 : layout->width + COLUMN_GAP;
        layout->width = column->start + column->width;
    }
}

static bool leave_one_out(struct table_layout *layout, const struct writer *writer)
{
    struct layout_column *chosen = NULL;
    int priority = PRIORITY_BELOW;
    for (size_t i = 0; i < writer->columns; i++) {
        int other = writer->headings[i].priority;
        if (!layout->columns[i].left_out && other != 0 && other >= priority) {
            chosen = &layout->columns[i];
            priority = other;
        }
    }
    if (chosen == NULL)
        return false;
    chosen->left_out = true;
    layout->any_left_out = true;
    return true;
}

void table_layout_set(struct table_layout *layout, const struct writer *writer)
{
    const size_t limit = writer->options.width > 0 ? (size_t)writer->options.width : 0;
    do {
        for (size_t lines = 2; lines <= TITLE_LINES_MAX; lines++) {
            set_columns(layout, writer, lines);
            if (limit == 0 || layout->width <= limit)
                return;
        }
    } while (leave_one_out(layout, writer));
}

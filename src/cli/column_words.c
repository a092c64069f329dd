#include "cli/column_words.h"

#include <string.h>

#include "report/outcome.h"

static const char *part_word(size_t index)
{
    return index < PART_COUNT ? part_name((enum part)index) : NULL;
}

static const char *axle_word(size_t index)
{
    return index < AXLE_COUNT ? axle_name((int)index) : NULL;
}

static const char *quantity_word(size_t index)
{
    return index < QUANTITY_COUNT ? quantity_rows[index].name : NULL;
}

static const char *verdict_word(size_t index)
{
    return index + 1 < VERDICT_COUNT ? verdict_name((enum verdict)(index + 1)) : NULL;
}

static const char *outcome_word(size_t index)
{
    return index <= OUTCOME_NO_GO ? outcome_name((enum outcome)index) : NULL;
}

static const char *kind_word(size_t index)
{
    return index < TASK_TO_TELL ? task_kind_name((enum task_kind)(index + 1)) : NULL;
}

static const char *task_word(size_t index)
{
    return index + 1 < TASK_COUNT ? task_rows[index + 1].name : NULL;
}

static const char *check_word(size_t index)
{
    return check_kind_names[index];
}

static const struct {
    const char *name, *title; /* of the column; title NULL: whatever it is */
    const char *meaning;      /* NULL: the title */
    const char *(*word)(size_t index);
} words[] = {
    {"part", NULL, "part of the sums that the row is of", part_word},
    {"option", NULL, "fitted, or the name of an option", NULL},
    {"options", NULL, "options that it concerns, or all", NULL},
    {"state", NULL, "loading state; empty where the figure is of none", NULL},
    {"axle", NULL, "front, rear or empty", axle_word},
    {"quantity", NULL, "what the figure is of: `tyresum tables quantities`", quantity_word},
    {"at", NULL, "what the figure is taken at, as tyresum(1) says under PLACES", NULL},
    {"place", NULL, "the same as an object, in json alone", NULL},
    {"value", NULL, "the figure, in its unit; empty where it is not known", NULL},
    {"unit", NULL, "unit of value and limit, or of now and then; empty for a bare number", NULL},
    {"limit", NULL, "the limit that is broken, or nearest", NULL},
    {"verdict", NULL, "of a finding, worst first", verdict_word},
    {"basis", NULL, "where the figure or its limit comes from", NULL},
    {"action", NULL, "what to do", NULL},
    {"outcome", NULL, "what becomes of the tyre, best first", outcome_word},
    {"kind", "kind of work", NULL, kind_word},
    {"kind", "kind", "what the row tells", check_word},
    {"task", NULL, "what is done: `tyresum tables tasks`", task_word},
    {"number", NULL, "its place in workshop order", NULL},
    {"line", NULL, "line of the build file", NULL},
    {"key", NULL, "key of the build file, or the quantity that lacks one", NULL},
    {"text", NULL, "what is taken, missing or not used", NULL},
    {"error", NULL, "why the line could not be read; empty where it could", NULL},
    {"tasks", NULL, "how many of each kind of work", NULL},
};

static size_t find(const struct column *column)
{
    size_t i = 0;
    while (i < sizeof words / sizeof words[0] &&
           (strcmp(words[i].name, column->name) != 0 ||
            (words[i].title != NULL && strcmp(words[i].title, column->title) != 0)))
        i++;
    return i;
}

const char *column_meaning(const struct column *column)
{
    size_t i = find(column);
    return i < sizeof words / sizeof words[0] && words[i].meaning != NULL ? words[i].meaning
                                                                          : column->title;
}

const char *column_word(const struct column *column, size_t index)
{
    size_t i = find(column);
    return i < sizeof words / sizeof words[0] && words[i].word != NULL ? words[i].word(index)
                                                                       : NULL;
}

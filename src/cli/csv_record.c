#include "cli/csv_record.h"

static size_t count_outside_quotes(struct span record, char wanted)
{
    size_t count = 0;
    struct csv_place place = {false, false, false};
    for (size_t i = 0; i < record.length; i++) {
        count += !place.open && record.at[i] == wanted;
        csv_step(&place, record.at[i], record.at[i] == wanted);
    }
    return count;
}

struct csv_shape csv_shape_of(struct span header)
{
    static const char separators[] = {',', ';', '\t'};
    struct csv_shape shape = {',', 1};
    for (size_t i = 0; i < sizeof separators; i++) {
        size_t count = count_outside_quotes(header, separators[i]) + 1;
        if (count > shape.fields)
            shape = (struct csv_shape){separators[i], count};
    }
    return shape;
}

size_t csv_count_fields(struct span record, const struct csv_shape *shape)
{
    return count_outside_quotes(record, shape->separator) + 1;
}

bool csv_quote_open(struct span record, const struct csv_shape *shape)
{
    struct csv_place place = {false, false, false};
    for (size_t i = 0; i < record.length; i++)
        csv_step(&place, record.at[i], record.at[i] == shape->separator);
    return place.open;
}

/* The field as it stands, quotes and all. */
static bool raw_field(struct span record, const struct csv_shape *shape, size_t index,
                      struct span *out)
{
    size_t start = 0;
    struct csv_place place = {false, false, false};
    for (size_t i = 0; i <= record.length; i++) {
        bool end = i == record.length || (!place.open && record.at[i] == shape->separator);
        if (end && index == 0) {
            *out = (struct span){record.at + start, i - start};
            return true;
        }
        if (end) {
            index--;
            start = i + 1;
        }
        if (i < record.length)
            csv_step(&place, record.at[i], end);
    }
    return false;
}

size_t csv_length_of_fields(struct span record, const struct csv_shape *shape, size_t fields)
{
    struct span last = {record.at, 0};
    if (fields == 0 || !raw_field(record, shape, fields - 1, &last))
        return fields == 0 ? 0 : record.length;
    return (size_t)(last.at + last.length - record.at);
}

/* The text of a field without its quotes, cut to size - 1 bytes. */
static struct span unquote(struct span raw, char *out, size_t size)
{
    size_t length = 0;
    bool quoted = raw.length >= 2 && raw.at[0] == '"' && raw.at[raw.length - 1] == '"';
    for (size_t i = quoted; i < raw.length - quoted && length + 1 < size; i++) {
        out[length++] = raw.at[i];
        if (quoted && raw.at[i] == '"' && i + 1 < raw.length - 1 && raw.at[i + 1] == '"')
            i++;
    }
    out[length] = '\0';
    return (struct span){out, length};
}

struct span csv_field_cut(struct span record, const struct csv_shape *shape, size_t index,
                          char *out, size_t size)
{
    struct span raw;
    *out = '\0';
    return raw_field(record, shape, index, &raw) ? unquote(raw, out, size) : (struct span){NULL, 0};
}

struct span csv_next_field(struct span *rest, const struct csv_shape *shape, char *out)
{
    struct span raw;
    raw_field(*rest, shape, 0, &raw); /* the first is always there, if only as nothing */
    struct span field = unquote(raw, out, rest->length + 1);
    *rest = span_from(*rest, raw.length + (raw.length < rest->length));
    return field;
}

/* The spelling that most lines have, read without folding and without a fault to tell. */
#include "size/designation_internal.h"

/* So many digits of which the first is no zero, unless it stands alone; -1 where they are not. */
static int digits_at(const char *at, size_t count)
{
    int value = 0;
    if (count == 0 || (count > 1 && at[0] == '0'))
        return -1;
    for (size_t i = 0; i < count; i++) {
        if (!is_digit(at[i]))
            return -1;
        value = value * 10 + at[i] - '0';
    }
    return value;
}

static enum size_prefix take_prefix(struct span *text)
{
    enum size_prefix prefix = PREFIX_NONE;
    size_t length = 0;
    if (text->length > 2 && text->at[0] == 'P') {
        prefix = PREFIX_P;
        length = 1;
    } else if (text->length > 2 && text->at[0] == 'L' && text->at[1] == 'T') {
        prefix = PREFIX_LT;
        length = 2;
    }
    text->at += length;
    text->length -= length;
    return prefix;
}

/* A load index at the start, up to the first character that is no digit; -1 where there is none. */
static int take_load_index(struct span *text)
{
    size_t digits = 0;
    while (digits < text->length && digits < 4 && is_digit(text->at[digits]))
        digits++;
    int value = digits_at(text->at, digits);
    text->at += digits;
    text->length -= digits;
    return value <= LOAD_INDEX_MAX ? value : -1;
}

static bool read_service(struct span text, struct service_description *service)
{
    service->load_index = take_load_index(&text);
    if (service->load_index < 0)
        return false;
    if (text.length > 0 && text.at[0] == '/') {
        text.at++;
        text.length--;
        service->load_index_dual = take_load_index(&text);
        if (!dual_goes_with(service->load_index_dual, service->load_index))
            return false;
    }
    service->speed_symbol[0] = text.length == 1 ? text.at[0] : '\0';
    return is_speed_symbol_letter(service->speed_symbol[0]);
}

bool designation_read_plain(struct span text, struct designation *out)
{
    enum { SIZE_LENGTH = 9 }; /* 205/55R16 */
    *out = (struct designation){
        .prefix = take_prefix(&text),
        .service = {LOAD_INDEX_NONE, LOAD_INDEX_NONE, "", false},
        .second_service = {LOAD_INDEX_NONE, LOAD_INDEX_NONE, "", false},
    };
    if (text.length < SIZE_LENGTH || text.at[3] != '/' || text.at[6] != 'R')
        return false;
    out->section_width = digits_at(text.at, 3);
    out->aspect_percent = digits_at(text.at + 4, 2);
    out->rim_code_tenths = 10 * digits_at(text.at + 7, 2);
    if (out->section_width < 0 || out->section_width > METRIC_WIDTH_MAX ||
        out->aspect_percent < ASPECT_MIN || !is_inch_code(out->rim_code_tenths))
        return false;
    text.at += SIZE_LENGTH;
    text.length -= SIZE_LENGTH;
    return text.length == 0 ||
           (text.at[0] == ' ' &&
            read_service((struct span){text.at + 1, text.length - 1}, &out->service));
}

/* The spelling that most lines have, read without folding and without a fault to tell. */
#include "size/designation_internal.h"

/* Two digits, three digits, of which the first is no zero; -1 where they are not. */
static int two_digits(const char *at)
{
    bool plain = is_digit(at[0]) && at[0] != '0' && is_digit(at[1]);
    return plain ? 10 * (at[0] - '0') + at[1] - '0' : -1;
}
static int three_digits(const char *at)
{
    int tens = two_digits(at);
    return tens > 0 && is_digit(at[2]) ? 10 * tens + at[2] - '0' : -1;
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
    const char *const at = text->at;
    size_t digits = 0;
    int value = 0;
    for (; digits < text->length && digits < 4 && is_digit(at[digits]); digits++)
        value = value * 10 + at[digits] - '0';
    *text = span_from(*text, digits);
    bool plain = digits > 0 && (digits == 1 || at[0] != '0') && value <= LOAD_INDEX_MAX;
    return plain ? value : -1;
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
    out->section_width = three_digits(text.at);
    out->aspect_percent = two_digits(text.at + 4);
    const int rim_code = two_digits(text.at + 7);
    out->rim_code_tenths = 10 * rim_code;
    if (out->section_width < 0 || out->section_width > METRIC_WIDTH_MAX ||
        out->aspect_percent < ASPECT_MIN || !is_whole_inch_code(rim_code))
        return false;
    text.at += SIZE_LENGTH;
    text.length -= SIZE_LENGTH;
    return text.length == 0 ||
           (text.at[0] == ' ' &&
            read_service((struct span){text.at + 1, text.length - 1}, &out->service));
}

#include "output/markup.h"

#include "base/utf8.h"

/* XML 1.0, section 2.2, production 2. */
static bool is_allowed(const struct utf8_character *character)
{
    uint32_t code = character->code;
    if (!character->valid || (code < 0x20 && code != '\t' && code != '\n' && code != '\r'))
        return false;
    /* Embeddings, overrides and isolates would turn round what stands behind them. */
    bool turns = (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069);
    return !turns && code != 0xFFFE && code != 0xFFFF && (code < 0x7F || code > 0x9F);
}

static const char *entity_of(uint32_t code)
{
    switch (code) {
    case '&':
        return "&amp;";
    case '<':
        return "&lt;";
    case '>':
        return "&gt;";
    case '"':
        return "&quot;";
    case '\t':
    case '\n':
    case '\r':
        return " ";
    default:
        return NULL;
    }
}

void markup_text(struct outbuf *out, const char *text)
{
    markup_span(out, span_of(text));
}

void markup_span(struct outbuf *out, struct span rest)
{
    while (rest.length > 0) {
        struct utf8_character character = utf8_first(rest);
        const char *entity = is_allowed(&character) ? entity_of(character.code) : UTF8_REPLACEMENT;
        if (entity != NULL)
            outbuf_text(out, entity);
        else
            outbuf_put(out, (struct span){rest.at, character.length});
        rest.at += character.length;
        rest.length -= character.length;
    }
}

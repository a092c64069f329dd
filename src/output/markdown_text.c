#include "output/markdown_text.h"

#include "output/utf8.h"

/* CommonMark, section 2.4: a backslash takes the meaning of ASCII punctuation. Only that which
 * has one inside a line; `<` and `&` as entities, since some programs pass HTML through. */
static void put_character(struct outbuf *out, struct span character)
{
    char c = *character.at;
    if (c == '<' || c == '&') {
        outbuf_text(out, c == '<' ? "&lt;" : "&amp;");
        return;
    }
    if (strchr("\\`*_[]|~$", c) != NULL)
        outbuf_char(out, '\\');
    outbuf_put(out, character);
}

void markdown_text(struct outbuf *out, struct span text)
{
    while (text.length > 0) {
        struct utf8_character character = utf8_first(text);
        if (!character.valid)
            outbuf_text(out, UTF8_REPLACEMENT);
        else if (character.code < 0x20 || character.code == 0x7F)
            outbuf_char(out, ' ');
        else
            put_character(out, (struct span){text.at, character.length});
        text.at += character.length;
        text.length -= character.length;
    }
}

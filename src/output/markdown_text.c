#include "output/markdown_text.h"

#include "base/utf8.h"

/* '.' for each byte that means nothing inside a line and goes out as it is. */
static const char standing[] = "################################"
                               "....#.#...#.................#..."
                               "...........................###.#"
                               "#...........................#.##"
                               "################################################################"
                               "################################################################";

/* CommonMark, section 2.4: a backslash takes the meaning of ASCII punctuation; `<` and `&` as
 * entities, since some programs pass HTML through. */
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

/* Letters, digits and what else means nothing: all but a few characters of nearly every text. */
static size_t plain_length(struct span text)
{
    const unsigned char *const at = (const unsigned char *)text.at;
    size_t length = 0;
    while (length + 4 <= text.length &&
           (standing[at[length]] & standing[at[length + 1]] & standing[at[length + 2]] &
            standing[at[length + 3]]) == '.')
        length += 4;
    while (length < text.length && standing[at[length]] == '.')
        length++;
    return length;
}

void markdown_text(struct outbuf *out, struct span text)
{
    while (text.length > 0) {
        size_t plain = plain_length(text);
        outbuf_put(out, (struct span){text.at, plain});
        text = span_from(text, plain);
        if (text.length == 0)
            return;
        struct shown_character first = shown_first(text);
        if (*text.at == '\t' || *text.at == '\n' || *text.at == '\r')
            outbuf_char(out, ' ');
        else
            put_character(out, (struct span){first.text, first.length});
        text = span_from(text, first.taken);
    }
}

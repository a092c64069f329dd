#include "reading/page_frame.h"

#include "output/markup.h"
#include "reading/findings_text.h"

/* All lengths in em, so that a drawing's text is as large as the page's: 14 px on a screen, 9 pt on
 * paper, where 59 em are the width of A4 or Letter within its margins. */
static const char style[] =
    "@page { margin: 8mm 10mm }\n"
    "* { box-sizing: border-box }\n"
    "body { font: 14px/1.4 sans-serif; color: #111; background: #fff; margin: 0 auto;"
    " padding: 1em; max-width: 62em; overflow-wrap: anywhere;"
    " -webkit-print-color-adjust: exact; print-color-adjust: exact }\n"
    "h1, h2, h3, h4 { line-height: 1.25; margin: .9em 0 .3em; break-after: avoid;"
    " unicode-bidi: isolate }\n"
    "h1 { font-size: 1.5em; margin-top: 0; padding-bottom: .2em; border-bottom: 2px solid #111 }\n"
    "h2 { font-size: 1.25em; margin-top: .6em } h3 { font-size: 1.1em } h4 { font-size: 1em }\n"
    "p { margin: .3em 0 } ul { margin: .2em 0 .5em; padding-left: 1.2em }\n"
    "table { border-collapse: collapse; margin: .3em 0 .6em; width: 100% }\n"
    "caption { text-align: left; font-weight: bold; padding: .2em 0 }\n"
    "th, td { border-bottom: 1px solid #999; padding: .05em .4em; text-align: left;"
    " vertical-align: top }\n"
    "thead th { border-bottom: 2px solid #111; vertical-align: bottom } tbody th {"
    " font-weight: normal }\n"
    ".n { text-align: right; overflow-wrap: break-word } .v { white-space: nowrap }\n"
    ".turned { table-layout: fixed } .turned th:first-child { width: 16em }\n"
    ".heard { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%) "
    "}\n"
    "tr, li, figure, .card, .sign { break-inside: avoid }\n"
    "figure { margin: .4em 0 } svg { display: block; max-width: 100% }\n"
    ".first { border: 2px solid #111; padding: .3em .6em; margin: .4em 0 }\n"
    ".cards { display: grid; gap: .5em; grid-template-columns:"
    " repeat(auto-fit, minmax(min(27em, 100%), 1fr)) }\n"
    ".card:last-child:nth-child(odd) { grid-column: 1 / -1 }\n"
    ".card { border: 1px solid #111; border-left-width: 5px; padding: .3em .6em; color: #111 }\n"
    ".card h3, .card p, .card figure { margin: 0 } .card h4 { margin: .1em 0 .2em;"
    " font-weight: normal } .card table { margin: 0 0 .3em }\n"
    ".go { border-color: #14612f } .work { border-color: #154c86 }\n"
    ".open { border-color: #6d4a00 } .no_go { border-color: #961b1b }\n"
    ".mark { display: inline-block; width: 1em; height: 1em; vertical-align: -.12em }\n"
    ".go .mark, .go b.says { color: #14612f } .work .mark, .work b.says { color: #154c86 }\n"
    ".open .mark, .open b.says { color: #6d4a00 } .no_go .mark, .no_go b.says {"
    " color: #961b1b }\n"
    ".pair { display: flex; gap: .7em; align-items: flex-start }\n"
    ".pair > * { flex: none } .pair > :first-child { flex: 1 1 0; min-width: 0 }\n"
    ".box { display: inline-block; width: 1em; height: 1em; border: 1.5px solid #111;"
    " vertical-align: -.12em }\n"
    ".fill { border: 1px solid #111; min-width: 6em }\n"
    ".sign { display: flex; gap: 1em; margin: 2.4em 0 .5em }\n"
    ".sign span { flex: 1; border-top: 1px solid #111 }\n"
    "@media screen { .sheet { margin-top: 3em } }\n"
    "@media print {\n"
    "body { font-size: 9pt; line-height: 1.2; padding: 0; max-width: none }\n"
    ".sheet { break-before: page }\n"
    ".sheet > h2:first-child { margin-top: 0 }\n"
    "}\n";

void page_begin(struct outbuf *out, const char *title)
{
    outbuf_text(out, "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
                     "<meta name=\"viewport\" content=\"width=device-width\">\n<title>");
    markup_text(out, title);
    outbuf_text(out, "</title>\n<style>\n");
    outbuf_text(out, style);
    outbuf_text(out, "</style>\n</head>\n<body>\n<h1>");
    markup_text(out, title);
    outbuf_text(out, "</h1>\n<main>\n");
}

void page_end(struct outbuf *out)
{
    outbuf_text(out, "</main>\n<p>");
    markup_text(out, cautions);
    outbuf_text(out, "</p>\n</body>\n</html>\n");
}

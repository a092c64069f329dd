/* The drawing layer: XML 1.0 and SVG 1.1 as published, layout rules as properties. */
#include <sys/stat.h>
#include <unistd.h>

#include "base/known.h"
#include "drawing/chart.h"
#include "output/markdown_text.h"
#include "output/markup.h"
#include "suites.h"
#include "support.h"

/* A sheet of paper that is read back; text() ends it and is to be freed. */
struct paper {
    struct outbuf out;
    struct arena arena;
    FILE *file;
};

static struct drawing paper_open(struct paper *paper)
{
    paper->arena = ARENA_EMPTY;
    paper->file = tmpfile();
    ck_assert_ptr_nonnull(paper->file);
    outbuf_open(&paper->out, fileno(paper->file));
    return (struct drawing){.out = &paper->out, .arena = &paper->arena};
}

static char *paper_text(struct paper *paper)
{
    struct stat about;
    ck_assert(outbuf_flush(&paper->out));
    ck_assert_int_eq(fstat(fileno(paper->file), &about), 0);
    char *text = calloc(1, (size_t)about.st_size + 1);
    ck_assert_ptr_nonnull(text);
    ck_assert_int_eq(pread(fileno(paper->file), text, (size_t)about.st_size, 0), about.st_size);
    fclose(paper->file);
    arena_free(&paper->arena);
    return text;
}

static struct paper paper;

static const struct {
    const char *text, *markup, *source;
} escaped[] = {
    {"<b>&\"'", "&lt;b&gt;&amp;&quot;'", "XML 1.0, 2.4: & and < must be escaped"},
    {"a]]>b", "a]]&gt;b", "XML 1.0, 2.4: > behind ]] must be"},
    {"a\x07z\x1b", "a\xEF\xBF\xBDz\xEF\xBF\xBD",
     "XML 1.0, 2.2: no other controls than tab, LF, CR"},
    {"tab\tand\nline", "tab and line", "one line"},
    {"\xC0\xAF\xFF", "\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD", "Unicode, 3.9: ill-formed"},
    {"\xEF\xBF\xBF", "\xEF\xBF\xBD", "XML 1.0, 2.2: U+FFFF is no character"},
    {"\xC3\xBC \xE9\x95\xB7", "\xC3\xBC \xE9\x95\xB7", "anything else stays"},
};

START_TEST(markup_is_escaped)
{
    paper_open(&paper);
    markup_text(&paper.out, escaped[_i].text);
    char *text = paper_text(&paper);
    ck_assert_msg(strcmp(text, escaped[_i].markup) == 0, "%s: \"%s\"", escaped[_i].source, text);
    free(text);
}
END_TEST

/* CommonMark 2.4: a backslash before ASCII punctuation takes its meaning; GFM 4.10: a pipe too. */
START_TEST(markdown_is_escaped)
{
    paper_open(&paper);
    markdown_text(&paper.out, span_of("a|b *c* _d_ `e` [f] <g> & \\ ~h~\nend"));
    char *text = paper_text(&paper);
    ck_assert_str_eq(text, "a\\|b \\*c\\* \\_d\\_ \\`e\\` \\[f\\] &lt;g> &amp; \\\\ \\~h\\~ end");
    free(text);
}
END_TEST

/* SVG 1.1, 5.1.2 and 9.5: a root with its namespace, coordinates as plain decimals. */
START_TEST(line_is_written)
{
    struct drawing drawing = paper_open(&paper);
    drawing_begin(&drawing, 99.2, 50, "A & B", "what it shows");
    drawing_line(&drawing, (struct point){1.005, -2.5}, (struct point){30, 0.999},
                 (struct pen){.width = 1, .dash = DASH_LONG});
    drawing_end(&drawing);
    char *text = paper_text(&paper);
    ck_assert_str_eq(text,
                     "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                     "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"116.67\" "
                     "height=\"58.33\" viewBox=\"0 0 100 50\">\n"
                     "<title>A &amp; B</title>\n<desc>what it shows</desc>\n"
                     "<g font-family=\"sans-serif\" fill=\"black\">\n"
                     "<rect x=\"0\" y=\"0\" width=\"100\" height=\"50\" fill=\"white\"/>\n"
                     "<line x1=\"1.01\" y1=\"-2.5\" x2=\"30\" y2=\"1\" fill=\"none\" "
                     "stroke=\"black\" stroke-width=\"1\" stroke-dasharray=\"9 4\"/>\n"
                     "</g>\n</svg>\n");
    free(text);
}
END_TEST

/* Not at the corner, and not as "nan". */
START_TEST(unknown_places_are_not_drawn)
{
    struct drawing drawing = paper_open(&paper);
    const struct point bad = {UNKNOWN, 3}, good = {1, 2}, lines[] = {{0, 0}, {4, INFINITY}};
    const struct pen pen = {.width = 1};
    drawing_line(&drawing, bad, good, pen);
    drawing_line(&drawing, good, bad, pen);
    drawing_lines(&drawing, lines, 2, true, pen);
    drawing_rectangle(&drawing, (struct box){0, 0, UNKNOWN, 1}, 0, pen);
    drawing_circle(&drawing, good, UNKNOWN, pen);
    drawing_arc(&drawing, good, 5, UNKNOWN, 90, pen);
    drawing_text(&drawing, bad, (struct text_style){.size = 9}, "x");
    char *text = paper_text(&paper);
    ck_assert_str_eq(text, "");
    free(text);
}
END_TEST

START_TEST(scale_is_linear)
{
    const struct scale scale = {0, 200, 50, 450};
    assert_close(scale_place(&scale, 0), 50, 1e-12, "first");
    assert_close(scale_place(&scale, 200), 450, 1e-12, "last");
    assert_close(scale_place(&scale, 50), 150, 1e-12, "a quarter");
    assert_close(scale_up(201, 50), 250, 0, "up to a step");
    assert_close(scale_up(200, 50), 200, 0, "a whole step stays");
}
END_TEST

/* 1, 2 or 5 times a power of ten: few enough steps, and no smaller such step would do. */
START_TEST(steps_are_round)
{
    uint64_t state = random_start("steps_are_round");
    for (int run = 0, runs = rounds(20000); run < runs; run++) {
        double range = pow(10, random_between(&state, -3, 6));
        int most = random_whole(&state, 2, 20);
        double step = scale_step(range, most);
        double lead = step / pow(10, floor(log10(step) + 1e-9)), smaller;
        ck_assert_msg(fabs(lead - 1) < 1e-6 || fabs(lead - 2) < 1e-6 || fabs(lead - 5) < 1e-6,
                      "step %g of %g", step, range);
        smaller = fabs(lead - 5) < 1e-6 ? step / 2.5 : step / 2;
        ck_assert_msg(range / step <= most * (1 + 1e-9) && range / smaller > most * (1 - 1e-9),
                      "%g in at most %d: %g", range, most, step);
    }
}
END_TEST

/* Neighbours keep the gap and the order; all stay within the bounds where there is room. */
START_TEST(places_keep_apart)
{
    uint64_t state = random_start("places_keep_apart");
    for (int run = 0, runs = rounds(20000); run < runs; run++) {
        double places[12], gap = random_between(&state, 1, 20), low = 10, high = 300;
        size_t count = (size_t)random_whole(&state, 1, 12);
        places[0] = random_between(&state, 0, 300);
        for (size_t i = 1; i < count; i++)
            places[i] = places[i - 1] + random_between(&state, 0, 40);
        places_spread(places, count, gap, low, high);
        ck_assert(places[0] >= low - 1e-9 && places[count - 1] <= high + 1e-9);
        for (size_t i = 1; i < count; i++)
            ck_assert(places[i] - places[i - 1] >= gap - 1e-9);
    }
}
END_TEST

START_TEST(texts_are_cut_to_their_room)
{
    uint64_t state = random_start("texts_are_cut_to_their_room");
    struct drawing drawing = paper_open(&paper);
    const char *name = "a w\xC3\xBCrdig long n\xE9\x95\xB7me <with> MARKUP & all";
    for (int run = 0, runs = rounds(2000); run < runs; run++) {
        double size = random_between(&state, 6, 20), width = random_between(&state, 2 * size, 900);
        const char *text = drawing_fit(&drawing, name, size, width);
        ck_assert(drawing_text_width(text, size) <= width + 1e-9);
        bool whole = drawing_text_width(name, size) <= width;
        ck_assert_int_eq(strcmp(text, name) == 0, whole);
    }
    free(paper_text(&paper));
}
END_TEST

Suite *drawing_suite(void)
{
    Suite *suite = suite_create("drawing");
    TCase *layer = tcase_create("layer");
    tcase_add_loop_test(layer, markup_is_escaped, 0, (int)LENGTH_OF(escaped));
    tcase_add_test(layer, markdown_is_escaped);
    tcase_add_test(layer, line_is_written);
    tcase_add_test(layer, unknown_places_are_not_drawn);
    tcase_add_test(layer, scale_is_linear);
    tcase_add_test(layer, steps_are_round);
    tcase_add_test(layer, places_keep_apart);
    tcase_add_test(layer, texts_are_cut_to_their_room);
    suite_add_tcase(suite, layer);
    return suite;
}

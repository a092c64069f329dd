#include "reading/task_list.h"

#include "output/writer.h"
#include "reading/answer.h"
#include "reading/document.h"
#include "reading/page.h"
#include "reading/prose.h"
#include "reading/sheet_text.h"

enum { LABEL_AT = 3, TEXT_AT = 2 };

bool task_list_shows(const struct layout *layout, size_t setup)
{
    return setup > 0 || layout->plan->count == 1;
}

/* What fails of a no go, the build's own with it: here nothing is said above. */
static size_t count_fails(const struct option_outcome *outcome)
{
    return outcome->outcome == OUTCOME_NO_GO ? outcome->counts[VERDICT_FAIL] : 0;
}

static bool has_nothing(const struct option_outcome *outcome)
{
    return outcome->task_count == 0 && outcome->outcome != OUTCOME_NO_GO;
}

static void put_option(const struct layout *layout, size_t setup)
{
    const struct option_outcome *outcome = &layout->outcomes[setup];
    struct prose prose = {.out = layout->out, .width = layout->width};
    outbuf_char(layout->out, '\n');
    prose_begin(&prose, 0, option_label(layout, setup), LABEL_AT);
    prose_words(&prose, answer_heading(layout, setup));
    prose_end(&prose);
    tasks_text(layout, setup, true);
    if (has_nothing(outcome))
        prose_line(&prose, TEXT_AT, TEXT_AT, "nothing to do");
    for (size_t i = 0; i < count_fails(outcome); i++)
        finding_text(layout, outcome->findings[i]);
}

void task_list_text(const struct layout *layout)
{
    put_shown(layout->out, span_of(answer_title(layout)));
    outbuf_char(layout->out, '\n');
    for (size_t i = 0; i < layout->plan->count; i++)
        if (task_list_shows(layout, layout->order[i]))
            put_option(layout, layout->order[i]);
    cautions_text(layout);
}

static void put_markdown_option(const struct layout *layout, size_t setup)
{
    const struct option_outcome *outcome = &layout->outcomes[setup];
    document_heading(layout, 2,
                     arena_format(layout->arena, "%s: %s", option_label(layout, setup),
                                  answer_heading(layout, setup)));
    page_markdown_tasks(layout, setup, true);
    if (has_nothing(outcome))
        outbuf_text(layout->out, "nothing to do\n");
    for (size_t i = 0; i < count_fails(outcome); i++)
        page_finding(layout, outcome->findings[i]);
}

void task_list_markdown(const struct layout *layout)
{
    document_heading(layout, 1, answer_title(layout));
    for (size_t i = 0; i < layout->plan->count; i++)
        if (task_list_shows(layout, layout->order[i]))
            put_markdown_option(layout, layout->order[i]);
    document_paragraph(layout, cautions);
}

/* Findings in sentences, worst first; assumptions; and the cautions under every sheet. */
#ifndef TYRESUM_READING_FINDINGS_TEXT_H
#define TYRESUM_READING_FINDINGS_TEXT_H

#include "reading/part_table.h"

/* How bad a setup is: fails count before unknowns before cautions. */
struct badness {
    size_t setup;
    size_t fails, unknowns, cautions, oks;
};

struct finding_list {
    const struct figure **items;
    size_t count;
};

/* Sorts the figures by setup and finds what all share, so that no later step looks through all. */
void layout_group(struct layout *layout);

/* One a setup, the worst first. */
const struct badness *findings_order(const struct layout *layout);
/* "3 fail, 0 unknown, 1 caution, 20 ok" */
const char *counts_text(const struct layout *layout, const struct badness *badness);
/* Findings that every setup shares, once; and those that are a setup's own, the worst first. */
struct finding_list findings_shared(const struct layout *layout);
struct finding_list findings_of(const struct layout *layout, size_t setup);
/* "room at lock, front, largest": what a finding is about. */
/* The state's name cut at so many characters; 0: whole. */
const char *finding_name(struct arena *arena, const struct plan *plan, const struct figure *figure,
                         size_t state_width);
/* Each assumption once, and the labels of the setups that it was made for. */
struct finding_list assumptions_made(const struct layout *layout);
const char *labels_taken(const struct layout *layout, const struct figure *assumption);
/* What stands under every sheet. */
extern const char cautions[];

/* The designation of a setup; front and rear where they differ. */
const char *size_text(const struct layout *layout, const struct setup *setup);

/* What each letter stands for. */
void legend_text(const struct layout *layout);
/* What is wrong with each setup, the worst setup first, fail before unknown before caution. */
void findings_text(const struct layout *layout);
/* Its two halves: what every setup shares, and what is each setup's own. */
void shared_findings_text(const struct layout *layout);
void own_findings_text(const struct layout *layout);
void assumptions_text(const struct layout *layout);
void cautions_text(const struct layout *layout);

#endif

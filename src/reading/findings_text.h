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
void reading_group(struct reading *reading);

/* One a setup, the worst first. */
const struct badness *findings_order(const struct reading *reading);
/* "3 fail, 0 unknown, 1 caution, 20 ok" */
const char *counts_text(const struct reading *reading, const struct badness *badness);
/* Findings that every setup shares, once; and those that are a setup's own, the worst first. */
struct finding_list findings_shared(const struct reading *reading);
struct finding_list findings_of(const struct reading *reading, size_t setup);
/* "room at lock, front, largest": what a finding is about. */
const char *finding_name(struct arena *arena, const struct figure *figure);
/* Each assumption once, and the labels of the setups that it was made for. */
struct finding_list assumptions_made(const struct reading *reading);
const char *labels_taken(const struct reading *reading, const char *assumption);
/* What stands under every sheet. */
extern const char cautions[];

/* The designation of a setup; front and rear where they differ. */
const char *size_text(const struct reading *reading, const struct setup *setup);

/* What each letter stands for. */
void legend_text(const struct reading *reading);
/* What is wrong with each setup, the worst setup first, fail before unknown before caution. */
void findings_text(const struct reading *reading);
/* Its two halves: what every setup shares, and what is each setup's own. */
void shared_findings_text(const struct reading *reading);
void own_findings_text(const struct reading *reading);
void assumptions_text(const struct reading *reading);
void cautions_text(const struct reading *reading);

#endif

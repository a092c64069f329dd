/* Findings in sentences, worst first; assumptions; and the cautions under every sheet. */
#ifndef TYRESUM_READING_FINDINGS_TEXT_H
#define TYRESUM_READING_FINDINGS_TEXT_H

#include "reading/part_table.h"

struct finding_list {
    const struct figure **items;
    size_t count;
};

/* Sorts the figures by setup, finds each one's outcome and what all share, so that no later step
 * looks through all. every_part: where not all of them are laid out, else NULL. */
void layout_group(struct layout *layout, const struct figures *every_part);

/* Whether the list of tasks tells of a finding: then it stands nowhere else; nor does, of a no go,
 * what would be work. */
bool is_told_as_task(const struct layout *layout, size_t setup, const struct figure *finding);
/* "go after work; 3 tasks, 1 caution"; of one part "go after work; in this part 1 caution". What
 * is told of it is counted: of a no go no tasks. */
const char *standing_text(const struct layout *layout, size_t setup);
/* Findings that every setup shares, once; and those that are a setup's own, the worst first. */
struct finding_list findings_shared(const struct layout *layout);
struct finding_list findings_of(const struct layout *layout, size_t setup);
/* "room at lock, front, largest": what a finding is about. */
/* The state's name cut at so many characters; 0: whole. */
const char *finding_name(struct arena *arena, const struct plan *plan, const struct figure *figure,
                         size_t state_width);
/* A finding in a sentence: its name, value, limit and advice; without the key of the build file for
 * those who have none. */
const char *finding_sentence(const struct layout *layout, const struct figure *figure);
const char *finding_in_words(const struct layout *layout, const struct figure *figure);
/* Each assumption once, and the labels of the setups that it was made for. */
struct finding_list assumptions_made(const struct layout *layout);
const char *labels_taken(const struct layout *layout, const struct figure *assumption);
/* Which of its figures rest on memory, in a sentence, or NULL; and what stands under every sheet.
 */
const char *memory_note(const struct layout *layout);
extern const char cautions[];

/* The designation of a setup; front and rear where they differ. */
const char *size_text(const struct layout *layout, const struct setup *setup);

/* A finding in full: its verdict, name, value, limit, advice and basis. */
void finding_text(const struct layout *layout, const struct figure *figure);
/* All of a list; those that are unknown for want of the same in one. */
void findings_text(const struct layout *layout, const struct finding_list *list);
void assumptions_text(const struct layout *layout);
void cautions_text(const struct layout *layout);

#endif

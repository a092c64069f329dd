/* Findings in sentences, worst first; assumptions; and the cautions under every sheet. */
#ifndef TYRESUM_CLI_FINDINGS_TEXT_H
#define TYRESUM_CLI_FINDINGS_TEXT_H

#include "cli/part_table.h"

/* What each letter stands for. */
void legend_text(const struct reading *reading);
/* What is wrong with each setup, the worst setup first, fail before unknown before caution. */
void findings_text(const struct reading *reading);
void assumptions_text(const struct reading *reading);
void cautions_text(const struct reading *reading);

#endif

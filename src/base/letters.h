/* Letters that options go by: A to Z, then AA, AB; by their number in the file, from 1. */
#ifndef TYRESUM_BASE_LETTERS_H
#define TYRESUM_BASE_LETTERS_H

#include "base/arena.h"
#include "base/span.h"

const char *letters_of_number(struct arena *arena, size_t number);
/* 0: the text is no letters, or stands for no number up to `most`. */
size_t number_of_letters(struct span text, size_t most);

#endif

/* The parts of the designation suite that stand in files of their own. */
#ifndef TYRESUM_TESTS_DESIGNATION_CASES_H
#define TYRESUM_TESTS_DESIGNATION_CASES_H

#include <check.h>

/* Designations of every form and mark, ended by NULL. */
extern const char *const DESIGNATION_SAMPLES[];

TCase *designation_property_case(void);
TCase *designation_random_case(void);
TCase *designation_listed_case(void);
TCase *designation_counter_case(void);
TCase *designation_plain_case(void);
TCase *designation_typed_case(void);

#endif

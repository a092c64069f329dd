/* One suite a module; check_main.c runs them all. */
#ifndef TYRESUM_TESTS_SUITES_H
#define TYRESUM_TESTS_SUITES_H

#include <check.h>

Suite *designation_suite(void);
Suite *tables_suite(void);
Suite *table_files_suite(void);
Suite *number_suite(void);
Suite *words_suite(void);
Suite *writer_suite(void);
Suite *row_put_suite(void);
Suite *utf8_suite(void);
Suite *properties_suite(void);
Suite *properties_alike_suite(void);
Suite *properties_balance_suite(void);
Suite *properties_change_suite(void);
Suite *properties_judge_suite(void);
Suite *properties_outcome_suite(void);
Suite *properties_output_suite(void);
Suite *properties_set_suite(void);
Suite *properties_speedometer_suite(void);
Suite *properties_pressure_suite(void);
Suite *properties_places_suite(void);
Suite *properties_sums_suite(void);
Suite *properties_shortlist_suite(void);
Suite *properties_promise_suite(void);
Suite *properties_solving_suite(void);
Suite *properties_tasks_suite(void);
Suite *properties_knowledge_suite(void);
Suite *quantity_suite(void);
Suite *build_file_suite(void);
Suite *build_faults_suite(void);
Suite *dimensions_suite(void);
Suite *capacity_suite(void);
Suite *axle_loads_suite(void);
Suite *load_suite(void);
Suite *ratings_suite(void);
Suite *pressure_suite(void);
Suite *least_squares_suite(void);
Suite *speedometer_suite(void);
Suite *speedometer_law_suite(void);
Suite *gearing_suite(void);
Suite *pull_suite(void);
Suite *clearance_suite(void);
Suite *clearance_report_suite(void);
Suite *arch_fit_suite(void);
Suite *by_hand_suite(void);
Suite *compare_suite(void);
Suite *outcome_suite(void);
Suite *shortlist_suite(void);
Suite *springs_suite(void);
Suite *drawing_suite(void);

#endif

/* Runs every suite; exits with 1 where a check failed. */
#include <stdlib.h>

#include "suites.h"

/* What would end a test that never ends; how long one takes depends on the machine. */
#define TIMEOUT_SECONDS "600"

static Suite *(*const suites[])(void) = {
    designation_suite,
    tables_suite,
    table_files_suite,
    number_suite,
    words_suite,
    writer_suite,
    row_put_suite,
    utf8_suite,
    quantity_suite,
    build_file_suite,
    build_faults_suite,
    dimensions_suite,
    capacity_suite,
    axle_loads_suite,
    load_suite,
    ratings_suite,
    pressure_suite,
    speedometer_suite,
    gearing_suite,
    pull_suite,
    clearance_suite,
    least_squares_suite,
    speedometer_law_suite,
    clearance_report_suite,
    arch_fit_suite,
    by_hand_suite,
    compare_suite,
    outcome_suite,
    shortlist_suite,
    springs_suite,
    drawing_suite,
    properties_suite,
    properties_alike_suite,
    properties_balance_suite,
    properties_change_suite,
    properties_judge_suite,
    properties_outcome_suite,
    properties_output_suite,
    properties_set_suite,
    properties_speedometer_suite,
    properties_pressure_suite,
    properties_places_suite,
    properties_sums_suite,
    properties_shortlist_suite,
    properties_promise_suite,
    properties_solving_suite,
    properties_tasks_suite,
    properties_knowledge_suite,
};

int main(void)
{
    setenv("CK_DEFAULT_TIMEOUT", TIMEOUT_SECONDS, 0);
    SRunner *runner = srunner_create(NULL);
    for (size_t i = 0; i < sizeof suites / sizeof suites[0]; i++)
        srunner_add_suite(runner, suites[i]());
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}

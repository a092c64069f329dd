#include "cli/commands.h"

#include <string.h>

#include "build/keys.h"

#define BUILD "FILE... | FITTED OPTION..."

static const size_t no_columns = 0;

const struct command command_table[] = {
    {"size", CMD_SIZE, "DESIGNATION... | -", "what each designation means and measures", run_size,
     size_columns, &size_column_count, 0, 1, 10000},
    {"compare", CMD_COMPARE, BUILD, "each option beside the fitted tyre", run_compare,
     compare_columns, &compare_column_count, USE_ALL, 1, 10000},
    {"speedometer", CMD_SPEEDOMETER, BUILD,
     "its error, lawful or not, the setting to enter, a speed table", run_part, figure_columns,
     &figure_column_count, USE_SPEEDOMETER, 1, 10000},
    {"gearing", CMD_GEARING, BUILD,
     "ratios, road and engine speed, crawl, the axle ratio to restore", run_part, figure_columns,
     &figure_column_count, USE_GEARING, 1, 10000},
    {"load", CMD_LOAD, BUILD, "axle loads, ratings left, tyre capacity, pressure needed", run_part,
     figure_columns, &figure_column_count, USE_LOAD, 1, 10000},
    {"clearance", CMD_CLEARANCE, BUILD,
     "ground and body clearance, angles, wheel arch, lock, spare", run_part, figure_columns,
     &figure_column_count, USE_CLEARANCE, 1, 10000},
    {"tasks", CMD_TASKS, BUILD, "what has to be done for each option, in workshop order", run_tasks,
     task_columns, &task_column_count, USE_ALL, 1, 10000},
    {"sheet", CMD_SHEET, BUILD, "the whole job: outcome and tasks first, then each part", run_part,
     figure_columns, &figure_column_count, USE_ALL, 1, 10000},
    {"shortlist", CMD_SHORTLIST, BUILD,
     "every tyre, wheel, spring, height and axle that goes, best first", run_shortlist,
     shortlist_columns, &shortlist_column_count, USE_SHORTLIST, 1, 10000},
    {"check", CMD_CHECK, BUILD " | --template",
     "is a file understood; what is doubtful, assumed, missing, in vain", run_check, check_columns,
     &check_column_count, USE_ALL, 0, 10000},
    {"tables", CMD_TABLES, "[NAME]", "the reference tables; every quantity, key, column and task",
     run_tables, NULL, &no_columns, 0, 0, 1},
};
const size_t command_count = sizeof command_table / sizeof command_table[0];

const struct command *command_find(const char *name)
{
    for (size_t i = 0; i < command_count; i++)
        if (strcmp(command_table[i].name, name) == 0)
            return &command_table[i];
    return NULL;
}

const char *operand(const struct options *options, size_t index)
{
    return options->operands[index + 1];
}

size_t operand_count(const struct options *options)
{
    return options->operand_count - 1;
}

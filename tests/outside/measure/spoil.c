#include "spoil.h"

#include <math.h>
#include <signal.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>

#include "tables/tables.h"

enum { FUNCTIONS_MAX = 1000, COPIES_MAX = 4096 };

static const char *reached[FUNCTIONS_MAX];
static size_t reached_count;
static double factor = 1.05;
static bool by_turns;
static const char *formula;

static struct {
    const void *original, *copy;
} copies[COPIES_MAX];
static size_t copy_count;

static char reached_path[4096];

static void write_reached(void)
{
    FILE *file = reached_path[0] ? fopen(reached_path, "a") : NULL;
    if (!file)
        return;
    for (size_t i = 0; i < reached_count; i++)
        fprintf(file, "%s\n", reached[i]);
    fclose(file);
}

void spoil_forget(void)
{
    write_reached();
    reached_count = 0;
    while (copy_count > 0)
        free((void *)(uintptr_t)copies[--copy_count].copy);
}

void spoil_reached_to(const char *path)
{
    snprintf(reached_path, sizeof reached_path, "%s", path);
}

static void reach(const char *what)
{
    for (size_t i = 0; i < reached_count; i++)
        if (reached[i] == what)
            return;
    if (reached_count < FUNCTIONS_MAX)
        reached[reached_count++] = what;
}

bool spoil_chosen(const char *function)
{
    reach(function);
    if (!formula || strcmp(formula, function) != 0)
        return false;
    if (by_turns)
        factor = factor > 1 ? 0.95 : 1.05;
    return true;
}

double spoil_double(double value)
{
    return value * factor;
}

int spoil_integer(int value)
{
    return factor > 1 ? value + 1 : value - 1;
}

static void spoil_word(unsigned char *word)
{
    double value;
    memcpy(&value, word, sizeof value);
    if (fabs(value) > 1e-9 && fabs(value) < 1e12) {
        value *= factor;
        memcpy(word, &value, sizeof value);
    }
}

void spoil_memory(void *start, size_t size)
{
    for (size_t at = 0; at + sizeof(double) <= size; at += sizeof(double))
        spoil_word((unsigned char *)start + at);
}

void spoil_changed(void *start, const void *before, size_t size)
{
    for (size_t at = 0; at + sizeof(double) <= size; at += sizeof(double)) {
        unsigned char *word = (unsigned char *)start + at;
        if (memcmp(word, (const unsigned char *)before + at, sizeof(double)) != 0)
            spoil_word(word);
    }
}

static void spoil_cell(const struct table_column *column, unsigned char *row)
{
    int whole;
    double number;
    if (column->type == TABLE_INTEGER) {
        memcpy(&whole, row + column->offset, sizeof whole);
        if (whole >= 0) {
            int change = whole / 20 > 1 ? whole / 20 : 1;
            whole += factor > 1 ? change : -change;
            memcpy(row + column->offset, &whole, sizeof whole);
        }
    } else if (column->type == TABLE_NUMBER) {
        memcpy(&number, row + column->offset, sizeof number);
        /* Enough to be seen in as many decimals as are printed. */
        double change = fmax(fabs(number) * 0.05, pow(10, -column->decimals));
        number += factor > 1 ? change : -change;
        memcpy(row + column->offset, &number, sizeof number);
    }
}

/* Rows begin on pages of their own (run.sh sees to it). */
static size_t pages_size(const struct table *table)
{
    return (table->rows * table->row_size + SPOIL_PAGE - 1) / SPOIL_PAGE * SPOIL_PAGE;
}

static const struct table *table_of(const void *row)
{
    for (size_t i = 0; i < tables_count(); i++) {
        const struct table *table = table_at(i);
        uintptr_t first = (uintptr_t)table->data, at = (uintptr_t)row;
        if (at >= first && at < first + pages_size(table))
            return table;
    }
    return NULL;
}

/* The first look at a locked table. */
static void on_fault(int signal_number, siginfo_t *what, void *context)
{
    const struct table *table = table_of(what->si_addr);
    (void)context;
    if (!table) {
        signal(signal_number, SIG_DFL);
        return;
    }
    mprotect((void *)(uintptr_t)table->data, pages_size(table), PROT_READ | PROT_WRITE);
    reach(table->name);
}

void spoil_watch_tables(void)
{
    struct sigaction action = {.sa_sigaction = on_fault, .sa_flags = SA_SIGINFO};
    sigaction(SIGSEGV, &action, NULL);
    for (size_t i = 0; i < tables_count(); i++)
        mprotect((void *)(uintptr_t)table_at(i)->data, pages_size(table_at(i)), PROT_NONE);
}

const void *spoil_row(const void *row)
{
    const struct table *table = row ? table_of(row) : NULL;
    unsigned char *copy = table && copy_count < COPIES_MAX ? malloc(table->row_size) : NULL;
    if (!copy)
        return row;
    memcpy(copy, row, table->row_size);
    for (size_t i = 0; i < table->column_count; i++)
        spoil_cell(&table->columns[i], copy);
    copies[copy_count].original = row;
    copies[copy_count++].copy = copy;
    return copy;
}

const void *spoil_original(const void *copy)
{
    for (size_t i = 0; i < copy_count; i++)
        if (copies[i].copy == copy)
            return copies[i].original;
    return copy;
}

/* "from FIRST LAST", or "bit BIT VALUE": the rows in whose number that bit is so. */
static bool row_is_meant(const char *rows, unsigned row)
{
    unsigned first, last;
    if (sscanf(rows, "from %u %u", &first, &last) == 2)
        return row >= first && row <= last;
    if (sscanf(rows, "bit %u %u", &first, &last) == 2)
        return (row >> first & 1) == last;
    fprintf(stderr, "spoil: which rows are \"%s\"?\n", rows);
    exit(99);
}

/* The tables of this build can be written to (run.sh takes their `const` away). */
static void spoil_table(const char *name)
{
    const struct table *table = table_find(name);
    const char *column = getenv("SPOIL_COLUMN"), *rows = getenv("SPOIL_ROWS");
    if (!table || !column || !rows) {
        fprintf(stderr, "spoil: no such table, no column or no rows\n");
        exit(99);
    }
    for (size_t i = 0; i < table->column_count; i++)
        if (strcmp(column, "any") == 0 || strcmp(table->columns[i].name, column) == 0)
            for (unsigned row = 0; row < table->rows; row++)
                if (row_is_meant(rows, row))
                    spoil_cell(&table->columns[i],
                               (unsigned char *)(uintptr_t)table->data + row * table->row_size);
}

__attribute__((constructor)) static void begin(void)
{
    const char *given = getenv("SPOIL_FACTOR");
    by_turns = given && strcmp(given, "turns") == 0;
    if (given && !by_turns)
        factor = strtod(given, NULL);
    formula = getenv("SPOIL_FORMULA");
    if (getenv("SPOIL_TABLE"))
        spoil_table(getenv("SPOIL_TABLE"));
    if (getenv("SPOIL_REACHED"))
        spoil_reached_to(getenv("SPOIL_REACHED"));
    atexit(write_reached);
}

#include "tables/lookup.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

#include "base/known.h"
#include "base/span.h"

double load_index_kg(int load_index)
{
    if (load_index < 0 || load_index >= load_index_count)
        return UNKNOWN;
    return load_index_rows[load_index].load_kg; /* row n holds load index n: checked by the tests */
}

int load_index_for_kg(double kg)
{
    int low = 0, high = load_index_count;
    if (!known(kg))
        return -1;
    while (low < high) {
        int middle = (low + high) / 2;
        if (load_index_rows[middle].load_kg < kg)
            low = middle + 1;
        else
            high = middle;
    }
    return low < load_index_count ? low : -1;
}

/* Rows of the table that come before the first with that letter. */
static int rows_before_letter(char letter)
{
    static const unsigned char rows[] = {0,  8,  9,  10, 11, 12, 13, 25, 31, 14, 15, 16, 17,
                                         18, 31, 19, 20, 21, 22, 23, 24, 26, 27, 31, 28, 29};
    return letter >= 'A' && letter <= 'Z' ? rows[letter - 'A'] : 0;
}

/* Of texts of a letter or two, which a call of the C library would take longer for. */
static bool is_same_symbol(const char *a, const char *b)
{
    while (*a == *b && *a != '\0') {
        a++;
        b++;
    }
    return *a == *b;
}

const struct speed_symbol_row *speed_symbol_find(const char *symbol)
{
    for (int i = rows_before_letter(symbol[0]); i < speed_symbol_count; i++)
        if (is_same_symbol(speed_symbol_rows[i].symbol, symbol))
            return &speed_symbol_rows[i];
    return NULL;
}

bool speed_symbol_kmh(const char *symbol, double *kmh)
{
    const struct speed_symbol_row *row = speed_symbol_find(symbol);
    if (row)
        *kmh = row->speed_kmh;
    return row != NULL;
}

/* A speed that is exceeded stands above the same speed as a maximum. */
static bool is_slower(const struct speed_symbol_row *a, const struct speed_symbol_row *b)
{
    bool a_over = strcmp(a->kind, "over") == 0, b_over = strcmp(b->kind, "over") == 0;
    return a->speed_kmh < b->speed_kmh || (a->speed_kmh <= b->speed_kmh && !a_over && b_over);
}

int speed_symbol_order(const char *symbol)
{
    const struct speed_symbol_row *row = speed_symbol_find(symbol);
    int order = 0;
    if (!row)
        return -1;
    for (int i = 0; i < speed_symbol_count; i++)
        order += is_slower(&speed_symbol_rows[i], row);
    return order;
}

double speed_symbol_steps(const char *before, const char *after)
{
    int from = speed_symbol_order(before), to = speed_symbol_order(after);
    int size_mark = speed_symbol_order("ZR");
    if (from < 0 || to < 0)
        return UNKNOWN;
    return to - from - (from < size_mark && size_mark < to) + (to < size_mark && size_mark < from);
}

/* Between two neighbouring points of the symbol, or 100 below its first. */
static double percent_of_points(const char *symbol, double speed_kmh)
{
    const struct speed_load_row *before = NULL;
    for (int i = 0; i < speed_load_count; i++) {
        const struct speed_load_row *row = &speed_load_rows[i];
        if (!same_text(row->symbol, symbol))
            continue;
        if (speed_kmh <= row->speed_kmh && before == NULL)
            return row->load_percent;
        if (before != NULL && speed_kmh <= row->speed_kmh)
            return before->load_percent + (row->load_percent - before->load_percent) *
                                              (speed_kmh - before->speed_kmh) /
                                              (row->speed_kmh - before->speed_kmh);
        before = row;
    }
    return before ? UNKNOWN : 100;
}

double speed_load_percent(const char *symbol, double speed_kmh)
{
    const char *points = strcmp(symbol, "(Y)") == 0 ? "Y" : symbol;
    const struct speed_symbol_row *row = speed_symbol_find(points);
    if (!row || strcmp(row->kind, "max") != 0 || !(speed_kmh <= row->speed_kmh))
        return UNKNOWN;
    return percent_of_points(points, speed_kmh);
}

double rim_diameter_m(int rim_code_tenths, bool millimetric)
{
    if (rim_code_tenths <= 0)
        return UNKNOWN;
    if (millimetric)
        return rim_code_tenths / 10000.0;
    long long whole_mm = (rim_code_tenths * 254LL + 50) / 100; /* the table's rule, and its rows */
    return (double)whole_mm / 1000;
}

const struct load_range_row *load_range_find(char letter)
{
    for (int i = 0; letter != '\0' && i < load_range_count; i++)
        if (load_range_rows[i].letter[0] == letter)
            return &load_range_rows[i];
    return NULL;
}

const struct rolling_row *rolling_find(const char *construction)
{
    for (int i = 0; i < rolling_count; i++)
        if (strcmp(rolling_rows[i].construction, construction) == 0)
            return &rolling_rows[i];
    return NULL;
}

/* Rows stand by standard, construction and use: checked by the tests. */
const struct tolerance_row *tolerance_find(bool un_r54, int construction, bool special_use)
{
    enum { UN_R54_FROM = 3 };
    if (un_r54)
        return &tolerance_rows[UN_R54_FROM + 2 * construction + special_use];
    return special_use ? NULL : &tolerance_rows[construction];
}

const struct rim_factors_row *rim_factors_for(int aspect_percent)
{
    /* Rows before that of the aspect ratios from 0, 5, 10: the search begins near its end. */
    static const unsigned char rows[] = {0, 0, 0, 0, 1, 1, 2, 3, 3, 4, 5, 5, 6, 7, 8, 9, 9, 10};
    const int fives = aspect_percent / 5, last = (int)(sizeof rows / sizeof rows[0]) - 1;
    int i = fives < 0 ? 0 : rows[fives < last ? fives : last];
    while (i < rim_factors_count && aspect_percent > rim_factors_rows[i].aspect_max)
        i++;
    return i < rim_factors_count && aspect_percent >= rim_factors_rows[i].aspect_min
               ? &rim_factors_rows[i]
               : NULL;
}

const struct speedometer_rules_row *speedometer_rule_find(const char *name)
{
    for (int i = 0; i < speedometer_rules_count; i++)
        if (strcmp(speedometer_rules_rows[i].name, name) == 0)
            return &speedometer_rules_rows[i];
    return NULL;
}

const struct odometer_rules_row *odometer_rule_find(const char *name)
{
    for (int i = 0; i < odometer_rules_count; i++)
        if (strcmp(odometer_rules_rows[i].name, name) == 0)
            return &odometer_rules_rows[i];
    return NULL;
}

const struct density_row *density_find(const char *name)
{
    for (int i = 0; i < density_count; i++)
        if (same_text(density_rows[i].name, name))
            return &density_rows[i];
    return NULL;
}

/* Keeps speeds_kmh[0..count] ascending. */
static void insert_speed(double speeds_kmh[], int count, double speed_kmh)
{
    while (count > 0 && speeds_kmh[count - 1] > speed_kmh) {
        speeds_kmh[count] = speeds_kmh[count - 1];
        count--;
    }
    speeds_kmh[count] = speed_kmh;
}

int speedometer_test_speeds_kmh(const char *set, double top_speed_kmh,
                                double speeds_kmh[TEST_SPEEDS_MAX])
{
    int count = 0;
    for (int i = 0; i < speedometer_test_speeds_count && count < TEST_SPEEDS_MAX; i++) {
        const struct speedometer_test_speeds_row *row = &speedometer_test_speeds_rows[i];
        if (!same_text(row->test_speeds, set) || !(top_speed_kmh > row->top_speed_above_kmh) ||
            top_speed_kmh > row->top_speed_to_kmh) /* no end is UNKNOWN: the comparison is false */
            continue;
        insert_speed(speeds_kmh, count++,
                     known_or(row->speed_kmh, row->percent_of_top * top_speed_kmh / 100));
    }
    return count;
}

const struct speed_symbol_rules_row *symbol_rule_next(const char *name,
                                                      const struct speed_symbol_rules_row *after)
{
    const struct speed_symbol_rules_row *row = after ? after + 1 : speed_symbol_rules_rows;
    for (; row < speed_symbol_rules_rows + speed_symbol_rules_count; row++)
        if (strcmp(row->name, name) == 0)
            return row;
    return NULL;
}

const struct fitment_limits_row *fitment_limits_next(const char *name,
                                                     const struct fitment_limits_row *after)
{
    const struct fitment_limits_row *row = after ? after + 1 : fitment_limits_rows,
                                    *end = fitment_limits_rows + fitment_limits_count;
    if (after) /* rows of one rule stand together: checked by the tests */
        return row < end && same_text(row->name, name) ? row : NULL;
    while (row < end && !same_text(row->name, name))
        row++;
    return row < end ? row : NULL;
}

const struct fitment_limits_row *fitment_limit_on(const char *quantity)
{
    for (int i = 0; i < fitment_limits_count; i++)
        if (strcmp(fitment_limits_rows[i].quantity, quantity) == 0)
            return &fitment_limits_rows[i];
    return NULL;
}

const struct headlamp_dip_row *headlamp_dip_for(double height_m)
{
    for (int i = 0; i < headlamp_dip_count; i++) {
        const struct headlamp_dip_row *row = &headlamp_dip_rows[i];
        if (clearly_above(height_m * 1e3, row->height_above_mm) &&
            !clearly_above(height_m * 1e3, row->height_to_mm)) /* no upper end is none */
            return row;
    }
    return NULL;
}

double pressure_warning_minimum_kPa(const char *class, char load_range)
{
    for (int i = 0; i < pressure_warning_count; i++) {
        const struct pressure_warning_row *row = &pressure_warning_rows[i];
        if (strcmp(row->class, class) == 0 &&
            (row->load_range[0] == '\0' || row->load_range[0] == load_range))
            return row->minimum_kPa;
    }
    return UNKNOWN;
}

const struct numeric_sizes_row *numeric_size_find(int section_hundredths, const char *construction,
                                                  int rim_tenths)
{
    for (int i = 0; i < numeric_sizes_count; i++) {
        const struct numeric_sizes_row *row = &numeric_sizes_rows[i];
        if (row->section_hundredths == section_hundredths && row->rim_tenths == rim_tenths &&
            strcmp(row->construction, construction) == 0)
            return row;
    }
    return NULL;
}

const struct full_profile_sizes_row *full_profile_size_find(int section_mm, int rim_tenths)
{
    for (int i = 0; i < full_profile_sizes_count; i++)
        if (full_profile_sizes_rows[i].section_code_mm == section_mm &&
            full_profile_sizes_rows[i].rim_tenths == rim_tenths)
            return &full_profile_sizes_rows[i];
    return NULL;
}

const struct flotation_sizes_row *flotation_size_find(int diameter_hundredths,
                                                      int section_hundredths, int rim_tenths)
{
    for (int i = 0; i < flotation_sizes_count; i++) {
        const struct flotation_sizes_row *row = &flotation_sizes_rows[i];
        if (row->diameter_hundredths == diameter_hundredths &&
            row->section_hundredths == section_hundredths && row->rim_tenths == rim_tenths)
            return row;
    }
    return NULL;
}

const struct flotation_rims_row *flotation_rims_find(int section_hundredths)
{
    for (int i = 0; i < flotation_rims_count; i++)
        if (flotation_rims_rows[i].section_hundredths == section_hundredths)
            return &flotation_rims_rows[i];
    return NULL;
}

const struct heavy_rims_row *heavy_rims_find(int section_mm, int aspect_percent, int rim_tenths)
{
    for (int i = 0; i < heavy_rims_count; i++) {
        const struct heavy_rims_row *row = &heavy_rims_rows[i];
        if (row->section_width_mm == section_mm && row->aspect_percent == aspect_percent &&
            row->rim_tenths == rim_tenths)
            return row;
    }
    return NULL;
}

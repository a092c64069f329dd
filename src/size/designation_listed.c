#include "size/designation_listed.h"

#include <math.h>

#include "size/designation_internal.h"
#include "tables/tables_data.h"

static bool is_same_size(const struct designation *size, const struct standard_sizes_row *row)
{
    static const char *const suffixes[SUFFIX_COUNT] = {"", "C", "CP", "LT", "ST", "NHS"};
    bool flotation = size->form == FORM_FLOTATION;
    bool inches = flotation || size->form == FORM_NUMERIC;
    return strcmp(row->form, designation_form_name(size->form)) == 0 &&
           lround(row->section_width * (inches ? 100 : 1)) == size->section_width &&
           lround(row->rim_code * 10) == size->rim_code_tenths &&
           (size->aspect_percent == 0 || row->aspect_percent == size->aspect_percent) &&
           (size->overall_diameter == 0 ||
            lround(row->overall_diameter * (flotation ? 100 : 1)) == size->overall_diameter) &&
           strcmp(row->prefix, PREFIX_TEXT[size->prefix]) == 0 &&
           strcmp(row->suffix, suffixes[size->suffix]) == 0;
}

bool designation_listed(const struct designation *size, int *load_index, int *load_index_dual)
{
    const struct standard_sizes_row *lowest = NULL;
    if (size->load_range == 0 || size->service.load_index != LOAD_INDEX_NONE ||
        size->construction != CONSTRUCTION_RADIAL)
        return false;
    for (size_t i = 0; i < standard_sizes_count; i++) {
        const struct standard_sizes_row *row = &standard_sizes_rows[i];
        if (row->load_range[0] == size->load_range && row->load_index > 0 &&
            (lowest == NULL || row->load_index < lowest->load_index) && is_same_size(size, row))
            lowest = row;
    }
    if (lowest == NULL)
        return false;
    *load_index = lowest->load_index;
    *load_index_dual = lowest->load_index_dual > 0 ? lowest->load_index_dual : LOAD_INDEX_NONE;
    return true;
}

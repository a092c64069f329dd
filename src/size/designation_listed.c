#include "size/designation_listed.h"

#include <math.h>
#include <stdio.h>

#include "tables/tables_data.h"

static bool is_same_size(const struct designation *size, const struct standard_sizes_row *row)
{
    bool flotation = size->form == FORM_FLOTATION;
    bool inches = flotation || size->form == FORM_NUMERIC;
    return (size->aspect_percent == 0 || row->aspect_percent == size->aspect_percent) &&
           lround(row->rim_code * 10) == size->rim_code_tenths &&
           lround(row->section_width * (inches ? 100 : 1)) == size->section_width &&
           strcmp(row->form, designation_form_name(size->form)) == 0 &&
           (size->overall_diameter == 0 ||
            lround(row->overall_diameter * (flotation ? 100 : 1)) == size->overall_diameter) &&
           strcmp(row->prefix, PREFIX_TEXT[size->prefix]) == 0 &&
           strcmp(row->suffix, SUFFIX_TEXT[size->suffix]) == 0;
}

bool designation_listed(const struct designation *size, enum listed_end end, int *load_index,
                        int *load_index_dual)
{
    const struct standard_sizes_row *listed = NULL;
    if (size->load_range == 0 || size->service.load_index != LOAD_INDEX_NONE ||
        size->construction != CONSTRUCTION_RADIAL)
        return false;
    for (size_t i = 0; i < standard_sizes_count; i++) {
        const struct standard_sizes_row *row = &standard_sizes_rows[i];
        if (row->load_range[0] == size->load_range && row->load_index > 0 &&
            (listed == NULL || (end == LISTED_LOWEST ? row->load_index < listed->load_index
                                                     : row->load_index > listed->load_index)) &&
            is_same_size(size, row))
            listed = row;
    }
    if (listed == NULL)
        return false;
    *load_index = listed->load_index;
    *load_index_dual = listed->load_index_dual > 0 ? listed->load_index_dual : LOAD_INDEX_NONE;
    return true;
}

int designation_listed_highest(const struct designation *size)
{
    int highest = LOAD_INDEX_NONE;
    for (size_t i = 0; i < standard_sizes_count; i++)
        if (standard_sizes_rows[i].load_index > highest &&
            is_same_size(size, &standard_sizes_rows[i]))
            highest = standard_sizes_rows[i].load_index;
    return highest;
}

int designation_load_index(const struct designation *size, enum listed_end end)
{
    int load_index = size->service.load_index, dual;
    designation_listed(size, end, &load_index, &dual);
    return load_index;
}

void designation_listed_note(int load_index, char load_range, enum listed_end end,
                             char note[LISTED_NOTE_SIZE])
{
    snprintf(note, LISTED_NOTE_SIZE, "load index %d as listed for load range %c, the %s",
             load_index, load_range, end == LISTED_LOWEST ? "lowest" : "highest");
}

#include "output_run.h"

#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static char directory[] = "/tmp/tyresum-properties-XXXXXX";
char build_path[64], output_path[64];

void output_set_up(void)
{
    strcpy(directory + sizeof directory - 7, "XXXXXX");
    ck_assert(mkdtemp(directory) != NULL);
    snprintf(build_path, sizeof build_path, "%s/build", directory);
    snprintf(output_path, sizeof output_path, "%s/output", directory);
}

void output_tear_down(void)
{
    unlink(build_path);
    unlink(output_path);
    rmdir(directory);
}

void write_build(const char *text, size_t length)
{
    FILE *file = fopen(build_path, "w");
    ck_assert(file != NULL);
    ck_assert_uint_eq(fwrite(text, 1, length, file), length);
    ck_assert_int_eq(fclose(file), 0);
}

size_t read_output(char *text)
{
    FILE *file = fopen(output_path, "r");
    size_t length = file == NULL ? 0 : fread(text, 1, OUTPUT_MAX - 1, file);
    if (file != NULL)
        ck_assert_int_eq(fclose(file), 0);
    text[length] = '\0';
    return length;
}

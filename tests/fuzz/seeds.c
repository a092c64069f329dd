#include "seeds.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static _Noreturn void give_up(const char *path, size_t line, const char *what)
{
    fprintf(stderr, "%s:%zu: %s\n", path, line, what);
    exit(1);
}

static void *must(void *pointer)
{
    if (pointer == NULL)
        give_up("memory", 0, "exhausted");
    return pointer;
}

void seeds_add(struct seeds *seeds, struct seed seed)
{
    seeds->all = must(realloc(seeds->all, (seeds->count + 1) * sizeof seeds->all[0]));
    seeds->all[seeds->count++] = seed;
}

/* "seed NAME" or "broke NAME: WORDS"; false where the line is neither. */
static bool begin_record(struct seeds *seeds, const char *line)
{
    bool broke = strncmp(line, "broke ", 6) == 0;
    if (!broke && strncmp(line, "seed ", 5) != 0)
        return false;
    struct seed seed = {.name = must(strdup(line + (broke ? 6 : 5)))};
    char *words = strstr(seed.name, ": ");
    if (broke != (words != NULL) || *seed.name == '\0' || strchr(seed.name, '/') != NULL)
        return false;
    if (words != NULL) {
        *words = '\0';
        seed.broke = words + 2;
    }
    seeds_add(seeds, seed);
    return true;
}

static int hex_digit(char digit)
{
    static const char digits[] = "0123456789abcdef";
    const char *at = digit != '\0' ? strchr(digits, digit) : NULL;
    return at != NULL ? (int)(at - digits) : -1;
}

/* Adds the bytes that a line behind its bar stands for; false where an escape is none. */
static bool add_line(struct seed *seed, const char *line)
{
    seed->bytes = must(realloc(seed->bytes, seed->size + strlen(line) + 1));
    for (; *line != '\0'; line++) {
        if (line[0] == '\\' && line[1] == '\0')
            return true;
        unsigned char byte = (unsigned char)*line;
        if (line[0] == '\\' && line[1] == '\\') {
            line++;
        } else if (line[0] == '\\') {
            int high = line[1] == 'x' ? hex_digit(line[2]) : -1;
            int low = high >= 0 ? hex_digit(line[3]) : -1;
            if (low < 0)
                return false;
            byte = (unsigned char)(high * 16 + low);
            line += 3;
        }
        seed->bytes[seed->size++] = byte;
    }
    seed->bytes[seed->size++] = '\n';
    return true;
}

struct seeds seeds_read(const char *path)
{
    struct seeds seeds = {NULL, 0};
    char *line = NULL;
    size_t room = 0, number = 0;
    FILE *file = fopen(path, "r");
    if (file == NULL)
        give_up(path, 0, "cannot be read");
    for (ssize_t length; (length = getline(&line, &room, file)) > 0;) {
        number++;
        if (line[length - 1] != '\n')
            give_up(path, number, "the last line has no end");
        line[length - 1] = '\0';
        if (*line == '\0' || *line == '#')
            continue;
        if (*line == '|' ? seeds.count == 0 || !add_line(&seeds.all[seeds.count - 1], line + 1)
                         : !begin_record(&seeds, line))
            give_up(path, number, "expected a record, or a line of its input");
    }
    free(line);
    if (fclose(file) != 0)
        give_up(path, number, "cannot be read");
    return seeds;
}

static void write_bytes(FILE *file, const struct seed *seed)
{
    bool begins = true;
    for (size_t i = 0; i < seed->size; i++) {
        unsigned char byte = seed->bytes[i];
        bool last = i + 1 == seed->size || seed->bytes[i + 1] == '\n'; /* editors cut such blanks */
        if (begins)
            fputc('|', file);
        begins = byte == '\n';
        if (byte == '\\')
            fputs("\\\\", file);
        else if (byte == '\n' || (byte >= ' ' && byte <= '~' && !(byte == ' ' && last)))
            fputc(byte, file);
        else
            fprintf(file, "\\x%02x", byte);
    }
    if (!begins)
        fputs("\\\n", file);
}

void seeds_write(const char *path, const struct seeds *seeds)
{
    FILE *file = fopen(path, "w");
    if (file == NULL)
        give_up(path, 0, "cannot be written");
    fputs("# Inputs of a fuzz target; tests/fuzz/seeds.h says how they are written, and\n"
          "# tests/fuzz/pack.sh writes them. Each is replayed by the tests.\n",
          file);
    for (size_t i = 0; i < seeds->count; i++) {
        const struct seed *seed = &seeds->all[i];
        if (seed->broke != NULL)
            fprintf(file, "broke %s: %s\n", seed->name, seed->broke);
        else
            fprintf(file, "seed %s\n", seed->name);
        write_bytes(file, seed);
    }
    if (fclose(file) != 0)
        give_up(path, 0, "cannot be written");
}

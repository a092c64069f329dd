/* The inputs of a fuzz target between their packed file and a folder in which each is a file:
 *   pack unpack FILE DIRECTORY           every input becomes a file of its name
 *   pack pack FILE DIRECTORY             the files there take the place of all that never broke
 *   pack broke FILE INPUT NAME WORDS     adds an input that broke what the words say
 * A file whose name is a hash, as libFuzzer gives it, keeps the head of it. */
#include "seeds.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { PATH_SIZE = 4096, INPUT_MAX = 1 << 20, HASH_DIGITS = 40, NAME_DIGITS = 10 };

static _Noreturn void failed(const char *path)
{
    perror(path);
    exit(1);
}

static struct seed seed_of_file(const char *path, const char *name, const char *broke)
{
    struct seed seed = {.name = strdup(name), .bytes = malloc(INPUT_MAX)};
    FILE *file = fopen(path, "r");
    if (file == NULL || seed.name == NULL || seed.bytes == NULL)
        failed(path);
    seed.size = fread(seed.bytes, 1, INPUT_MAX, file);
    if (ferror(file) || fclose(file) != 0)
        failed(path);
    if (strlen(name) == HASH_DIGITS && strspn(name, "0123456789abcdef") == HASH_DIGITS)
        seed.name[NAME_DIGITS] = '\0';
    seed.broke = broke != NULL ? strdup(broke) : NULL;
    return seed;
}

static bool is_there(const struct seeds *seeds, const struct seed *seed)
{
    for (size_t i = 0; i < seeds->count; i++)
        if (seeds->all[i].size == seed->size &&
            (seed->size == 0 || memcmp(seeds->all[i].bytes, seed->bytes, seed->size) == 0))
            return true;
    return false;
}

static void unpack(const struct seeds *seeds, const char *directory)
{
    for (size_t i = 0; i < seeds->count; i++) {
        char path[PATH_SIZE];
        const struct seed *seed = &seeds->all[i];
        snprintf(path, sizeof path, "%s/%s", directory, seed->name);
        FILE *file = fopen(path, "w");
        if (file == NULL || fwrite(seed->bytes, 1, seed->size, file) != seed->size ||
            fclose(file) != 0)
            failed(path);
    }
}

static void pack(const char *packed, const struct seeds *before, const char *directory)
{
    struct seeds seeds = {NULL, 0};
    struct dirent **entries;
    for (size_t i = 0; i < before->count; i++)
        if (before->all[i].broke != NULL)
            seeds_add(&seeds, before->all[i]);
    int count = scandir(directory, &entries, NULL, alphasort);
    if (count < 0)
        failed(directory);
    for (int i = 0; i < count; i++) {
        char path[PATH_SIZE];
        const char *name = entries[i]->d_name;
        if (*name == '.')
            continue;
        snprintf(path, sizeof path, "%s/%s", directory, name);
        struct seed seed = seed_of_file(path, name, NULL);
        if (!is_there(&seeds, &seed))
            seeds_add(&seeds, seed);
    }
    seeds_write(packed, &seeds);
    printf("%s: %zu inputs, %zu before\n", packed, seeds.count, before->count);
}

/* Those that broke something stand first. */
static void add_broke(const char *packed, const struct seeds *before, struct seed added)
{
    struct seeds seeds = {NULL, 0};
    for (size_t i = 0; i < before->count; i++)
        if (before->all[i].broke != NULL)
            seeds_add(&seeds, before->all[i]);
    seeds_add(&seeds, added);
    for (size_t i = 0; i < before->count; i++)
        if (before->all[i].broke == NULL)
            seeds_add(&seeds, before->all[i]);
    seeds_write(packed, &seeds);
}

int main(int argc, char **argv)
{
    const char *what = argc > 3 ? argv[1] : "";
    struct seeds seeds = {NULL, 0};
    if (argc > 3)
        seeds = seeds_read(argv[2]);
    if (argc == 4 && strcmp(what, "unpack") == 0) {
        unpack(&seeds, argv[3]);
    } else if (argc == 4 && strcmp(what, "pack") == 0) {
        pack(argv[2], &seeds, argv[3]);
    } else if (argc == 6 && strcmp(what, "broke") == 0) {
        add_broke(argv[2], &seeds, seed_of_file(argv[3], argv[4], argv[5]));
    } else {
        fputs("usage: pack unpack|pack FILE DIRECTORY, pack broke FILE INPUT NAME WORDS\n", stderr);
        return 2;
    }
    return 0;
}

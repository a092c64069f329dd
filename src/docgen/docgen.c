/* docgen DIRECTORY: writes all of them there. Runs on the build machine, so it is built and run
 * only where that is the machine that the program is for. */
#include "docgen/docgen.h"

#include <fcntl.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "config.h"
#include "tables/tables.h"

static const struct {
    const char *name;
    void (*write)(struct arena *arena, struct outbuf *out);
} documents[] = {
    {"tyresum.1", write_manual},
    {"tyresum-build.5", write_build_manual},
    {"bash/tyresum", write_bash_completion},
    {"zsh/_tyresum", write_zsh_completion},
    {"fish/tyresum.fish", write_fish_completion},
    {"tyresum-build.schema.json", write_build_schema},
    {"tyresum-rows.schema.json", write_rows_schema},
};

void put_all(struct outbuf *out, ...)
{
    va_list texts;
    va_start(texts, out);
    for (const char *text; (text = va_arg(texts, const char *)) != NULL;)
        outbuf_text(out, text);
    va_end(texts);
}

void put_roff(struct outbuf *out, const char *text)
{
    enum { LINE_FULL = 60 }; /* a manual's source has short lines; roff fills them again */
    size_t column = 0;
    for (; *text != '\0'; text++) {
        char c = *text == ' ' && column >= LINE_FULL ? '\n' : *text;
        if (column == 0 && (c == '.' || c == '\''))
            outbuf_text(out, "\\&");
        if (c == '\\')
            outbuf_text(out, "\\e");
        else
            outbuf_char(out, c);
        column = c == '\n' ? 0 : column + 1;
    }
}

void put_manual_head(struct outbuf *out, const char *name, const char *section, const char *purpose)
{
    put_all(out, ".\\\" Made by src/docgen from the program's own tables: do not edit.\n.Dd ",
            RELEASE_DATE, "\n.Dt ", NULL);
    for (const char *at = name; *at != '\0'; at++)
        outbuf_char(out, upper_case(*at));
    put_all(out, " ", section, "\n.Os\n.Sh NAME\n.Nm ", name, "\n.Nd ", purpose, "\n", NULL);
}

void put_json(struct outbuf *out, const char *text)
{
    outbuf_char(out, '"');
    for (; *text != '\0'; text++) {
        if (*text == '"' || *text == '\\')
            outbuf_char(out, '\\');
        outbuf_char(out, *text);
    }
    outbuf_char(out, '"');
}

const char *column_names(struct arena *arena, const struct command *command, const char *separator)
{
    const char *names = "";
    for (size_t us = 0; us < 2; us++)
        for (size_t i = 0; i < *command->column_count; i++) {
            const struct column *column = &command->columns[i];
            const char *name = us ? column->name_us : column->name;
            if (name != NULL)
                names = arena_format(arena, "%s%s%s", names, *names ? separator : "", name);
        }
    return names;
}

static void put_paths(struct outbuf *out, const struct key_set *set, const char *before)
{
    struct arena arena = ARENA_EMPTY;
    for (size_t i = 0; i < set->count; i++) {
        const struct key *key = &set->keys[i];
        const char *path = arena_format(&arena, "%s%s", before, key->name);
        bool options = strcmp(key->name, "options") == 0;
        put_all(out, path, "= ", NULL);
        if (key->set != NULL)
            put_paths(out, key->set,
                      arena_format(&arena, "%s%s", path,
                                   key->kind != KEY_MAPPING_LIST ? "."
                                   : options                     ? ".A."
                                                                 : ".1."));
    }
    arena_free(&arena);
}

void put_key_paths(struct outbuf *out)
{
    put_paths(out, &build_file_keys, "");
}

void put_table_names(struct outbuf *out)
{
    for (size_t i = 0; i < tables_count(); i++)
        put_all(out, table_at(i)->name, " ", NULL);
    for (size_t i = 0; i < list_count; i++)
        put_all(out, i > 0 ? " " : "", list_table[i].name, NULL);
}

bool takes_file(const struct command *command)
{
    return strstr(command->arguments, "FILE") != NULL;
}

static bool write_document(size_t index, const char *directory, struct outbuf *out)
{
    struct arena arena = ARENA_EMPTY;
    const char *path = arena_format(&arena, "%s/%s", directory, documents[index].name);
    int descriptor = open(path, O_WRONLY | O_CREAT | O_TRUNC, 0666);
    bool written = descriptor >= 0;
    if (written) {
        outbuf_open(out, descriptor);
        documents[index].write(&arena, out);
        written = outbuf_flush(out);
        written = close(descriptor) == 0 && written;
    }
    if (!written)
        perror(path);
    arena_free(&arena);
    return written;
}

int main(int argc, char **argv)
{
    static struct outbuf out;
    if (argc != 2) {
        fputs("usage: docgen DIRECTORY\n", stderr);
        return 2;
    }
    for (size_t i = 0; i < sizeof documents / sizeof documents[0]; i++)
        if (!write_document(i, argv[1], &out))
            return 1;
    return 0;
}

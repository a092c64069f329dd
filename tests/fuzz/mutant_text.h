/* Build files to be mutated: those of demo/ and tests/fuzz/builds, and the template with every line
 * filled in; as trees, and written as YAML again, block style outside and flow style within. */
#ifndef TYRESUM_TESTS_FUZZ_MUTANT_TEXT_H
#define TYRESUM_TESTS_FUZZ_MUTANT_TEXT_H

#include <dirent.h>

#include "build_property.h"
#include "cli/template.h"
#include "yaml/tree.h"

#ifndef FUZZ_TOP
#error "FUZZ_TOP is the folder of the sources"
#endif

enum { BASES_MAX = 32, MUTANT_SIZE_MAX = 64 * 1024, BASE_SIZE_MAX = 32 * 1024 };

static struct {
    char *text;
    size_t size;
} bases[BASES_MAX];
static size_t base_count, small_base_count; /* the small ones first */

static inline void base_add(const char *text, size_t size)
{
    if (base_count == BASES_MAX)
        program_failed("more build files than there is room for");
    bases[base_count].text = fuzz_copy((const uint8_t *)text, size);
    bases[base_count++].size = size;
}

static inline void bases_of_folder(const char *folder)
{
    static char text[BASE_SIZE_MAX];
    struct dirent **entries;
    int count = scandir(folder, &entries, NULL, alphasort);
    if (count < 0)
        program_failed(folder);
    for (int i = 0; i < count; i++) {
        char path[1024];
        const char *end = strrchr(entries[i]->d_name, '.');
        snprintf(path, sizeof path, "%s/%s", folder, entries[i]->d_name);
        FILE *file = end != NULL && strcmp(end, ".yaml") == 0 ? fopen(path, "r") : NULL;
        if (file != NULL) {
            base_add(text, fread(text, 1, sizeof text, file));
            fclose(file);
        }
        free(entries[i]);
    }
    free(entries);
}

/* A line that is commented out by a mark in column 1 is filled in by taking the mark away. */
static inline void base_of_template(void)
{
    static char filled[BASE_SIZE_MAX];
    size_t size = 0;
    struct run run;
    static const char *const template[] = {"check", "--template", NULL};
    program_run(template, "", 0, &run);
    for (const char *at = run.out; *at != '\0';) {
        const char *end = strchr(at, '\n') + 1;
        if (at[0] == '#' && (strncmp(at + 1, "  ", 2) == 0 || (at[1] >= 'a' && at[1] <= 'z')))
            at++;
        if (size + (size_t)(end - at) < sizeof filled) {
            memcpy(filled + size, at, (size_t)(end - at));
            size += (size_t)(end - at);
        }
        at = end;
    }
    program_forget(&run);
    base_add(filled, size);
}

static inline void bases_read(void)
{
    bases_of_folder(FUZZ_TOP "/tests/fuzz/builds");
    small_base_count = base_count;
    bases_of_folder(FUZZ_TOP "/demo");
    base_of_template();
}

/* What is written, and where the node that is looked for came to stand. */
struct written {
    char text[MUTANT_SIZE_MAX];
    size_t size, line;
    size_t flow_from;             /* collections deeper than this are written in one line */
    const struct node *wanted;    /* a mutated node ... */
    size_t wanted_line;           /* ... and its line, from 1 */
    const struct node *around;    /* a collection around it, ... */
    size_t first_line, last_line; /* ... from here to there */
    const char *lead;             /* written before its value: an anchor or a tag */
};

static inline void put(struct written *out, struct span text)
{
    if (text.length > sizeof out->text - out->size)
        text.length = sizeof out->text - out->size;
    memcpy(out->text + out->size, text.at, text.length);
    out->size += text.length;
    for (size_t i = 0; i < text.length; i++)
        out->line += text.at[i] == '\n';
}

static inline bool is_plain(const struct node *scalar)
{
    static const char special[] = ",[]{}#\"\\\n:";
    for (size_t i = 0; i < scalar->text.length; i++)
        if (memchr(special, scalar->text.at[i], sizeof special - 1) != NULL)
            return false;
    return scalar->text.length > 0 && !scalar->quoted &&
           memchr("-?&*!|>'%@` ", scalar->text.at[0], 12) == NULL;
}

static inline void put_scalar(struct written *out, const struct node *scalar)
{
    bool number = scalar->text.length > 1 && scalar->text.at[0] == '-' && !scalar->quoted;
    bool raw = scalar == out->wanted || number || is_plain(scalar);
    put(out, span_of(raw ? "" : "\""));
    for (size_t i = 0; i < scalar->text.length; i++) {
        if (!raw && (scalar->text.at[i] == '"' || scalar->text.at[i] == '\\'))
            put(out, span_of("\\"));
        put(out, (struct span){scalar->text.at + i, 1});
    }
    put(out, span_of(raw ? "" : "\""));
}

static inline void put_node(struct written *out, const struct node *node, size_t depth);

static inline void put_key(struct written *out, const struct node *node)
{
    if (node->key == NULL)
        return;
    put_scalar(out, node->key);
    put(out, span_of(":"));
}

static inline void put_flow(struct written *out, const struct node *node, size_t depth)
{
    put(out, span_of(node->kind == NODE_MAPPING ? "{" : "["));
    for (const struct node *child = node->first; child != NULL; child = child->next) {
        put(out, span_of(child == node->first ? "" : ", "));
        if (child == out->wanted || child->key == out->wanted)
            out->wanted_line = out->line;
        put_key(out, child);
        put(out, span_of(child->key != NULL ? " " : ""));
        put_node(out, child, depth + 1);
    }
    put(out, span_of(node->kind == NODE_MAPPING ? "}" : "]"));
}

static inline void put_block(struct written *out, const struct node *node, size_t depth)
{
    for (const struct node *child = node->first; child != NULL; child = child->next) {
        put(out, span_of("\n"));
        for (size_t i = 0; i < depth; i++)
            put(out, span_of("  "));
        if (child == out->wanted || child->key == out->wanted)
            out->wanted_line = out->line;
        if (child->key == NULL)
            put(out, span_of("-"));
        put_key(out, child);
        bool block =
            child->kind != NODE_SCALAR && child->first != NULL && depth + 1 < out->flow_from;
        put(out, span_of(block ? "" : " "));
        put_node(out, child, depth + 1);
    }
}

static inline void put_node(struct written *out, const struct node *node, size_t depth)
{
    if (node == out->wanted && out->lead != NULL) {
        put(out, span_of(" "));
        put(out, span_of(out->lead));
    }
    size_t line = out->line;
    if (node->kind == NODE_SCALAR)
        put_scalar(out, node);
    else if (depth < out->flow_from && node->first != NULL)
        put_block(out, node, depth);
    else
        put_flow(out, node, depth);
    if (node == out->around) {
        out->first_line = line;
        out->last_line = out->line;
    }
}

/* The whole tree; the mutated node, or the key, is out->wanted. */
static inline void write_tree(struct written *out, const struct node *root)
{
    out->size = 0;
    out->line = 1;
    put_node(out, root, 0);
    put(out, span_of("\n"));
}

#endif

/* What --set puts in counts as if it stood in the file: over random builds, values of any of its
 * keys are changed once in the text and once by --set, and the command prints the same bytes. And
 * --each gives what separate runs give. */
#include <fcntl.h>
#include <string.h>
#include <unistd.h>

#include "cli/commands.h"
#include "cli/options.h"
#include "output_run.h"
#include "property_run.h"
#include "suites.h"
#include "support.h"
#include "yaml/tree.h"

enum { FEW_BUILDS = 12, LEAVES_MAX = 1000, CHANGES_MAX = 3, SPARE_ROOM = 64 };

/* A value of the build, where it stands in the text, and what it is changed to. */
struct leaf {
    const struct node *node;
    const char *path;
    size_t offset;
    const char *value;
};

struct leaves {
    struct arena *arena;
    const char *text;
    struct leaf items[LEAVES_MAX];
    size_t count;
};

static size_t offset_of(const char *text, struct mark mark)
{
    const char *at = text;
    for (size_t line = 1; line < mark.line; line++)
        at = strchr(at, '\n') + 1;
    return (size_t)(at - text) + mark.column - 1;
}

static void collect(struct leaves *leaves, const struct node *node, const char *path)
{
    if (node->kind == NODE_SCALAR) {
        size_t offset = offset_of(leaves->text, node->mark);
        bool as_written = node->as_written && !node->quoted && node->text.length > 0 &&
                          memcmp(leaves->text + offset, node->text.at, node->text.length) == 0;
        if (as_written && leaves->count < LEAVES_MAX)
            leaves->items[leaves->count++] = (struct leaf){node, path, offset, NULL};
        return;
    }
    size_t number = 0;
    for (const struct node *child = node->first; child != NULL; child = child->next)
        if (node->kind == NODE_MAPPING)
            collect(leaves, child,
                    arena_format(leaves->arena, "%s%s\"%.*s\"", path, *path ? "." : "",
                                 (int)child->key->text.length, child->key->text.at));
        else
            collect(leaves, child, arena_format(leaves->arena, "%s.%zu", path, ++number));
}

/* Another value of the same kind: a digit of it is another one; a word stays. */
static const char *other_value(struct leaves *leaves, const struct leaf *leaf, uint64_t *state)
{
    char *value = arena_copy(leaves->arena, leaf->node->text);
    size_t digit = strcspn(value, "0123456789");
    if (strchr("+-.0123456789", *value) != NULL && value[digit] != '\0')
        value[digit] = (char)('1' + random_whole(state, 0, 8));
    return value;
}

/* Runs a command into output_path, its messages into nothing. */
static int run_into(const char *name, char **extra, size_t extra_count)
{
    char *arguments[16] = {(char *)"tyresum", (char *)name,       build_path, (char *)"--format",
                           (char *)"csv",     (char *)"--output", output_path};
    size_t count = 7;
    for (size_t i = 0; i < extra_count; i++)
        arguments[count++] = extra[i];
    const char *operands[3 * LENGTH_OF(arguments)];
    struct arena arena = ARENA_EMPTY;
    struct options options;
    unlink(output_path);
    ck_assert(options_parse((int)count, arguments, operands, &options));
    int messages = dup(STDERR_FILENO), nothing = open("/dev/null", O_WRONLY);
    dup2(nothing, STDERR_FILENO);
    int status = (int)command_find(name)->run(&arena, command_find(name), &options);
    dup2(messages, STDERR_FILENO);
    close(messages);
    close(nothing);
    arena_free(&arena);
    return status;
}

static const char *some_command(uint64_t *state)
{
    static const char *const commands[] = {"sheet", "compare", "load", "tasks", "speedometer"};
    return commands[random_whole(state, 0, LENGTH_OF(commands) - 1)];
}

static struct leaves *leaves_of(struct run *run)
{
    struct leaves *leaves = arena_allocate(&run->arena, sizeof *leaves);
    struct diagnostics *diagnostics = arena_allocate(&run->arena, sizeof *diagnostics);
    diagnostics->arena = leaves->arena = &run->arena;
    leaves->text = run->text.text;
    collect(leaves,
            tree_read(&run->arena, (struct span){run->text.text, run->text.length}, diagnostics),
            "");
    ck_assert_uint_gt(leaves->count, CHANGES_MAX);
    return leaves;
}

/* The text with the values changed: from the last to the first, so that offsets hold. */
static size_t edited(const struct run *run, struct leaf *const *changes, int count, char *out)
{
    size_t length = run->text.length;
    memcpy(out, run->text.text, length);
    for (size_t after = length; after > 0; after--)
        for (int i = 0; i < count; i++) {
            size_t at = after - 1;
            if (changes[i]->offset != at)
                continue;
            size_t old = changes[i]->node->text.length, new = strlen(changes[i]->value);
            memmove(out + at + new, out + at + old, length - at - old);
            memcpy(out + at, changes[i]->value, new);
            length += new - old;
        }
    return length;
}

static int set_is_the_edited_file(struct run *run)
{
    static char text[BUILD_TEXT_SIZE + SPARE_ROOM], by_file[OUTPUT_MAX], by_set[OUTPUT_MAX];
    uint64_t state = run->seed;
    struct leaves *leaves = leaves_of(run);
    struct leaf *changes[CHANGES_MAX];
    char *extra[2 * CHANGES_MAX];
    int count = random_whole(&state, 1, CHANGES_MAX);
    size_t first = (size_t)random_whole(&state, 0, (int)leaves->count - CHANGES_MAX);
    for (int i = 0; i < count; i++) {
        changes[i] = &leaves->items[first + (size_t)i];
        changes[i]->value = other_value(leaves, changes[i], &state);
        extra[2 * i] = (char *)"--set";
        extra[2 * i + 1] = arena_format(&run->arena, "%s=%s", changes[i]->path, changes[i]->value);
    }
    const char *command = some_command(&state);
    write_build(text, edited(run, changes, count, text));
    int status = run_into(command, NULL, 0);
    size_t length = read_output(by_file);
    write_build(run->text.text, run->text.length);
    int set_status = run_into(command, extra, 2 * (size_t)count);
    size_t set_length = read_output(by_set);
    REQUIRE(status == set_status, "seed %llu: %s --set %s: exit %d, of the file %d",
            (unsigned long long)run->seed, command, extra[1], set_status, status);
    REQUIRE(length == set_length && memcmp(by_file, by_set, length) == 0,
            "seed %llu: %s --set %s prints another thing", (unsigned long long)run->seed, command,
            extra[1]);
    return length > 0;
}

START_TEST(set_counts_as_the_file)
{
    uint64_t seed = random_start("set");
    int told = 0;
    for (int i = 0; i < properties_count(FEW_BUILDS * 10); i++, seed++) {
        struct run run;
        run_make(&run, seed, &as_drawn);
        told += set_is_the_edited_file(&run);
        run_free(&run);
    }
    ck_assert_int_gt(told, 0);
}
END_TEST

/* Every line of a table with the case before it; the heading only once. */
static size_t with_case(const char *rows, const char *name, bool heading, char *out)
{
    size_t length = 0;
    for (bool first = true; *rows != '\0'; first = false) {
        size_t line = strcspn(rows, "\n") + 1;
        if (heading || !first)
            length +=
                (size_t)sprintf(out + length, "%s,%.*s", first ? "case" : name, (int)line, rows);
        rows += line;
    }
    return length;
}

static int each_is_separate_runs(struct run *run)
{
    static char rows[OUTPUT_MAX], wanted[2 * OUTPUT_MAX], got[OUTPUT_MAX];
    uint64_t state = run->seed;
    struct leaves *leaves = leaves_of(run);
    struct leaf *leaf = &leaves->items[random_whole(&state, 0, (int)leaves->count - 1)];
    const char *command = some_command(&state);
    write_build(run->text.text, run->text.length);
    size_t length = 0, wrong = 0;
    const char *values = "";
    for (int i = 0; i < CHANGES_MAX; i++) {
        const char *value = other_value(leaves, leaf, &state);
        char *set[] = {(char *)"--set", arena_format(&run->arena, "%s=%s", leaf->path, value)};
        wrong += run_into(command, set, 2) == EXIT_INPUT_WRONG;
        read_output(rows);
        length += with_case(rows, value, length == 0, wanted + length);
        values = arena_format(&run->arena, "%s%s%s", values, *values ? "," : "", value);
    }
    char *each[] = {(char *)"--each", arena_format(&run->arena, "%s=%s", leaf->path, values)};
    int status = run_into(command, each, 2);
    size_t got_length = read_output(got);
    REQUIRE(status == (wrong == CHANGES_MAX ? EXIT_INPUT_WRONG
                       : wrong > 0          ? EXIT_LINES_UNREAD
                                            : EXIT_COMPUTED),
            "seed %llu: %s --each %s: exit %d, %zu are wrong", (unsigned long long)run->seed,
            command, each[1], status, wrong);
    REQUIRE(got_length == length && memcmp(got, wanted, length) == 0,
            "seed %llu: %s --each %s is not the separate runs", (unsigned long long)run->seed,
            command, each[1]);
    return length > 0;
}

START_TEST(each_counts_as_separate_runs)
{
    uint64_t seed = random_start("each");
    int told = 0;
    for (int i = 0; i < properties_count(FEW_BUILDS * 5); i++, seed++) {
        struct run run;
        run_make(&run, seed, &as_drawn);
        told += each_is_separate_runs(&run);
        run_free(&run);
    }
    ck_assert_int_gt(told, 0);
}
END_TEST

Suite *properties_set_suite(void)
{
    Suite *suite = suite_create("properties_set");
    TCase *set = tcase_create("set and each");
    tcase_add_checked_fixture(set, output_set_up, output_tear_down);
    tcase_add_test(set, set_counts_as_the_file);
    tcase_add_test(set, each_counts_as_separate_runs);
    tcase_set_timeout(set, 600);
    suite_add_tcase(suite, set);
    return suite;
}

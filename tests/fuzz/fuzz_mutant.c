/* libFuzzer entry: the bytes choose a valid build file and one mutation of it. The file is then
 * reported whole, or refused with a place: that of the mutation, or one that names what it
 * concerns. Some mutations must be refused, so that none is passed over in silence. */
#include "mutations.h"

static bool says(const struct fault *fault, const struct node *key)
{
    return key != NULL && key->text.length > 0 && strstr(fault->message, key->text.at) != NULL;
}

/* A fault names the mutated node by its line, by a place beside it (a bound that is below another),
 * by its key, or by the key of a mapping around it. */
static bool names_mutation(const struct mutant *mutant, const struct fault *fault)
{
    const struct node *node = mutant->place->node, *parent = mutant->place->parent;
    if (fault->mark.line == mutant->written->wanted_line ||
        (fault->mark.line >= mutant->written->first_line &&
         fault->mark.line <= mutant->written->last_line) ||
        (mutant->more && fault->mark.line > mutant->written->wanted_line) ||
        (*mutant->before != '\0' && strstr(fault->message, mutant->before) != NULL))
        return true;
    while (node != NULL) {
        if (says(fault, node->key))
            return true;
        node = parent;
        parent = node != NULL ? parent_of(mutant, node) : NULL;
    }
    return false;
}

static const char *mutant_broken(const struct mutant *mutant, struct span source)
{
    struct arena arena = ARENA_EMPTY;
    struct diagnostics *read = arena_allocate(&arena, sizeof *read);
    struct specification *specification = arena_allocate(&arena, sizeof *specification);
    const char *broken = NULL;
    if (build_read(&arena, source, read, specification)) {
        if (mutant->refused)
            broken = "this should not be accepted";
    } else if (!mutant->anywhere && mutant->place != NULL) {
        bool named = false;
        for (size_t i = 0; i < read->count && i < FAULTS_SHOWN_MAX; i++)
            named = named || names_mutation(mutant, &read->faults[i]);
        for (size_t i = 0; !named && i < read->count && i < FAULTS_SHOWN_MAX; i++)
            printf("%zu:%zu: %s\n", read->faults[i].mark.line, read->faults[i].mark.column,
                   read->faults[i].message);
        if (!named)
            broken = "no fault names what was mutated";
    }
    arena_free(&arena);
    return broken != NULL ? broken : build_broken(source.at, source.length);
}

static struct node *base_tree(struct mutant *mutant, size_t index)
{
    struct diagnostics *faults = arena_allocate(mutant->arena, sizeof *faults);
    *faults = (struct diagnostics){.arena = mutant->arena, .source_name = "base"};
    struct node *root =
        tree_read(mutant->arena, (struct span){bases[index].text, bases[index].size}, faults);
    if (root == NULL || faults->count > 0)
        fuzz_broken("a base is no build file", bases[index].text, bases[index].size);
    return root;
}

/* Every base is accepted as it is written here, so that a refusal comes from the mutation. */
static void check_base(size_t index)
{
    struct arena arena = ARENA_EMPTY;
    struct mutant mutant = {.arena = &arena};
    struct written *out = arena_allocate(&arena, sizeof *out);
    struct diagnostics *read = arena_allocate(&arena, sizeof *read);
    struct specification *specification = arena_allocate(&arena, sizeof *specification);
    out->flow_from = 1 + index % FLOW_DEPTHS;
    write_tree(out, base_tree(&mutant, index));
    if (!build_read(&arena, (struct span){out->text, out->size}, read, specification))
        fuzz_broken(read->faults[0].message, out->text, out->size);
    arena_free(&arena);
}

/* Mostly one of the small files: the others take ten times as long. */
static size_t choose_base(struct mutant *mutant)
{
    size_t choice = next_byte(mutant);
    return choice < SMALL_CHOICES ? choice % small_base_count
                                  : small_base_count + choice % (base_count - small_base_count);
}

static void make_mutant(struct mutant *mutant)
{
    struct node *root = base_tree(mutant, choose_base(mutant));
    size_t mutation = next_below(mutant, sizeof mutations / sizeof mutations[0]);
    mutant->what = mutations[mutation].name;
    mutant->written->flow_from = 1 + next_byte(mutant) % FLOW_DEPTHS;
    collect(mutant, root);
    mutations[mutation].tree(mutant);
    write_tree(mutant->written, root);
    if (mutations[mutation].text != NULL)
        mutations[mutation].text(mutant);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    struct arena arena = ARENA_EMPTY;
    if (base_count == 0) {
        bases_read();
        for (size_t i = 0; i < base_count; i++)
            check_base(i);
    }
    struct mutant *mutant = arena_allocate(&arena, sizeof *mutant);
    mutant->data = data;
    mutant->size = size;
    mutant->arena = &arena;
    mutant->written = arena_allocate(&arena, sizeof *mutant->written);
    make_mutant(mutant);
    char *text = fuzz_copy((const uint8_t *)mutant->written->text, mutant->written->size);
    const char *broken = mutant_broken(mutant, (struct span){text, mutant->written->size});
    if (broken != NULL) {
        printf("BROKEN after %s (line %zu)\n", mutant->what, mutant->written->wanted_line);
        fuzz_broken(broken, text, mutant->written->size);
    }
    free(text);
    arena_free(&arena);
    return 0;
}

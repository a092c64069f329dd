#include "cli/row_cache.h"

/* Rows stand one behind another in a pool; an index with open addressing finds them. Where either
 * is full, all is forgotten and filled anew: 0.9 MiB at the most, a page at a time as it is used.
 */
enum { SLOTS = 8192, SLOTS_USED_MAX = 6144, POOL_SIZE = 768 * 1024, TEXT_MAX = 4096 };

struct slot {
    uint32_t key, start;              /* of the line in the pool; the row follows it */
    uint16_t line_length, row_length; /* row_length 0: empty */
};

struct row_cache {
    struct slot slots[SLOTS];
    size_t slots_used, pool_used;
    char pool[POOL_SIZE];
};

struct row_cache *row_cache_new(struct arena *arena)
{
    return arena_allocate(arena, sizeof(struct row_cache));
}

/* Multiply and fold, eight bytes at a time (the mixing constant is 2^64 over the golden ratio). */
uint64_t row_cache_key(struct span line)
{
    const uint64_t factor = UINT64_C(0x9E3779B97F4A7C15);
    uint64_t key = line.length * factor;
    size_t i = 0;
    for (; i + 8 <= line.length; i += 8) {
        uint64_t word;
        memcpy(&word, line.at + i, 8);
        key = (key ^ word) * factor;
        key ^= key >> 32;
    }
    uint64_t rest = 0;
    memcpy(&rest, line.at + i, line.length - i);
    key = (key ^ rest) * factor;
    return key ^ key >> 32;
}

static bool is_line(const struct row_cache *cache, const struct slot *slot, uint64_t key,
                    struct span line)
{
    return slot->key == (uint32_t)(key >> 32) && slot->line_length == line.length &&
           memcmp(cache->pool + slot->start, line.at, line.length) == 0;
}

bool row_cache_write(const struct row_cache *cache, uint64_t key, struct span line,
                     struct outbuf *out)
{
    for (size_t i = key % SLOTS; cache->slots[i].row_length > 0; i = (i + 1) % SLOTS) {
        const struct slot *slot = &cache->slots[i];
        if (!is_line(cache, slot, key, line))
            continue;
        outbuf_put(out,
                   (struct span){cache->pool + slot->start + slot->line_length, slot->row_length});
        return true;
    }
    return false;
}

static void forget_all(struct row_cache *cache)
{
    memset(cache->slots, 0, sizeof cache->slots);
    cache->slots_used = cache->pool_used = 0;
}

void row_cache_keep(struct row_cache *cache, uint64_t key, struct span line, struct span row)
{
    size_t size = line.length + row.length;
    if (size > TEXT_MAX || row.length == 0)
        return;
    if (cache->slots_used == SLOTS_USED_MAX || POOL_SIZE - cache->pool_used < size)
        forget_all(cache);
    size_t i = key % SLOTS;
    while (cache->slots[i].row_length > 0)
        i = (i + 1) % SLOTS;
    cache->slots[i] = (struct slot){(uint32_t)(key >> 32), (uint32_t)cache->pool_used,
                                    (uint16_t)line.length, (uint16_t)row.length};
    memcpy(cache->pool + cache->pool_used, line.at, line.length);
    memcpy(cache->pool + cache->pool_used + line.length, row.at, row.length);
    cache->pool_used += size;
    cache->slots_used++;
}

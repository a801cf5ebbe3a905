/* The index, what a search by it costs, and its agreement with the reference. */
#include "bench/bench.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "paint/mixes.h"

enum { MOST = 1000 };

typedef struct {
    recede_palette *palette;
    recede_rules rules;
    recede_index *index;
    size_t count;
    recede_wash_target targets[MOST];
    recede_wash_recipe found[MOST], expected[MOST];
    double times[MOST];
    recede_cost costs[MOST];
} bench;

/* Counts what a build allocates at its most. */
typedef struct { size_t now, peak; } meter;
typedef union { size_t size; max_align_t align; } head;

static void *metered_allocate(void *context, size_t size)
{
    meter *m = context;
    head *block = malloc(sizeof *block + size);
    if (!block)
        return NULL;
    block->size = size;
    m->now += size;
    m->peak = m->peak > m->now ? m->peak : m->now;
    return block + 1;
}

static void metered_release(void *context, void *block)
{
    meter *m = context;
    if (!block)
        return;
    head *own = (head *)block - 1;
    m->now -= own->size;
    free(own);
}

static void build(bench *b)
{
    double best_s = 1e9;
    static meter m;
    const recede_allocator metered = {metered_allocate, metered_release, &m};
    for (int i = 0; i < 3; i++) {
        m = (meter){0, 0};
        double start_s = bench_now_s();
        if (recede_index_new(b->palette, &b->rules, 0, &metered, NULL, &b->index, NULL))
            exit(1);
        double took_s = bench_now_s() - start_s;
        best_s = took_s < best_s ? took_s : best_s;
        if (i < 2)
            recede_index_free(b->index);
    }
    printf("  index: %.1f ms (best of 3), %.1f MB, %.1f MB at most while it is built\n",
           1e3 * best_s, 1e-6 * (double)recede_index_bytes(b->index), 1e-6 * (double)m.peak);
}

/* All washes of the scenes' plans, but no more than a quarter; a tenth graded; and of
 * what is left two in three inside the range. */
static void gather(bench *b, size_t count)
{
    size_t done = bench_targets(BENCH_PLANS, b->palette, count / 4, b->targets);
    done += bench_targets(BENCH_GRADED, b->palette, count / 10, b->targets + done);
    done += bench_targets(BENCH_INSIDE, b->palette, (count - done) * 2 / 3, b->targets + done);
    bench_targets(BENCH_ANYWHERE, b->palette, count - done, b->targets + done);
    b->count = count;
}

static void time_each(bench *b)
{
    for (size_t i = 0; i < b->count; i++) {
        recede_open_wash left;
        int open;
        b->costs[i] = (recede_cost){0};
        double start_s = bench_now_s();
        if (recede_search_one(b->index, &b->targets[i], NULL, &b->costs[i], &b->found[i], &left,
                              &open))
            exit(1);
        b->times[i] = bench_now_s() - start_s;
    }
}

typedef enum { FLAT_REACHED, FLAT_NOT_REACHED, GRADED, GROUPS } group;

static group group_of(const bench *b, size_t i)
{
    if (b->targets[i].graded)
        return GRADED;
    return b->found[i].from.reach == RECEDE_REACHABLE ? FLAT_REACHED : FLAT_NOT_REACHED;
}

static void print_group(const bench *b, group wanted, const char *name)
{
    double times[MOST], boxes = 0, leaves = 0, films = 0;
    size_t count = 0;
    for (size_t i = 0; i < b->count; i++) {
        if (group_of(b, i) != wanted)
            continue;
        times[count++] = b->times[i];
        boxes += RECEDE_BLOCK * (double)b->costs[i].blocks;
        leaves += (double)b->costs[i].leaves;
        films += (double)b->costs[i].films;
    }
    if (!count)
        return;
    bench_print_times(name, times, count);
    printf("  %-22s a target: %.0f boxes bounded, %.0f opened, %.0f films evaluated\n", "",
           boxes / (double)count, leaves / (double)count, films / (double)count);
}

static void print_costs(const bench *b)
{
    double mixes = recede_mixes_count((int)recede_palette_count(b->palette), &b->rules);
    print_group(b, FLAT_REACHED, "in range");
    print_group(b, FLAT_NOT_REACHED, "out of range");
    print_group(b, GRADED, "graded");
    printf("  the reference evaluates all %.0f mixes, %.0f films\n", mixes,
           mixes * (double)recede_water_count());
}

static int same_recipe(const recede_recipe *one, const recede_recipe *other)
{
    for (int i = 0; i < one->mix.count; i++)
        if (one->mix.paint[i] != other->mix.paint[i] || one->mix.parts[i] != other->mix.parts[i])
            return 0;
    return one->mix.count == other->mix.count && one->mix.water == other->mix.water &&
           one->delta_e == other->delta_e && one->slip == other->slip &&
           one->reach == other->reach;
}

static void compare(bench *b)
{
    size_t differ = 0;
    double start_s = bench_now_s();
    if (recede_search_all(b->palette, &b->rules, b->targets, b->count, b->expected, NULL, NULL,
                          NULL))
        exit(1);
    double took_s = bench_now_s() - start_s;
    for (size_t i = 0; i < b->count; i++)
        differ += !same_recipe(&b->found[i].from, &b->expected[i].from) ||
                  (b->targets[i].graded && !same_recipe(&b->found[i].to, &b->expected[i].to));
    printf(" %zu targets, %zu differ; the reference took %.1f s\n",
           b->count, differ, took_s);
}

static bench *start(const char *palette, int most_parts)
{
    bench *b = calloc(1, sizeof *b);
    if (!b)
        exit(1);
    b->palette = bench_palette(palette, RECEDE_MOST_PAINTS);
    b->rules = (recede_rules){3, most_parts, 1};
    return b;
}

static void end(bench *b)
{
    recede_index_free(b->index);
    recede_palette_free(b->palette);
    free(b);
}

void bench_search(const char *palette, int most_parts)
{
    bench *b = start(palette, most_parts);
    printf("\n%s, up to 3 pigments and %d parts\n", palette, most_parts);
    build(b);
    gather(b, MOST);
    time_each(b);
    print_costs(b);
    end(b);
}

void bench_agreement(const char *palette, int most_parts, size_t targets)
{
    bench *b = start(palette, most_parts);
    if (recede_index_new(b->palette, &b->rules, 0, NULL, NULL, &b->index, NULL))
        exit(1);
    gather(b, targets);
    time_each(b);
    printf("  %s, up to 3 pigments and %d parts:", palette, most_parts);
    compare(b);
    end(b);
}

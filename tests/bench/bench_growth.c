/* How time and memory grow with pigments, pigments a mix, and planes. */
#include "bench/bench.h"

#include <stdio.h>
#include <stdlib.h>

enum { PARTS = 8, MOST_PLANES = 64, MOST_TARGETS = 1 + 2 * MOST_PLANES };

static const int planes[] = {1, 4, 16, 64};
enum { PLANES = sizeof planes / sizeof planes[0] };

/* A graded sky, then two flat washes a plane: colours that grey, pale and go blue. */
static void landscape(recede_wash_target *out)
{
    bench_dice dice = {5};
    out[0] = (recede_wash_target){{68, -6, -22}, {88, 1, 9}, {79, -3, -7}, 1};
    for (int i = 1; i < MOST_TARGETS; i++) {
        double far_off = (i / 2) / (double)MOST_PLANES, dark = i % 2 ? 0 : 14;
        out[i] = (recede_wash_target){
            .from = {45 + 38 * far_off - dark + bench_between(&dice, -4, 4),
                     -14 + 12 * far_off + bench_between(&dice, -3, 6),
                     30 - 32 * far_off + bench_between(&dice, -5, 5)}};
    }
}

static void search(const recede_index *index, const recede_wash_target *targets)
{
    for (int i = 0; i < PLANES; i++) {
        static recede_wash_recipe found[MOST_TARGETS];
        double start_s = bench_now_s();
        if (recede_search(index, targets, 1 + 2 * (size_t)planes[i], found, NULL, NULL, NULL))
            exit(1);
        printf(" %10.2f", 1e3 * (bench_now_s() - start_s));
    }
}

static void row(size_t paints, int pigments, const recede_wash_target *targets)
{
    recede_palette *palette = bench_palette("landscape-twenty-four", paints);
    recede_rules rules = {pigments, PARTS, 1};
    recede_index *index;
    double start_s = bench_now_s();
    if (recede_index_new(palette, &rules, 0, NULL, NULL, &index, NULL))
        exit(1);
    double took_s = bench_now_s() - start_s;
    int held = recede_index_pigments(index);
    printf("  %8zu %5d %10.1f %8.1f %5d", paints, pigments, 1e3 * took_s,
           1e-6 * (double)recede_index_bytes(index), held);
    search(index, targets);
    putchar('\n');
    recede_index_free(index);
    recede_palette_free(palette);
}

void bench_growth(void)
{
    static const size_t paints[] = {6, 9, 12, 18, 24};
    static recede_wash_target targets[MOST_TARGETS];
    landscape(targets);
    printf("\ngrowth, up to %d parts; searches of a graded sky and two flat washes a plane, ms\n",
           PARTS);
    puts("  pigments a mix  index, ms       MB  held"
         "    1 plane   4 planes  16 planes  64 planes");
    for (size_t i = 0; i < sizeof paints / sizeof paints[0]; i++)
        for (int pigments = 2; pigments <= RECEDE_MOST_IN_MIX; pigments++)
            row(paints[i], pigments, targets);
    puts("  (held: pigments in the mixes that the index keeps; the others go by in a stream)");
}

static size_t count_open(const recede_index *index, const recede_wash_target *targets,
                         size_t count)
{
    size_t left_open = 0;
    for (size_t i = 0; i < count; i++) {
        recede_wash_recipe found;
        recede_open_wash left;
        recede_cost cost = {0};
        int open;
        if (recede_search_one(index, &targets[i], NULL, &cost, &found, &left, &open))
            exit(1);
        left_open += (size_t)open;
    }
    return left_open;
}

void bench_widest(void)
{
    enum { COUNT = 25 };
    static recede_wash_target targets[MOST_TARGETS];
    static recede_wash_recipe found[COUNT];
    recede_palette *palette = bench_palette("landscape-twenty-four", RECEDE_MOST_PAINTS);
    recede_rules rules = {RECEDE_MOST_IN_MIX, RECEDE_MOST_PARTS, 1};
    recede_index *index;
    landscape(targets);
    if (recede_index_new(palette, &rules, 0, NULL, NULL, &index, NULL))
        exit(1);
    printf("\nthe widest search: 24 pigments, 4 a mix, 12 parts; 25 washes, of which mixes of up "
           "to %d leave %zu open\n", recede_index_pigments(index),
           count_open(index, targets, COUNT));
    double start_s = bench_now_s();
    if (recede_search(index, targets, COUNT, found, NULL, NULL, NULL))
        exit(1);
    printf("  with the index ready: %.1f s\n", bench_now_s() - start_s);
    recede_index_free(index);
    recede_palette_free(palette);
}

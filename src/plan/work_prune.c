/* Labels that others outdo though their wells hold something else. */
#include <math.h>

#include "colour/memory.h"
#include "plan/work_labels.h"
#include "plan/work_washes.h"

/* The least cost of any label with some puddles in its wells, none of which is
 * larger than it need be. */
typedef struct {
    uint64_t *keys; /* 0: an empty place */
    double *least;
    size_t count;   /* a power of two */
} floors;

static uint64_t key_of(const recede_label *label, uint16_t one, uint16_t other)
{
    uint64_t key = (uint64_t)label->under << 8 | label->chosen;
    return (key << 32 | (uint64_t)one << 16 | other) + 1;
}

static size_t place_of(const floors *f, uint64_t key)
{
    size_t place = (size_t)(key * 0x9e3779b97f4a7c15u >> 32) & (f->count - 1);
    while (f->keys[place] && f->keys[place] != key)
        place = (place + 1) & (f->count - 1);
    return place;
}

static void lower(floors *f, uint64_t key, double cost)
{
    size_t place = place_of(f, key);
    if (!f->keys[place]) {
        f->keys[place] = key;
        f->least[place] = cost;
    }
    f->least[place] = fmin(f->least[place], cost);
}

static double floor_at(const floors *f, uint64_t key)
{
    size_t place = place_of(f, key);
    return f->keys[place] ? f->least[place] : INFINITY;
}

static int holds_puddle(const recede_label *label, int well)
{
    return label->well[well] != RECEDE_CLEAN_WELL && label->well[well] != RECEDE_NO_WELL;
}

static int is_least(const recede_label *label, int well, const double *least_left_ml)
{
    size_t wash = (size_t)(label->well[well] - 1) / RECEDE_MOST_OFFERS;
    return holds_puddle(label, well) &&
           label->left_ml[well] <= least_left_ml[wash] * (1 + 1e-12);
}

static void lower_by(floors *f, const recede_label *label, const double *least_left_ml)
{
    lower(f, key_of(label, 0, 0), label->cost);
    for (int i = 0; i < RECEDE_MOST_WELLS; i++) {
        if (!is_least(label, i, least_left_ml))
            continue;
        lower(f, key_of(label, label->well[i], 0), label->cost);
        for (int j = i + 1; j < RECEDE_MOST_WELLS; j++)
            if (is_least(label, j, least_left_ml))
                lower(f, key_of(label, label->well[i], label->well[j]), label->cost);
    }
}

/* The dearest a label may be. */
static double dearest(const floors *f, const recede_label *label, int wells, double anew)
{
    double most = floor_at(f, key_of(label, 0, 0)) + wells * anew;
    for (int i = 0; i < RECEDE_MOST_WELLS; i++) {
        if (!holds_puddle(label, i))
            continue;
        most = fmin(most, floor_at(f, key_of(label, label->well[i], 0)) + (wells - 1) * anew);
        for (int j = i + 1; j < RECEDE_MOST_WELLS; j++)
            if (holds_puddle(label, j))
                most = fmin(most, floor_at(f, key_of(label, label->well[i], label->well[j])) +
                                      (wells - 2) * anew);
    }
    return most;
}

recede_code recede_labels_prune(recede_labels *labels, int wells, double anew,
                                const double *least_left_ml)
{
    floors f = {.count = 16};
    size_t kept = 0;
    while (f.count < 8 * labels->count)
        f.count *= 2;
    f.keys = recede_allocate_array(labels->allocator, f.count, sizeof *f.keys);
    f.least = recede_allocate_array(labels->allocator, f.count, sizeof *f.least);
    recede_code code = f.keys && f.least ? RECEDE_OK : RECEDE_NO_MEMORY;
    for (size_t i = 0; !code && i < f.count; i++)
        f.keys[i] = 0;
    for (size_t i = 0; !code && i < labels->count; i++)
        lower_by(&f, &labels->items[i], least_left_ml);
    for (size_t i = 0; !code && i < labels->count; i++)
        if (labels->items[i].cost <= dearest(&f, &labels->items[i], wells, anew))
            labels->items[kept++] = labels->items[i];
    if (!code)
        labels->count = kept;
    recede_release(labels->allocator, f.keys);
    recede_release(labels->allocator, f.least);
    return code;
}

/* Which mixes each wash is offered. */
#include <math.h>
#include <string.h>

#include "colour/memory.h"
#include "paint/rule.h"
#include "plan/work_washes.h"

/* Farther apart than any two colours: millionths. */
#define ANY_WIDTH 1e9

/* How many are offered from all tubes, from half of them, a quarter and so on. */
static const int tier_offers[] = {8, 6, 3, 2, 1};
enum { TIERS = sizeof tier_offers / sizeof tier_offers[0], MOST_TIER_OFFERS = 8 };

/* The sets to offer, the nearest first. */
typedef struct {
    int count, room;
    double score[MOST_TIER_OFFERS];
    size_t set[MOST_TIER_OFFERS];
} shortlist;

typedef struct {
    recede_washes *washes;
    recede_sets *sets;
    recede_tube_uses uses;
    double width;      /* beyond which nothing is offered */
    double reach;      /* as far as sets are sought, to judge the tubes by */
    uint32_t paints;
    int tier;
} tiers;

int recede_wash_ends(const recede_washes *washes, size_t wash)
{
    return wash + 1 < washes->count && washes->wash[wash + 1].partner == (int)wash ? 2 : 1;
}

/* ------------------------------------------------------------- offering -- */

static void enlist(shortlist *list, size_t set, double score)
{
    int place = list->count;
    if (isinf(score) || (place == list->room && score >= list->score[place - 1]))
        return;
    if (place == list->room)
        place--;
    else
        list->count++;
    for (; place > 0 && list->score[place - 1] > score; place--) {
        list->score[place] = list->score[place - 1];
        list->set[place] = list->set[place - 1];
    }
    list->score[place] = score;
    list->set[place] = set;
}

static int alike(const recede_mix *one, const recede_mix *other)
{
    int same = one->count == other->count && one->water == other->water;
    for (int i = 0; same && i < one->count; i++)
        same = one->paint[i] == other->paint[i] && one->parts[i] == other->parts[i];
    return same;
}

static int offered_before(const recede_work_wash *wash, int ends, const recede_mix *const *mixes)
{
    for (int i = 0; i < wash->count; i++) {
        int known = 1;
        for (int end = 0; end < ends; end++)
            known &= alike(&wash[end].offers[i].mix, mixes[end]);
        if (known)
            return i;
    }
    return -1;
}

/* Mixes for a wash, or for both ends of a side at once; `likely` becomes the first
 * of its tier. */
static void offer(recede_work_wash *wash, int ends, const recede_mix *const *mixes, int first)
{
    int place = offered_before(wash, ends, mixes), known = place >= 0;
    if (!known)
        place = wash->count;
    for (int end = 0; end < ends; end++) {
        recede_offer *own = &wash[end].offers[place];
        own->mix = *mixes[end];
        own->puddle = recede_puddle_of_mix(mixes[end]);
        wash[end].count += !known;
        if (first)
            wash[end].likely = &own->mix;
    }
}

static void offer_planned(recede_work_wash *wash, int ends)
{
    const recede_mix *mixes[2] = {&wash[0].planned->recipe.mix, NULL};
    if (ends == 2)
        mixes[1] = &wash[1].planned->recipe.mix;
    offer(wash, ends, mixes, 1);
}

/* ---------------------------------------------------------------- sides -- */

static recede_code find_end(const tiers *t, size_t wash, double reach)
{
    const recede_work_wash *w = &t->washes->wash[wash];
    if (w->ground < 0)
        return recede_sets_find(t->sets, w->target, NULL, t->paints, reach);
    recede_spectrum ground = recede_mix_reflectance(
        recede_plan_palette(t->washes->plan), t->washes->wash[w->ground].likely, NULL);
    return recede_sets_find(t->sets, w->target, &ground, t->paints, reach);
}

/* With two ends, what was found for the first is kept. */
static recede_code find_ends(const tiers *t, size_t first, int ends, double reach)
{
    recede_code code = find_end(t, first, reach);
    if (!code && ends == 2) {
        recede_sets_keep(t->sets);
        code = find_end(t, first + 1, reach);
    }
    return code;
}

static double score_of(const tiers *t, int ends, size_t set)
{
    double score = t->sets->closest[set].difference;
    return ends == 2 ? score + t->sets->kept[set].difference : score;
}

static double nearest_score(const tiers *t, int ends)
{
    double nearest = INFINITY;
    for (size_t set = 0; set < t->sets->count; set++)
        nearest = fmin(nearest, score_of(t, ends, set));
    return nearest;
}

static const recede_mix *found_for(const tiers *t, int ends, int end, size_t set)
{
    return ends == 2 && end == 0 ? &t->sets->kept[set].mix : &t->sets->closest[set].mix;
}

static void offer_nearest(const tiers *t, size_t first, int ends, double nearest)
{
    recede_work_wash *wash = &t->washes->wash[first];
    shortlist list = {.room = tier_offers[t->tier]};
    if (t->tier == 0)
        list.room -= wash->count; /* the plan's own */
    for (size_t set = 0; set < t->sets->count; set++)
        if (score_of(t, ends, set) <= nearest + ends * t->width)
            enlist(&list, set, score_of(t, ends, set));
    for (int i = 0; i < list.count; i++) {
        const recede_mix *mixes[2];
        for (int end = 0; end < ends; end++)
            mixes[end] = found_for(t, ends, end, list.set[i]);
        offer(wash, ends, mixes, t->tier > 0 && i == 0);
    }
}

static recede_code judge_tubes(tiers *t, int ends, double nearest)
{
    recede_code code = RECEDE_OK;
    recede_tube_uses_side(&t->uses, nearest + ends * t->reach);
    for (size_t set = 0; !code && set < t->sets->count; set++)
        if (score_of(t, ends, set) < nearest + ends * t->reach)
            code = recede_tube_uses_add(&t->uses, (recede_tube_use){t->sets->paints[set],
                                                                    score_of(t, ends, set)});
    return code;
}

static recede_code offer_side(tiers *t, size_t first)
{
    int ends = recede_wash_ends(t->washes, first);
    recede_code code = find_ends(t, first, ends, t->reach);
    double nearest = code ? 0 : nearest_score(t, ends);
    if (!code && isinf(nearest)) { /* no set reaches both ends */
        code = find_ends(t, first, ends, ANY_WIDTH);
        nearest = code ? 0 : nearest_score(t, ends);
    }
    if (code)
        return code;
    if (t->tier == 0)
        offer_planned(&t->washes->wash[first], ends);
    offer_nearest(t, first, ends, nearest);
    return judge_tubes(t, ends, nearest);
}

/* ---------------------------------------------------------------- tiers -- */

static recede_code offer_tier(tiers *t)
{
    recede_code code = RECEDE_OK;
    recede_tube_uses_clear(&t->uses);
    for (size_t i = 0; !code && i < t->washes->count; i++)
        if (t->washes->wash[i].partner < 0)
            code = offer_side(t, i);
    return code;
}

static recede_code offer_tiers(tiers *t, recede_tubes *tubes)
{
    int left = tubes->count;
    for (;;) {
        t->paints = recede_tubes_left(tubes, left);
        recede_code code = offer_tier(t);
        if (code || left == 1)
            return code;
        recede_tubes_leave_out(tubes, &t->uses, &left, left / 2);
        t->reach *= 2;
        if (t->tier + 1 < TIERS)
            t->tier++;
    }
}

/* ----------------------------------------------------------- differences -- */

static void weigh_over(const recede_palette *palette, const recede_spectrum *ground,
                       recede_work_wash *wash, double *difference)
{
    for (int i = 0; i < wash->count; i++) {
        recede_spectrum seen = recede_mix_reflectance(palette, &wash->offers[i].mix, ground);
        recede_lab lab = recede_lab_of_xyz(recede_xyz_of_reflectance(&seen), recede_white());
        difference[i] = recede_millionths(recede_delta_e(lab, wash->target));
    }
}

static void weigh(recede_washes *washes, recede_work_wash *wash)
{
    const recede_palette *palette = recede_plan_palette(washes->plan);
    if (wash->ground < 0) {
        weigh_over(palette, NULL, wash, wash->difference[0]);
        return;
    }
    const recede_work_wash *lit = &washes->wash[wash->ground];
    for (int i = 0; i < lit->count; i++) {
        recede_spectrum ground = recede_mix_reflectance(palette, &lit->offers[i].mix, NULL);
        weigh_over(palette, &ground, wash, wash->difference[i]);
    }
}

recede_code recede_washes_offer(recede_washes *washes, recede_sets *sets, double width,
                                recede_tubes *tubes)
{
    tiers *t = recede_allocate_array(sets->allocator, 1, sizeof *t);
    if (!t)
        return RECEDE_NO_MEMORY;
    *t = (tiers){.washes = washes, .sets = sets, .width = width, .reach = width};
    *tubes = recede_tubes_of(sets->palette);
    recede_tube_uses_start(&t->uses, sets->allocator);
    recede_code code = offer_tiers(t, tubes);
    for (size_t i = 0; !code && i < washes->count; i++)
        weigh(washes, &washes->wash[i]);
    recede_tube_uses_end(&t->uses);
    recede_release(sets->allocator, t);
    return code;
}

/* ----------------------------------------------------------- fewer tubes -- */

/* Which offers stay, as places among those there were; returns how many. */
static int list_within(const recede_work_wash *wash, uint32_t paints, int *stay)
{
    int count = 0;
    for (int i = 0; i < wash->count; i++)
        if (!(wash->offers[i].puddle.paints & ~paints))
            stay[count++] = i;
    return count;
}

static void keep_within(const recede_washes *from, size_t at, uint32_t paints,
                        recede_work_wash *out)
{
    const recede_work_wash *wash = &from->wash[at];
    int own[RECEDE_MOST_OFFERS], under[RECEDE_MOST_OFFERS] = {0}, grounds = 1;
    out->count = list_within(wash, paints, own);
    if (wash->ground >= 0)
        grounds = list_within(&from->wash[wash->ground], paints, under);
    for (int i = 0; i < out->count; i++) {
        out->offers[i] = wash->offers[own[i]];
        for (int g = 0; g < grounds; g++)
            out->difference[g][i] = wash->difference[under[g]][own[i]];
    }
}

recede_code recede_washes_within(const recede_washes *washes, uint32_t paints,
                                 const recede_allocator *allocator, recede_washes *out)
{
    *out = *washes;
    out->wash = recede_allocate_array(allocator, washes->count, sizeof *out->wash);
    if (!out->wash)
        return RECEDE_NO_MEMORY;
    memcpy(out->wash, washes->wash, washes->count * sizeof *out->wash);
    for (size_t i = 0; i < washes->count; i++)
        keep_within(washes, i, paints, &out->wash[i]);
    return RECEDE_OK;
}

#include "plan/work_washes.h"

#include <math.h>
#include <string.h>

#include "colour/memory.h"

/* No brush is filled with less: a drop. */
static const double LEAST_ML = 0.05;

static const double ML_PER_M2_MM = 1e3;

/* ---------------------------------------------------------------- order -- */

static const recede_wash *end_of(const recede_side *side, int base)
{
    return base ? &side->base : &side->crest;
}

static recede_work_wash *add(recede_washes *washes, int at, const recede_side *side, int shadow,
                             int base, double need_ml)
{
    recede_work_wash *wash = &washes->wash[washes->count++];
    memset(wash, 0, sizeof *wash);
    wash->at = at;
    wash->shadow = shadow;
    wash->base = base;
    wash->side = side;
    wash->planned = end_of(side, base);
    wash->target = wash->planned->target.lab;
    wash->need_ml = fmax(need_ml, LEAST_ML);
    wash->ground = wash->partner = -1;
    return wash;
}

/* One wash, or two that share the room, the paler end first. */
static void add_side(recede_washes *washes, int at, const recede_side *side, int shadow,
                     double need_ml)
{
    if (!side->graded) {
        add(washes, at, side, shadow, 0, need_ml);
        return;
    }
    int base = side->base.target.value > side->crest.target.value;
    int first = (int)washes->count;
    add(washes, at, side, shadow, base, 0.5 * need_ml);
    recede_work_wash *second = add(washes, at, side, shadow, !base, 0.5 * need_ml);
    second->partner = first;
}

/* The wash of the lit side that an end of its shadow side lies on. */
static int ground_of(const recede_washes *washes, const recede_work_wash *shadow)
{
    int ground = -1;
    for (int i = 0; i < (int)washes->count; i++) {
        const recede_work_wash *lit = &washes->wash[i];
        if (lit->at == shadow->at && !lit->shadow && (ground < 0 || lit->base == shadow->base))
            ground = i;
    }
    return ground;
}

double recede_work_film_mm(recede_medium medium)
{
    return medium == RECEDE_WATERCOLOUR ? RECEDE_WET_FILM_MM : RECEDE_COAT_MM;
}

/* A shadow laid over the lit side leaves it the whole plane to cover. Opaque paint
 * goes dark to light (common practice, no source). */
static void add_plane(recede_washes *washes, int at, const recede_planned *planned,
                      double plane_ml)
{
    if (recede_palette_medium(recede_plan_palette(washes->plan)) != RECEDE_WATERCOLOUR) {
        add_side(washes, at, &planned->shadow, 1, 0.5 * plane_ml);
        add_side(washes, at, &planned->lit, 0, 0.5 * plane_ml);
        return;
    }
    int over = planned->shadow.crest.ground == RECEDE_ON_LIT;
    size_t first;
    add_side(washes, at, &planned->lit, 0, over ? plane_ml : 0.5 * plane_ml);
    first = washes->count;
    add_side(washes, at, &planned->shadow, 1, 0.5 * plane_ml);
    for (size_t i = first; over && i < washes->count; i++)
        washes->wash[i].ground = ground_of(washes, &washes->wash[i]);
}

static void add_all(recede_washes *washes, const double *shares)
{
    const recede_plan *plan = washes->plan;
    const recede_scene *scene = recede_plan_scene(plan);
    size_t planes = recede_plan_count(plan);
    double sheet_ml = scene->paper_width_m * scene->paper_height_m *
                      recede_work_film_mm(scene->medium) * ML_PER_M2_MM;
    add_side(washes, -1, recede_plan_sky(plan), 0, shares[planes] * sheet_ml);
    for (size_t i = 0; i < planes; i++)
        add_plane(washes, (int)i, recede_plan_at(plan, i), shares[i] * sheet_ml);
}

/* A plan does not keep its halfway targets: they are found again, on a copy. */
static recede_code find_halves(recede_washes *washes, const recede_allocator *allocator)
{
    struct recede_plan *copy = recede_allocate_array(allocator, 1, sizeof *copy);
    recede_wash_target *targets =
        recede_allocate_array(allocator, RECEDE_MOST_WASHES, sizeof *targets);
    if (copy && targets) {
        *copy = *washes->plan;
        recede_plan_targets(copy, targets);
        for (size_t i = 0; i < washes->count; i++) {
            recede_work_wash *wash = &washes->wash[i];
            wash->half = targets[wash->at < 0 ? 0 : 1 + 2 * wash->at + wash->shadow].half;
        }
    }
    recede_code code = copy && targets ? RECEDE_OK : RECEDE_NO_MEMORY;
    recede_release(allocator, copy);
    recede_release(allocator, targets);
    return code;
}

recede_code recede_washes_start(recede_washes *washes, const recede_plan *plan,
                                const double *shares, const recede_allocator *allocator)
{
    size_t most = 2 + 4 * recede_plan_count(plan);
    washes->plan = plan;
    washes->count = 0;
    washes->wash = recede_allocate_array(allocator, most, sizeof *washes->wash);
    if (!washes->wash)
        return RECEDE_NO_MEMORY;
    add_all(washes, shares);
    recede_code code = find_halves(washes, allocator);
    if (code)
        recede_washes_end(washes, allocator);
    return code;
}

void recede_washes_end(recede_washes *washes, const recede_allocator *allocator)
{
    recede_release(allocator, washes->wash);
    washes->wash = NULL;
}

recede_spectrum recede_wash_seen(const recede_washes *washes, size_t wash, int ground_offer,
                                 int offer)
{
    const recede_work_wash *own = &washes->wash[wash];
    const recede_palette *palette = recede_plan_palette(washes->plan);
    if (own->ground < 0)
        return recede_mix_reflectance(palette, &own->offers[offer].mix, NULL);
    const recede_work_wash *lit = &washes->wash[own->ground];
    recede_spectrum ground =
        recede_mix_reflectance(palette, &lit->offers[ground_offer].mix, NULL);
    return recede_mix_reflectance(palette, &own->offers[offer].mix, &ground);
}

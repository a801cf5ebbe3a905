#include <string.h>

#include "colour/error.h"
#include "colour/memory.h"
#include "recede.h"

/* Our own choice of five days to compare: visibility, the sun's height and its
 * side. */
typedef struct {
    const char *name;
    double visibility_km;
    recede_sky_kind kind;
    double sun_height_deg, sun_side_deg;
} usual_light;

static const usual_light usual[RECEDE_USUAL_LIGHTS] = {
    {"morning haze", 5.0, RECEDE_SKY_CLEAR, 15.0, 80.0},
    {"clear noon", 40.0, RECEDE_SKY_CLEAR, 55.0, 110.0},
    {"overcast", 12.0, RECEDE_SKY_OVERCAST, 40.0, 90.0},
    {"evening, into the sun", 20.0, RECEDE_SKY_CLEAR, 8.0, 15.0},
    {"evening, the sun behind", 20.0, RECEDE_SKY_CLEAR, 8.0, 165.0},
};

void recede_usual_lights(const recede_scene *scene, recede_sky_light lights[RECEDE_USUAL_LIGHTS])
{
    for (size_t i = 0; i < RECEDE_USUAL_LIGHTS; i++) {
        recede_sky_light *light = &lights[i];
        memset(light, 0, sizeof *light);
        recede_copy_text(light->name, sizeof light->name, usual[i].name);
        light->air = scene->air;
        light->air.visibility_km = usual[i].visibility_km;
        light->sky.kind = usual[i].kind;
        light->sky.sun_height_deg = usual[i].sun_height_deg;
        light->sky.sun_side_deg = usual[i].sun_side_deg;
    }
}

/* ---- one recipe against another */

static int place_of(const recede_mix *mix, int paint)
{
    for (int i = 0; i < mix->count; i++)
        if (mix->paint[i] == paint)
            return i;
    return -1;
}

/* The paints of one mix that the other does not have. */
static int only_in(const recede_mix *one, const recede_mix *other, int out[RECEDE_MOST_IN_MIX])
{
    int count = 0;
    for (int i = 0; i < one->count; i++)
        if (place_of(other, one->paint[i]) < 0)
            out[count++] = one->paint[i];
    return count;
}

static double part_of(const recede_mix *mix, int place)
{
    int all = 0;
    for (int i = 0; i < mix->count; i++)
        all += mix->parts[i];
    return (double)mix->parts[place] / all;
}

static void find_more(const recede_mix *from, const recede_mix *to, recede_change *change)
{
    change->more = -1;
    for (int i = 0; i < to->count; i++) {
        int before = place_of(from, to->paint[i]);
        double by = before < 0 ? 0.0 : part_of(to, i) - part_of(from, before);
        if (by > change->more_by) {
            change->more_by = by;
            change->more = to->paint[i];
        }
    }
}

static int are_same(const recede_mix *one, const recede_mix *other)
{
    if (one->count != other->count || (one->count && one->water != other->water))
        return 0;
    for (int i = 0; i < one->count; i++)
        if (one->paint[i] != other->paint[i] || one->parts[i] != other->parts[i])
            return 0;
    return 1;
}

recede_change recede_change_of_wash(const recede_wash *from, const recede_wash *to)
{
    const recede_mix *before = &from->recipe.mix, *after = &to->recipe.mix;
    recede_change change;
    memset(&change, 0, sizeof change);
    change.other_ground = from->ground != to->ground;
    change.same = !change.other_ground && are_same(before, after);
    change.coming_count = only_in(after, before, change.coming);
    change.going_count = only_in(before, after, change.going);
    find_more(before, after, &change);
    if (before->count && after->count && before->water > 0.0 && after->water > 0.0)
        change.water_ratio = after->water / before->water;
    change.value_step = to->recipe.colour.value - from->recipe.colour.value;
    change.delta_e = recede_delta_e(from->recipe.colour.lab, to->recipe.colour.lab);
    return change;
}

static const recede_wash *base_of(const recede_side *side)
{
    return side->graded ? &side->base : &side->crest;
}

recede_side_change recede_change_of_side(const recede_side *from, const recede_side *to)
{
    recede_side_change change;
    change.graded = from->graded || to->graded;
    change.crest = recede_change_of_wash(&from->crest, &to->crest);
    change.base = recede_change_of_wash(base_of(from), base_of(to));
    return change;
}

/* ---- the plans */

/* Progress of one plan among several. */
typedef struct {
    const recede_progress *whole;
    size_t done, count;
} part_of_progress;

static int report(void *context, double share_done)
{
    const part_of_progress *part = context;
    double share = ((double)part->done + share_done) / (double)part->count;
    return part->whole->report(part->whole->context, share);
}

static recede_code plan_all(recede_skies *skies, recede_scene *scene,
                            const recede_progress *progress, size_t *at, recede_error *error)
{
    part_of_progress part = {progress, 0, skies->count + 1};
    const recede_progress one = {report, &part};
    recede_code code = RECEDE_OK;
    for (; !code && part.done < part.count; part.done++) {
        *at = part.done;
        if (part.done > 0) {
            scene->air = skies->light[part.done - 1].air;
            scene->sky = skies->light[part.done - 1].sky;
        }
        code = recede_plan_new(scene, &skies->allocator, progress ? &one : NULL,
                               &skies->plan[part.done], error);
    }
    return code;
}

static recede_code check_count(size_t count, recede_error *error)
{
    if (count >= 1 && count <= RECEDE_MOST_LIGHTS)
        return RECEDE_OK;
    return recede_fail_count(error, count ? RECEDE_TOO_MANY : RECEDE_TOO_FEW, "lights", count, 1,
                             RECEDE_MOST_LIGHTS);
}

recede_code recede_skies_new(const recede_scene *scene, const recede_sky_light *lights,
                             size_t count, const recede_allocator *allocator,
                             const recede_progress *progress, recede_skies **out, size_t *at,
                             recede_error *error)
{
    size_t nowhere = 0;
    allocator = recede_allocator_or_default(allocator);
    *out = NULL;
    recede_code code = check_count(count, error);
    if (code)
        return code;
    recede_skies *skies = recede_allocate_array(allocator, 1, sizeof *skies);
    recede_scene *changing = recede_allocate_array(allocator, 1, sizeof *changing);
    if (skies && changing) {
        memset(skies, 0, sizeof *skies);
        skies->allocator = *allocator;
        skies->count = count;
        memcpy(skies->light, lights, count * sizeof lights[0]);
        *changing = *scene;
        code = plan_all(skies, changing, progress, at ? at : &nowhere, error);
    } else {
        recede_release(allocator, skies);
        skies = NULL;
        code = recede_fail(error, RECEDE_NO_MEMORY, "");
    }
    recede_release(allocator, changing);
    if (code)
        recede_skies_free(skies);
    else
        *out = skies;
    return code;
}

void recede_skies_free(recede_skies *skies)
{
    if (!skies)
        return;
    recede_allocator allocator = skies->allocator;
    for (size_t i = 0; i <= RECEDE_MOST_LIGHTS; i++)
        recede_plan_free(skies->plan[i]);
    recede_release(&allocator, skies);
}

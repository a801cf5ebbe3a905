/* A ladder is the plan of a scene that holds the colour and the white at every
 * rung, looked at through one or two airs. */
#include <math.h>
#include <string.h>

#include "colour/error.h"
#include "colour/memory.h"
#include "plan/plan.h"

/* The same scene in one air, before it is scaled to the paper. */
typedef struct {
    recede_tone tone; /* as this air alone would have it */
    recede_xyz horizon;
    recede_sight sight[RECEDE_MOST_RUNGS][RECEDE_LADDER_ROWS];
} outlook;

/* Two planes a rung; "rung ..." and "white ..." keep that order when planes at
 * one distance are sorted by name. */
static recede_plane *rung_plane(recede_scene *scene, size_t rung, recede_ladder_row row)
{
    return &scene->planes[2 * rung + (row == RECEDE_ROW_WHITE)];
}

static void name_plane(char *name, const char *kind, size_t number)
{
    size_t length = strlen(kind);
    memcpy(name, kind, length);
    if (number >= 10)
        name[length++] = (char)('0' + number / 10);
    name[length++] = (char)('0' + number % 10);
    name[length] = '\0';
}

static void set_planes(recede_scene *scene, const recede_ladder_wish *wish)
{
    scene->plane_count = 2 * wish->rung_count;
    memset(scene->planes, 0, scene->plane_count * sizeof scene->planes[0]);
    for (size_t i = 0; i < scene->plane_count; i++) {
        recede_plane *plane = &scene->planes[i];
        name_plane(plane->name, i % 2 ? "white " : "rung ", i / 2 + 1);
        plane->own = i % 2 ? wish->white : wish->own;
        plane->distance_m = wish->distance_m[i / 2];
        plane->base_m = plane->crest_m = NAN; /* open: level with the eye */
    }
}

static void sort_distances(recede_ladder_wish *wish)
{
    for (size_t i = 1; i < wish->rung_count; i++) {
        double moving = wish->distance_m[i];
        size_t place = i;
        for (; place > 0 && moving < wish->distance_m[place - 1]; place--)
            wish->distance_m[place] = wish->distance_m[place - 1];
        wish->distance_m[place] = moving;
    }
}

static recede_code check_count(size_t count, size_t least, size_t most, const char *path,
                               recede_error *error)
{
    if (count >= least && count <= most)
        return RECEDE_OK;
    return recede_fail_count(error, count < least ? RECEDE_TOO_FEW : RECEDE_TOO_MANY, path, count,
                             least, most);
}

static recede_code check_wish(recede_ladder_wish *wish, recede_error *error)
{
    recede_code code = check_count(wish->rung_count, 2, RECEDE_MOST_RUNGS, "rungs", error);
    if (!code)
        code = check_count(wish->air_count, 1, RECEDE_MOST_LADDER_AIRS, "airs", error);
    if (code)
        return code;
    sort_distances(wish);
    for (size_t i = 1; i < wish->rung_count; i++)
        if (wish->distance_m[i] == wish->distance_m[i - 1])
            return recede_fail(error, RECEDE_DUPLICATE, "rungs");
    return RECEDE_OK;
}

static recede_code look_through_air(recede_ladder *ladder, size_t index, outlook *seen,
                                    recede_error *error)
{
    recede_wash_target unused[RECEDE_MOST_WASHES];
    struct recede_plan *plan = ladder->plan;
    recede_ladder_air *air = &ladder->air[index];
    air->visibility_km = plan->scene.air.visibility_km = ladder->wish.visibility_km[index];
    recede_code code = recede_plan_look(plan, unused, error);
    if (code)
        return code;
    recede_view_point from = {&plan->air, &plan->light, &plan->adaptation};
    const recede_spectrum *const light[] = {&plan->light.lit, &plan->light.shadow,
                                            &plan->light.lit};
    seen->tone = plan->tone;
    seen->horizon = recede_sights_of_sky(&from).base.adapted;
    for (size_t i = 0; i < ladder->wish.rung_count; i++) {
        recede_rung *rung = &air->rung[i];
        rung->distance_m = ladder->wish.distance_m[i];
        for (int row = 0; row < RECEDE_LADDER_ROWS; row++) {
            const recede_plane *plane = rung_plane(&plan->scene, i, (recede_ladder_row)row);
            recede_view view = recede_view_of_plane(&from, plane, light[row], plane->crest_m);
            seen->sight[i][row] = recede_sight_of_view(&from, &view);
            rung->own[row] = view.own;
            for (int band = 0; band < RECEDE_BANDS; band++)
                rung->air[row].at[band] = fmax(0.0, view.seen.at[band] - view.own.at[band]);
        }
    }
    return RECEDE_OK;
}

/* One tone that holds what every air shows: the smaller scale, and the darks
 * fitted from the darkest to the lightest of all. With one air, its own. */
static recede_tone shared_tone(const recede_ladder *ladder, const outlook *seen)
{
    const struct recede_plan *plan = ladder->plan;
    double scale = INFINITY, lightest_y = 0.0, darkest_y = INFINITY;
    if (ladder->wish.air_count == 1)
        return seen[0].tone;
    for (size_t i = 0; i < ladder->wish.air_count; i++) {
        const recede_tone *tone = &seen[i].tone;
        scale = fmin(scale, tone->scale);
        lightest_y = fmax(lightest_y, tone->lightest_y / tone->scale);
        darkest_y = fmin(darkest_y, tone->darkest_y / tone->scale);
    }
    double sky_y = recede_y_of_value(plan->scene.sky_value);
    return recede_tone_for(sky_y / scale, sky_y, plan->palest_paint_y, lightest_y, darkest_y,
                           plan->darkest_paint_y, plan->scene.darks_fitted);
}

static void set_washes(recede_ladder *ladder, const outlook *seen, const recede_tone *tone,
                       recede_wash_target *targets)
{
    for (size_t a = 0; a < ladder->wish.air_count; a++) {
        recede_ladder_air *air = &ladder->air[a];
        air->horizon = recede_colour_of_xyz(recede_toned_as_painted(tone, seen[a].horizon));
        for (size_t i = 0; i < ladder->wish.rung_count; i++) {
            for (int row = 0; row < RECEDE_LADDER_ROWS; row++) {
                recede_wash *wash = &air->rung[i].row[row];
                recede_wash_aim(tone, &seen[a].sight[i][row], wash);
                *targets++ = (recede_wash_target){.from = wash->target.lab};
            }
        }
    }
}

enum { MOST_WASHES = RECEDE_MOST_LADDER_AIRS * RECEDE_MOST_RUNGS * RECEDE_LADDER_ROWS };

static recede_code find_recipes(recede_ladder *ladder, const recede_wash_target *targets,
                                const recede_progress *progress, recede_error *error)
{
    struct recede_plan *plan = ladder->plan;
    recede_wash_recipe found[MOST_WASHES];
    const recede_wash_recipe *next = found;
    size_t count = ladder->wish.air_count * ladder->wish.rung_count * RECEDE_LADDER_ROWS;
    recede_code code = recede_search_all(plan->palette, &plan->scene.rules, targets, count, found,
                                         &plan->allocator, progress, error);
    for (size_t a = 0; !code && a < ladder->wish.air_count; a++)
        for (size_t i = 0; i < ladder->wish.rung_count; i++)
            for (int row = 0; row < RECEDE_LADDER_ROWS; row++)
                ladder->air[a].rung[i].row[row].recipe = (next++)->from;
    return code;
}

static recede_code fill(recede_ladder *ladder, const recede_progress *progress,
                        recede_error *error)
{
    outlook seen[RECEDE_MOST_LADDER_AIRS] = {0};
    recede_wash_target targets[MOST_WASHES];
    struct recede_plan *plan = ladder->plan;
    recede_code code = RECEDE_OK;
    ladder->scene = &plan->scene;
    ladder->palette = plan->palette;
    for (size_t i = ladder->wish.air_count; !code && i-- > 0;) /* ends with the first air's scene */
        code = look_through_air(ladder, i, &seen[i], error);
    if (code)
        return code;
    recede_tone tone = shared_tone(ladder, seen);
    set_washes(ladder, seen, &tone, targets);
    return find_recipes(ladder, targets, progress, error);
}

static recede_code start(recede_ladder *ladder, const recede_scene *scene,
                         const recede_allocator *allocator, recede_error *error)
{
    recede_code code = check_wish(&ladder->wish, error);
    if (code)
        return code;
    recede_scene *with_rungs = recede_allocate_array(allocator, 1, sizeof *with_rungs);
    if (!with_rungs)
        return recede_fail(error, RECEDE_NO_MEMORY, "");
    *with_rungs = *scene;
    with_rungs->air.visibility_km = ladder->wish.visibility_km[0];
    set_planes(with_rungs, &ladder->wish);
    code = recede_plan_start(with_rungs, allocator, &ladder->plan, error);
    if (!code) /* a mix has its reflectance now */
        ladder->wish.own = rung_plane(&ladder->plan->scene, 0, RECEDE_ROW_LIT)->own;
    recede_release(allocator, with_rungs);
    return code;
}

recede_code recede_ladder_new(const recede_scene *scene, const recede_ladder_wish *wish,
                              const recede_allocator *allocator, const recede_progress *progress,
                              recede_ladder **out, recede_error *error)
{
    allocator = recede_allocator_or_default(allocator);
    *out = NULL;
    recede_ladder *ladder = recede_allocate_array(allocator, 1, sizeof *ladder);
    if (!ladder)
        return recede_fail(error, RECEDE_NO_MEMORY, "");
    memset(ladder, 0, sizeof *ladder);
    ladder->wish = *wish;
    ladder->allocator = *allocator;
    recede_code code = start(ladder, scene, allocator, error);
    if (!code)
        code = fill(ladder, progress, error);
    if (code)
        recede_ladder_free(ladder);
    else
        *out = ladder;
    return code;
}

void recede_ladder_free(recede_ladder *ladder)
{
    if (!ladder)
        return;
    recede_allocator allocator = ladder->allocator;
    recede_plan_free(ladder->plan);
    recede_release(&allocator, ladder);
}

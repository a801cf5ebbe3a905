/* How near opaque mixes come, with ever more paints let down beforehand: the tables of
 * docs/paint.md. 1500 washes in oil; scenes are invented. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "bench/bench.h"

enum { PLAIN = 10, DISTANCES = 6, FOLIAGES = 4, SUNS = 6, AIRS = 5, ROWS = DISTANCES + 1 };

static const double distance_m[DISTANCES] = {100, 1000, 4000, 8000, 14000, 20000};
static const char *const foliage[FOLIAGES] = {"summer oak", "dark conifer", "meadow grass",
                                              "heather"};
static const double visibility_km[AIRS] = {5, 10, 20, 40, 100};
static const double sun[SUNS - 1][2] = {{40, 100}, {10, 40}, {60, 150}, {12, 160}, {3, 90}};

static const char *const box[] = {
    "titanium white", "hansa yellow", "diarylide yellow", "yellow ochre", "pyrrole red",
    "quinacridone magenta", "burnt sienna", "burnt umber", "ultramarine blue",
    "phthalo blue, green shade",
    /* in the order in which they help most */
    "pale ultramarine blue", "pale burnt sienna", "pale phthalo blue, green shade",
    "pale quinacridone magenta", "pale yellow ochre", "pale diarylide yellow",
    "pale pyrrole red", "pale hansa yellow"};

/* Of all washes, and by distance, the sky last. */
typedef struct {
    double sum[ROWS], worst[ROWS];
    int count[ROWS], over_2, over_3;
} tally;

static void take_planes(recede_scene *scene)
{
    scene->plane_count = 0;
    for (int f = 0; f < FOLIAGES; f++)
        for (int d = 0; d < DISTANCES; d++) {
            recede_plane *plane = &scene->planes[scene->plane_count++];
            const recede_own_entry *own = recede_foliage_named(foliage[f]);
            memset(plane, 0, sizeof *plane);
            snprintf(plane->name, sizeof plane->name, "%s %d", foliage[f], d);
            plane->distance_m = distance_m[d];
            plane->base_m = plane->crest_m = NAN;
            plane->own.kind = RECEDE_OWN_REFLECTANCE;
            plane->own.reflectance = own->reflectance;
        }
}

static void count_washes(const recede_plan *plan, tally *t)
{
    static recede_wash_place places[RECEDE_MOST_WASH_PLACES];
    size_t count = recede_plan_washes(plan, places);
    for (size_t i = 0; i < count; i++) {
        double off = places[i].wash->recipe.delta_e;
        int row = DISTANCES;
        if (places[i].plane >= 0)
            for (row = 0; recede_plan_scene(plan)->planes[places[i].plane].distance_m != distance_m[row];)
                row++;
        t->sum[row] += off;
        t->worst[row] = fmax(t->worst[row], off);
        t->count[row]++;
        t->over_2 += off > 2;
        t->over_3 += off > 3;
    }
}

static void plan_all(recede_scene *scene, const recede_index *index, tally *t)
{
    for (int air = 0; air < AIRS; air++)
        for (int light = 0; light < SUNS; light++) {
            recede_plan *plan;
            scene->air.visibility_km = visibility_km[air];
            scene->sky.kind = light < SUNS - 1 ? RECEDE_SKY_CLEAR : RECEDE_SKY_OVERCAST;
            if (light < SUNS - 1) {
                scene->sky.sun_height_deg = sun[light][0];
                scene->sky.sun_side_deg = sun[light][1];
            }
            take_planes(scene);
            if (recede_plan_with_index(scene, index, NULL, NULL, &plan, NULL))
                exit(1);
            count_washes(plan, t);
            recede_plan_free(plan);
        }
}

static void print_tally(int let_down, int parts, double index_s, const tally *t)
{
    double sum = 0;
    int count = 0;
    for (int row = 0; row < ROWS; row++) {
        sum += t->sum[row];
        count += t->count[row];
    }
    printf("  %d let down, %2d parts (index %.2f s): mean %.2f, over 2 %.0f %%, over 3 %.1f %%\n",
           let_down, parts, index_s, sum / count, 100.0 * t->over_2 / count,
           100.0 * t->over_3 / count);
    for (int row = 0; row < ROWS; row++) {
        if (row < DISTANCES)
            printf("    %6.0f m", distance_m[row]);
        else
            printf("    the sky ");
        printf(" mean %.1f, worst %.1f\n", t->sum[row] / t->count[row], t->worst[row]);
    }
}

static void measure(int let_down, int parts)
{
    recede_scene *scene = malloc(sizeof *scene);
    recede_palette *palette;
    recede_index *index;
    tally t = {{0}, {0}, {0}, 0, 0};
    if (!scene)
        exit(1);
    recede_scene_default(scene);
    scene->medium = RECEDE_OIL;
    scene->palette[0] = '\0';
    scene->rules = (recede_rules){3, parts, 1.0};
    scene->paint_count = (size_t)(PLAIN + let_down);
    for (size_t i = 0; i < scene->paint_count; i++)
        if (recede_paint_named(box[i], &scene->paints[i], NULL))
            exit(1);
    double start = bench_now_s();
    if (recede_palette_new(scene->paints, scene->paint_count, scene->medium, &scene->paper, NULL,
                           &palette, NULL) ||
        recede_index_new(palette, &scene->rules, 0, NULL, NULL, &index, NULL))
        exit(1);
    double index_s = bench_now_s() - start;
    plan_all(scene, index, &t);
    print_tally(let_down, parts, index_s, &t);
    recede_index_free(index);
    recede_palette_free(palette);
    free(scene);
}

void bench_let_down(void)
{
    printf("opaque mixes with paints let down beforehand; CIEDE2000 of 1500 washes in oil\n");
    measure(0, 8);
    for (int let_down = 0; let_down <= 6; let_down++)
        measure(let_down, 12);
    measure(8, 12);
    measure(6, 8);
}

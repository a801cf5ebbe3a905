/* Targets: the washes of every scene in scenes/, and colours by chance. */
#include "bench/bench.h"

#include <dirent.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "text/scene_read.h"

#define FOLDER "scenes"

typedef struct { recede_wash_target *out; size_t count, room; } list;

static void add(list *l, recede_wash_target target)
{
    if (l->count < l->room)
        l->out[l->count++] = target;
}

static void add_side(list *l, const recede_side *side)
{
    recede_lab from = side->crest.target.lab, to = side->base.target.lab;
    recede_lab half = {(from.l + to.l) / 2, (from.a + to.a) / 2, (from.b + to.b) / 2};
    add(l, side->graded ? (recede_wash_target){from, to, half, 1}
                        : (recede_wash_target){.from = from});
}

static void add_plan(list *l, const recede_plan *plan)
{
    add_side(l, recede_plan_sky(plan));
    for (size_t i = 0; i < recede_plan_count(plan); i++) {
        add_side(l, &recede_plan_at(plan, i)->lit);
        add_side(l, &recede_plan_at(plan, i)->shadow);
    }
}

int bench_scene(const char *name, recede_scene *out)
{
    static char path[512], bytes[RECEDE_SCENE_MOST_BYTES];
    recede_text_error error;
    snprintf(path, sizeof path, FOLDER "/%s", name);
    FILE *file = fopen(path, "rb");
    if (!file)
        return 0;
    size_t size = fread(bytes, 1, sizeof bytes, file);
    fclose(file);
    return !recede_scene_read(bytes, size, NULL, NULL, out, &error);
}

static void add_file(list *l, const char *name)
{
    static recede_scene scene;
    recede_plan *plan;
    if (!bench_scene(name, &scene) || recede_plan_new(&scene, NULL, NULL, &plan, NULL))
        return;
    add_plan(l, plan);
    recede_plan_free(plan);
}

static int is_scene(const struct dirent *entry)
{
    size_t length = strlen(entry->d_name);
    return length > 5 && strcmp(entry->d_name + length - 5, ".json") == 0;
}

static void add_plans(list *l)
{
    struct dirent **names;
    int count = scandir(FOLDER, &names, is_scene, alphasort);
    for (int i = 0; i < count; i++) {
        add_file(l, names[i]->d_name);
        free(names[i]);
    }
    if (count >= 0)
        free(names);
}

/* A mix of one to three paints by chance, and up to 0.6 off it in L*, a* and b*. */
static recede_wash_target inside(const recede_palette *palette, bench_dice *dice)
{
    int paints = (int)recede_palette_count(palette);
    int wanted = 1 + (int)(3 * bench_throw(dice)), paint = (int)(bench_throw(dice) * paints);
    recede_mix mix = {.water = exp(bench_between(dice, log(0.1), log(100)))};
    while (mix.count < wanted && paint < paints) {
        mix.paint[mix.count] = paint;
        mix.parts[mix.count++] = 1 + (int)(4 * bench_throw(dice));
        paint += 1 + (int)(bench_throw(dice) * (paints - paint) / 2);
    }
    recede_spectrum seen = recede_mix_reflectance(palette, &mix, NULL);
    recede_lab lab = recede_colour_of_xyz(recede_xyz_of_reflectance(&seen)).lab;
    lab.l += bench_between(dice, -0.6, 0.6);
    lab.a += bench_between(dice, -0.6, 0.6);
    lab.b += bench_between(dice, -0.6, 0.6);
    return (recede_wash_target){.from = lab};
}

static recede_wash_target anywhere(bench_dice *dice)
{
    return (recede_wash_target){.from = {bench_between(dice, 8, 98), bench_between(dice, -65, 65),
                                         bench_between(dice, -65, 65)}};
}

static recede_lab of_lch(double l, double c, double h_deg)
{
    double h = h_deg / 57.29577951308232;
    return (recede_lab){l, c * cos(h), c * sin(h)};
}

/* A sky, blue overhead and pale and warm below, or a hillside from crest to base. */
static recede_wash_target graded(bench_dice *dice)
{
    double l = bench_between(dice, 45, 80), c = bench_between(dice, 6, 30);
    recede_wash_target wash = {.graded = 1};
    if (bench_throw(dice) < 0.5) {
        wash.from = of_lch(l, c, bench_between(dice, 240, 275));
        wash.to = of_lch(bench_between(dice, 84, 93), c / 3, bench_between(dice, 50, 110));
    } else {
        double h = bench_between(dice, 85, 160);
        wash.from = of_lch(l, c, h);
        wash.to = of_lch(l + bench_between(dice, 1, 7), c * bench_between(dice, 0.5, 1),
                         h + bench_between(dice, 0, 25));
    }
    wash.half = (recede_lab){(wash.from.l + wash.to.l) / 2, (wash.from.a + wash.to.a) / 2,
                             (wash.from.b + wash.to.b) / 2};
    return wash;
}

size_t bench_targets(bench_kind kind, const recede_palette *palette, size_t count,
                     recede_wash_target *out)
{
    list l = {out, 0, count};
    bench_dice dice = {1947};
    if (kind == BENCH_PLANS)
        add_plans(&l);
    while (kind == BENCH_GRADED && l.count < count)
        add(&l, graded(&dice));
    while (kind == BENCH_INSIDE && l.count < count)
        add(&l, inside(palette, &dice));
    while (kind == BENCH_ANYWHERE && l.count < count)
        add(&l, anywhere(&dice));
    return l.count;
}

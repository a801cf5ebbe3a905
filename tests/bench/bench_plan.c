/* A whole plan of twelve planes with the index ready, and the program's main job. */
#include "bench/bench.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

enum { PLANES = 12, ROUNDS = 9, MOST_TARGETS = 1 + 2 * PLANES };

/* Invented: foliage and rock from 20 m to 40 km, the far planes with heights. */
static void twelve_planes(recede_scene *scene)
{
    recede_scene_default(scene);
    scene->plane_count = PLANES;
    for (int i = 0; i < PLANES; i++) {
        recede_plane *plane = &scene->planes[i];
        const recede_own_entry *own =
            recede_foliage_at((size_t)i % recede_foliage_count());
        memset(plane, 0, sizeof *plane);
        snprintf(plane->name, sizeof plane->name, "plane %d", i + 1);
        plane->distance_m = 20 * pow(2, i);
        plane->base_m = i < 8 ? NAN : 60;
        plane->crest_m = i < 8 ? NAN : 60 + 60 * (i - 7);
        plane->own.kind = RECEDE_OWN_FOLIAGE;
        strcpy(plane->own.name, own->name);
        plane->own.reflectance = own->reflectance;
    }
}

static double time_plan(const recede_scene *scene, const recede_index *index)
{
    double best_s = 1e9;
    for (int i = 0; i < ROUNDS; i++) {
        recede_plan *plan;
        double start_s = bench_now_s();
        if (recede_plan_with_index(scene, index, NULL, NULL, &plan, NULL))
            exit(1);
        best_s = fmin(best_s, bench_now_s() - start_s);
        recede_plan_free(plan);
    }
    return best_s;
}

static double time_paper_washes(const recede_plan *plan, const recede_index *index)
{
    recede_wash_target targets[MOST_TARGETS];
    recede_wash_recipe found[MOST_TARGETS];
    const recede_side *sky = recede_plan_sky(plan);
    double best_s = 1e9;
    size_t count = 0;
    targets[count++] = (recede_wash_target){sky->crest.target.lab, sky->base.target.lab,
                                            sky->crest.target.lab, 1};
    for (size_t i = 0; i < PLANES; i++) {
        targets[count++].from = recede_plan_at(plan, i)->lit.crest.target.lab;
        targets[count++].from = recede_plan_at(plan, i)->shadow.crest.target.lab;
    }
    for (size_t i = 1; i < count; i++)
        targets[i].graded = 0;
    for (int i = 0; i < ROUNDS; i++) {
        double start_s = bench_now_s();
        if (recede_search(index, targets, count, found, NULL, NULL, NULL))
            exit(1);
        best_s = fmin(best_s, bench_now_s() - start_s);
    }
    return best_s;
}

void bench_plan(void)
{
    recede_scene *scene = malloc(sizeof *scene);
    recede_index *index;
    recede_plan *plan;
    if (!scene)
        exit(1);
    twelve_planes(scene);
    if (recede_plan_new(scene, NULL, NULL, &plan, NULL))
        exit(1);
    if (recede_index_new(recede_plan_palette(plan), &recede_plan_scene(plan)->rules, 0, NULL,
                         NULL, &index, NULL))
        exit(1);
    printf("\na plan of 12 planes with the index of twelve pigments ready, best of %d\n", ROUNDS);
    printf("  24 flat washes and a graded sky, recipes alone: %.2f ms\n",
           1e3 * time_paper_washes(plan, index));
    scene->shadows_over = 0;
    printf("  the whole plan, shadows beside: %.2f ms\n", 1e3 * time_plan(scene, index));
    scene->shadows_over = 1;
    printf("  the whole plan, shadows over:   %.2f ms\n", 1e3 * time_plan(scene, index));
    recede_index_free(index);
    recede_plan_free(plan);
    free(scene);
}

/* What a run of the study takes by the clock, of the processor, and of memory. */
typedef struct { double wall_s, processor_s, megabytes; } toll;

static double seconds(struct timeval time)
{
    return (double)time.tv_sec + 1e-6 * (double)time.tv_usec;
}

/* 0 where it fails. */
static int run_study(const char *program, const char *sheet, toll *out)
{
    struct rusage usage;
    int status = 1;
    double start_s = bench_wall_s();
    fflush(stdout);
    pid_t child = fork();
    if (child == 0) {
        if (!freopen("/dev/null", "w", stdout))
            _exit(127);
        execl(program, program, "study", "-o", sheet, (char *)NULL);
        _exit(127);
    }
    if (child < 0 || wait4(child, &status, 0, &usage) != child)
        return 0;
    out->wall_s = bench_wall_s() - start_s;
    out->processor_s = seconds(usage.ru_utime) + seconds(usage.ru_stime);
    out->megabytes = (double)usage.ru_maxrss / 1024;
    return WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

/* The built-in scene's plan alone, index and all. */
static double time_its_plan(void)
{
    static recede_scene scene;
    recede_plan *plan;
    double start_s = bench_now_s();
    if (!bench_scene("clear-noon.json", &scene) ||
        recede_plan_new(&scene, NULL, NULL, &plan, NULL))
        return NAN;
    double took_s = bench_now_s() - start_s;
    recede_plan_free(plan);
    return took_s;
}

void bench_study(const char *program)
{
    char sheet[] = "/tmp/recede-bench-XXXXXX";
    int file = mkstemp(sheet);
    toll best = {INFINITY, INFINITY, 0};
    printf("\n%s study, the built-in scene, best of 3\n", program);
    for (int i = 0; file >= 0 && i < 3; i++) {
        toll one;
        if (!run_study(program, sheet, &one)) {
            puts("  not to be run here: passed over");
            break;
        }
        best.wall_s = fmin(best.wall_s, one.wall_s);
        best.processor_s = fmin(best.processor_s, one.processor_s);
        best.megabytes = fmax(best.megabytes, one.megabytes);
    }
    if (best.megabytes > 0)
        printf("  the whole process: %.0f ms by the clock, %.0f ms of the processor, %.1f MB; its plan, "
               "index and all: %.0f ms\n", 1e3 * best.wall_s, 1e3 * best.processor_s,
               best.megabytes, 1e3 * time_its_plan());
    unlink(sheet);
    close(file);
}

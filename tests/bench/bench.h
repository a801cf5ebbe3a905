/* What the parts of the bench share. Figures go to standard output, one core, one run. */
#ifndef RECEDE_BENCH_H
#define RECEDE_BENCH_H

#include "paint/search.h"
#include "recede.h"

/* The processor's time for this process: what the clock has on a core left alone.
 * The clock itself is for processes watched from outside. */
double bench_now_s(void);
double bench_wall_s(void);

/* A small generator, the same everywhere: Knuth's MMIX constants. 0 to below 1. */
typedef struct bench_dice { unsigned long long state; } bench_dice;
double bench_throw(bench_dice *dice);
double bench_between(bench_dice *dice, double low, double high);

/* A built-in palette, or so many of its paints, evenly chosen; ends the bench when there is none. */
recede_palette *bench_palette(const char *name, size_t most_paints);

/* Kinds of targets, told apart in the figures. */
typedef enum bench_kind { BENCH_PLANS, BENCH_GRADED, BENCH_INSIDE, BENCH_ANYWHERE } bench_kind;

/* Fills count targets of a kind for a palette; of plans, all washes of the scenes
 * in a folder, as many as there are. Returns how many. */
size_t bench_targets(bench_kind kind, const recede_palette *palette, size_t count,
                     recede_wash_target *out);

/* A scene of that folder; 0 when it cannot be read. */
int bench_scene(const char *name, recede_scene *out);

/* Sorts times; prints median, 99th percentile and largest, in ms. */
void bench_print_times(const char *what, double *times_s, size_t count);

/* The parts. */
void bench_search(const char *palette, int most_parts);
void bench_agreement(const char *palette, int most_parts, size_t targets);
void bench_nlopt(const char *palette);
void bench_growth(void);
void bench_widest(void);
void bench_plan(void);
void bench_study(const char *program);
void bench_let_down(void);

#endif

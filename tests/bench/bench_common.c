#include "bench/bench.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

static double read_clock_s(clockid_t clock)
{
    struct timespec now;
    clock_gettime(clock, &now);
    return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

double bench_now_s(void)
{
    return read_clock_s(CLOCK_PROCESS_CPUTIME_ID);
}

double bench_wall_s(void)
{
    return read_clock_s(CLOCK_MONOTONIC);
}

double bench_throw(bench_dice *dice)
{
    dice->state = dice->state * 6364136223846793005ULL + 1442695040888963407ULL;
    return (double)(dice->state >> 11) / 9007199254740992.0;
}

double bench_between(bench_dice *dice, double low, double high)
{
    return low + (high - low) * bench_throw(dice);
}

static const recede_palette_entry *entry_named(const char *name)
{
    for (size_t i = 0; i < recede_palette_entry_count(); i++)
        if (strcmp(recede_palette_entry_at(i)->name, name) == 0)
            return recede_palette_entry_at(i);
    fprintf(stderr, "bench: no palette is called '%s'\n", name);
    exit(1);
}

static size_t read_paints(const char *names, recede_paint *paints)
{
    size_t count = 0;
    while (*names) {
        char name[RECEDE_NAME_SIZE];
        size_t length = strcspn(names, "|");
        memcpy(name, names, length);
        name[length] = '\0';
        if (recede_paint_named(name, &paints[count++], NULL))
            exit(1);
        names += length + (names[length] == '|');
    }
    return count;
}

/* Thins out a list to so many, evenly. */
static size_t thin_out(recede_paint *paints, size_t count, size_t most)
{
    for (size_t i = 0; count > most && i < most; i++)
        paints[i] = paints[i * count / most];
    return count < most ? count : most;
}

recede_palette *bench_palette(const char *name, size_t most_paints)
{
    static recede_paint paints[RECEDE_MOST_PAINTS];
    const recede_palette_entry *entry = entry_named(name);
    recede_spectrum paper = recede_paper_white();
    recede_palette *palette;
    size_t count = thin_out(paints, read_paints(entry->paints, paints), most_paints);
    if (recede_palette_new(paints, count, entry->opaque ? RECEDE_GOUACHE : RECEDE_WATERCOLOUR,
                           &paper, NULL, &palette, NULL))
        exit(1);
    return palette;
}

static int by_size(const void *one, const void *other)
{
    double a = *(const double *)one, b = *(const double *)other;
    return (a > b) - (a < b);
}

void bench_print_times(const char *what, double *times_s, size_t count)
{
    if (!count)
        return;
    qsort(times_s, count, sizeof *times_s, by_size);
    printf("  %-22s %5zu targets: median %8.3f ms, 99th percentile %8.3f ms, largest %8.3f ms\n",
           what, count, 1e3 * times_s[count / 2], 1e3 * times_s[(count - 1) * 99 / 100],
           1e3 * times_s[count - 1]);
}

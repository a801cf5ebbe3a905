/* make bench: everything the search and a plan cost. Not a test.
 *
 *     build/bench PROGRAM [PART...]
 *
 * PROGRAM is recede itself; the parts are those of the table, all where none is named. */
#include "bench/bench.h"

#include <stdio.h>
#include <string.h>

static void twelve(const char *program)
{
    (void)program;
    bench_search("landscape-twelve", 8);
}

static void twenty_four(const char *program)
{
    (void)program;
    bench_search("landscape-twenty-four", 12);
}

static void agreement(const char *program)
{
    (void)program;
    puts("\nagreement with the reference search: recipe, difference, slip and reach");
    bench_agreement("landscape-six", 8, 1000);
    bench_agreement("landscape-twelve", 8, 1000);
    bench_agreement("landscape-twenty-four", 12, 100);
}

static void nlopt(const char *program)
{
    (void)program;
    bench_nlopt("landscape-twelve");
}

static void plan(const char *program)
{
    (void)program;
    bench_plan();
}

static void growth(const char *program)
{
    (void)program;
    bench_growth();
}

static void widest(const char *program)
{
    (void)program;
    bench_widest();
}

static void let_down(const char *program)
{
    (void)program;
    bench_let_down();
}

static const struct {
    const char *name;
    void (*run)(const char *program);
} parts[] = {
    {"twelve", twelve}, {"twenty-four", twenty_four}, {"plan", plan}, {"study", bench_study},
    {"nlopt", nlopt}, {"agreement", agreement}, {"growth", growth}, {"widest", widest},
    {"let-down", let_down},
};

static int wanted(const char *name, int count, char **words)
{
    for (int i = 2; i < count; i++)
        if (strcmp(words[i], name) == 0)
            return 1;
    return count <= 2;
}

int main(int count, char **words)
{
    setvbuf(stdout, NULL, _IOLBF, 0);
    puts("recede bench: one core; processor time, so that other work on the machine counts little");
    for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++)
        if (wanted(parts[i].name, count, words))
            parts[i].run(count > 1 ? words[1] : "recede");
    return 0;
}

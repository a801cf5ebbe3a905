#include "paint/mixes.h"

#include <string.h>

static int common_divisor(int a, int b)
{
    while (b) {
        int rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

static int coprime(const int *parts, int count)
{
    int divisor = 0;
    for (int i = 0; i < count; i++)
        divisor = common_divisor(parts[i], divisor);
    return divisor == 1;
}

/* The first composition of total: 1, 1, ... and the rest last. */
static void first_parts(int *parts, int count, int total)
{
    for (int i = 0; i < count; i++)
        parts[i] = 1;
    parts[count - 1] = total - (count - 1);
}

/* The next composition of the same total, lexicographic; 0 at the end. */
static int next_parts(int *parts, int count)
{
    int rest = parts[count - 1];
    for (int i = count - 2; i >= 0; i--) {
        if (rest > count - 1 - i) {
            parts[i]++;
            first_parts(parts + i + 1, count - 1 - i, rest - 1);
            return 1;
        }
        rest += parts[i];
    }
    return 0;
}

static int next_coprime(int *parts, int count)
{
    while (next_parts(parts, count))
        if (coprime(parts, count))
            return 1;
    return 0;
}

static int next_paints(int *paint, int count, int paints)
{
    for (int i = count - 1; i >= 0; i--) {
        if (paint[i] < paints - (count - i)) {
            paint[i]++;
            for (int j = i + 1; j < count; j++)
                paint[j] = paint[j - 1] + 1;
            return 1;
        }
    }
    return 0;
}

static size_t choose(int from, int count)
{
    size_t ways = 1;
    for (int i = 0; i < count; i++)
        ways = ways * (size_t)(from - i) / (size_t)(i + 1);
    return ways;
}

static int fewer(int a, int b)
{
    return a < b ? a : b;
}

/* The most parts that a mix of count pigments can have in coprime numbers. */
static int most_parts_of(int count, int most_parts)
{
    return count == 1 ? 1 : most_parts;
}

size_t recede_set_count(int paints, int most_pigments)
{
    size_t sets = 0;
    for (int count = 0; count <= fewer(paints, most_pigments); count++)
        sets += choose(paints, count);
    return sets;
}

int recede_set_paints(int paints, size_t set, int *paint)
{
    int count = 0;
    while (set >= recede_set_count(paints, count))
        count++;
    for (int i = 0; i < count; i++)
        paint[i] = i;
    for (size_t at = count ? recede_set_count(paints, count - 1) : 0; at < set; at++)
        next_paints(paint, count, paints);
    return count;
}

static int count_coprime(int count, int total)
{
    int parts[RECEDE_MOST_IN_MIX], found = 0;
    first_parts(parts, count, total);
    do
        found += coprime(parts, count);
    while (next_parts(parts, count));
    return found;
}

double recede_mixes_of_size(int paints, int pigments, int parts)
{
    return (double)choose(paints, pigments) * count_coprime(pigments, parts);
}

double recede_mixes_count(int paints, const recede_rules *rules)
{
    double mixes = 0;
    for (int count = 1; count <= fewer(paints, rules->most_pigments); count++)
        for (int total = count; total <= most_parts_of(count, rules->most_parts); total++)
            mixes += recede_mixes_of_size(paints, count, total);
    return mixes;
}

void recede_mixes_start(recede_mixes *walk, int paints, const recede_rules *rules)
{
    memset(walk, 0, sizeof *walk);
    walk->paints = paints;
    walk->most_pigments = fewer(paints, rules->most_pigments);
    walk->most_parts = rules->most_parts;
}

void recede_mixes_start_set(recede_mixes *walk, const int *paint, int count, int most_parts)
{
    memset(walk, 0, sizeof *walk);
    walk->one_set = 1;
    walk->most_pigments = count;
    walk->most_parts = most_parts;
    walk->mix.count = count;
    for (int i = 0; i < count; i++)
        walk->mix.paint[i] = paint[i];
}

/* The first mix of so many pigments and parts; 0 where there is none. */
static int open_class(recede_mixes *walk, int count, int parts)
{
    if (count < 1 || count > walk->most_pigments
        || parts > most_parts_of(count, walk->most_parts))
        return 0;
    walk->mix.count = count;
    walk->parts = parts;
    if (!walk->one_set) {
        for (int i = 0; i < count; i++)
            walk->mix.paint[i] = i;
        walk->first_set = recede_set_count(walk->paints, count - 1);
        walk->set = walk->first_set;
    }
    first_parts(walk->mix.parts, count, parts);
    return 1;
}

int recede_mixes_next(recede_mixes *walk)
{
    recede_mix *mix = &walk->mix;
    if (!walk->started) {
        int count = walk->one_set ? mix->count : 1;
        walk->started = 1;
        return open_class(walk, count, count);
    }
    if (next_coprime(mix->parts, mix->count))
        return 1;
    if (!walk->one_set && next_paints(mix->paint, mix->count, walk->paints)) {
        walk->set++;
        first_parts(mix->parts, mix->count, walk->parts);
        return 1;
    }
    if (open_class(walk, mix->count, walk->parts + 1))
        return 1;
    return !walk->one_set && open_class(walk, mix->count + 1, mix->count + 1);
}

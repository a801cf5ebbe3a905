/* A few values for many. In the best grouping each group is a run of the sorted
 * values, so the best for the first n values in g groups is the best for the
 * first m in g - 1 groups with the rest as one more: W. D. Fisher, Journal of
 * the American Statistical Association 53 (1958) 789-798. */
#include <math.h>

#include "colour/error.h"
#include "colour/memory.h"
#include "recede.h"

/* The automatic choice takes the fewest groups that come so near. */
static const double ENOUGH = 0.5;

typedef struct {
    double value, weight;
} item;

/* Sums over the first n items, and for each number of groups the least squared
 * error over the first n and where the last group starts. */
typedef struct {
    double weight, first, second; /* moments about middle */
    double error[RECEDE_MOST_GROUPS + 1];
    size_t start[RECEDE_MOST_GROUPS + 1];
} row;

typedef struct {
    item *items;
    row *rows; /* count + 1 */
    size_t count;
    double middle;
} table;

/* Squared error of items from to to - 1 about their mean. */
static double spread(const table *t, size_t from, size_t to)
{
    const row *a = &t->rows[from], *b = &t->rows[to];
    double weight = b->weight - a->weight, first = b->first - a->first;
    if (to - from == 1 || weight <= 0.0) /* too light to be told from rounding */
        return 0.0;
    return fmax(0.0, b->second - a->second - first * first / weight);
}

/* Values that weigh something, sorted, equal ones as one. */
static void gather(table *t, const double *values, const double *weights, size_t count)
{
    double total = 0.0;
    for (size_t i = 0; i < count; i++)
        total += weights ? weights[i] : 0.0;
    t->count = 0;
    for (size_t i = 0; i < count; i++) {
        double weight = weights && total > 0.0 ? weights[i] / total : 1.0 / (double)count;
        size_t place = t->count;
        if (weight <= 0.0)
            continue;
        while (place > 0 && t->items[place - 1].value > values[i])
            place--;
        if (place > 0 && t->items[place - 1].value == values[i]) {
            t->items[place - 1].weight += weight;
            continue;
        }
        for (size_t k = t->count++; k > place; k--)
            t->items[k] = t->items[k - 1];
        t->items[place] = (item){values[i], weight};
    }
    t->middle = 0.5 * (t->items[0].value + t->items[t->count - 1].value);
}

static void sum_up(table *t)
{
    t->rows[0] = (row){0};
    for (size_t n = 0; n < t->count; n++) {
        double off = t->items[n].value - t->middle, weight = t->items[n].weight;
        row *next = &t->rows[n + 1];
        *next = t->rows[n];
        next->weight += weight;
        next->first += weight * off;
        next->second += weight * off * off;
    }
}

static void fill(table *t)
{
    for (size_t n = 1; n <= t->count; n++) {
        t->rows[n].error[1] = spread(t, 0, n);
        t->rows[n].start[1] = 0;
    }
    for (int g = 2; g <= RECEDE_MOST_GROUPS; g++) {
        for (size_t n = (size_t)g; n <= t->count; n++) {
            row *r = &t->rows[n];
            r->error[g] = INFINITY;
            for (size_t start = (size_t)g - 1; start < n; start++) {
                double error = t->rows[start].error[g - 1] + spread(t, start, n);
                if (error < r->error[g]) {
                    r->error[g] = error;
                    r->start[g] = start;
                }
            }
        }
    }
}

/* Puts items from to to - 1 together; returns their squared error. All is summed
 * anew, for the table's sums are differences of larger ones. */
static double put_together(const table *t, size_t from, size_t to, double *value, double *share)
{
    double weight = 0.0, sum = 0.0, squares = 0.0;
    for (size_t i = from; i < to; i++) {
        weight += t->items[i].weight;
        sum += t->items[i].weight * (t->items[i].value - t->middle);
    }
    *value = t->middle + sum / weight;
    *share = weight;
    for (size_t i = from; i < to; i++) {
        double off = t->items[i].value - *value;
        squares += t->items[i].weight * off * off;
    }
    return squares;
}

/* Reads the grouping off the table, last group first. */
static void take(const table *t, int groups, recede_groups *out)
{
    double squares = 0.0;
    size_t end = t->count;
    *out = (recede_groups){.count = groups};
    for (int g = groups; g >= 1; g--) {
        size_t start = t->rows[end].start[g];
        squares += put_together(t, start, end, &out->value[g - 1], &out->share[g - 1]);
        end = start;
    }
    out->error = sqrt(squares);
}

/* No more groups than values; left open, the fewest that come near enough. */
static void choose(const table *t, int wanted, recede_groups *out)
{
    int most = t->count < RECEDE_MOST_GROUPS ? (int)t->count : RECEDE_MOST_GROUPS;
    int groups = wanted ? wanted : RECEDE_LEAST_GROUPS;
    take(t, groups < most ? groups : most, out);
    while (!wanted && out->count < most && out->error > ENOUGH)
        take(t, out->count + 1, out);
}

/* In the best grouping every value lies nearest to its own group. */
static int nearest(const recede_groups *groups, double value)
{
    int best = 0;
    for (int g = 1; g < groups->count; g++)
        if (fabs(groups->value[g] - value) < fabs(groups->value[best] - value))
            best = g;
    return best;
}

static recede_code check(const double *values, const double *weights, size_t count, int wanted,
                         recede_error *error)
{
    recede_code code = RECEDE_OK;
    if (count == 0)
        return recede_fail_count(error, RECEDE_TOO_FEW, "values", 0, 1, 0);
    if (wanted != 0)
        code = recede_check_range(error, "groups", wanted, RECEDE_LEAST_GROUPS,
                                  RECEDE_MOST_GROUPS);
    for (size_t i = 0; !code && i < count; i++) {
        code = recede_check_range(error, "values", values[i], -100.0, 100.0);
        if (!code && weights)
            code = recede_check_range(error, "weights", weights[i], 0.0, 1e9);
    }
    return code;
}

recede_code recede_group_values(const double *values, const double *weights, size_t count,
                                int wanted, int *group_of, recede_groups *out,
                                const recede_allocator *allocator, recede_error *error)
{
    allocator = recede_allocator_or_default(allocator);
    recede_code code = check(values, weights, count, wanted, error);
    if (code)
        return code;
    table t = {.items = recede_allocate_array(allocator, count, sizeof *t.items),
               .rows = recede_allocate_array(allocator, count + 1, sizeof *t.rows)};
    if (t.items && t.rows) {
        gather(&t, values, weights, count);
        sum_up(&t);
        fill(&t);
        choose(&t, wanted, out);
        for (size_t i = 0; i < count; i++)
            group_of[i] = nearest(out, values[i]);
    } else {
        code = recede_fail(error, RECEDE_NO_MEMORY, "groups");
    }
    recede_release(allocator, t.rows);
    recede_release(allocator, t.items);
    return code;
}

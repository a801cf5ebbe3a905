/* Fuzz target for recipes: whatever the paints' K and S, the paper and the colours
 * wanted, the index gives the recipes of the exhaustive search, all numbers finite, or
 * both refuse alike. */
#include <math.h>
#include <string.h>

#include "fuzz/insist.h"
#include "recede.h"

enum { PAINTS = 4, TARGETS = 3 };

/* A straight line over the bands of the logarithm, or for paper of the number. */
static recede_spectrum line(stream *s, double least, double most, int logarithm)
{
    recede_spectrum out;
    double from = number(s, 250, least, most), to = number(s, 250, least, most);
    for (int band = 0; band < RECEDE_BANDS; band++) {
        double at = from + (to - from) * band / (RECEDE_BANDS - 1);
        out.at[band] = logarithm ? exp(at) : at;
    }
    return out;
}

static size_t take_paints(stream *s, recede_paint *paints)
{
    size_t count = 1 + byte(s) % PAINTS;
    for (size_t i = 0; i < count; i++) {
        memset(&paints[i], 0, sizeof paints[i]);
        paints[i].name[0] = (char)('a' + i);
        paints[i].k = line(s, -12, 6, 1);
        paints[i].s = line(s, -12, 6, 1);
        paints[i].is_white = i == 0;
    }
    return count;
}

static void take_targets(stream *s, recede_wash_target *targets)
{
    for (int i = 0; i < TARGETS; i++) {
        memset(&targets[i], 0, sizeof targets[i]);
        targets[i].graded = (int)byte(s) & 1;
        targets[i].from = (recede_lab){number(s, 250, 0, 100), number(s, 250, -120, 120), number(s, 250, -120, 120)};
        targets[i].to = (recede_lab){number(s, 250, 0, 100), number(s, 250, -120, 120), number(s, 250, -120, 120)};
        targets[i].half = (recede_lab){(targets[i].from.l + targets[i].to.l) / 2,
                                       (targets[i].from.a + targets[i].to.a) / 2,
                                       (targets[i].from.b + targets[i].to.b) / 2};
    }
}

static void check_alike(const recede_recipe *one, const recede_recipe *other)
{
    insist(one->mix.count == other->mix.count && one->mix.water == other->mix.water);
    for (int i = 0; i < one->mix.count; i++)
        insist(one->mix.paint[i] == other->mix.paint[i] && one->mix.parts[i] == other->mix.parts[i]);
    insist(isfinite(one->delta_e) && isfinite(one->slip) && isfinite(one->colour.lab.l));
    insist(one->delta_e == other->delta_e && one->slip == other->slip);
    insist(one->reach == other->reach);
}

static void compare(const recede_palette *palette, const recede_rules *rules,
                    const recede_wash_target *targets)
{
    recede_wash_recipe plain[TARGETS], fast[TARGETS];
    recede_index *index;
    recede_error error;
    recede_code code = recede_search_all(palette, rules, targets, TARGETS, plain, NULL, NULL, &error);
    if (recede_index_new(palette, rules, 0, NULL, NULL, &index, &error)) {
        insist(code != RECEDE_OK);
        return;
    }
    insist(recede_search(index, targets, TARGETS, fast, NULL, NULL, &error) == code);
    for (int i = 0; !code && i < TARGETS; i++) {
        check_alike(&plain[i].from, &fast[i].from);
        if (targets[i].graded)
            check_alike(&plain[i].to, &fast[i].to);
    }
    recede_index_free(index);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    stream s = {data, size};
    recede_paint paints[PAINTS];
    recede_wash_target targets[TARGETS];
    recede_palette *palette;
    recede_error error;
    size_t count = take_paints(&s, paints);
    recede_medium medium = byte(&s) & 1 ? RECEDE_GOUACHE : RECEDE_WATERCOLOUR;
    recede_rules rules = {1 + (int)byte(&s) % 3, 1 + (int)byte(&s) % 5, number(&s, 250, 0, 10)};
    recede_spectrum paper = byte(&s) & 1 ? line(&s, 0, 1, 0) : recede_paper_white();
    take_targets(&s, targets);
    if (recede_palette_new(paints, count, medium, &paper, NULL, &palette, &error)) {
        insist(error.code != RECEDE_OK);
        return 0;
    }
    compare(palette, &rules, targets);
    recede_palette_free(palette);
    return 0;
}

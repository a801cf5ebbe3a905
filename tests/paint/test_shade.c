/* Films in single precision, and bounds on what lies between two of them, against
 * films in double precision: no film comes nearer a target than any bound says. */
#include "paint/over_visit.h"
#include "paint/shade.h"
#include "recede.h"
#include "support/assert_near.h"

#include "paint/over_targets.h"

enum { LEVELS = 82 };

/* A mix over a ground, at every level, and as a palette sees it. */
typedef struct {
    recede_palette *on;
    recede_mix mix;
    recede_lab lab[LEVELS];
    recede_curve_maker maker;
    recede_curve_films films;
    recede_shade ground, hiding, shade[LEVELS];
    int darkens;
} films;

static void lay(films *f, const char *names, dice *d)
{
    recede_paint paints[RECEDE_MOST_PAINTS];
    size_t count = paints_of(names, paints);
    recede_palette *palette = palette_of(names, RECEDE_WATERCOLOUR);
    recede_over_target t = flat_over(palette, d, throw_below(d, 4));
    recede_palette_free(palette);
    assert_int_equal(recede_palette_new(paints, count, RECEDE_WATERCOLOUR, &t.from_ground, NULL,
                                        &f->on, NULL), RECEDE_OK);
    f->mix = any_mix(f->on, d, 2, 1);
    recede_curve_start(&f->maker, f->on);
    recede_curve_films_of_mix(&f->maker, &f->mix, &f->films);
    recede_shade_of_ground(&f->maker, f->on, &f->ground);
    recede_shade_of_hiding(&f->maker, &f->films, &f->hiding);
    f->darkens = recede_shade_darkens(&f->films, &f->ground);
    for (int level = 0; level < LEVELS; level++) {
        f->mix.water = recede_water_at((size_t)level);
        f->lab[level] = colour_of_mix(f->on, &f->mix).lab;
        recede_shade_of_film(&f->maker, &f->films, f->maker.film[level], &f->shade[level]);
    }
}

static const char *const boxes[] = {
    "hansa yellow|burnt sienna|ultramarine blue|viridian",
    "titanium white|lamp black|cadmium red|chromium oxide green",
    "phthalo blue, green shade|quinacridone magenta|yellow ochre|raw umber",
};
enum { BOXES = sizeof boxes / sizeof boxes[0], ROUNDS = 60 };

static void shades_are_films(void **state)
{
    (void)state;
    static films f;
    dice d = {1};
    for (int i = 0; i < ROUNDS; i++) {
        lay(&f, boxes[i % BOXES], &d);
        for (int level = 0; level < LEVELS; level++) {
            const recede_shade *s = &f.shade[level];
            const recede_lab found = {(double)s->l, 500.0 * (double)(s->root[0] - s->root[1]),
                                      200.0 * (double)(s->root[1] - s->root[2])};
            assert_near_lab(found, f.lab[level], (double)RECEDE_CURVE_ERROR);
        }
        recede_palette_free(f.on);
    }
}

/* Whether darkening is as recede_shade_darkens says: no band of any film above the
 * ground's, where it says so. */
static void what_darkens_never_rises(void **state)
{
    (void)state;
    static films f;
    dice d = {2};
    int some = 0;
    for (int i = 0; i < ROUNDS; i++) {
        lay(&f, boxes[i % BOXES], &d);
        some += f.darkens;
        for (int level = 0; f.darkens && level < LEVELS; level++) {
            f.mix.water = recede_water_at((size_t)level);
            recede_spectrum seen = plain_mix(f.on, &f.mix, recede_palette_paper(f.on));
            for (int band = 0; band < RECEDE_BANDS; band++)
                assert_below(seen.at[band], recede_palette_paper(f.on)->at[band] + 1e-6);
        }
        recede_palette_free(f.on);
    }
    assert_true(some > ROUNDS / 4);
    assert_true(some < ROUNDS);
}

static double nearest_between(const films *f, int thick, int thin, recede_lab target)
{
    double nearest = INFINITY;
    for (int level = thick + 1; level < thin; level++)
        nearest = fmin(nearest, 1e6 * recede_delta_e(f->lab[level], target));
    return nearest;
}

static void check_bounds(const films *f, int thick, int thin, recede_lab target)
{
    recede_aim aim;
    recede_aim_at(&aim, target);
    const recede_shade *from = thick < 0 ? &f->hiding : &f->shade[thick];
    const recede_shade *to = thin == LEVELS ? &f->ground : &f->shade[thin];
    double nearest = nearest_between(f, thick, thin, target), limit = 0.5 * nearest;
    assert_below(recede_shade_lightness_bound(&f->maker, &aim, from, to, f->darkens), nearest);
    assert_below(recede_shade_lightness_bound(&f->maker, &aim, from, to, 0), nearest);
    for (int i = 0; i < 2; i++, limit = nearest) { /* the quick bound, the better one */
        assert_below(recede_shade_bound_between(&f->maker, &aim, from, to, f->darkens, limit),
                     nearest);
        assert_below(recede_shade_bound_between(&f->maker, &aim, from, to, 0, limit), nearest);
    }
    if (thick >= 0)
        assert_below(recede_shade_bound(&aim, from, nearest),
                     1e6 * recede_delta_e(f->lab[thick], target));
}

/* Targets near the films, where bounds are tight, and anywhere. */
static void nothing_comes_nearer_than_bounds_say(void **state)
{
    (void)state;
    static films f;
    dice d = {3};
    for (int i = 0; i < 4 * ROUNDS; i++) {
        lay(&f, boxes[i % BOXES], &d);
        for (int j = 0; j < 30; j++) {
            int thick = throw_below(&d, LEVELS - 1) - 1;
            int thin = thick + 2 + throw_below(&d, LEVELS - 1 - thick);
            if (j % 2 && thin > thick + 6)
                thin = thick + 6;
            recede_lab target = f.lab[throw_below(&d, LEVELS)];
            target.l += between(&d, -3, 3);
            target.a += between(&d, -5, 5);
            target.b += between(&d, -5, 5);
            check_bounds(&f, thick, thin, j % 5 ? target : colour_anywhere(&d));
        }
        recede_palette_free(f.on);
    }
}

/* A bound that prunes nothing would be sound too: most short stretches, far off,
 * must come out at half the difference or more. */
static void bounds_are_of_use(void **state)
{
    (void)state;
    static films f;
    dice d = {4};
    int useful = 0, all = 0;
    for (int i = 0; i < ROUNDS; i++) {
        lay(&f, boxes[i % BOXES], &d);
        for (int j = 0; j < 20; j++) {
            int thick = 5 + throw_below(&d, LEVELS - 10);
            recede_lab target = f.lab[thick + 1];
            recede_aim aim;
            target.a += j % 2 ? 15 : -15;
            target.b += between(&d, -10, 10);
            recede_aim_at(&aim, target);
            double nearest = nearest_between(&f, thick, thick + 2, target);
            double bound = recede_shade_bound_between(&f.maker, &aim, &f.shade[thick],
                                                      &f.shade[thick + 2], f.darkens, nearest);
            useful += bound > 0.5 * nearest;
            all++;
        }
        recede_palette_free(f.on);
    }
    assert_true(useful > all / 2);
}

typedef struct {
    double limit;
    int found[LEVELS];
} offers;

static double note(void *context, const recede_mix *mix, double difference)
{
    offers *o = context;
    int level = 0;
    while (recede_water_at((size_t)level) < mix->water)
        level++;
    assert_below(difference, o->limit);
    o->found[level]++;
    return o->limit;
}

/* With a limit that stays, a visit offers each film within it, once. */
static void a_visit_offers_every_film_within_its_limit(void **state)
{
    (void)state;
    static films f;
    static recede_over_visit visit;
    dice d = {5};
    for (int i = 0; i < 4 * ROUNDS; i++) {
        offers o = {between(&d, 0.1, 8) * 1e6, {0}};
        lay(&f, boxes[i % BOXES], &d);
        recede_lab target = f.lab[throw_below(&d, LEVELS)];
        target.l += between(&d, -3, 3);
        target.b += between(&d, -3, 3);
        recede_over_visit_start(&visit, f.on, target);
        visit.film = note;
        visit.context = &o;
        recede_over_visit_mix(&visit, &f.mix, o.limit);
        for (int level = 0; level < LEVELS; level++) {
            double off = 1e6 * recede_delta_e(f.lab[level], target);
            if (fabs(off - o.limit) > 1)
                assert_int_equal(o.found[level], off < o.limit);
        }
        recede_palette_free(f.on);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(shades_are_films),
        cmocka_unit_test(what_darkens_never_rises),
        cmocka_unit_test(nothing_comes_nearer_than_bounds_say),
        cmocka_unit_test(bounds_are_of_use),
        cmocka_unit_test(a_visit_offers_every_film_within_its_limit),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

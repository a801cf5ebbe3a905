/* Tubes of an order of work: which there are, what is let down from them, and which stay
 * at home, against trying everything. Pictures and sets are made up. */
#include "plan/work_tubes.h"

#include <stdlib.h>
#include <string.h>

#include "colour/memory.h"
#include "paint/paints.h"
#include "plan/work_needed.h"
#include "support/assert_near.h"

/* ---- which there are */

static int is_pale(const recede_palette *palette, size_t paint)
{
    return strncmp(recede_palette_paint(palette, paint)->name, "pale ", 5) == 0;
}

static int index_of(const recede_palette *palette, const char *name)
{
    for (size_t i = 0; i < recede_palette_count(palette); i++)
        if (strcmp(recede_palette_paint(palette, i)->name, name) == 0)
            return (int)i;
    fail_msg("no %s", name);
    return -1;
}

/* By the names alone: "pale X" is let down from X and titanium white. */
static void what_is_let_down_stays_with_its_tubes(void **state)
{
    (void)state;
    recede_palette *palette = palette_of(entry_of("opaque-sixteen")->paints, RECEDE_OIL);
    size_t white = (size_t)index_of(palette, "titanium white");
    unsigned long tubes = 0, pale = 0;
    for (size_t i = 0; i < recede_palette_count(palette); i++)
        *(is_pale(palette, i) ? &pale : &tubes) |= 1ul << i;
    assert_int_equal(recede_work_tubes(palette), tubes);
    assert_int_equal(recede_work_lost_without(palette, white), 1ul << white | pale);
    for (size_t i = 0; i < recede_palette_count(palette); i++) {
        if (!is_pale(palette, i))
            continue;
        size_t tube = (size_t)index_of(palette, recede_palette_paint(palette, i)->name + 5);
        assert_int_equal(recede_work_lost_without(palette, tube), 1ul << tube | 1ul << i);
        assert_int_equal(recede_work_needed(palette, 1ul << i),
                         1ul << i | 1ul << tube | 1ul << white);
        assert_int_equal(recede_work_count_of(palette, 1ul << i | 1ul << tube).tubes, 1);
    }
    recede_palette_free(palette);
}

/* Without what it is made from, a pale blue is a tube like any other. */
static void let_down_from_elsewhere_is_a_tube(void **state)
{
    (void)state;
    recede_palette *palette = palette_of("titanium white|pale ultramarine blue|burnt umber",
                                         RECEDE_GOUACHE);
    const recede_tubes tubes = recede_tubes_of(palette);
    assert_int_equal(recede_work_tubes(palette), 0x7);
    assert_int_equal(recede_work_needed(palette, 0x2), 0x2);
    assert_int_equal(recede_work_count_of(palette, 0x6).tubes, 2);
    assert_int_equal(recede_work_lost_without(palette, 0), 0x1);
    assert_int_equal(recede_work_lets_down(palette), 0);
    assert_int_equal(tubes.count, 3);
    assert_int_equal(recede_tubes_left(&tubes, 3), 0x7);
    recede_palette_free(palette);
}

/* ---- which stay at home: against trying everything */

enum { TUBES = 5, PALE = 3, PAINTS = TUBES + PALE, SIDES = 4, USES = 12 };

static unsigned seed = 3;

static unsigned chance(unsigned of)
{
    seed = seed * 1664525u + 1013904223u;
    return (seed >> 16) % of;
}

/* The last three paints are let down, each from the first tube and another. */
typedef struct {
    int other[PALE];
    struct {
        int paints[PAINTS];
        double difference;
    } use[SIDES][USES];
} made_up;

static void make_up(made_up *m, recede_tubes *tubes, recede_tube_uses *uses)
{
    *tubes = (recede_tubes){.count = TUBES, .paints = (1u << PAINTS) - 1};
    for (int i = 0; i < TUBES; i++)
        tubes->lost[i] = 1u << i;
    for (int i = 0; i < PALE; i++) {
        m->other[i] = 1 + (int)chance(TUBES - 1);
        tubes->lost[0] |= 1u << (TUBES + i);
        tubes->lost[m->other[i]] |= 1u << (TUBES + i);
    }
    recede_tube_uses_clear(uses);
    for (int side = 0; side < SIDES; side++) {
        recede_tube_uses_side(uses, 500);
        for (int i = 0; i < USES; i++) {
            recede_tube_use use = {0, chance(400)};
            for (int paint = 0; paint < PAINTS; paint++) {
                m->use[side][i].paints[paint] = chance(3) == 0;
                use.paints |= (uint32_t)m->use[side][i].paints[paint] << paint;
            }
            m->use[side][i].difference = use.difference;
            assert_int_equal(recede_tube_uses_add(uses, use), RECEDE_OK);
        }
    }
}

/* Whether a use can be mixed from the tubes that one has. */
static int can_mix(const made_up *m, const int *paints, const int *has)
{
    for (int i = 0; i < PAINTS; i++)
        if (paints[i] && !(i < TUBES ? has[i] : has[0] && has[m->other[i - TUBES]]))
            return 0;
    return 1;
}

static double sum_with(const made_up *m, const int *has)
{
    double sum = 0;
    for (int side = 0; side < SIDES; side++) {
        double nearest = 500;
        for (int i = 0; i < USES; i++)
            if (can_mix(m, m->use[side][i].paints, has))
                nearest = fmin(nearest, m->use[side][i].difference);
        sum += nearest;
    }
    return sum;
}

static int least_missed(const made_up *m, int *has)
{
    int least = -1;
    double nearest = INFINITY;
    for (int i = 0; i < TUBES; i++) {
        if (!has[i])
            continue;
        has[i] = 0;
        double sum = sum_with(m, has);
        has[i] = 1;
        if (sum <= nearest) { /* of equals the later in the palette */
            nearest = sum;
            least = i;
        }
    }
    return least;
}

static void each_time_the_tube_least_missed_stays_at_home(void **state)
{
    (void)state;
    static made_up m;
    recede_tube_uses uses;
    int white_first = 0;
    recede_tube_uses_start(&uses, recede_allocator_or_default(NULL));
    for (int trial = 0; trial < 300; trial++) {
        recede_tubes tubes;
        int left = TUBES, has[TUBES] = {1, 1, 1, 1, 1};
        make_up(&m, &tubes, &uses);
        recede_tubes_leave_out(&tubes, &uses, &left, 3);
        recede_tubes_leave_out(&tubes, &uses, &left, 1);
        assert_int_equal(left, 1);
        for (int i = 0; i < TUBES - 1; i++) {
            assert_int_equal(tubes.order[i], least_missed(&m, has));
            has[tubes.order[i]] = 0;
            for (int paint = 0; paint < PAINTS; paint++) {
                int alone[PAINTS] = {0};
                alone[paint] = 1;
                assert_int_equal(recede_tubes_left(&tubes, TUBES - 1 - i) >> paint & 1,
                                 can_mix(&m, alone, has));
            }
        }
        white_first += tubes.order[0] == 0;
    }
    assert_true(white_first > 0); /* and all that is let down with it */
    recede_tube_uses_end(&uses);
}

/* ---- an order of work */

static recede_plan *oil_plan(void)
{
    static recede_scene scene;
    recede_plan *plan;
    recede_scene_default(&scene);
    scene.medium = RECEDE_OIL;
    scene.rules.most_pigments = 2;
    scene.rules.most_parts = 6;
    scene.plane_count = 2;
    assert_int_equal(recede_scene_use_palette(&scene, "opaque-sixteen", NULL), RECEDE_OK);
    for (int i = 0; i < 2; i++) {
        const recede_own_entry *own = recede_foliage_named(i ? "dark conifer" : "meadow grass");
        scene.planes[i] = (recede_plane){.distance_m = i ? 12e3 : 25, .base_m = NAN,
                                         .crest_m = NAN, .own = {.kind = RECEDE_OWN_FOLIAGE}};
        strcpy(scene.planes[i].name, i ? "ridge" : "meadow");
        strcpy(scene.planes[i].own.name, own->name);
        scene.planes[i].own.reflectance = own->reflectance;
    }
    assert_int_equal(recede_plan_new(&scene, NULL, NULL, &plan, NULL), RECEDE_OK);
    return plan;
}

/* What is squeezed from, by the names; pale: how many are let down. */
static int squeezed(const recede_palette *palette, const recede_work *work, int *pale)
{
    int is[RECEDE_MOST_PAINTS] = {0}, tubes = 0;
    for (size_t i = 0; i < work->count; i++)
        for (int j = 0; j < work->steps[i].mix.count; j++)
            is[work->steps[i].mix.paint[j]] = 1;
    *pale = 0;
    for (size_t i = 0; i < recede_palette_count(palette); i++)
        if (is[i] && is_pale(palette, i)) {
            ++*pale;
            is[index_of(palette, "titanium white")] = 1;
            is[index_of(palette, recede_palette_paint(palette, i)->name + 5)] = 1;
        }
    for (size_t i = 0; i < recede_palette_count(palette); i++)
        tubes += is[i] && !is_pale(palette, i);
    return tubes;
}

static void no_more_is_squeezed_from_than_one_may(void **state)
{
    (void)state;
    static recede_work work;
    recede_plan *plan = oil_plan();
    const recede_palette *palette = recede_plan_palette(plan);
    double shares[3] = {0.3, 0.3, 0.4}, least = 0;
    int pale, all_pale = 0;
    for (int most = 11; most > 0; most--) {
        const recede_work_wish wish = {3, most};
        assert_int_equal(recede_work_of(plan, shares, &wish, NULL, NULL, NULL, &work, NULL),
                         RECEDE_OK);
        int tubes = squeezed(palette, &work, &pale);
        assert_int_equal(work.tubes, tubes);
        assert_int_equal(work.most_tubes, most < 10 ? most : 10); /* there are no more */
        assert_true(tubes <= most);
        assert_true(work.sum >= least);
        least = work.sum;
        all_pale += pale;
    }
    assert_true(all_pale > 5);
    recede_plan_free(plan);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_is_let_down_stays_with_its_tubes),
        cmocka_unit_test(let_down_from_elsewhere_is_a_tube),
        cmocka_unit_test(each_time_the_tube_least_missed_stays_at_home),
        cmocka_unit_test(no_more_is_squeezed_from_than_one_may),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

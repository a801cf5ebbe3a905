/*
 * The built-in own colours: found by name, and of the colours that natural
 * objects have. C. D. Hendley and S. Hecht, 'The Colors of Natural Objects and
 * Terrains', Journal of the Optical Society of America 39 (1949) 870-872: foliage
 * has dominant wavelengths of 557 to 574 nm, earths 576 to 589, water and sky 459
 * to 486; most excitation purities are 40 % or less. Against illuminant C, under
 * which the Munsell samples they matched with are specified: an assumption.
 */
#include "recede.h"

#include "support/assert_near.h"

#include <string.h>

enum { MOST_NAMES = 20 };

static recede_dominant under_c(const recede_own_entry *entry)
{
    recede_spectrum one;
    for (int i = 0; i < RECEDE_BANDS; i++)
        one.at[i] = 1;
    return recede_dominant_of_xyz(recede_xyz_under(&entry->reflectance, RECEDE_C),
                                  recede_xyz_under(&one, RECEDE_C));
}

static double value_of(const recede_own_entry *entry)
{
    return recede_value_of_y(recede_xyz_of_reflectance(&entry->reflectance).y);
}

static void assert_between_nm(const recede_own_entry *entry, double least, double most)
{
    assert_non_null(entry);
    recede_dominant d = under_c(entry);
    if (d.complementary || !(d.wavelength_nm >= least && d.wavelength_nm <= most))
        fail_msg("%s: %.1f nm%s, expected %.0f to %.0f", entry->name, d.wavelength_nm,
                 d.complementary ? " (complementary)" : "", least, most);
}

static void green_foliage_has_its_measured_dominant_wavelengths(void **state)
{
    (void)state;
    static const char *const greens[] = {"spring beech", "summer oak", "dark conifer",
                                         "meadow grass", "willow"};
    for (size_t i = 0; i < sizeof greens / sizeof *greens; i++)
        assert_between_nm(recede_foliage_named(greens[i]), 557, 574);
}

static const char *const earths[] = {"rock", "pale rock", "dark rock", "soil", "dry soil",
                                     "red soil", "path", "stubble", "sand", "brick", "bark",
                                     "reeds in winter"};
enum { EARTHS = sizeof earths / sizeof *earths };

static void earths_have_their_measured_dominant_wavelengths(void **state)
{
    (void)state;
    for (int i = 0; i < EARTHS; i++)
        assert_between_nm(recede_surface_named(earths[i]), 576, 589);
}

static void earths_have_their_measured_purities(void **state)
{
    (void)state;
    for (int i = 0; i < EARTHS; i++)
        assert_below(under_c(recede_surface_named(earths[i])).purity, 0.40);
}

static void water_has_its_measured_dominant_wavelengths(void **state)
{
    (void)state;
    assert_between_nm(recede_surface_named("water"), 459, 486);
}

/* Most of all that is built in, foliage too: two thirds at least. */
static void most_purities_are_40_percent_or_less(void **state)
{
    (void)state;
    size_t low = 0, all = recede_foliage_count() + recede_surface_count();
    for (size_t i = 0; i < recede_foliage_count(); i++)
        low += under_c(recede_foliage_at(i)).purity <= 0.40;
    for (size_t i = 0; i < recede_surface_count(); i++)
        low += under_c(recede_surface_at(i)).purity <= 0.40;
    assert_true(3 * low >= 2 * all);
}

/* Common practice, no source: how the named things stand to each other. */
static void things_stand_to_each_other_as_one_sees_them(void **state)
{
    (void)state;
    static const char *const lighter_first[][2] = {
        {"snow", "whitewash"}, {"whitewash", "pale rock"}, {"pale rock", "rock"},
        {"rock", "dark rock"}, {"dry soil", "soil"},       {"sand", "path"},
        {"path", "bark"},      {"stubble", "soil"},        {"rock", "slate"}};
    for (size_t i = 0; i < sizeof lighter_first / sizeof *lighter_first; i++)
        assert_true(value_of(recede_surface_named(lighter_first[i][0]))
                    > value_of(recede_surface_named(lighter_first[i][1])));
    assert_true(value_of(recede_foliage_named("spring beech"))
                > value_of(recede_foliage_named("summer oak")));
    assert_true(value_of(recede_foliage_named("summer oak"))
                > value_of(recede_foliage_named("dark conifer")));
    assert_true(under_c(recede_surface_named("brick")).wavelength_nm
                > under_c(recede_surface_named("dry soil")).wavelength_nm);
    assert_true(under_c(recede_surface_named("roof tile")).wavelength_nm
                > under_c(recede_surface_named("soil")).wavelength_nm);
    assert_true(value_of(recede_surface_named("snow")) > 9.5);
}

typedef struct list {
    size_t count;
    const recede_own_entry *(*at)(size_t index);
    const recede_own_entry *(*named)(const char *name);
    const char *basis; /* a word that must stand in it */
} list;

static void assert_list_in_order(const list *l)
{
    assert_in_range(l->count, 1, MOST_NAMES);
    for (size_t i = 0; i < l->count; i++) {
        const recede_own_entry *entry = l->at(i);
        assert_non_null(entry);
        assert_ptr_equal(l->named(entry->name), entry); /* so no name stands twice */
        assert_in_range(strlen(entry->name), 1, RECEDE_NAME_SIZE - 1);
        assert_non_null(strstr(entry->basis, l->basis));
        for (int band = 0; band < RECEDE_BANDS; band++)
            assert_true(entry->reflectance.at[band] > 0 && entry->reflectance.at[band] < 1);
    }
    assert_null(l->at(l->count));
    assert_null(l->at((size_t)-1));
    assert_null(l->named("nothing of the kind"));
    assert_null(l->named(""));
}

static void every_own_colour_is_found_and_says_what_it_rests_on(void **state)
{
    (void)state;
    const list foliage = {recede_foliage_count(), recede_foliage_at, recede_foliage_named,
                          "computed leaf model"};
    const list surfaces = {recede_surface_count(), recede_surface_at, recede_surface_named,
                           "invented"};
    assert_list_in_order(&foliage);
    assert_list_in_order(&surfaces);
}

static void names_are_exact(void **state)
{
    (void)state;
    assert_non_null(recede_surface_named("rock"));
    assert_null(recede_surface_named("Rock"));
    assert_null(recede_surface_named("roc"));
    assert_null(recede_surface_named("rock "));
    assert_null(recede_foliage_named("rock"));
    assert_null(recede_surface_named("summer oak"));
}

/* Invented spectra are smooth: no band stands out from its neighbours' mean by
 * more than one would see in a measurement. */
static void surfaces_are_smooth(void **state)
{
    (void)state;
    for (size_t i = 0; i < recede_surface_count(); i++) {
        const double *r = recede_surface_at(i)->reflectance.at;
        for (int band = 1; band < RECEDE_BANDS - 1; band++)
            assert_near(r[band], (r[band - 1] + r[band + 1]) / 2, 0.01);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(green_foliage_has_its_measured_dominant_wavelengths),
        cmocka_unit_test(earths_have_their_measured_dominant_wavelengths),
        cmocka_unit_test(earths_have_their_measured_purities),
        cmocka_unit_test(water_has_its_measured_dominant_wavelengths),
        cmocka_unit_test(most_purities_are_40_percent_or_less),
        cmocka_unit_test(things_stand_to_each_other_as_one_sees_them),
        cmocka_unit_test(every_own_colour_is_found_and_says_what_it_rests_on),
        cmocka_unit_test(names_are_exact),
        cmocka_unit_test(surfaces_are_smooth),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

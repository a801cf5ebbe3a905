/* Far foliage against what was matched outdoors: C. Hendley and S. Hecht, "The
 * Colors of Natural Objects and Terrains", Journal of the Optical Society of
 * America 39 (1949) 870-872. Water, sky and distant objects: dominant wavelengths
 * 459 to 486 nm; in the clearest weather met, nothing over 3.5 miles away with a
 * purity over 11 %; foliage 557 to 574 nm; earths 576 to 589 nm.
 *
 * Their matches were Munsell samples, so chromaticities are taken unadapted and
 * against illuminant C (an assumption). The table printed is in docs/physics.md. */
#include "air/views.h"

#define MILE_M 1609.344

enum { DISTANCES = 4 };
static const double miles[DISTANCES] = {3.5, 5.0, 10.0, 20.0};

static recede_xyz illuminant_c(void)
{
    recede_spectrum white;
    for (int i = 0; i < RECEDE_BANDS; i++)
        white.at[i] = 1.0;
    return recede_xyz_under(&white, RECEDE_C);
}

typedef struct far_colour { recede_dominant mean, shadow; } far_colour;

/* Summer oak, the mean of lit and shadow side, and the shadow side alone. */
static far_colour far_oak(double visibility_km, double side_deg, double distance_m)
{
    const recede_spectrum *oak = &recede_foliage_named("summer oak")->reflectance;
    view_scene scene = view_clear(visibility_km, 1.0, 40.0, side_deg);
    recede_spectrum lit = view_at(&scene, oak, &scene.light.lit, distance_m);
    recede_spectrum shadow = view_at(&scene, oak, &scene.light.shadow, distance_m), mean;
    for (int i = 0; i < RECEDE_BANDS; i++)
        mean.at[i] = (lit.at[i] + shadow.at[i]) / 2.0;
    return (far_colour){recede_dominant_of_xyz(recede_xyz_of_power(&mean), illuminant_c()),
                        recede_dominant_of_xyz(recede_xyz_of_power(&shadow), illuminant_c())};
}

static void print_row(double visibility_km, double side_deg)
{
    print_message("| %2.0f km, side %3.0f ", visibility_km, side_deg);
    for (int d = 0; d < DISTANCES; d++) {
        far_colour far = far_oak(visibility_km, side_deg, miles[d] * MILE_M);
        print_message("| %3.0f nm %4.1f %% (%3.0f nm %4.1f %%) ", far.mean.wavelength_nm,
                      100.0 * far.mean.purity, far.shadow.wavelength_nm,
                      100.0 * far.shadow.purity);
    }
    print_message("|\n");
}

static double largest_purity(double visibility_km, double side_deg)
{
    double largest = 0.0;
    for (double distance = 3.5; distance <= 30.0; distance += 0.5)
        largest = fmax(largest, far_oak(visibility_km, side_deg, distance * MILE_M).mean.purity);
    return largest;
}

/* In ordinary air within the published 11 %; at 40 km with the sun to the side
 * within the 2 points more that orders of scattering left out may change. The
 * paper does not say how clear its clearest weather was: with the sun behind at
 * 40 km the model has 13.0 %; at 80 km up to 17 %, where exact scattering has as
 * much (test_exact_scattering.c). */
static void far_foliage_is_as_grey_as_was_matched(void **state)
{
    (void)state;
    const double visibilities_km[] = {20.0, 40.0, 80.0}, sides_deg[] = {90.0, 120.0, 180.0};
    print_message("sun 40 deg: mean of lit and shadow (shadow alone) at 3.5, 5, 10, 20 miles\n");
    for (int k = 0; k < 9; k++)
        print_row(visibilities_km[k / 3], sides_deg[k % 3]);
    for (int k = 0; k < 3; k++)
        assert_below(largest_purity(20.0, sides_deg[k]), 0.11);
    for (int k = 0; k < 2; k++)
        assert_below(largest_purity(40.0, sides_deg[k]), 0.13);
}

/* Where there is colour enough to have a hue: within 486 nm and a painter's step
 * (10 nm) toward green; the shadow side alone within 486 nm and 2 nm. */
static void far_foliage_is_as_blue_as_was_matched(void **state)
{
    (void)state;
    const double visibilities_km[] = {20.0, 40.0, 80.0}, sides_deg[] = {90.0, 120.0, 180.0};
    for (int k = 0; k < 9; k++) {
        for (double distance = 3.5; distance <= 30.0; distance += 0.5) {
            far_colour far = far_oak(visibilities_km[k / 3], sides_deg[k % 3], distance * MILE_M);
            assert_int_equal(far.mean.complementary, 0);
            if (far.mean.purity > 0.05)
                assert_true(far.mean.wavelength_nm > 459.0 && far.mean.wavelength_nm < 496.5);
            if (far.shadow.purity > 0.05)
                assert_true(far.shadow.wavelength_nm > 459.0 && far.shadow.wavelength_nm < 488.0);
        }
    }
}

/* Near, in the same light: foliage in its greens. */
static void near_foliage_has_the_green_that_was_matched(void **state)
{
    (void)state;
    const char *const greens[] = {"spring beech", "summer oak", "dark conifer", "meadow grass"};
    view_scene scene = view_clear(20.0, 1.0, 40.0, 90.0);
    for (int k = 0; k < 4; k++) {
        const recede_own_entry *entry = recede_foliage_named(greens[k]);
        recede_spectrum near = view_at(&scene, &entry->reflectance, &scene.light.lit, 10.0);
        recede_dominant green = recede_dominant_of_xyz(recede_xyz_of_power(&near), illuminant_c());
        print_message("%-12s %.0f nm\n", greens[k], green.wavelength_nm);
        assert_int_equal(green.complementary, 0);
        assert_true(green.wavelength_nm > 557.0 && green.wavelength_nm < 574.0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(far_foliage_is_as_grey_as_was_matched),
        cmocka_unit_test(far_foliage_is_as_blue_as_was_matched),
        cmocka_unit_test(near_foliage_has_the_green_that_was_matched),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

/* The simple solar spectral model against its published worked example. */
#include "air/solar.h"

#include "air/constants.h"
#include "support/assert_near.h"

/* R. Bird and C. Riordan, SERI/TR-215-2436 (1984): output of the authors' own
 * program. Zenith angle 47.912086 deg, air mass 1.489954, pressure 101300 Pa,
 * ozone 0.344 atm-cm, water 1.42 cm, turbidity 0.1 at 500 nm with exponent
 * 1.14, albedo 0.945 at 400 nm with variation 0.095, asymmetry 0.65, ground
 * albedo 0.2, day 75. Direct normal and diffuse horizontal, W m-2 nm-1. */
static const struct { double nm, sun, sky; } worked[] = {
    {370.0, 0.433049, 0.225768}, {380.0, 0.464912, 0.216524}, {390.0, 0.469287, 0.197297},
    {400.0, 0.717152, 0.274637}, {410.0, 0.874312, 0.307391}, {420.0, 0.941763, 0.306076},
    {430.0, 0.899212, 0.271798}, {440.0, 1.08428, 0.306447},  {450.0, 1.22582, 0.325499},
    {460.0, 1.28898, 0.317221},  {470.0, 1.28951, 0.295317},  {480.0, 1.34785, 0.288303},
    {490.0, 1.28721, 0.258018},  {500.0, 1.31896, 0.248514},  {510.0, 1.35159, 0.24005},
    {520.0, 1.30278, 0.218669},  {530.0, 1.35788, 0.215912},  {540.0, 1.37568, 0.207676},
    {550.0, 1.38386, 0.198753},  {570.0, 1.35566, 0.177217},  {593.0, 1.3093, 0.154487},
    {610.0, 1.32519, 0.146302},  {630.0, 1.31209, 0.134205},  {656.0, 1.24363, 0.115969},
    {667.6, 1.26724, 0.113649},  {690.0, 1.11431, 0.092266},  {710.0, 1.19757, 0.0940247},
    {718.0, 1.04527, 0.0792312}, {724.4, 1.02242, 0.0759243}, {740.0, 1.11622, 0.0803746},
    {752.5, 1.11624, 0.0778408},
};
enum { WORKED = sizeof worked / sizeof worked[0] };

/* The sun's distance by J. Spencer, Search 2 (1971) 172, as in the report. */
static double distance_factor(int day)
{
    double angle = 2.0 * RECEDE_PI * (day - 1) / 365.0;
    return 1.00011 + 0.034221 * cos(angle) + 0.00128 * sin(angle) + 0.000719 * cos(2.0 * angle)
           + 0.000077 * sin(2.0 * angle);
}

static recede_solar_air worked_air(void)
{
    return (recede_solar_air){
        .sun_height_deg = 90.0 - 47.912086,
        .air_mass = 1.489954,
        .pressure = 1.0,
        .ozone_atm_cm = 0.344,
        .water_cm = 1.42,
        .asymmetry = 0.65,
        .ground_reflectance = 0.2,
        .diffuse_cosine = cos(47.912086 * RECEDE_DEGREE),
        .sun_distance = distance_factor(75),
    };
}

static void worked_example_is_met(void **state)
{
    (void)state;
    recede_solar_air air = worked_air();
    double worst = 0.0;
    assert_int_equal(recede_table_solar_count, WORKED);
    for (size_t i = 0; i < WORKED; i++) {
        double um = worked[i].nm / 1000.0, from_400 = log(um / 0.4);
        recede_solar_haze haze = {0.1 * pow(um / 0.5, -1.14),
                                  0.945 * exp(-0.095 * from_400 * from_400)};
        recede_solar_band band = recede_solar_band_at(worked[i].nm);
        recede_solar_irradiance found = recede_solar(&air, &band, haze);
        assert_near(found.sun / worked[i].sun, 1.0, 0.0005);
        assert_near(found.sky / worked[i].sky, 1.0, 0.0005);
        worst = fmax(worst, fmax(fabs(found.sun / worked[i].sun - 1.0),
                                 fabs(found.sky / worked[i].sky - 1.0)));
    }
    print_message("worked example: off by at most %.5f %%\n", 100.0 * worst);
}

static void bands_between_the_models_own_lie_on_straight_lines(void **state)
{
    (void)state;
    for (size_t i = 0; i < recede_table_solar_count; i++) {
        const recede_solar_band *own = &recede_table_solar[i];
        recede_solar_band found = recede_solar_band_at(own->wavelength_nm);
        assert_near(found.extraterrestrial_w_m2_nm, own->extraterrestrial_w_m2_nm, 1e-12);
        assert_near(found.water_per_cm, own->water_per_cm, 1e-12);
        assert_near(found.ozone_per_atm_cm, own->ozone_per_atm_cm, 1e-12);
        assert_near(found.mixed_gas, own->mixed_gas, 1e-12);
    }
    recede_solar_band half = recede_solar_band_at(560.0);
    assert_near(half.extraterrestrial_w_m2_nm, (1.892 + 1.84) / 2.0, 1e-12);
    assert_near(half.ozone_per_atm_cm, (0.085 + 0.12) / 2.0, 1e-12);
}

/* F. Kasten and A. Young 1989; values from memory. */
static void air_mass_is_that_of_kasten_and_young(void **state)
{
    (void)state;
    assert_near(recede_air_mass(30.0), 1.994, 0.0005);
    assert_near(recede_air_mass(0.0), 37.9, 0.05);
    assert_near(recede_air_mass(90.0), 1.0, 0.0005);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(worked_example_is_met),
        cmocka_unit_test(bands_between_the_models_own_lie_on_straight_lines),
        cmocka_unit_test(air_mass_is_that_of_kasten_and_young),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

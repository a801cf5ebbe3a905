/* The solar model against itself in extended precision, written anew in the order of
 * the report: R. Bird and C. Riordan, SERI/TR-215-2436 (1984), equations 2-1 to 3-8, with
 * the two constants of the authors' program (1.3366 in 2-4, 118.3 in 2-11). Air and sun
 * by chance. Seen to fail with one constant of water's absorption changed in the fourth digit:
 * tools/mutations.txt. */
#include "air/constants.h"
#include "air/solar.h"
#include "support/assert_near.h"
#include "support/chance.h"

typedef long double wide;
static const wide degree = 3.141592653589793238462643383279502884L / 180;

typedef struct { wide r, as, aa, o, w, u; } factors; /* T with the report's subscripts */

static factors factors_of(const recede_solar_air *air, const recede_solar_band *band,
                          recede_solar_haze haze, wide m, wide mo)
{
    wide um = (wide)band->wavelength_nm / 1000, mp = m * air->pressure;
    wide aw = band->water_per_cm, au = band->mixed_gas;
    factors t;
    t.r = expl(-mp / (um * um * um * um * (115.6406L - 1.3366L / (um * um))));     /* 2-4 */
    t.as = expl(-(wide)haze.albedo * haze.depth * m);                              /* 3-9 */
    t.aa = expl(-(1 - (wide)haze.albedo) * haze.depth * m);                        /* 3-10 */
    t.w = expl(-0.2385L * aw * air->water_cm * m
               / powl(1 + 20.07L * aw * air->water_cm * m, 0.45L));                /* 2-8 */
    t.o = expl(-(wide)band->ozone_per_atm_cm * air->ozone_atm_cm * mo);            /* 2-9 */
    t.u = expl(-1.41L * au * mp / powl(1 + 118.3L * au * mp, 0.45L));              /* 2-11 */
    return t;
}

static wide forward(wide asymmetry, wide cosine) /* 3-11 to 3-15 */
{
    wide alg = logl(1 - asymmetry);
    wide afs = alg * (1.459L + alg * (0.1595L + alg * 0.4129L));
    wide bfs = alg * (0.0783L + alg * (-0.3824L - alg * 0.5874L));
    return 1 - 0.5L * expl((afs + bfs * cosine) * cosine);
}

typedef struct { wide sun, sky; } expected;

static expected solar(const recede_solar_air *air, const recede_solar_band *band,
                      recede_solar_haze haze)
{
    wide sine = sinl(air->sun_height_deg * degree);
    wide mo = (1 + 22 / 6370.0L) / sqrtl(sine * sine + 2 * 22 / 6370.0L);          /* 2-10 */
    factors t = factors_of(air, band, haze, air->air_mass, mo);
    factors up = factors_of(air, band, haze, 1.8L, 1.8L);
    wide c = air->diffuse_cosine, rg = air->ground_reflectance;
    wide h0 = (wide)band->extraterrestrial_w_m2_nm * air->sun_distance;
    wide direct = h0 * t.r * t.as * t.aa * t.w * t.o * t.u;                        /* 2-1 */
    wide ir = h0 * c * t.o * t.u * t.w * t.aa * (1 - powl(t.r, 0.95L)) / 2;        /* 3-5 */
    wide ia = h0 * c * t.o * t.u * t.w * t.aa * powl(t.r, 1.5L) * (1 - t.as)
              * forward(air->asymmetry, c);                                        /* 3-6 */
    wide rs = up.u * up.w * up.aa * (0.5L * (1 - up.r)
              + (1 - forward(air->asymmetry, 1 / 1.8L)) * up.r * (1 - up.as));     /* 3-8 */
    wide ig = (direct * c + ir + ia) * rs * rg / (1 - rs * rg);                    /* 3-7 */
    wide um = (wide)band->wavelength_nm / 1000;
    return (expected){direct, (ir + ia + ig) * (um <= 0.45L ? powl(um + 0.55L, 1.8L) : 1)};
}

static void twenty_thousand_skies(void **state)
{
    (void)state;
    chance c = {19840101};
    double worst = 0;
    for (int i = 0; i < 20000; i++) {
        double height = chance_between(&c, 0.5, 90);
        double mass = recede_air_mass(height);
        recede_solar_air air = {
            .sun_height_deg = height, .air_mass = mass, .pressure = chance_between(&c, 0.6, 1.05),
            .ozone_atm_cm = chance_between(&c, 0.2, 0.5), .water_cm = chance_between(&c, 0.1, 5),
            .asymmetry = chance_between(&c, 0.4, 0.9),
            .ground_reflectance = chance_between(&c, 0, 0.9),
            .diffuse_cosine = 1 / mass, .sun_distance = chance_between(&c, 0.96, 1.04),
        };
        recede_solar_haze haze = {chance_between(&c, 0.01, 3), chance_between(&c, 0.6, 1)};
        recede_solar_band band = recede_solar_band_at(chance_between(&c, 380, 730));
        recede_solar_irradiance found = recede_solar(&air, &band, haze);
        expected should = solar(&air, &band, haze);
        double sun = (double)fabsl(found.sun - should.sun) / (1e-30 + (double)should.sun);
        double sky = (double)fabsl(found.sky - should.sky) / (1e-30 + (double)should.sky);
        assert_below(sun, 1e-11);
        assert_below(sky, 1e-11);
        worst = fmax(worst, fmax(sun, sky));
    }
    print_message("20000 skies: off by at most %.2g of the irradiance\n", worst);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(twenty_thousand_skies)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}

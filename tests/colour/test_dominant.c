/*
 * Dominant wavelength and purity (CIE 015), against the chromaticities that an
 * ITU recommendation gives for single wavelengths, and against a plain search over
 * the CIE's observer at 5 nm as Debian's package colord-data carries it.
 */
#include "recede.h"

#include "support/assert_near.h"
#include "support/cgats.h"

#include <stdlib.h>

static cgats observer;

typedef struct point { double x, y; } point;

static int read_observer(void **state)
{
    (void)state;
    cgats_read(COLORD "cmf/CIE1931-2deg-XYZ.cmf", &observer);
    return 0;
}

static recede_xyz xyz_at(double nm)
{
    return (recede_xyz){cgats_at(&observer, 0, nm), cgats_at(&observer, 1, nm),
                        cgats_at(&observer, 2, nm)};
}

static point chromaticity(recede_xyz c)
{
    return (point){c.x / (c.x + c.y + c.z), c.y / (c.x + c.y + c.z)};
}

static recede_xyz xyz_of_chromaticity(double x, double y)
{
    return (recede_xyz){x / y, 1, (1 - x - y) / y};
}

/* Light of share * one and the rest other, by chromaticity. */
static recede_xyz between(recede_xyz one, recede_xyz other, double share)
{
    point p = chromaticity(one), q = chromaticity(other);
    return xyz_of_chromaticity(share * p.x + (1 - share) * q.x, share * p.y + (1 - share) * q.y);
}

static double cross(point a, point b)
{
    return a.x * b.y - a.y * b.x;
}

/* Where the ray from white through a colour meets the piece from one to other:
 * how far along the ray (1: the colour) and along the piece (0 to 1). */
static int meet(point white, point colour, point one, point other, double *ray, double *piece)
{
    point d = {colour.x - white.x, colour.y - white.y};
    point e = {other.x - one.x, other.y - one.y};
    point o = {one.x - white.x, one.y - white.y};
    double turn = cross(d, e);
    *ray = cross(o, e) / turn;
    *piece = cross(o, d) / turn;
    return *ray > 0 && *piece >= 0 && *piece <= 1;
}

/* The share of the longer wavelength in the light at a place on the piece. */
static double share_at(recede_xyz one, recede_xyz other, double piece)
{
    double first = one.x + one.y + one.z, second = other.x + other.y + other.z;
    return piece * first / (piece * first + (1 - piece) * second);
}

/* The plain search: the locus as straight pieces of 5 nm, 380 to 730. */
static recede_dominant searched(recede_xyz colour, recede_xyz white)
{
    recede_dominant out = {0, 0, 0};
    double ray, piece;
    point w = chromaticity(white), c = chromaticity(colour);
    point mirrored = {2 * w.x - c.x, 2 * w.y - c.y};
    for (double nm = 380; nm < 730; nm += 5) {
        recede_xyz first = xyz_at(nm), second = xyz_at(nm + 5);
        point one = chromaticity(first), other = chromaticity(second);
        if (meet(w, c, one, other, &ray, &piece))
            return (recede_dominant){nm + 5 * share_at(first, second, piece), 1 / ray, 0};
        if (meet(w, mirrored, one, other, &ray, &piece))
            out.wavelength_nm = nm + 5 * share_at(first, second, piece);
    }
    out.complementary = 1;
    meet(w, c, chromaticity(xyz_at(380)), chromaticity(xyz_at(730)), &ray, &piece);
    out.purity = 1 / ray;
    return out;
}

/* The primaries of ITU-R BT.2020 are single wavelengths: chromaticities to three
 * decimals from the recommendation, wavelengths from memory. */
static void single_wavelengths_of_the_itu(void **state)
{
    (void)state;
    static const struct { double x, y, nm; } primaries[] = {
        {0.708, 0.292, 630}, {0.170, 0.797, 532}, {0.131, 0.046, 467}};
    recede_xyz d65 = xyz_of_chromaticity(0.3127, 0.3290);
    for (int i = 0; i < 3; i++) {
        recede_xyz light = xyz_of_chromaticity(primaries[i].x, primaries[i].y);
        recede_dominant d = recede_dominant_of_xyz(light, d65);
        assert_near(d.wavelength_nm, primaries[i].nm, 0.3);
        assert_near(d.purity, 1, 0.003);
        assert_int_equal(d.complementary, 0);
    }
}

/* Dominant wavelengths of the sRGB primaries against D65: 611.4, 549.1 and 464.2
 * nm, from memory. */
static void the_srgb_primaries(void **state)
{
    (void)state;
    static const double nm[3] = {611.4, 549.1, 464.2};
    for (int i = 0; i < 3; i++) {
        recede_xyz colour = recede_xyz_of_srgb((recede_srgb){i == 0, i == 1, i == 2});
        recede_dominant d = recede_dominant_of_xyz(colour, recede_white());
        assert_near(d.wavelength_nm, nm[i], 0.3);
        assert_int_equal(d.complementary, 0);
    }
}

/* One band alone is that band. Below 420 and above 680 nm the locus hardly moves. */
static void one_band_alone_is_pure(void **state)
{
    (void)state;
    for (int band = 0; band < RECEDE_BANDS; band++) {
        recede_spectrum power = {{0}};
        double nm = RECEDE_FIRST_NM + RECEDE_STEP_NM * band;
        power.at[band] = 1;
        recede_dominant d = recede_dominant_of_xyz(recede_xyz_of_power(&power), recede_white());
        assert_near(d.purity, 1, 1e-3);
        if (nm >= 420 && nm <= 680)
            assert_near(d.wavelength_nm, nm, 1e-6);
    }
}

/* Half way between the library's bands the cubic must find the CIE's locus. Below
 * 430 and above 650 nm a wavelength hardly changes the chromaticity. */
static void between_bands_the_locus_is_followed(void **state)
{
    (void)state;
    for (double nm = 435; nm <= 645; nm += 10) {
        recede_dominant d = recede_dominant_of_xyz(xyz_at(nm), recede_white());
        assert_near(d.wavelength_nm, nm, 0.2);
        assert_near(d.purity, 1, 0.005);
    }
}

static void purity_is_the_share_of_the_way(void **state)
{
    (void)state;
    for (double nm = 435; nm <= 650; nm += 5)
        for (int tenth = 1; tenth < 10; tenth++) {
            int on_a_band = fmod(nm, 10) == 0;
            recede_xyz mixed = between(xyz_at(nm), recede_white(), tenth / 10.0);
            recede_dominant d = recede_dominant_of_xyz(mixed, recede_white());
            assert_near(d.purity, tenth / 10.0, on_a_band ? 1e-9 : 0.005);
            assert_near(d.wavelength_nm, nm, on_a_band ? 1e-6 : 0.2);
        }
}

static void purples_have_the_complement_and_purity_to_the_purples(void **state)
{
    (void)state;
    recede_xyz white = recede_white(), violet = xyz_at(380), red = xyz_at(730);
    for (int i = 2; i <= 8; i++) {
        recede_xyz purple = between(violet, red, i / 10.0);
        for (int tenth = 1; tenth <= 10; tenth++) {
            recede_xyz mixed = between(purple, white, tenth / 10.0);
            recede_dominant d = recede_dominant_of_xyz(mixed, white);
            assert_int_equal(d.complementary, 1);
            assert_near(d.purity, tenth / 10.0, 1e-9);
            assert_in_range((int)d.wavelength_nm, 490, 570);
        }
    }
}

/* The library is good to 0.2 nm (above), the search's straight pieces to 0.3: by
 * that much a place on them depends on whether XYZ or x, y runs evenly. */
static void the_plain_search_agrees(void **state)
{
    (void)state;
    recede_xyz white = recede_white();
    int purples = 0;
    srand(1);
    for (int i = 0; i < 2000; i++) {
        recede_xyz colour = recede_xyz_of_srgb((recede_srgb){
            rand() / (double)RAND_MAX, rand() / (double)RAND_MAX, rand() / (double)RAND_MAX});
        recede_dominant found = recede_dominant_of_xyz(colour, white);
        recede_dominant expected = searched(colour, white);
        int at_an_end = expected.wavelength_nm < 440 || expected.wavelength_nm > 640;
        if (at_an_end)
            continue;
        assert_int_equal(found.complementary, expected.complementary);
        assert_near(found.wavelength_nm, expected.wavelength_nm, 0.5);
        assert_near(found.purity, expected.purity, 0.006);
        purples += found.complementary;
    }
    assert_in_range(purples, 100, 1900);
}

static void illuminant_a_is_yellow_and_c_is_blue(void **state)
{
    (void)state;
    recede_spectrum lamp = recede_illuminant_power(RECEDE_A);
    recede_spectrum sky = recede_illuminant_power(RECEDE_C);
    recede_xyz equal = {1, 1, 1};
    recede_dominant a = recede_dominant_of_xyz(recede_xyz_of_power(&lamp), equal);
    recede_dominant c = recede_dominant_of_xyz(recede_xyz_of_power(&sky), equal);
    recede_dominant searched_a = searched(recede_xyz_of_power(&lamp), equal);
    assert_near(a.wavelength_nm, searched_a.wavelength_nm, 0.2);
    assert_near(a.purity, searched_a.purity, 0.005);
    assert_in_range((int)a.wavelength_nm, 575, 590);
    assert_in_range((int)c.wavelength_nm, 450, 485);
}

static void greys_and_black_have_none(void **state)
{
    (void)state;
    recede_xyz white = recede_white();
    const recede_xyz achromatic[] = {
        {0, 0, 0}, white, {white.x / 3, white.y / 3, white.z / 3}, {-1, -1, -1}, {NAN, 1, 1}};
    for (int i = 0; i < 5; i++) {
        recede_dominant d = recede_dominant_of_xyz(achromatic[i], white);
        assert_true(d.wavelength_nm == 0 && d.purity == 0 && d.complementary == 0);
    }
}

static void purity_and_wavelength_stay_in_range_all_round(void **state)
{
    (void)state;
    recede_xyz white = recede_white();
    point w = chromaticity(white);
    for (int i = 0; i < 3600; i++) {
        double turn = i * 0.1 * acos(-1) / 180, far = i % 2 ? 0.05 : 0.28;
        recede_xyz colour = xyz_of_chromaticity(w.x + far * cos(turn), w.y + far * sin(turn));
        recede_dominant d = recede_dominant_of_xyz(colour, white);
        assert_true(d.wavelength_nm >= 380 && d.wavelength_nm <= 730);
        assert_true(d.purity > 0 && d.purity <= 1);
    }
}

/* CIE 015: u' = 4x / (-2x + 12y + 3), v' = 9y / (-2x + 12y + 3); D65 lies at
 * 0.1978, 0.4683. */
static void uniform_chromaticity(void **state)
{
    (void)state;
    double u, v;
    recede_uv_of_xyz(xyz_of_chromaticity(0.31272, 0.32903), &u, &v);
    assert_near(u, 0.1978, 0.00005);
    assert_near(v, 0.4683, 0.00005);
    for (int i = 1; i < 9; i++) {
        double x = i / 10.0, y = (1 - x) / 2, below = -2 * x + 12 * y + 3;
        recede_uv_of_xyz(xyz_of_chromaticity(x, y), &u, &v);
        assert_near(u, 4 * x / below, 1e-15);
        assert_near(v, 9 * y / below, 1e-15);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(single_wavelengths_of_the_itu),
        cmocka_unit_test(the_srgb_primaries),
        cmocka_unit_test(one_band_alone_is_pure),
        cmocka_unit_test(between_bands_the_locus_is_followed),
        cmocka_unit_test(purity_is_the_share_of_the_way),
        cmocka_unit_test(purples_have_the_complement_and_purity_to_the_purples),
        cmocka_unit_test(the_plain_search_agrees),
        cmocka_unit_test(illuminant_a_is_yellow_and_c_is_blue),
        cmocka_unit_test(greys_and_black_have_none),
        cmocka_unit_test(purity_and_wavelength_stay_in_range_all_round),
        cmocka_unit_test(uniform_chromaticity),
    };
    return cmocka_run_group_tests(tests, read_observer, NULL);
}

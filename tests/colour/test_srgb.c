/*
 * sRGB against Little CMS, a general-purpose colour library, and against the
 * figures printed in IEC 61966-2-1. Both have D65 as 0.3127, 0.3290; XYZ is
 * scaled from the library's white to that one before it is compared.
 */
#include "recede.h"

#include "support/assert_near.h"

#include <lcms2.h>
#include <stdlib.h>

typedef struct little_cms {
    cmsHTRANSFORM to_xyz, to_rgb;
    cmsCIEXYZ white;
} little_cms;

static const cmsCIExyY d65 = {0.3127, 0.3290, 1.0};

/* A profile made from the standard's chromaticities and curve. */
static cmsHPROFILE srgb_profile(void)
{
    static const double curve[5] = {2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045};
    static const cmsCIExyYTRIPLE primaries = {
        {0.64, 0.33, 1}, {0.30, 0.60, 1}, {0.15, 0.06, 1}};
    cmsToneCurve *c = cmsBuildParametricToneCurve(NULL, 4, curve);
    cmsToneCurve *curves[3] = {c, c, c};
    cmsHPROFILE profile = cmsCreateRGBProfile(&d65, &primaries, curves);
    cmsFreeToneCurve(c);
    return profile;
}

static little_cms open_little_cms(void)
{
    little_cms l;
    cmsHPROFILE rgb = srgb_profile(), xyz = cmsCreateXYZProfile();
    cmsUInt32Number flags = cmsFLAGS_NOOPTIMIZE | cmsFLAGS_NOCACHE;
    l.to_xyz = cmsCreateTransform(rgb, TYPE_RGB_DBL, xyz, TYPE_XYZ_DBL,
                                  INTENT_RELATIVE_COLORIMETRIC, flags);
    l.to_rgb = cmsCreateTransform(xyz, TYPE_XYZ_DBL, rgb, TYPE_RGB_DBL,
                                  INTENT_RELATIVE_COLORIMETRIC, flags);
    cmsCloseProfile(rgb);
    cmsCloseProfile(xyz);
    assert_non_null(l.to_xyz);
    assert_non_null(l.to_rgb);
    cmsxyY2XYZ(&l.white, &d65);
    return l;
}

static void close_little_cms(little_cms *l)
{
    cmsDeleteTransform(l->to_xyz);
    cmsDeleteTransform(l->to_rgb);
}

/* Profiles connect through D50: there and back by lcms's own adaptation. */
static cmsCIEXYZ adapt(cmsCIEXYZ colour, const cmsCIEXYZ *from, const cmsCIEXYZ *to)
{
    cmsCIEXYZ out;
    assert_true(cmsAdaptToIlluminant(&out, from, to, &colour));
    return out;
}

/* From the library's white to the standard's. */
static cmsCIEXYZ to_standard(recede_xyz c, cmsCIEXYZ white)
{
    recede_xyz own = recede_white();
    return (cmsCIEXYZ){c.x / own.x * white.X, c.y / own.y * white.Y, c.z / own.z * white.Z};
}

static recede_srgb random_srgb(void)
{
    return (recede_srgb){rand() / (double)RAND_MAX, rand() / (double)RAND_MAX,
                         rand() / (double)RAND_MAX};
}

static void xyz_is_that_of_little_cms(void **state)
{
    (void)state;
    little_cms l = open_little_cms();
    srand(1);
    for (int i = 0; i < 1000; i++) {
        recede_srgb srgb = random_srgb();
        double in[3] = {srgb.r, srgb.g, srgb.b}, out[3];
        cmsDoTransform(l.to_xyz, in, out, 1);
        cmsCIEXYZ expected = adapt((cmsCIEXYZ){out[0], out[1], out[2]}, cmsD50_XYZ(), &l.white);
        cmsCIEXYZ found = to_standard(recede_xyz_of_srgb(srgb), l.white);
        assert_near(found.X, expected.X, 1e-4);
        assert_near(found.Y, expected.Y, 1e-4);
        assert_near(found.Z, expected.Z, 1e-4);
    }
    close_little_cms(&l);
}

static void srgb_is_that_of_little_cms(void **state)
{
    (void)state;
    little_cms l = open_little_cms();
    srand(2);
    for (int i = 0; i < 1000; i++) {
        recede_xyz colour = recede_xyz_of_srgb(random_srgb());
        recede_srgb found = recede_srgb_of_xyz(colour);
        cmsCIEXYZ d50 = adapt(to_standard(colour, l.white), &l.white, cmsD50_XYZ());
        double in[3] = {d50.X, d50.Y, d50.Z}, out[3];
        cmsDoTransform(l.to_rgb, in, out, 1);
        assert_near(found.r, out[0], 1e-4);
        assert_near(found.g, out[1], 1e-4);
        assert_near(found.b, out[2], 1e-4);
    }
    close_little_cms(&l);
}

/* IEC 61966-2-1 prints the matrix with four decimals. */
static void the_primaries_have_the_standards_xyz(void **state)
{
    (void)state;
    static const double printed[3][3] = {
        {0.4124, 0.2126, 0.0193}, {0.3576, 0.7152, 0.1192}, {0.1805, 0.0722, 0.9505}};
    cmsCIEXYZ white;
    cmsxyY2XYZ(&white, &d65);
    for (int i = 0; i < 3; i++) {
        recede_srgb primary = {i == 0, i == 1, i == 2};
        cmsCIEXYZ found = to_standard(recede_xyz_of_srgb(primary), white);
        assert_near(found.X, printed[i][0], 1e-4);
        assert_near(found.Y, printed[i][1], 1e-4);
        assert_near(found.Z, printed[i][2], 1e-4);
    }
}

/* The curve's figures in IEC 61966-2-1: straight to 0.04045, then a power. */
static void the_curve_is_the_standards(void **state)
{
    (void)state;
    static const double encoded[] = {0, 0.02, 0.04045, 0.04046, 0.2, 0.5, 0.9, 1};
    for (size_t i = 0; i < sizeof encoded / sizeof *encoded; i++) {
        double c = encoded[i];
        double linear = c <= 0.04045 ? c / 12.92 : pow((c + 0.055) / 1.055, 2.4);
        assert_near(recede_xyz_of_srgb((recede_srgb){c, c, c}).y, linear, 1e-14);
    }
}

static void white_and_greys_are_exact(void **state)
{
    (void)state;
    recede_srgb white = recede_srgb_of_xyz(recede_white());
    assert_true(white.r == 1 && white.g == 1 && white.b == 1);
    recede_srgb black = recede_srgb_of_xyz((recede_xyz){0, 0, 0});
    assert_true(black.r == 0 && black.g == 0 && black.b == 0);
    for (int i = 0; i <= 255; i++) {
        double c = i / 255.0;
        recede_srgb grey = recede_srgb_of_xyz(recede_xyz_of_srgb((recede_srgb){c, c, c}));
        assert_near(grey.r, c, 1e-14);
        assert_near(grey.g, grey.r, 1e-15);
        assert_near(grey.b, grey.r, 1e-15);
    }
}

/* Also beyond the range: nothing is clipped. The standard's two thresholds do
 * not quite meet; between them the way back is off by 1e-7 or so. */
static void there_and_back(void **state)
{
    (void)state;
    srand(3);
    for (int i = 0; i < 2000; i++) {
        recede_srgb in = random_srgb();
        in.r = in.r * 2 - 0.5;
        in.b = in.b * 2 - 0.5;
        recede_srgb out = recede_srgb_of_xyz(recede_xyz_of_srgb(in));
        assert_near(out.r, in.r, 1e-6);
        assert_near(out.g, in.g, 1e-6);
        assert_near(out.b, in.b, 1e-6);
    }
}

static void a_colour_has_all_its_forms(void **state)
{
    (void)state;
    recede_srgb srgb = {0.2, 0.5, 0.7};
    recede_xyz xyz = recede_xyz_of_srgb(srgb);
    recede_colour c = recede_colour_of_xyz(xyz);
    recede_lab lab = recede_lab_of_xyz(xyz, recede_white());
    recede_lch lch = recede_lch_of_lab(lab);
    assert_memory_equal(&c.xyz, &xyz, sizeof xyz);
    assert_memory_equal(&c.lab, &lab, sizeof lab);
    assert_memory_equal(&c.lch, &lch, sizeof lch);
    assert_near(c.srgb.r, srgb.r, 1e-12);
    assert_near(c.srgb.g, srgb.g, 1e-12);
    assert_near(c.srgb.b, srgb.b, 1e-12);
    assert_near(c.value, recede_value_of_y(xyz.y), 0);
}

static void a_colour_is_clipped_for_show(void **state)
{
    (void)state;
    recede_colour vivid = recede_colour_of_xyz(recede_xyz_of_srgb((recede_srgb){1.5, -0.5, 0.5}));
    assert_true(vivid.srgb.r == 1 && vivid.srgb.g == 0);
    assert_near(vivid.srgb.b, 0.5, 1e-9);
    recede_xyz white = recede_white();
    recede_colour bright = recede_colour_of_xyz((recede_xyz){2 * white.x, 2, 2 * white.z});
    assert_true(bright.value == 10 && bright.lab.l > 100);
    recede_colour black = recede_colour_of_xyz((recede_xyz){0, 0, 0});
    assert_true(black.value == 0 && black.srgb.r == 0 && black.lch.c == 0 && black.lch.h_deg == 0);
    recede_colour below = recede_colour_of_xyz((recede_xyz){-0.1, -0.1, -0.1});
    assert_true(below.value == 0 && below.srgb.g == 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(xyz_is_that_of_little_cms),
        cmocka_unit_test(srgb_is_that_of_little_cms),
        cmocka_unit_test(the_primaries_have_the_standards_xyz),
        cmocka_unit_test(the_curve_is_the_standards),
        cmocka_unit_test(white_and_greys_are_exact),
        cmocka_unit_test(there_and_back),
        cmocka_unit_test(a_colour_has_all_its_forms),
        cmocka_unit_test(a_colour_is_clipped_for_show),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

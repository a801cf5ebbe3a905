/* What a PNG says about its colours: profiles made by Little CMS, and chunks. */
#include <lcms2.h>
#include <zlib.h>

#include "file/icc.h"
#include "file/png_read.h"
#include "file/pngs.h"
#include "support/allocator.h"

static recede_file_problem problem;
static recede_png_photo photo;

typedef struct {
    unsigned char bytes[8192];
    cmsUInt32Number size;
} profile;
static profile current; /* what add_profile puts in */

typedef struct {
    const char *name;
    double white[2], primary[3][2];
    double exponent; /* 0: sRGB's curve; else of a pure power */
    int is_srgb;
} space;

/* White and primaries: sRGB IEC 61966-2-1; D65 P3 SMPTE EG 432-1; ITU-R BT.2020. */
#define D65 {0.3127, 0.3290}
#define SRGB {{0.64, 0.33}, {0.30, 0.60}, {0.15, 0.06}}
static const space spaces[] = {
    {"sRGB", D65, SRGB, 0, 1},
    {"sRGB's primaries, linear", D65, SRGB, 1.0, 0},
    {"sRGB's primaries, 1.8", D65, SRGB, 1.8, 0},
    {"P3's primaries, sRGB's curve", D65, {{0.680, 0.320}, {0.265, 0.690}, {0.150, 0.060}}, 0, 0},
    {"BT.2020's primaries", D65, {{0.708, 0.292}, {0.170, 0.797}, {0.131, 0.046}}, 0, 0},
};

static profile profile_of(const space *s, int as_table)
{
    static cmsUInt16Number table[1024];
    profile out = {.size = 0};
    const double formula[5] = {2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045};
    cmsCIExyY white = {s->white[0], s->white[1], 1};
    cmsCIExyYTRIPLE p = {{s->primary[0][0], s->primary[0][1], 1},
                         {s->primary[1][0], s->primary[1][1], 1},
                         {s->primary[2][0], s->primary[2][1], 1}};
    for (int i = 0; i < 1024; i++) {
        double v = i / 1023.0;
        double y = v <= 0.04045 ? v / 12.92 : pow((v + 0.055) / 1.055, 2.4);
        table[i] = (cmsUInt16Number)(y * 65535 + 0.5);
    }
    cmsToneCurve *curve = s->exponent > 0 ? cmsBuildGamma(NULL, s->exponent)
                          : as_table      ? cmsBuildTabulatedToneCurve16(NULL, 1024, table)
                                          : cmsBuildParametricToneCurve(NULL, 4, formula);
    cmsToneCurve *curves[3] = {curve, curve, curve};
    cmsHPROFILE made = cmsCreateRGBProfile(&white, &p, curves);
    if (as_table)
        cmsSetProfileVersion(made, 2.1);
    assert_true(cmsSaveProfileToMem(made, NULL, &out.size));
    assert_true(out.size <= sizeof out.bytes);
    assert_true(cmsSaveProfileToMem(made, out.bytes, &out.size));
    cmsCloseProfile(made);
    cmsFreeToneCurve(curve);
    return out;
}

static void profiles_are_told_by_what_they_hold(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof spaces / sizeof spaces[0]; i++)
        for (int as_table = 0; as_table < 2; as_table++) {
            profile p = profile_of(spaces + i, as_table);
            if (recede_icc_is_srgb(p.bytes, p.size) != spaces[i].is_srgb)
                fail_msg("%s, table %d", spaces[i].name, as_table);
        }
}

static void any_bytes_are_no_profile(void **state)
{
    profile p = profile_of(spaces, 0), whole = p;
    (void)state;
    for (size_t size = 0; size < p.size; size++) {
        unsigned char *part = malloc(size ? size : 1);
        memcpy(part, p.bytes, size);
        recede_icc_is_srgb(part, size); /* a sanitizer sees what it reads */
        free(part);
    }
    for (size_t at = 0; at < p.size; at++)
        for (int bit = 0; bit < 8; bit++) {
            unsigned char *changed = malloc(p.size);
            memcpy(changed, p.bytes, p.size);
            changed[at] ^= (unsigned char)(1 << bit);
            recede_icc_is_srgb(changed, p.size);
            free(changed);
        }
    memcpy(whole.bytes + 16, "GRAY", 4);
    assert_int_equal(recede_icc_is_srgb(whole.bytes, whole.size), 0);
}

static void add_profile(png_structp png, png_infop info)
{
    png_set_iCCP(png, info, "camera", 0, current.bytes, current.size);
}

static void read_with(void (*more)(png_structp, png_infop))
{
    png_kind kind = {.type = PNG_COLOR_TYPE_RGB, .depth = 16, .more = more};
    png_bytes file = pngs_write(&kind);
    if (recede_png_read("card.png", file.bytes, file.size, NULL, &photo, &problem))
        fail_msg("%s", problem.text);
    free(file.bytes);
}

static void expect_remark(const char *part)
{
    if (part[0] ? !strstr(photo.remark, part) : photo.remark[0])
        fail_msg("\"%s\", expected \"%s\"", photo.remark, part);
    recede_png_photo_free(&photo, NULL);
}

static void another_profile_than_srgb_is_told(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof spaces / sizeof spaces[0]; i++) {
        current = profile_of(spaces + i, 0);
        read_with(add_profile);
        expect_remark(spaces[i].is_srgb ? "" : "Its colour profile is not sRGB");
    }
}

static void a_profile_that_is_none_is_told(void **state)
{
    png_kind kind = {.type = PNG_COLOR_TYPE_RGB, .depth = 8, .more = add_profile};
    (void)state;
    current = profile_of(spaces, 0);
    png_bytes file = pngs_write(&kind);
    unsigned char *chunk = file.bytes + 33; /* follows IHDR */
    assert_memory_equal(chunk + 4, "iCCP", 4);
    size_t length = (size_t)chunk[2] << 8 | chunk[3];
    memset(chunk + 8 + 20, 0x5A, 40);
    unsigned long sum = crc32(0, chunk + 4, (uInt)length + 4);
    for (int i = 0; i < 4; i++)
        chunk[8 + length + (size_t)i] = (unsigned char)(sum >> (24 - 8 * i));
    assert_int_equal(recede_png_read("card.png", file.bytes, file.size, NULL, &photo, &problem),
                     0);
    expect_remark("Its colour profile cannot be made sense of");
    free(file.bytes);
}

/* libpng leaves a profile out when memory is short, and goes on: the colours would
 * then depend on it. */
static void no_profile_is_lost_for_want_of_memory(void **state)
{
    png_kind kind = {.type = PNG_COLOR_TYPE_RGB, .depth = 8, .more = add_profile};
    (void)state;
    current = profile_of(spaces + 3, 0);
    png_bytes file = pngs_write(&kind);
    for (size_t at = 1;; at++) {
        test_memory memory;
        recede_allocator allocator = test_allocator(&memory, at);
        int result =
            recede_png_read("card.png", file.bytes, file.size, &allocator, &photo, &problem);
        if (result == 0) {
            assert_true(memory.calls < at);
            assert_non_null(strstr(photo.remark, "not sRGB"));
            recede_png_photo_free(&photo, &allocator);
            break;
        }
        assert_non_null(strstr(problem.text, "memory"));
        assert_int_equal(memory.live, 0);
    }
    free(file.bytes);
}

static double exponent_written; /* gAMA */

static void add_gamma(png_structp png, png_infop info)
{
    png_set_gAMA(png, info, exponent_written);
}

static void add_gamma_and_srgb(png_structp png, png_infop info)
{
    png_set_sRGB(png, info, PNG_sRGB_INTENT_PERCEPTUAL);
    png_set_gAMA(png, info, 0.45455);
}

/* Samples coded by another exponent, as sRGB codes the same light. */
static void assert_coded_anew(double exponent)
{
    png_kind kind = {.type = PNG_COLOR_TYPE_RGB, .depth = 16};
    for (size_t i = 0; i < PNGS_PIXELS * 3; i++) {
        size_t x = i / 3 % PNGS_WIDTH, y = i / 3 / PNGS_WIDTH;
        double light = pow(pngs_expected(&kind, x, y, (int)(i % 3)) / 65535.0, exponent);
        double coded = light > 0.0031308 ? 1.055 * pow(light, 1 / 2.4) - 0.055 : 12.92 * light;
        assert_near(photo.rgb[i], coded * 65535, 0.500001);
    }
}

static void an_exponent_is_undone(void **state)
{
    static const double exponents[] = {1.0, 1 / 1.8, 0.9};
    (void)state;
    for (size_t i = 0; i < 3; i++) {
        exponent_written = exponents[i];
        read_with(add_gamma);
        assert_coded_anew(1 / (floor(exponents[i] * 100000 + 0.5) / 100000));
        expect_remark(i == 0 ? "coded with the exponent 1, and was read so"
                      : i == 1 ? "coded with the exponent 1.8, and"
                               : "coded with the exponent 1.111, and");
    }
    exponent_written = 1 / 2.2;
    read_with(add_gamma);
    expect_remark("");
    exponent_written = 30;
    read_with(add_gamma);
    expect_remark("makes no sense");
    read_with(add_gamma_and_srgb);
    expect_remark("");
}

static void add_primaries(png_structp png, png_infop info)
{
    png_set_cHRM(png, info, 0.3127, 0.329, 0.708, 0.292, 0.170, 0.797, 0.131, 0.046);
}

static void add_srgb_primaries(png_structp png, png_infop info)
{
    png_set_cHRM(png, info, 0.3127, 0.329, 0.64, 0.33, 0.30, 0.60, 0.15, 0.06);
}

static void add_both(png_structp png, png_infop info)
{
    exponent_written = 1;
    add_gamma(png, info);
    add_primaries(png, info);
}

static void other_primaries_are_told(void **state)
{
    (void)state;
    read_with(add_primaries);
    expect_remark("Its primaries are not sRGB's");
    read_with(add_srgb_primaries);
    expect_remark("");
    read_with(add_both);
    expect_remark("was read so. Its primaries are not sRGB's");
}

/* cICP (PNG, third edition; code points of ITU-T H.273), which libpng may not know. */
static void expect_coding(const unsigned char coding[4], const char *remark)
{
    png_kind kind = {.type = PNG_COLOR_TYPE_RGB, .depth = 8};
    png_bytes file = pngs_write(&kind);
    unsigned char chunk[16] = {0, 0, 0, 4, 'c', 'I', 'C', 'P'};
    memcpy(chunk + 8, coding, 4);
    unsigned long sum = crc32(0, chunk + 4, 8);
    for (int i = 0; i < 4; i++)
        chunk[12 + i] = (unsigned char)(sum >> (24 - 8 * i));
    unsigned char *bytes = malloc(file.size + 16);
    memcpy(bytes, file.bytes, 33);
    memcpy(bytes + 33, chunk, 16);
    memcpy(bytes + 49, file.bytes + 33, file.size - 33);
    assert_int_equal(recede_png_read("card.png", bytes, file.size + 16, NULL, &photo, &problem),
                     0);
    expect_remark(remark);
    free(bytes);
    free(file.bytes);
}

static void a_coding_by_numbers_is_told(void **state)
{
    static const unsigned char srgb[4] = {1, 13, 0, 1}, p3[4] = {12, 13, 0, 1},
                               pq[4] = {9, 16, 0, 1};
    (void)state;
    expect_coding(srgb, "");
    expect_coding(p3, "The file says that its colours are not sRGB");
    expect_coding(pq, "The file says that its colours are not sRGB");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(profiles_are_told_by_what_they_hold),
        cmocka_unit_test(any_bytes_are_no_profile),
        cmocka_unit_test(another_profile_than_srgb_is_told),
        cmocka_unit_test(a_profile_that_is_none_is_told),
        cmocka_unit_test(no_profile_is_lost_for_want_of_memory),
        cmocka_unit_test(an_exponent_is_undone),
        cmocka_unit_test(other_primaries_are_told),
        cmocka_unit_test(a_coding_by_numbers_is_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

/* Measurement files against figures from outside: the CIE's test colour samples, the
 * interpolation's published properties, and CAT16 computed here. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "support/assert_near.h"
#include "support/cgats.h"
#include "text/buffer.h"
#include "text/cgats.h"
#include "text/cgats_bands.h"

static void read_text(const char *text, size_t size, recede_measurements *out)
{
    recede_text_error error = {0};
    if (recede_measurements_read(text, size, NULL, out, &error))
        fail_msg("%zu:%zu: %s", error.line, error.column, error.what);
}

static void read_path(const char *path, recede_measurements *out)
{
    enum { MOST = 65536 };
    static char bytes[MOST];
    FILE *file = fopen(path, "rb");
    if (!file)
        fail_msg("%s cannot be opened (package colord-data)", path);
    size_t size = fread(bytes, 1, sizeof bytes, file);
    fclose(file);
    read_text(bytes, size, out);
}

/* The first block of code of a document is a file that is read. */
static void the_documented_file_is_read(void **state)
{
    (void)state;
    enum { MOST = 65536 };
    static char bytes[MOST];
    FILE *file = fopen("docs/measurements.md", "rb");
    assert_non_null(file);
    bytes[fread(bytes, 1, MOST - 1, file)] = '\0';
    fclose(file);
    const char *start = strstr(bytes, "```\n"), *end = start ? strstr(start + 4, "```\n") : NULL;
    assert_non_null(end);
    recede_measurements found;
    const recede_measurement *m = NULL;
    read_text(start + 4, (size_t)(end - start - 4), &found);
    assert_int_equal(recede_measurements_named(&found, "my green, 1 to 3", &m), 1);
    assert_near(m->reflectance.at[0], 0.091, 1e-15);
    assert_near(m->reflectance.at[10], 0.195, 1e-15);
    assert_near(m->reflectance.at[35], 0.297, 1e-15);
    recede_measurements_free(&found);
}

/* ---- the test colour samples */

/* Chromaticity and luminance factor of the fourteen samples under illuminant C: CIE 13.3
 * (1995), its table of test colour samples; from memory. */
static const double published[14][3] = {
    {0.375, 0.331, 29.9}, {0.385, 0.395, 28.9}, {0.373, 0.464, 30.4}, {0.287, 0.400, 29.2},
    {0.258, 0.306, 30.7}, {0.241, 0.243, 29.7}, {0.284, 0.241, 29.5}, {0.325, 0.262, 31.5},
    {0.567, 0.306, 11.4}, {0.438, 0.462, 59.1}, {0.254, 0.410, 20.0}, {0.155, 0.150, 6.4},
    {0.372, 0.352, 57.3}, {0.353, 0.432, 11.7},
};

/* The file gives reflectances to two decimals, and has the samples at 5 nm; 10 nm from 380
 * to 730 cost another 0.001. Sample 12 is so dark that half a hundredth matters. */
static void the_test_colour_samples_have_their_published_colours(void **state)
{
    (void)state;
    recede_measurements found;
    read_path(COLORD "ref/CIE-TCS.sp", &found);
    assert_int_equal(found.count, 15);
    for (int i = 0; i < 14; i++) {
        char id[16];
        const recede_measurement *m = NULL;
        snprintf(id, sizeof id, "TCS%02d", i + 1);
        assert_int_equal(recede_measurements_named(&found, id, &m), 1);
        recede_xyz seen = recede_xyz_under(&m->reflectance, RECEDE_C);
        double sum = seen.x + seen.y + seen.z, near = i == 11 ? 0.004 : 0.002;
        assert_near(seen.x / sum, published[i][0], near);
        assert_near(seen.y / sum, published[i][1], near);
        assert_near(100 * seen.y, published[i][2], 0.3);
    }
    recede_measurements_free(&found);
}

/* The same file by the tests' own reader. */
static void the_test_colour_samples_are_read_exactly(void **state)
{
    (void)state;
    static cgats plain;
    recede_measurements found;
    cgats_read(COLORD "ref/CIE-TCS.sp", &plain);
    read_path(COLORD "ref/CIE-TCS.sp", &found);
    for (int set = 0; set < plain.sets; set++)
        for (int band = 0; band < RECEDE_BANDS; band++)
            assert_near(found.of[set].reflectance.at[band],
                        cgats_at(&plain, set, RECEDE_FIRST_NM + RECEDE_STEP_NM * band), 0);
    recede_measurements_free(&found);
}

/* ---- between readings */

static double polynomial(double nm, int degree)
{
    double x = (nm - 550) / 200, sum = 0;
    for (int i = degree; i >= 0; i--)
        sum = sum * x + 0.1 * (i + 1) * (i % 2 ? -1 : 1);
    return sum;
}

typedef struct {
    double first_nm, step_nm;
    int count;
} grid;

/* How far from a polynomial its readings lead, at most; where no reading beyond the ends is
 * needed, or everywhere. */
static double worst_of(const grid *g, int degree, int everywhere)
{
    double readings[128], worst = 0, last_nm = g->first_nm + g->step_nm * (g->count - 1);
    for (int i = 0; i < g->count; i++)
        readings[i] = polynomial(g->first_nm + g->step_nm * i, degree);
    recede_spectrum found = recede_on_bands(readings, (size_t)g->count, g->first_nm, g->step_nm);
    for (int band = 0; band < RECEDE_BANDS; band++) {
        double nm = RECEDE_FIRST_NM + RECEDE_STEP_NM * band;
        if (everywhere || (nm >= g->first_nm + 2 * g->step_nm && nm <= last_nm - 2 * g->step_nm))
            worst = fmax(worst, fabs(found.at[band] - polynomial(nm, degree)));
    }
    return worst;
}

/* Sprague's interpolation takes over the derivatives that the quartic through five readings
 * has (CIE 167:2005), so it returns quartics, but no quintic; readings beyond the ends are
 * extrapolated so that straight lines remain. */
static void polynomials_are_kept(void **state)
{
    (void)state;
    static const grid grids[] = {
        {335, 20, 25}, {375, 20, 19}, {380, 10 / 3.0, 106}, {363, 7, 60}, {361, 15, 26},
        {380, 14, 26},
    };
    for (size_t g = 0; g < sizeof grids / sizeof grids[0]; g++) {
        for (int degree = 0; degree <= 4; degree++)
            assert_below(worst_of(&grids[g], degree, degree < 2), 1e-12);
        if (grids[g].step_nm > 5)
            assert_true(worst_of(&grids[g], 5, 0) > 1e-9);
    }
}

/* A grid that rounding has put beside the bands, either way, gives its readings. */
static void a_hair_beside_is_on_the_grid(void **state)
{
    (void)state;
    static const double steps_nm[] = {9.99999999, 10.00000001};
    double readings[RECEDE_BANDS];
    for (int i = 0; i < RECEDE_BANDS; i++)
        readings[i] = i % 2 ? 0.9 : 0.1;
    for (int s = 0; s < 2; s++) {
        recede_spectrum found = recede_on_bands(readings, RECEDE_BANDS, 380, steps_nm[s]);
        for (int band = 0; band < RECEDE_BANDS; band++)
            assert_near(found.at[band], readings[band], 0);
    }
}

static void ends_are_held(void **state)
{
    (void)state;
    double readings[16];
    for (int i = 0; i < 16; i++)
        readings[i] = 0.2 + 0.01 * i;
    recede_spectrum found = recede_on_bands(readings, 16, 400, 20);
    for (int band = 0; band < RECEDE_BANDS; band++) {
        double nm = fmin(700, fmax(400, 380 + 10 * band));
        assert_near(found.at[band], 0.2 + 0.01 * (nm - 400) / 20, 1e-15);
    }
}

static double difference(const recede_spectrum *one, const recede_spectrum *other)
{
    return recede_delta_e(recede_lab_of_xyz(recede_xyz_of_reflectance(one), recede_white()),
                          recede_lab_of_xyz(recede_xyz_of_reflectance(other), recede_white()));
}

/* What 20 nm cost the test colour samples, thinned from 10 nm: less than one sees, and less
 * than with a straight line between readings. */
static void twenty_nm_cost_little(void **state)
{
    (void)state;
    recede_measurements found;
    double worst = 0, sum = 0, line_sum = 0;
    read_path(COLORD "ref/CIE-TCS.sp", &found);
    for (size_t s = 0; s < found.count; s++) {
        enum { THINNED = RECEDE_BANDS / 2 };
        double thinned[THINNED];
        const recede_spectrum *whole = &found.of[s].reflectance;
        recede_spectrum line = *whole;
        for (int i = 0; i < THINNED; i++)
            thinned[i] = whole->at[2 * i];
        for (int i = 1; i < RECEDE_BANDS - 1; i += 2)
            line.at[i] = (whole->at[i - 1] + whole->at[i + 1]) / 2;
        recede_spectrum again = recede_on_bands(thinned, THINNED, 380, 20);
        worst = fmax(worst, difference(whole, &again));
        sum += difference(whole, &again);
        line_sum += difference(whole, &line);
    }
    print_message("20 nm instead of 10: %.3f CIEDE2000, at most %.3f; by straight lines %.3f\n",
                  sum / (double)found.count, worst, line_sum / (double)found.count);
    assert_below(worst, 0.5);
    assert_below(sum, line_sum);
    recede_measurements_free(&found);
}

/* ---- colours under D50 */

static recede_lab read_colour(const char *keyword, const double lab[3])
{
    recede_buffer text;
    recede_measurements found;
    recede_buffer_start(&text, NULL);
    recede_buffer_format(&text, "CGATS.17\n%s\nNUMBER_OF_FIELDS 4\nNUMBER_OF_SETS 1\n"
                         "BEGIN_DATA_FORMAT\nSAMPLE_ID LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\n"
                         "BEGIN_DATA\n1", keyword);
    for (int i = 0; i < 3; i++) {
        recede_buffer_text(&text, " ");
        recede_buffer_number(&text, lab[i], 9);
    }
    recede_buffer_text(&text, "\nEND_DATA\n");
    read_text(text.bytes, text.size, &found);
    recede_lab colour = found.of[0].lab;
    recede_measurements_free(&found);
    recede_buffer_free(&text);
    return colour;
}

/* CAT16 as Li and others (2017) print it: cone responses by this matrix, each scaled by the
 * ratio of the whites', and back by Cramer's rule. */
static void adapt(const double from[3], const double to[3], const double seen[3], double out[3])
{
    static const double m[3][3] = {{0.401288, 0.650173, -0.051461},
                                   {-0.250268, 1.204414, 0.045854},
                                   {-0.002079, 0.048952, 0.953127}};
    double cone[3];
    for (int i = 0; i < 3; i++) {
        double white[2] = {0, 0};
        cone[i] = 0;
        for (int j = 0; j < 3; j++) {
            white[0] += m[i][j] * from[j];
            white[1] += m[i][j] * to[j];
            cone[i] += m[i][j] * seen[j];
        }
        cone[i] *= white[1] / white[0];
    }
    double whole = 0;
    for (int j = 0; j < 3; j++)
        out[j] = 0;
    for (int i = 0; i < 3; i++) {
        int a = (i + 1) % 3, b = (i + 2) % 3;
        whole += m[0][i] * (m[1][a] * m[2][b] - m[1][b] * m[2][a]);
        for (int j = 0; j < 3; j++) {
            int c = (j + 1) % 3, d = (j + 2) % 3;
            out[j] += cone[i] * (m[a][c] * m[b][d] - m[a][d] * m[b][c]);
        }
    }
    for (int j = 0; j < 3; j++)
        out[j] /= whole;
}

static double lightness_of(double share)
{
    return share > 216.0 / 24389 ? cbrt(share) : (24389.0 / 27 * share + 16) / 116;
}

static void d50_is_adapted_to_d65(void **state)
{
    (void)state;
    static const double colours[][3] = {{60, 40, -30}, {35, -20, 25}, {80, 5, 70}, {95, 0, 0}};
    const double d50[3] = {0.96422, 1, 0.82521};
    const double d65[3] = {recede_white().x, 1, recede_white().z};
    for (size_t i = 0; i < 4; i++) {
        const double *lab = colours[i];
        double y = (lab[0] + 16) / 116, f[3] = {y + lab[1] / 500, y, y - lab[2] / 200};
        double seen[3], adapted[3];
        for (int j = 0; j < 3; j++) /* all above the cube root's foot */
            seen[j] = d50[j] * f[j] * f[j] * f[j];
        adapt(d50, d65, seen, adapted);
        for (int j = 0; j < 3; j++)
            f[j] = lightness_of(adapted[j] / d65[j]);
        recede_lab found = read_colour("ILLUMINANT \"D50\"", lab);
        assert_near(found.l, 116 * f[1] - 16, 1e-6);
        assert_near(found.a, 500 * (f[0] - f[1]), 1e-6);
        assert_near(found.b, 200 * (f[1] - f[2]), 1e-6);
        if (i == 0) /* and that is not what was written */
            assert_true(fabs(found.a - lab[1]) > 0.3);
    }
}

static void the_light_is_found_in_many_places(void **state)
{
    (void)state;
    static const double lab[3] = {60, 40, -30};
    static const char *const d50[] = {
        "ILLUMINANT \"D50\"", "illuminant d50", "ILLUMINATION_NAME \"D50\"\nOBSERVER_ANGLE \"2\"",
        "WEIGHTING_FUNCTION \"ILLUMINANT, D50\"\nWEIGHTING_FUNCTION \"OBSERVER, 2 degree\"",
        "MEASUREMENT_SOURCE \"Illumination=D50 ObserverAngle=2 WhiteBase=Abs Filter=No\"",
        "ILLUMINANT \"CIE D50\"\nOBSERVER \"CIE 1931\"", "ILLUMINANT \"D50\"\nOBSERVER 2deg",
    };
    recede_lab expected = read_colour(d50[0], lab);
    for (size_t i = 0; i < sizeof d50 / sizeof d50[0]; i++) {
        recede_lab found = read_colour(d50[i], lab);
        assert_memory_equal(&found, &expected, sizeof found);
    }
    recede_lab plain = read_colour("ILLUMINANT D65", lab);
    assert_true(plain.l == 60 && plain.a == 40 && plain.b == -30);
}

/* With spectra beside them, colours of an unknown light are left out, others are read. */
static void spectra_need_no_light(void **state)
{
    (void)state;
    static const char *const keyword[] = {"", "ILLUMINANT F11\n", "ILLUMINANT D50\n"};
    for (int i = 0; i < 3; i++) {
        recede_buffer text;
        recede_measurements found;
        recede_buffer_start(&text, NULL);
        recede_buffer_format(&text, "CGATS.17\n%sNUMBER_OF_FIELDS 20\nNUMBER_OF_SETS 1\n"
                             "BEGIN_DATA_FORMAT\nSAMPLE_ID LAB_L LAB_A LAB_B", keyword[i]);
        for (int nm = 400; nm <= 700; nm += 20)
            recede_buffer_format(&text, " SPEC_%d", nm);
        recede_buffer_text(&text, "\nEND_DATA_FORMAT\nBEGIN_DATA\n1 50 0 0");
        for (int nm = 400; nm <= 700; nm += 20)
            recede_buffer_text(&text, " 0.184");
        recede_buffer_text(&text, "\nEND_DATA\n");
        read_text(text.bytes, text.size, &found);
        assert_int_equal(found.of[0].has_lab, i == 2);
        assert_true(found.of[0].has_reflectance);
        recede_measurements_free(&found);
        recede_buffer_free(&text);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_documented_file_is_read),
        cmocka_unit_test(the_test_colour_samples_have_their_published_colours),
        cmocka_unit_test(the_test_colour_samples_are_read_exactly),
        cmocka_unit_test(polynomials_are_kept),
        cmocka_unit_test(a_hair_beside_is_on_the_grid),
        cmocka_unit_test(ends_are_held),
        cmocka_unit_test(twenty_nm_cost_little),
        cmocka_unit_test(d50_is_adapted_to_d65),
        cmocka_unit_test(the_light_is_found_in_many_places),
        cmocka_unit_test(spectra_need_no_light),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

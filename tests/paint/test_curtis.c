/*
 * Ten watercolours of another source, through the same film: K and S at three bands,
 * C. J. Curtis and others, 'Computer-Generated Watercolor', SIGGRAPH 1997, table of
 * pigment parameters. The source took the bands for the red, green and blue of a screen;
 * 620, 530 and 450 nm stand for them here, and between them the logarithms of K and S go
 * straight, beyond them they stay. Its X is a thickness of its own: 2 makes a full wash.
 */
#include "recede.h"
#include "support/assert_near.h"

#include "paint/paints.h"

#include <math.h>

typedef struct three_bands { double at_620, at_530, at_450; } three_bands;

typedef struct curtis_paint {
    const char *name;
    three_bands k, s;
} curtis_paint;

enum {
    ROSE, INDIAN_RED, CADMIUM_YELLOW, HOOKERS_GREEN, CERULEAN, UMBER, CADMIUM_RED, HANSA,
    PHTHALO_GREEN, ULTRAMARINE, PAINTS
};

static const curtis_paint paints[PAINTS] = {
    {"quinacridone rose", {0.22, 1.47, 0.57}, {0.05, 0.003, 0.03}},
    {"indian red", {0.46, 1.07, 1.50}, {1.28, 0.38, 0.21}},
    {"cadmium yellow", {0.10, 0.36, 3.45}, {0.97, 0.65, 0.007}},
    {"hooker's green", {1.62, 0.61, 1.64}, {0.01, 0.012, 0.003}},
    {"cerulean blue", {1.52, 0.32, 0.25}, {0.06, 0.26, 0.40}},
    {"burnt umber", {0.74, 1.54, 2.10}, {0.09, 0.09, 0.004}},
    {"cadmium red", {0.14, 1.08, 1.68}, {0.77, 0.015, 0.018}},
    {"hansa yellow", {0.06, 0.21, 1.78}, {0.50, 0.88, 0.009}},
    {"phthalo green", {1.55, 0.47, 0.63}, {0.01, 0.05, 0.035}},
    {"french ultramarine", {0.86, 0.86, 0.06}, {0.005, 0.005, 0.09}},
};

static double between(double low, double high, double share)
{
    return exp(log(low) + share * log(high / low));
}

static recede_spectrum spread(three_bands three)
{
    recede_spectrum out;
    for (int band = 0; band < RECEDE_BANDS; band++) {
        double nm = RECEDE_FIRST_NM + RECEDE_STEP_NM * band;
        out.at[band] = nm < 530 ? between(three.at_450, three.at_530, fmax((nm - 450) / 80, 0))
                                : between(three.at_530, three.at_620, fmin((nm - 530) / 90, 1));
    }
    return out;
}

static recede_lch film(const recede_spectrum *k, const recede_spectrum *s)
{
    recede_spectrum white;
    for (int band = 0; band < RECEDE_BANDS; band++)
        white.at[band] = 1;
    recede_spectrum seen = recede_film(k, s, 2, &white);
    return recede_colour_of_xyz(recede_xyz_of_reflectance(&seen)).lch;
}

static recede_lch film_of(int paint)
{
    recede_spectrum k = spread(paints[paint].k), s = spread(paints[paint].s);
    return film(&k, &s);
}

/* Degrees from a purplish red on, where the names begin. */
static double round_from_rose(recede_lch colour)
{
    return fmod(colour.h_deg - 330 + 720, 360);
}

/* The names from rose over red, orange, yellow and green to blue; what two earths and two
 * greens are called does not order them among themselves. */
static void hues_go_round_as_the_names_say(void **state)
{
    (void)state;
    static const int order[][3] = {
        {ROSE, -1, -1}, {CADMIUM_RED, -1, -1}, {INDIAN_RED, UMBER, -1},
        {CADMIUM_YELLOW, -1, -1}, {HANSA, -1, -1}, {HOOKERS_GREEN, PHTHALO_GREEN, -1},
        {CERULEAN, -1, -1}, {ULTRAMARINE, -1, -1},
    };
    double before = -1;
    for (size_t i = 0; i < sizeof order / sizeof order[0]; i++) {
        double latest = before;
        for (int j = 0; j < 3 && order[i][j] >= 0; j++) {
            recede_lch colour = film_of(order[i][j]);
            double hue = round_from_rose(colour);
            printf("| %s | %.0f | %.0f | %.0f |\n", paints[order[i][j]].name, colour.l, colour.c,
                   colour.h_deg);
            assert_true(colour.c > 8);
            assert_true(hue > before);
            latest = fmax(latest, hue);
        }
        before = latest;
    }
}

/* Equal parts of a reddish blue and a greenish yellow: between the two in hue, and with
 * more green than either, a dull one (common practice, no source). */
static void ultramarine_and_hansa_make_a_green(void **state)
{
    (void)state;
    recede_spectrum k, s;
    recede_spectrum blue_k = spread(paints[ULTRAMARINE].k), blue_s = spread(paints[ULTRAMARINE].s);
    recede_spectrum k_y = spread(paints[HANSA].k), s_y = spread(paints[HANSA].s);
    for (int band = 0; band < RECEDE_BANDS; band++) {
        k.at[band] = (blue_k.at[band] + k_y.at[band]) / 2;
        s.at[band] = (blue_s.at[band] + s_y.at[band]) / 2;
    }
    recede_lch green = film(&k, &s), blue = film_of(ULTRAMARINE), yellow = film_of(HANSA);
    printf("| equal parts of french ultramarine and hansa yellow | %.0f | %.0f | %.0f |\n",
           green.l, green.c, green.h_deg);
    assert_true(green.h_deg > 105 && green.h_deg < 180);
    assert_true(green.h_deg > yellow.h_deg && green.h_deg < blue.h_deg);
    assert_true(green.l < yellow.l && green.c < yellow.c);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(hues_go_round_as_the_names_say),
        cmocka_unit_test(ultramarine_and_hansa_make_a_green),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

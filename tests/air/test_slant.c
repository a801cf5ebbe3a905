/* Slant lines through layers on a round earth. */
#include "air/slant.h"

#include "support/assert_near.h"

#define EARTH_KM 6371.0
#define TOP_KM 80.0

/* The whole line to the top, layer by layer as the sky takes it. */
static double by_layers(double elevation_deg, double scale_km)
{
    enum { LAYERS = 48 };
    double sine = sin(elevation_deg * 3.14159265358979323846 / 180.0), sum = 0.0;
    double low = 0.0, high = 0.02 * 1.25, growth = pow(TOP_KM / high, 1.0 / (LAYERS - 1));
    for (int k = 0; k < LAYERS; k++, low = high, high *= growth)
        sum += recede_slant_length_km(low, high, sine, scale_km);
    return sum;
}

/* The same by summing along the line in many short steps. */
static double by_steps(double elevation_deg, double scale_km)
{
    enum { STEPS = 2000000 };
    double sine = sin(elevation_deg * 3.14159265358979323846 / 180.0), top = EARTH_KM + TOP_KM;
    double inward = EARTH_KM * sine, sum = 0.0;
    double length = sqrt(inward * inward + top * top - EARTH_KM * EARTH_KM) - inward;
    for (int k = 0; k < STEPS; k++) {
        double s = length * (k + 0.5) / STEPS;
        double z = sqrt(EARTH_KM * EARTH_KM + s * s + 2.0 * s * inward) - EARTH_KM;
        sum += exp(-z / scale_km) * length / STEPS;
    }
    return sum;
}

static void layers_add_up_to_the_line(void **state)
{
    (void)state;
    const double elevations_deg[] = {0.0, 0.1, 1.0, 10.0, 45.0, 90.0}, scales_km[] = {8.43, 1.25};
    double worst = 0.0;
    for (int e = 0; e < 6; e++) {
        for (int s = 0; s < 2; s++) {
            double ratio = by_layers(elevations_deg[e], scales_km[s])
                           / by_steps(elevations_deg[e], scales_km[s]);
            assert_near(ratio, 1.0, 2e-5);
            worst = fmax(worst, fabs(ratio - 1.0));
        }
    }
    print_message("layers against the line: off by at most %.1e\n", worst);
}

/* S. Chapman, Proceedings of the Physical Society 43 (1931): an exponential
 * atmosphere seen level has sqrt(pi R / 2 H) times its vertical depth, to first
 * order in H / R (the next term is 3 H / 8 R). */
static void level_line_is_chapmans(void **state)
{
    (void)state;
    const double scales_km[] = {8.43, 1.25};
    for (int s = 0; s < 2; s++) {
        double x = EARTH_KM / scales_km[s];
        double masses = by_layers(0.0, scales_km[s]) / scales_km[s];
        double chapman = sqrt(3.14159265358979323846 * x / 2.0) * (1.0 + 3.0 / (8.0 * x));
        assert_near(masses / chapman, 1.0, 2e-4);
    }
}

static void distance_is_pythagoras(void **state)
{
    (void)state;
    assert_near(recede_slant_distance_km(0.0, 0.0, 0.0), 0.0, 0.0);
    assert_near(recede_slant_distance_km(0.0, 1.0, 0.0), sqrt(2.0 * EARTH_KM + 1.0), 1e-9);
    assert_near(recede_slant_distance_km(1.0, 3.0, 1.0), 2.0, 1e-12);
    assert_near(recede_slant_distance_km(0.0, 1e-9, 0.5), 2e-9, 1e-18);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(layers_add_up_to_the_line),
        cmocka_unit_test(level_line_is_chapmans),
        cmocka_unit_test(distance_is_pythagoras),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

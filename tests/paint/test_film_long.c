/* The film equation against itself in extended precision: the hyperbolic solution with a
 * and b as printed in P. Kubelka, Journal of the Optical Society of America 38 (1948) 448,
 * seen through the surface of J. Saunderson, the same 32 (1942) 727, with 0.03 and 0.65.
 * Films by chance. Seen to fail with the series near nothing broken in its last terms, as
 * tools/mutations.txt lists. */
#include "recede.h"
#include "support/assert_near.h"
#include "support/chance.h"

typedef long double wide;

static wide seen(wide internal)
{
    return 0.03L + 0.97L * 0.35L * internal / (1 - 0.65L * internal);
}

static wide film(wide k, wide s, wide x, wide ground_seen)
{
    wide g = (ground_seen - 0.03L) / (0.97L * 0.35L + 0.65L * (ground_seen - 0.03L));
    wide a = 1 + k / s, b = sqrtl(k / s * (2 + k / s)), b_coth = b / tanhl(b * s * x);
    return seen((1 - g * (a - b_coth)) / (a - g + b_coth));
}

/* Evenly over the logarithm. */
static double scale(chance *c, double least, double most)
{
    return least * exp(chance_between(c, 0, log(most / least)));
}

/* A film in each band: bare paper and thick paint, clear and black, all between. */
static void a_hundred_thousand_films(void **state)
{
    (void)state;
    enum { DRAWN = 100000 / RECEDE_BANDS + 1 };
    chance c = {19480448};
    double worst = 0;
    for (int i = 0; i < DRAWN; i++) {
        recede_spectrum k, s, ground;
        double x = scale(&c, 0.005, 50);
        for (int band = 0; band < RECEDE_BANDS; band++) {
            k.at[band] = scale(&c, 1e-5, 20);
            s.at[band] = scale(&c, 1e-4, 3);
            ground.at[band] = chance_between(&c, 0.03, 1);
        }
        recede_spectrum found = recede_film(&k, &s, x, &ground);
        for (int band = 0; band < RECEDE_BANDS; band++) {
            wide expected = film(k.at[band], s.at[band], x, ground.at[band]);
            double off = (double)fabsl(found.at[band] - expected);
            assert_below(off, 2e-14);
            worst = fmax(worst, off);
        }
    }
    print_message("%d films: off by at most %.2g of the light\n", DRAWN * RECEDE_BANDS, worst);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_hundred_thousand_films)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}

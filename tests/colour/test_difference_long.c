/* Colour differences against the same formula in extended precision, written anew from
 * the paper: G. Sharma, W. Wu and E. Dalal, Color Research and Application 30 (2005) 21,
 * equations 2 to 22. Colours by chance. Seen to fail with one constant changed in the sixth
 * decimal: tools/mutations.txt. */
#include "recede.h"
#include "support/assert_near.h"
#include "support/chance.h"

typedef long double wide;
static const wide degree = 3.141592653589793238462643383279502884L / 180;

static wide seventh_root_share(wide chroma)
{
    wide seventh = chroma * chroma * chroma * chroma * chroma * chroma * chroma;
    return sqrtl(seventh / (seventh + 6103515625.0L)); /* 25 to the 7th */
}

typedef struct { wide l, c, h; } polar;

static polar primed(recede_lab lab, wide g)
{
    wide a = (1 + g) * lab.a, h = 0;
    if (a != 0 || lab.b != 0)
        h = atan2l(lab.b, a) / degree;
    return (polar){lab.l, sqrtl(a * a + (wide)lab.b * lab.b), h < 0 ? h + 360 : h};
}

static wide hue_gap(polar one, polar other)
{
    wide gap = other.h - one.h;
    if (one.c * other.c == 0)
        return 0;
    return gap > 180 ? gap - 360 : gap < -180 ? gap + 360 : gap;
}

static wide mean_hue(polar one, polar other)
{
    wide sum = one.h + other.h;
    if (one.c * other.c == 0)
        return sum;
    if (fabsl(one.h - other.h) <= 180)
        return sum / 2;
    return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
}

static wide difference(recede_lab one, recede_lab other)
{
    wide mean_c = (hypotl(one.a, one.b) + hypotl(other.a, other.b)) / 2;
    wide g = (1 - seventh_root_share(mean_c)) / 2;
    polar p = primed(one, g), q = primed(other, g);
    wide l = (p.l + q.l) / 2 - 50, c = (p.c + q.c) / 2, h = mean_hue(p, q);
    wide t = 1 - 0.17L * cosl((h - 30) * degree) + 0.24L * cosl(2 * h * degree)
             + 0.32L * cosl((3 * h + 6) * degree) - 0.20L * cosl((4 * h - 63) * degree);
    wide turn = 30 * expl(-((h - 275) / 25) * ((h - 275) / 25));
    wide sl = 1 + 0.015L * l * l / sqrtl(20 + l * l), sc = 1 + 0.045L * c, sh = 1 + 0.015L * c * t;
    wide rt = -sinl(2 * turn * degree) * 2 * seventh_root_share(c);
    wide dl = (q.l - p.l) / sl, dc = (q.c - p.c) / sc;
    wide dh = 2 * sqrtl(p.c * q.c) * sinl(hue_gap(p, q) / 2 * degree) / sh;
    return sqrtl(dl * dl + dc * dc + dh * dh + rt * dc * dh);
}

static recede_lab colour_by_chance(chance *c)
{
    return (recede_lab){chance_between(c, 0, 100), chance_between(c, -110, 110),
                        chance_between(c, -110, 110)};
}

/* Opposite hues have two mean hues: the last bit decides, and both are right. */
static int opposite(recede_lab one, recede_lab other)
{
    return fabs(one.a * other.b - one.b * other.a) < 1e-6 * (1 + fabs(one.a * other.a));
}

static void a_hundred_thousand_pairs(void **state)
{
    (void)state;
    chance c = {20051121};
    double worst = 0;
    for (int i = 0; i < 100000; i++) {
        recede_lab one = colour_by_chance(&c), other = colour_by_chance(&c);
        if (i % 2) { /* near each other, as colours compared mostly are */
            other.l = one.l + (other.l - 50) / 50;
            other.a = one.a + other.a / 50;
            other.b = one.b + other.b / 50;
        }
        if (opposite(one, other) && i % 2 == 0)
            continue;
        wide expected = difference(one, other);
        double found = recede_delta_e(one, other), off = (double)fabsl(found - expected);
        assert_near(off / (1 + (double)expected), 0, 1e-11);
        worst = fmax(worst, off);
    }
    print_message("100000 pairs of colours: off by at most %.2g CIEDE2000\n", worst);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_hundred_thousand_pairs)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}

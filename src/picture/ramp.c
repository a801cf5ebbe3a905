#include "picture/ramp.h"

#include <math.h>

enum { EXACT_STEPS = 32 };

static uint16_t encoded(double component)
{
    double inside = component < 0 ? 0 : component > 1 ? 1 : component;
    return (uint16_t)floor(inside * 255 * 256 + 0.5);
}

static recede_srgb between(const recede_colour *from, const recede_colour *to, double part)
{
    recede_lab lab = {from->lab.l + part * (to->lab.l - from->lab.l),
                      from->lab.a + part * (to->lab.a - from->lab.a),
                      from->lab.b + part * (to->lab.b - from->lab.b)};
    return recede_srgb_of_xyz(recede_xyz_of_lab(lab, recede_white()));
}

static recede_srgb grey_between(const recede_colour *from, const recede_colour *to, double part)
{
    double y = recede_y_of_value(from->value + part * (to->value - from->value));
    recede_xyz white = recede_white(), grey = {white.x * y, white.y * y, white.z * y};
    recede_srgb srgb = recede_srgb_of_xyz(grey);
    srgb.r = srgb.b = srgb.g; /* rounding apart, they are equal */
    return srgb;
}

void recede_ramp_between(const recede_colour *shadow, const recede_colour *lit, int greys,
                         recede_ramp *out)
{
    uint16_t exact[EXACT_STEPS + 1][3];
    for (int i = 0; i <= EXACT_STEPS; i++) {
        double part = (double)i / EXACT_STEPS;
        recede_srgb c = greys ? grey_between(shadow, lit, part) : between(shadow, lit, part);
        exact[i][0] = encoded(c.r);
        exact[i][1] = encoded(c.g);
        exact[i][2] = encoded(c.b);
    }
    for (int i = 0; i < RECEDE_RAMP_STEPS; i++) {
        int scaled = i * EXACT_STEPS * 256 / (RECEDE_RAMP_STEPS - 1);
        int at = scaled >> 8 < EXACT_STEPS ? scaled >> 8 : EXACT_STEPS - 1;
        int part = scaled - (at << 8);
        for (int c = 0; c < 3; c++) {
            int mixed = exact[at][c] * (256 - part) + exact[at + 1][c] * part;
            out->at[i * 3 + c] = (uint16_t)((mixed + 128) >> 8);
        }
    }
}

void recede_ramp_mix(const recede_ramp *from, const recede_ramp *to, unsigned part,
                     recede_ramp *out)
{
    for (int i = 0; i < RECEDE_RAMP_STEPS * 3; i++)
        out->at[i] = (uint16_t)((from->at[i] * (256 - part) + to->at[i] * part + 128) >> 8);
}

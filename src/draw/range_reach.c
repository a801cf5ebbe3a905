/* A field of a* and b*: every colour that mixes reach at one lightness, in that
 * colour, fading where they end, with a thin line round it.
 *
 * The films counted stand like grains. A colour counts as reached within a
 * difference of 2, so gaps narrower than that on either side are closed: every
 * grain grows by that much, and the whole then shrinks by it again. */
#include "draw/range_parts.h"

#include "colour/memory.h"

#include <math.h>
#include <string.h>

enum { SIDE = RECEDE_GAMUT_SIDE, WIDE = 5 }; /* WIDE: half width of the smoothing */

/* CIEDE2000, 2 units of it along the chroma and across: S_C and S_H without T. */
static const double reached_within = 2, chroma_step = 0.045, hue_step = 0.015;

/* The edge is softened as by a normal distribution of so many units. */
static const double soft_units = 1.3;

/* Where the smoothed presence of films counts as the edge, and how far it fades. */
static const double edge = 0.30, faded = 0.06, full = 0.55;
static const double line_mm = 0.16;

typedef float presence[SIDE][SIDE];

/* One pass of the smoothing, along i; the passes also turn the field over, so that
 * two of them leave it as it was. */
static void smooth_and_turn(presence from, presence to)
{
    double weight[2 * WIDE + 1], sum = 0;
    for (int k = -WIDE; k <= WIDE; k++)
        sum += weight[k + WIDE] = exp(-0.5 * k * k / (soft_units * soft_units));
    for (int j = 0; j < SIDE; j++)
        for (int i = 0; i < SIDE; i++) {
            double value = 0;
            for (int k = -WIDE; k <= WIDE; k++)
                if (i + k >= 0 && i + k < SIDE)
                    value += weight[k + WIDE] * (double)from[j][i + k];
            to[i][j] = (float)(value / sum);
        }
}

/* The surroundings of a square that pass for it: an ellipse along its chroma. */
typedef struct {
    double along_i, along_j, long_units, short_units;
    int reach;
} surroundings;

static surroundings around(int i, int j)
{
    double a = i - RECEDE_GAMUT_MOST, b = j - RECEDE_GAMUT_MOST, chroma = hypot(a, b);
    surroundings s = {1, 0, reached_within * (1 + chroma_step * chroma),
                      reached_within * (1 + hue_step * chroma), 0};
    if (chroma > 0) {
        s.along_i = a / chroma;
        s.along_j = b / chroma;
    }
    s.reach = (int)s.long_units;
    return s;
}

static int within(const surroundings *s, int di, int dj)
{
    double along = (di * s->along_i + dj * s->along_j) / s->long_units;
    double across = (dj * s->along_i - di * s->along_j) / s->short_units;
    return along * along + across * across <= 1;
}

/* Sets all squares round those of one kind to that kind: 1 grows, 0 shrinks. */
static void spread(presence from, presence to, float kind)
{
    memcpy(to, from, sizeof(presence));
    for (int j = 0; j < SIDE; j++)
        for (int i = 0; i < SIDE; i++) {
            surroundings s = around(i, j);
            if (from[j][i] != kind)
                continue;
            for (int dj = -s.reach; dj <= s.reach; dj++)
                for (int di = -s.reach; di <= s.reach; di++)
                    if (i + di >= 0 && i + di < SIDE && j + dj >= 0 && j + dj < SIDE &&
                        within(&s, di, dj))
                        to[j + dj][i + di] = kind;
        }
}

static void find_presence(const recede_gamut *gamut, presence field, presence spare)
{
    for (int j = 0; j < SIDE; j++)
        for (int i = 0; i < SIDE; i++)
            field[j][i] = gamut->films[j][i] > 0;
    spread(field, spare, 1);
    spread(spare, field, 0);
    smooth_and_turn(field, spare);
    smooth_and_turn(spare, field);
}

/* Between the middles of the grid's squares. */
static double presence_at(presence field, double a, double b)
{
    double x = a + RECEDE_GAMUT_MOST, y = b + RECEDE_GAMUT_MOST;
    if (!(x >= 0 && y >= 0 && x < SIDE - 1 && y < SIDE - 1))
        return 0;
    int i = (int)x, j = (int)y;
    double u = x - i, v = y - j;
    double low = (1 - u) * (double)field[j][i] + u * (double)field[j][i + 1];
    double high = (1 - u) * (double)field[j + 1][i] + u * (double)field[j + 1][i + 1];
    return (1 - v) * low + v * high;
}

static double step(double low, double high, double x)
{
    double t = fmin(1, fmax(0, (x - low) / (high - low)));
    return t * t * (3 - 2 * t);
}

/* How near the line a point lies, 1 on it: by the slope of the presence there. */
static double line_at(presence field, double a, double b, double units_per_dot, double width_units)
{
    double p = presence_at(field, a, b);
    double da = presence_at(field, a + units_per_dot, b) - presence_at(field, a - units_per_dot, b);
    double db = presence_at(field, a, b + units_per_dot) - presence_at(field, a, b - units_per_dot);
    double slope = hypot(da, db) / (2 * units_per_dot);
    if (slope < 1e-4)
        return 0;
    return fmin(1, fmax(0, 0.5 + (0.5 * width_units - fabs(p - edge) / slope) / units_per_dot));
}

static unsigned char byte_of(double component)
{
    return (unsigned char)(fmin(1, fmax(0, component)) * 255 + 0.5);
}

static double mixed(double from, double to, double share)
{
    return from + (to - from) * share;
}

static void put(unsigned char *rgb, recede_srgb colour, double cover, double line)
{
    const double back[3] = {recede_mount_tone.r, recede_mount_tone.g, recede_mount_tone.b};
    const double front[3] = {colour.r, colour.g, colour.b};
    for (int i = 0; i < 3; i++) {
        double painted = mixed(back[i], fmin(1, fmax(0, front[i])), cover);
        rgb[i] = byte_of(mixed(painted, 0.3, 0.55 * line));
    }
}

static void fill(presence field, const recede_range_frame *frame, double lightness, size_t side,
                 unsigned char *rgb)
{
    double per_dot = 2 * frame->most / (double)side, width = line_mm * 2 * frame->most / frame->room.w;
    recede_xyz white = recede_white();
    for (size_t y = 0; y < side; y++)
        for (size_t x = 0; x < side; x++, rgb += 3) {
            double a = ((double)x + 0.5) * per_dot - frame->most;
            double b = frame->most - ((double)y + 0.5) * per_dot;
            double cover = step(faded, full, presence_at(field, a, b));
            recede_srgb colour = {0, 0, 0};
            if (cover > 0)
                colour = recede_srgb_of_xyz(recede_xyz_of_lab((recede_lab){lightness, a, b}, white));
            put(rgb, colour, cover, line_at(field, a, b, per_dot, width));
        }
}

/* A field cut off by its frame keeps its line open there. */
int recede_range_draw_reach(const recede_range_drawing *drawing, const recede_page *page,
                            const recede_range_frame *frame, int field)
{
    const recede_allocator *allocator = drawing->allocator;
    const recede_gamut *gamut = &drawing->fields[field];
    size_t width, height;
    recede_rect room = recede_page_snap(page, frame->room, &width, &height);
    size_t side = width < height ? width : height;
    presence *fields = recede_allocate_array(allocator, 2, sizeof *fields);
    unsigned char *rgb = recede_allocate_array(allocator, side * side, 3);
    int failed = !fields || !rgb;
    if (!failed) {
        find_presence(gamut, fields[0], fields[1]);
        fill(fields[0], frame, gamut->lightness, side, rgb);
        failed = recede_page_picture(page, room, rgb, side, side) != 0;
    }
    recede_release(allocator, rgb);
    recede_release(allocator, fields);
    return failed ? -1 : 0;
}

/* How near a colour anywhere in a box of Lab can be to a target, at the best: a
 * sound lower bound on CIEDE2000, which keeps no triangle inequality. One box at
 * a time, or eight at once, laid out for the compiler's vector units. */
#ifndef RECEDE_PAINT_BOX_H
#define RECEDE_PAINT_BOX_H

#include <stdint.h>

#include "recede.h"

typedef struct recede_box { float low[3], high[3]; } recede_box; /* L*, a*, b* */

/* Hues by sectors, from a* > 0 on; an arc is a run of neighbouring sectors, at
 * most half the circle and one more, or all of it: the last of the numbers. */
enum {
    RECEDE_HUE_SECTORS = 32,
    RECEDE_WIDEST_ARC = RECEDE_HUE_SECTORS / 2 + 1,
    RECEDE_ARCS = RECEDE_HUE_SECTORS * RECEDE_WIDEST_ARC + 1,
    RECEDE_ALL_HUES = RECEDE_ARCS - 1
};

/* A target with what every bound for it shares: over the mean hues with a colour
 * in each arc, the largest sin(60 deg exp(-((h - 275) / 25)^2)), and the largest
 * T, the hue's part in S_H. */
typedef struct recede_aim {
    recede_lab target;
    float l, a, b, chroma;
    float twist[RECEDE_ARCS], weight[RECEDE_ARCS];
} recede_aim;
void recede_aim_at(recede_aim *aim, recede_lab target);

/* The hues a box may hold, a* stretched by any of CIEDE2000's 1 to 1.5; all where
 * it holds the axis. */
unsigned recede_box_arc(const recede_box *box);

/* A lower bound on the difference, as docs/search.md argues it. */
float recede_box_bound(const recede_aim *aim, const recede_box *box, unsigned arc);

enum { RECEDE_BLOCK = 8 };

/* Lab in whole 1/128. */
#define RECEDE_BOX_SCALE 128.0f
typedef struct recede_boxes {
    int16_t low[3][RECEDE_BLOCK], high[3][RECEDE_BLOCK];
    uint16_t arc[RECEDE_BLOCK];
} recede_boxes;

recede_box recede_box_of(const recede_boxes *boxes, int lane);

/* The bounds of eight boxes, each what recede_box_bound gives. */
void recede_bounds_of_boxes(const recede_aim *aim, const recede_boxes *boxes, float *bounds);

/* The bounds of eight colours that may be off by so much, hues within one arc. */
void recede_bounds_of_colours(const recede_aim *aim, const float *l, const float *a,
                              const float *b, float off, unsigned arc, float *bounds);

#endif

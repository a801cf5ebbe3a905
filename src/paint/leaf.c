#include "paint/leaf.h"

/* What single precision may be off, and its rounding here. */
#define MARGIN ((float)RECEDE_CURVE_ERROR * RECEDE_BOX_SCALE + 0.01f)

/* Beyond any int16_t: makes numbers positive, so that the conversion, which cuts
 * toward nought, rounds down. */
#define LIFT 65536.0f

static int16_t rounded_down(float value)
{
    return (int16_t)((int)(value + LIFT) - (int)LIFT);
}

static int16_t rounded_up(float value)
{
    return (int16_t)((int)LIFT - (int)(LIFT - value));
}

static void fit_axis(const float *values, int count, int16_t *low, int16_t *high)
{
    float least = values[0], most = values[0];
    for (int i = 1; i < count; i++) {
        least = values[i] < least ? values[i] : least;
        most = values[i] > most ? values[i] : most;
    }
    *low = rounded_down(least * RECEDE_BOX_SCALE - MARGIN);
    *high = rounded_up(most * RECEDE_BOX_SCALE + MARGIN);
}

static void find_arc(recede_leaf *leaf)
{
    recede_box box;
    for (int i = 0; i < 3; i++) {
        box.low[i] = (float)leaf->low[i];
        box.high[i] = (float)leaf->high[i];
    }
    leaf->arc = (uint16_t)recede_box_arc(&box);
}

void recede_leaves_of_curve(const recede_stretches *stretches, const recede_curve *curve,
                            recede_leaf *out)
{
    for (int i = 0; i < stretches->count; i++) {
        int first = stretches->first[i], levels = stretches->levels[i];
        fit_axis(curve->l + first, levels, &out[i].low[0], &out[i].high[0]);
        fit_axis(curve->a + first, levels, &out[i].low[1], &out[i].high[1]);
        fit_axis(curve->b + first, levels, &out[i].low[2], &out[i].high[2]);
        find_arc(&out[i]);
    }
}

void recede_put_leaf(recede_boxes *boxes, int lane, const recede_leaf *leaf)
{
    for (int i = 0; i < 3; i++) {
        boxes->low[i][lane] = leaf->low[i];
        boxes->high[i][lane] = leaf->high[i];
    }
    boxes->arc[lane] = leaf->arc;
}

recede_leaf recede_leaf_around(const recede_boxes *boxes, int count)
{
    recede_leaf leaf;
    for (int i = 0; i < 3; i++) {
        leaf.low[i] = boxes->low[i][0];
        leaf.high[i] = boxes->high[i][0];
        for (int lane = 1; lane < count; lane++) {
            if (boxes->low[i][lane] < leaf.low[i])
                leaf.low[i] = boxes->low[i][lane];
            if (boxes->high[i][lane] > leaf.high[i])
                leaf.high[i] = boxes->high[i][lane];
        }
    }
    find_arc(&leaf);
    return leaf;
}

/* A plan with invented colours, so that pictures and sheets can be tried
 * without the computation behind them. It defines the accessors of recede.h's
 * section 6 itself: include fake_plan.c in one program and link no real plan. */
#ifndef RECEDE_TESTS_FAKE_PLAN_H
#define RECEDE_TESTS_FAKE_PLAN_H

#include "recede.h"

struct recede_plan {
    recede_scene scene;
    size_t count;
    recede_planned planned[RECEDE_MOST_PLANES];
    recede_side sky;
    recede_palette *palette;
    size_t warning_count;
    recede_warning warnings[8];
};

typedef enum fake_light { FAKE_NOON, FAKE_EVENING, FAKE_OVERCAST, FAKE_FOG } fake_light;

/* Planes from 30 m to 12 km in even steps of the logarithm, far to near. */
void fake_plan_make(recede_plan *plan, size_t count, fake_light light);

/* A wash of exactly this colour. */
recede_wash fake_wash(double l, double a, double b);

#endif

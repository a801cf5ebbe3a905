/* What moves cost, in millionths of CIEDE2000. */
#ifndef RECEDE_PLAN_WORK_COSTS_H
#define RECEDE_PLAN_WORK_COSTS_H

#include "paint/rule.h"
#include "plan/work_puddle.h"

#define RECEDE_ADDITION (1e6 * RECEDE_ADDITION_COST)
#define RECEDE_WASHING (1e6 * RECEDE_WASHING_COST)

/* Half as much again as a wash needs. */
static inline double recede_usual_ml(double need_ml)
{
    return 1.5 * need_ml;
}

static inline double recede_least_left_ml(double need_ml)
{
    return recede_usual_ml(need_ml) - need_ml;
}

/* The usual amount, or what so much left in the well grows to. */
static inline double recede_mixed_ml(double need_ml, double left_ml, double growth)
{
    double grown_ml = left_ml * growth, usual_ml = recede_usual_ml(need_ml);
    return grown_ml > usual_ml ? grown_ml : usual_ml;
}

/* In a clean well. */
static inline double recede_start_cost(const recede_puddle *puddle)
{
    return RECEDE_ADDITION * recede_puddle_parts(puddle);
}

static inline double recede_add_cost(double need_ml, double mixed_ml, int additions)
{
    double excess = mixed_ml / recede_usual_ml(need_ml) - 1;
    return RECEDE_ADDITION * additions + recede_millionths(RECEDE_EXCESS_COST * excess);
}

#endif

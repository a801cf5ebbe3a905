/* The value plan of targets, for a plan that has been looked at. */
#ifndef RECEDE_PLAN_VALUES_H
#define RECEDE_PLAN_VALUES_H

#include "plan/plan.h"

void recede_values_of(const struct recede_plan *plan, recede_values *out);

#endif

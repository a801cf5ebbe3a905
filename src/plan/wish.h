/* The search behind recede_wish_grant. */
#ifndef RECEDE_PLAN_WISH_H
#define RECEDE_PLAN_WISH_H

#include "plan/plan.h"

/* An air and light: the logarithm of the visibility in km, and the sun. excess
 * is how far the wish is surpassed there; below 0 it is not granted. */
typedef struct recede_wish_spot {
    double log_km, sun_deg;
    double change;
    double excess;
} recede_wish_spot;

typedef struct recede_wish_search {
    struct recede_plan *plan; /* looked at anew for every spot */
    const recede_wish *wish;
    size_t plane;             /* of a wish for a value: index into the plan */
    double given_km, given_log_km, given_sun_deg;
    double least_log_km, most_log_km;
    double side;              /* value: 1 while it lies below the wish as given, -1 above */
    recede_wish_spot best;    /* grants it with the least change; change INFINITY: none yet */
    recede_wish_spot nearest; /* of all looked at, granted or not */
} recede_wish_search;

/* The least step, or the plane's value, where the plan has just looked. */
recede_wish_state recede_wish_state_of(const recede_wish_search *search);

/* Looks at one air and light; RECEDE_OUT_OF_RANGE where the scene has none such. */
recede_code recede_wish_look(recede_wish_search *search, double log_km, double sun_deg,
                             recede_error *error);

/* Fills in best and nearest. */
recede_code recede_wish_seek(recede_wish_search *search, const recede_progress *progress,
                             recede_error *error);

#endif

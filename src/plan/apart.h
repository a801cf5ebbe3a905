/* Whether two washes that meet can be told apart, and by what. */
#ifndef RECEDE_PLAN_APART_H
#define RECEDE_PLAN_APART_H

#include "recede.h"

typedef struct recede_step {
    double value;  /* of what lies behind less its own */
    double colour; /* CIEDE2000 */
    double hue;    /* CIEDE2000 without its lightness term: hue and chroma */
    recede_apart apart;
} recede_step;

recede_step recede_step_between(const recede_colour *behind, const recede_colour *own);

#endif

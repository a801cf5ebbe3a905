/* Functions that the formulas of air and light have in common. */
#ifndef RECEDE_AIR_INTEGRALS_H
#define RECEDE_AIR_INTEGRALS_H

/* (1 - exp(-x)) / x, the mean of exp(-x t) for t from 0 to 1: 1 at x = 0. */
double recede_mean_decay(double x);

/* Exponential integrals E2 and E3 (Abramowitz and Stegun 1964, ch. 5), x >= 0. */
typedef struct recede_exponential_integrals { double e2, e3; } recede_exponential_integrals;
recede_exponential_integrals recede_exponential_integrals_at(double x);

#endif

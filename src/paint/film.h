/* The film of paint on its ground, band by band. */
#ifndef RECEDE_PAINT_FILM_H
#define RECEDE_PAINT_FILM_H

#include "recede.h"

/* A mix's K and S with what every thickness of it shares. */
typedef struct recede_layer {
    double k[RECEDE_BANDS], s[RECEDE_BANDS];
    double beta[RECEDE_BANDS]; /* sqrt(K (K + 2 S)), that is b S */
} recede_layer;

void recede_layer_prepare(recede_layer *layer);

/* Reflectance below the surface of a ground as seen, and back. */
double recede_internal_of_seen(double seen);
double recede_seen_of_internal(double internal);

/* Reflectance as seen of the layer, thickness x of 0 to INFINITY, over a ground
 * given below the surface. */
void recede_layer_seen(const recede_layer *layer, double x, const double *ground_internal,
                       double *seen);

#endif

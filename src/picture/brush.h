/* Washes laid into the caller's pixels. */
#ifndef RECEDE_PICTURE_BRUSH_H
#define RECEDE_PICTURE_BRUSH_H

#include "picture/lighting.h"
#include "picture/ramp.h"
#include "picture/reduced.h"
#include "picture/terrain.h"

/* The pixels being painted and how. */
typedef struct recede_canvas {
    unsigned char *rgb;
    size_t row_bytes, width, height;
    int greys, targets;
    const recede_reduced *reduced; /* NULL: all values */
} recede_canvas;

/* From one wash's colour to another's, as the canvas asks for them. */
recede_ramp recede_ramp_of_washes(const recede_canvas *canvas, const recede_wash *from,
                                  const recede_wash *to);

/* A plane over what is painted already, its two washes where the light puts
 * them, its edge as soft as it should be. */
recede_code recede_brush_band(const recede_canvas *canvas, const recede_terrain *terrain,
                              const recede_planned *planned, const recede_band *band,
                              const recede_lighting *lighting);

#endif

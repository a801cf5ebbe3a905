/* What a paint of given K and S would look like on each swatch, and how far that is
 * from what was read. */
#ifndef RECEDE_PAINT_LEARN_MODEL_H
#define RECEDE_PAINT_LEARN_MODEL_H

#include "recede.h"

/* The logarithms of K, band by band, then those of S. */
enum { RECEDE_UNKNOWNS = 2 * RECEDE_BANDS };
typedef struct recede_unknowns { double at[RECEDE_UNKNOWNS]; } recede_unknowns;

/* A swatch as the fit takes it. */
typedef struct recede_reading {
    double film;                  /* its thickness, INFINITY in an opaque medium */
    double paint, white;          /* shares of the paint and of the white, sum 1 */
    int spectral;
    double lightness[RECEDE_BANDS]; /* spectral: L* of each band's reflectance */
    recede_lab lab;
} recede_reading;

typedef struct recede_lesson {
    double ground[RECEDE_BANDS];  /* below the surface */
    recede_spectrum white_k, white_s;
    recede_spectrum x, y, z;      /* tristimulus values of a reflectance: sums by these */
    recede_xyz adapted;
    recede_unknowns start;        /* K of a layer that hides its ground, S as 1 */
    double s_step;                /* how far ln S usually goes from band to band */
    size_t count;
    recede_reading of[RECEDE_MOST_SWATCHES];
} recede_lesson;

/* Swatches as seen, with the surface's own reflection, that have passed
 * recede_learn_check. */
void recede_lesson_of(const recede_swatches *swatches, recede_lesson *lesson);

/* As seen: the film, or the layer with its share of white. */
recede_spectrum recede_lesson_seen(const recede_lesson *lesson, const recede_reading *reading,
                                   const recede_unknowns *paint);
recede_lab recede_lesson_lab(const recede_lesson *lesson, const recede_spectrum *seen);

/* Gauss and Newton's normal equations of the sum of squares to be made least: its half,
 * the half's gradient, and the matrix J'J (whole, rows one after the other). */
typedef struct recede_squares {
    double half_sum;
    double gradient[RECEDE_UNKNOWNS];
    double matrix[RECEDE_UNKNOWNS][RECEDE_UNKNOWNS];
} recede_squares;
void recede_lesson_squares(const recede_lesson *lesson, const recede_unknowns *paint,
                           recede_squares *out);
double recede_lesson_half_sum(const recede_lesson *lesson, const recede_unknowns *paint);

#endif

/* The least place of a lesson's sum of squares, within bounds. */
#ifndef RECEDE_PAINT_LEARN_SOLVE_H
#define RECEDE_PAINT_LEARN_SOLVE_H

#include "paint/learn_model.h"

typedef struct recede_learn_room {
    recede_lesson lesson;
    recede_squares squares;
    double damped[RECEDE_UNKNOWNS][RECEDE_UNKNOWNS];
} recede_learn_room;

/* Fits room->lesson. RECEDE_OK or RECEDE_CANCELLED. */
recede_code recede_learn_solve(recede_learn_room *room, const recede_progress *progress,
                               recede_unknowns *paint);

#endif

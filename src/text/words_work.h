/* The order of work in a painter's words. */
#ifndef RECEDE_TEXT_WORDS_WORK_H
#define RECEDE_TEXT_WORDS_WORK_H

#include "recede.h"
#include "text/buffer.h"

/* "the sky at the horizon", "the lit side of alder line", "the crest of the shadow
 * side of alder line". */
void recede_words_step_wash(recede_buffer *out, const recede_scene *scene,
                            const recede_work_step *step);

/* The same as a label: "sky, horizon", "alder line, lit", "alder line, shadow crest". */
void recede_words_step_label(recede_buffer *out, const recede_scene *scene,
                             const recede_work_step *step);

/* What to pour where: "To what is left in well 1 add 0.4 peas of yellow ochre and 12
 * drops of water". Peas of paint and drops of water as recede_words_water has them. */
void recede_words_step_mix(recede_buffer *out, const recede_palette *palette,
                           const recede_work_step *step);

/* What to wait for: "wait until the sky has lost its shine". Opaque media: how to
 * treat the edge. Nothing for what is not painted. */
void recede_words_step_paper(recede_buffer *out, const recede_plan *plan,
                             const recede_work *work, size_t index);

/* What becomes of the rest, "" where it is only spare: "the rest is for the shadow
 * side of alder line". */
void recede_words_step_rest(recede_buffer *out, const recede_scene *scene,
                            const recede_work *work, size_t index);

/* All of it in sentences: what to pour, which wash that is, how much of it there is,
 * what to wait for. */
void recede_words_step(recede_buffer *out, const recede_plan *plan, const recede_work *work,
                       size_t index);

/* Of a step more than 10 off: "mind: 24 off, another colour than the one wanted; mixed by
 * itself, as the study has it, it is 1.9 off"; else nothing. */
void recede_words_step_far(recede_buffer *out, const recede_work_step *step);

/* How near the order comes and what it asks, in two sentences: "In this order the washes
 * are off by 1.9 on average (each mixed by itself, as the study has it, by 1.7), with
 * 21 paints and waters to pour in and a well washed out once. It takes 6 tubes." */
void recede_words_order(recede_buffer *out, const recede_plan *plan, const recede_work *work);

/* "3.1 ml", "12 ml", "0.05 ml". */
void recede_words_ml(recede_buffer *out, double ml);

/* How amounts are to be read, and what they count on, in two sentences. */
void recede_words_amounts(recede_buffer *out, const recede_plan *plan);

const char *recede_words_step_kind(recede_step_kind kind);    /* "bare", "start", ... */
/* "wet it looks a little darker: it dries lighter" of a step, or "". */
const char *recede_words_step_wet(const recede_palette *palette, const recede_work *work,
                                  size_t index);

const char *recede_words_paper_state(recede_paper_state paper); /* "dry", "damp", "wet" */

#endif

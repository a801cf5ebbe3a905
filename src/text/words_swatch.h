/* What is said about swatches: what was read, how well a paint was learnt, what to
 * mind, and why one cannot be learnt. */
#ifndef RECEDE_TEXT_WORDS_SWATCH_H
#define RECEDE_TEXT_WORDS_SWATCH_H

#include "text/swatch_read.h"

/* The colour of one source, as read. */
typedef struct recede_metered {
    int has_reflectance;
    recede_spectrum reflectance;
    recede_lab lab;
    int by_photo;
    recede_patch_reading photo;
} recede_metered;

/* A paint with what was read off its swatches, and what was learnt. */
typedef struct recede_learnt {
    const recede_painted *painted;
    recede_lab thinnest; /* what it goes to: the paper, or the white */
    int surface_excluded;
    recede_metered read[RECEDE_MOST_SWATCHES];
    recede_paint_fit fit;
    recede_lab fitted[RECEDE_MOST_SWATCHES];
} recede_learnt;

/* How much of what it is thinned or let down with a swatch has to 1 of paint. */
double recede_swatch_added(recede_medium medium, const recede_painted_swatch *swatch);

/* "masstone", "3 water to 1 paint", "2 white to 1 paint". */
void recede_words_thinning(recede_buffer *out, recede_medium medium, double added);

/* Whether what was learnt is worth keeping: no swatch is so far off that the swatches
 * contradict one another. */
int recede_is_learnt(const recede_paint_fit *fit);

/* The verdict, a sentence or two with what to do. */
void recede_words_learnt(recede_buffer *out, const recede_learnt *learnt);

/* The same for a pigment file's "measured", within RECEDE_NAME_SIZE. */
void recede_words_measured(recede_buffer *out, const recede_learnt *learnt);

/* What a photograph's patch shows of itself: "spread 0.4; clipped 12 %; glare". */
void recede_words_patch(recede_buffer *out, const recede_patch_reading *patch);

/* What can be wrong with a patch, and what is said of those that have it: the words
 * before and after their names. Which: from 0; NULL after the last. */
typedef struct recede_flaw {
    int (*is_in)(const recede_patch_reading *patch);
    const char *before, *after;
} recede_flaw;
const recede_flaw *recede_patch_flaw(size_t which);

/* Of the card: one of its patches is clipped, or they disagree. */
void recede_words_card_warning(recede_buffer *out, const recede_patch_reading *patches,
                               size_t count, int uneven);

/* Words an error of recede_paint_learn or recede_photo_read, with its place in the
 * description; paper as read, NULL in opaque media. Patches go as recede_card_patches
 * has them. */
recede_text_status recede_explain_learning(const recede_swatch_card *card,
                                           const recede_metered *paper, size_t paint,
                                           const recede_error *core, recede_text_error *error);
recede_text_status recede_explain_photo(const recede_swatch_card *card,
                                        const recede_photo *photo, const recede_error *core,
                                        recede_text_error *error);

/* That what was learnt is not worth keeping. */
recede_text_status recede_refuse_learnt(const recede_swatch_card *card,
                                        const recede_learnt *learnt, recede_text_error *error);

/* Whether a paper of that L* is too dark for one, or darker than the lightest swatch;
 * and the advice to read it again before anything else. */
int recede_paper_is_suspect(double paper, double lightest);
recede_text_status recede_suspect_paper(const recede_swatch_card *card, double paper,
                                        recede_text_error *error);

/* That no paper can have the colour that was read. */
recede_text_status recede_refuse_paper(const recede_swatch_card *card,
                                       const recede_metered *paper, recede_text_error *error);

/* All patches: the card's, then those of the sources as recede_sources_visit goes.
 * out has RECEDE_MOST_PATCHES places. */
size_t recede_card_patches(const recede_swatch_card *card, recede_patch *out);

#endif

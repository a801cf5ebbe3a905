/* What was read off a paint's swatches beside what was learnt, as text. */
#ifndef RECEDE_TEXT_SWATCH_TABLE_H
#define RECEDE_TEXT_SWATCH_TABLE_H

#include "text/words_swatch.h"

/* One paint: its name, a row for each swatch, the verdict, its caution. */
void recede_swatch_table(const recede_learnt *learnt, recede_buffer *out);

/* "Mind:" and what the photograph calls for; nothing where all is well. paper NULL:
 * none. remark: of the file, "" where it has none. */
typedef struct recede_photo_told {
    const recede_patch_reading *card;
    size_t card_count;
    int uneven;
    const char *remark;
    const recede_metered *paper;
    const recede_learnt *learnt;
    size_t count;
} recede_photo_told;
void recede_photo_warnings(const recede_photo_told *told, recede_buffer *out);

#endif

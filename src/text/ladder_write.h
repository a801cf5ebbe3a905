/* Ladder to bytes: JSON as docs/teaching.md describes it, and text to read out. */
#ifndef RECEDE_TEXT_LADDER_WRITE_H
#define RECEDE_TEXT_LADDER_WRITE_H

#include "recede.h"
#include "text/buffer.h"

/* As a file: ends with a line end. */
void recede_ladder_write(const recede_ladder *ladder, recede_buffer *out);

/* What it teaches, and a caption for every rung, for the terminal. */
void recede_ladder_tell(const recede_ladder *ladder, recede_buffer *out);

#endif

/* Names of paints as painters write them. */
#ifndef RECEDE_PAINT_NAMES_H
#define RECEDE_PAINT_NAMES_H

/* 1 when two names differ only in case, punctuation, spaces, apostrophes or a
 * spelling of the other side of the Atlantic ("Payne's Gray"). */
int recede_same_paint_name(const char *one, const char *other);

/* 1 when asked is the Colour Index name given, without regard to case and
 * spaces, with or without a suffix (":3") of its own. */
int recede_same_colour_index(const char *asked, const char *colour_index);

#endif

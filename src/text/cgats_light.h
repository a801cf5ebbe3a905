/* The light and the observer that colours in a CGATS file are for. */
#ifndef RECEDE_TEXT_CGATS_LIGHT_H
#define RECEDE_TEXT_CGATS_LIGHT_H

#include "text/cgats_scan.h"

typedef enum recede_cgats_topic {
    RECEDE_CGATS_ILLUMINANT, RECEDE_CGATS_OBSERVER, RECEDE_CGATS_TOPICS
} recede_cgats_topic;

/* "" where nothing was said. */
typedef struct recede_cgats_fact {
    char word[16]; /* "D50"; of an observer "2" or "10" where it is one of these */
    recede_place place;
} recede_cgats_fact;

/* All zero at first. */
typedef struct recede_cgats_light {
    recede_cgats_fact of[RECEDE_CGATS_TOPICS];
} recede_cgats_light;

/* Hears what a keyword and its value say, where they say something of the light:
 * ILLUMINANT "D50", WEIGHTING_FUNCTION "ILLUMINANT, D50", MEASUREMENT_SOURCE
 * "Illumination=D50 ObserverAngle=2". The scanner stands at the keyword, and after that
 * at the line's end. Refuses what contradicts what was heard before. */
recede_text_status recede_cgats_hear(recede_cgats_light *light, recede_cgats_scanner *scanner);

/* What is wrong with colours for this light and what to do; NULL where they can be used.
 * Goes to out where it needs room. */
const char *recede_cgats_light_wrong(const recede_cgats_light *light, char *out, size_t size);

/* A colour for such a light under D65: by CAT16 where it is not D65's own. */
recede_lab recede_cgats_lab_d65(const recede_cgats_light *light, recede_lab lab);

#endif

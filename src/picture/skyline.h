/* The line in which a plane meets what lies behind it. */
#ifndef RECEDE_PICTURE_SKYLINE_H
#define RECEDE_PICTURE_SKYLINE_H

#include "picture/terrain.h"

/* Heights of the ground alone above the band's base, by column. */
void recede_skyline_ground(const recede_terrain *terrain, const recede_band *band, float *height);

/* Ground with what grows on it, softened as the band's edge is. */
recede_code recede_skyline_draw(const recede_terrain *terrain, const recede_band *band,
                                float *height);

#endif

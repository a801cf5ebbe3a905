/* One rectangle of a photograph: its mean light, and how its pixels lie about it. */
#ifndef RECEDE_PAINT_PHOTO_PATCH_H
#define RECEDE_PAINT_PHOTO_PATCH_H

#include "recede.h"

enum {
    RECEDE_PHOTO_LEVELS = 65536,
    RECEDE_PHOTO_CHANNELS = 3,
    RECEDE_PHOTO_SAMPLES = 128 /* across and down: pixels whose difference is taken */
};

/* What reading needs room for. */
typedef struct recede_photo_room {
    double linear[RECEDE_PHOTO_LEVELS]; /* the light of a sample, 0 to 1 */
    size_t counts[RECEDE_PHOTO_LEVELS];
    double differences[RECEDE_PHOTO_SAMPLES * RECEDE_PHOTO_SAMPLES];
} recede_photo_room;

/* sRGB undone: fills linear. */
void recede_photo_start(recede_photo_room *room);

/* Light in linear sRGB, as the camera gives it; left, top and so on lie inside. */
typedef struct recede_photo_mean { double at[RECEDE_PHOTO_CHANNELS]; } recede_photo_mean;
recede_photo_mean recede_photo_mean_of(const recede_photo *photo, const recede_patch *patch,
                                       recede_photo_room *room);

/* The share of the pixels with a channel at either end of its scale. */
double recede_photo_clipped(const recede_photo *photo, const recede_patch *patch);

/* How pixels become colours: reflectance = (light - offset) / white. */
typedef struct recede_photo_scale {
    double white[RECEDE_PHOTO_CHANNELS], offset[RECEDE_PHOTO_CHANNELS];
} recede_photo_scale;
recede_xyz recede_photo_xyz(const recede_photo_scale *scale, recede_photo_mean light);

/* spread and glare of a reading whose lab is there; at most RECEDE_PHOTO_SAMPLES
 * pixels across and down are looked at, evenly placed. */
void recede_photo_spread(const recede_photo *photo, const recede_patch *patch,
                         const recede_photo_scale *scale, recede_photo_room *room,
                         recede_patch_reading *reading);

#endif

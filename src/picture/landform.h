/* What a plane looks like: the form that its name, its own colour and its
 * distance suggest, and the size of what grows on it. Invented throughout: a
 * plan knows colours and distances, not shapes. */
#ifndef RECEDE_PICTURE_LANDFORM_H
#define RECEDE_PICTURE_LANDFORM_H

#include "recede.h"

#include <stdint.h>

typedef enum recede_landform {
    RECEDE_LANDFORM_HILL,     /* bare hills and ridges */
    RECEDE_LANDFORM_WOOD,     /* round crowns */
    RECEDE_LANDFORM_CONIFERS, /* pointed crowns */
    RECEDE_LANDFORM_BANK,     /* low growth on rough ground */
    RECEDE_LANDFORM_FIELD,    /* open ground */
    RECEDE_LANDFORM_WATER,
    RECEDE_LANDFORM_HOUSES
} recede_landform;

typedef struct recede_look {
    recede_landform form;
    uint32_t seed;  /* from the name: a plane keeps its shape when it is moved */
    double growth;  /* height of its trees or tufts, as a part of the picture's size */
    double relief;  /* height of its hills, likewise */
    double nearness; /* 0 far to 1 near, by the logarithm of distance */
} recede_look;

recede_look recede_look_of(const recede_plane *plane);

#endif

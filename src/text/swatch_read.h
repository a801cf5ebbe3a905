/* Swatch descriptions: which paints were painted out at which strengths, and where
 * their colours were read. docs/own-paints.md has the format. */
#ifndef RECEDE_TEXT_SWATCH_READ_H
#define RECEDE_TEXT_SWATCH_READ_H

#include "text/pigment_file.h"
#include "text/scan.h"

#define RECEDE_CARD_MOST_BYTES ((size_t)1 << 20)

typedef enum recede_source_kind {
    RECEDE_SOURCE_REFLECTANCE, RECEDE_SOURCE_LAB, RECEDE_SOURCE_COLOUR,
    RECEDE_SOURCE_SAMPLE, /* of a measurement file */
    RECEDE_SOURCE_PATCH,  /* of a photograph */
    RECEDE_SOURCES
} recede_source_kind;

/* Where a colour comes from. */
typedef struct recede_source {
    recede_source_kind kind;
    recede_place place;     /* of what gives it */
    recede_own own;         /* reflectance, lab, colour */
    char sample[RECEDE_NAME_SIZE];
    recede_patch patch;
} recede_source;

typedef struct recede_painted_swatch {
    double water, white;    /* to 1 of paint */
    recede_place place;
    recede_source source;
} recede_painted_swatch;

typedef struct recede_painted {
    recede_pigment_file pigment; /* but for K and S */
    recede_place place;
    size_t count;
    recede_painted_swatch swatches[RECEDE_MOST_SWATCHES];
} recede_painted;

typedef struct recede_card {
    double reflectance;
    recede_place place;
    recede_patch patch;
} recede_card;

/* Big: keep it off small stacks. */
typedef struct recede_swatch_card {
    recede_medium medium;
    int surface_excluded;
    recede_source paper;       /* watercolour */
    recede_paint white;        /* opaque media */
    size_t card_count;
    recede_card card[RECEDE_MOST_PATCHES];
    size_t count;
    recede_painted paints[RECEDE_MOST_PAINTS];
} recede_swatch_card;

/* Reads a description and checks what can be told without a photograph or a
 * measurement file. On failure out holds nothing of use. */
recede_text_status recede_swatch_card_read(const char *bytes, size_t size,
                                           const recede_allocator *allocator,
                                           recede_swatch_card *out, recede_text_error *error);

/* "lab", "patch", ...: the keys by which sources are given. */
const char *recede_source_key(recede_source_kind kind);

/* Calls visit for the paper, where there is one, and every swatch, until one returns
 * something else than RECEDE_TEXT_OK. */
typedef recede_text_status recede_source_visit(void *context, const recede_source *source);
recede_text_status recede_sources_visit(const recede_swatch_card *card,
                                        recede_source_visit *visit, void *context);

#endif

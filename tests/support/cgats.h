/* A small reader of colord's CGATS text files (.cmf, .sp): spectra by set. */
#ifndef RECEDE_TESTS_CGATS_H
#define RECEDE_TESTS_CGATS_H

#define COLORD "/usr/share/colord/"

enum { CGATS_MOST_BANDS = 600, CGATS_MOST_SETS = 16 };

typedef struct cgats {
    int bands, sets;
    double nm[CGATS_MOST_BANDS];
    char id[CGATS_MOST_SETS][128]; /* SAMPLE_ID where there is one */
    double value[CGATS_MOST_SETS][CGATS_MOST_BANDS];
} cgats;

/* Fails the running test when the file cannot be read. Big: keep it static. */
void cgats_read(const char *path, cgats *out);

/* The value of a set at a wavelength that the file holds; NAN elsewhere. */
double cgats_at(const cgats *c, int set, double nm);

#endif

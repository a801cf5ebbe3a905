/* A measurement file of colours, for several tests. Its figures are invented. */
#ifndef RECEDE_TESTS_CGATS_TEXTS_H
#define RECEDE_TESTS_CGATS_TEXTS_H

static const char colours[] =
    "ISO28178\n"
    "WEIGHTING_FUNCTION \"ILLUMINANT, D65\"\n"
    "WEIGHTING_FUNCTION \"OBSERVER, 2 degree\"\n"
    "NUMBER_OF_FIELDS 6\n"
    "BEGIN_DATA_FORMAT\n"
    "LAB_B SAMPLE_NAME LAB_L SAMPLE_ID XYZ_X LAB_A\n"
    "END_DATA_FORMAT\n"
    "NUMBER_OF_SETS 2\n"
    "BEGIN_DATA\n"
    "-20.5 \"ultramarine \"\"deep\"\", 1:3\" 5.e1 1 \"?\" +1e1\n"
    ".5 caf\xC3\xA9#2 90 2 ? -0.25 # a remark\n"
    "END_DATA\n";

#endif

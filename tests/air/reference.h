/* Reads tests/data/scattering-reference.csv: airlight source J, irradiances
 * E_sun and E_sky, all orders of scattering in plane-parallel air, computed for
 * this project by successive orders. */
#ifndef RECEDE_TESTS_AIR_REFERENCE_H
#define RECEDE_TESTS_AIR_REFERENCE_H

#include "air/views.h"

#include <stdlib.h>
#include <string.h>

typedef struct reference_row {
    char quantity[8];
    double visibility_km, sun_height_deg, sun_side_deg; /* side -1: none */
    recede_spectrum values;
} reference_row;

enum { REFERENCE_ROWS = 20 };

static inline void reference_parse(char *line, reference_row *row)
{
    char *cell = line, *comma;
    for (int i = 0; i < 4 + RECEDE_BANDS; i++, cell = comma + 1) {
        comma = strpbrk(cell, ",\n");
        assert_non_null(comma);
        *comma = '\0';
        if (i == 0) {
            assert_true(strlen(cell) < sizeof row->quantity);
            strcpy(row->quantity, cell);
        } else {
            double number = *cell ? strtod(cell, NULL) : -1.0;
            double *place[] = {&row->visibility_km, &row->sun_height_deg, &row->sun_side_deg};
            *(i < 4 ? place[i - 1] : &row->values.at[i - 4]) = number;
        }
    }
}

static inline void reference_read(reference_row rows[REFERENCE_ROWS])
{
    char line[2048];
    FILE *file = fopen("tests/data/scattering-reference.csv", "r");
    assert_non_null(file);
    assert_non_null(fgets(line, sizeof line, file));
    for (int i = 0; i < REFERENCE_ROWS; i++) {
        assert_non_null(fgets(line, sizeof line, file));
        reference_parse(line, &rows[i]);
    }
    assert_null(fgets(line, sizeof line, file));
    fclose(file);
}

/* The row of a quantity in given air and light. */
static inline const recede_spectrum *reference_find(const reference_row rows[REFERENCE_ROWS],
                                                    const char *quantity, double visibility_km,
                                                    double sun_height_deg, double sun_side_deg)
{
    for (int i = 0; i < REFERENCE_ROWS; i++) {
        const reference_row *row = &rows[i];
        if (strcmp(row->quantity, quantity) == 0 && row->visibility_km == visibility_km
            && row->sun_height_deg == sun_height_deg && row->sun_side_deg == sun_side_deg)
            return &row->values;
    }
    fail_msg("the reference has no such row");
    return NULL;
}

#endif

/* The tables of src/data/, compiled in by tools/tables.c: constant data only.
 * Each array has its count beside it, NAME_count. */
#ifndef RECEDE_DATA_TABLES_H
#define RECEDE_DATA_TABLES_H

#include "recede.h"

/* cie.txt: "x", "y", "z" (1931 observer), "D65", "A", "C". */
typedef struct recede_named_spectrum {
    const char *name;
    recede_spectrum values;
} recede_named_spectrum;
extern const recede_named_spectrum recede_table_cie[];
extern const size_t recede_table_cie_count;

/* solar.txt: the simple solar spectral model's coefficients on its own bands. */
typedef struct recede_solar_band {
    double wavelength_nm;
    double extraterrestrial_w_m2_nm;
    double water_per_cm, ozone_per_atm_cm, mixed_gas;
} recede_solar_band;
extern const recede_solar_band recede_table_solar[];
extern const size_t recede_table_solar_count;

extern const recede_own_entry recede_table_foliage[];
extern const size_t recede_table_foliage_count;
extern const recede_own_entry recede_table_surfaces[];
extern const size_t recede_table_surfaces_count;

extern const recede_pigment recede_table_pigments[];
extern const size_t recede_table_pigments_count;

/* tubes.txt. made_of: "pigment name*parts | pigment name*parts". made_by: "the
 * painter", or "" for what is sold. */
typedef struct recede_tube {
    const char *name;
    const char *made_of;
    const char *made_by;
} recede_tube;
extern const recede_tube recede_table_tubes[];
extern const size_t recede_table_tubes_count;

extern const recede_palette_entry recede_table_palettes[];
extern const size_t recede_table_palettes_count;

/* papers.txt: "white cotton". */
extern const recede_named_spectrum recede_table_papers[];
extern const size_t recede_table_papers_count;

#endif

/* The columns of a CGATS file: what stands between BEGIN_DATA_FORMAT and its end. */
#ifndef RECEDE_TEXT_CGATS_FORMAT_H
#define RECEDE_TEXT_CGATS_FORMAT_H

#include "text/cgats_scan.h"
#include "text/grow.h"

#define RECEDE_CGATS_MOST_FIELDS 1024

typedef enum recede_cgats_field {
    RECEDE_CGATS_OTHER,
    RECEDE_CGATS_ID, RECEDE_CGATS_NAME,
    RECEDE_CGATS_LAB_L, RECEDE_CGATS_LAB_A, RECEDE_CGATS_LAB_B,
    RECEDE_CGATS_ONCE,     /* the fields above here, but OTHER, stand once at most */
    RECEDE_CGATS_NM,       /* the wavelength of the reading behind it */
    RECEDE_CGATS_READING,  /* its wavelength is told by the field before it */
    RECEDE_CGATS_BAND      /* a reading whose column tells the wavelength */
} recede_cgats_field;

typedef struct recede_cgats_column {
    recede_cgats_field field;
    double nm;    /* of a band; of a reading once it is known, else 0 */
    recede_cgats_token token;
} recede_cgats_column;

typedef struct recede_cgats_format {
    recede_place place;                /* of BEGIN_DATA_FORMAT; line 0: not read yet */
    recede_array columns;              /* of recede_cgats_column */
    size_t where[RECEDE_CGATS_ONCE];   /* a column's number from 1; 0: none */
    size_t bands;                      /* how many columns are readings */
    int in_pairs;                      /* wavelengths stand among the data */
    double scale;                      /* 1, or 100 in percent; 0: columns do not say */
} recede_cgats_format;

void recede_cgats_format_start(recede_cgats_format *format, const recede_allocator *allocator);
void recede_cgats_format_free(recede_cgats_format *format);

/* From BEGIN_DATA_FORMAT, the scanner's token, to behind END_DATA_FORMAT. */
recede_text_status recede_cgats_format_read(recede_cgats_format *format,
                                            recede_cgats_scanner *scanner);

recede_cgats_column *recede_cgats_column_at(const recede_cgats_format *format, size_t index);
int recede_cgats_is_reading(const recede_cgats_column *column);

#endif

/* Fills a recede_error. A NULL error is allowed everywhere: then only the code
 * comes back. Each call returns the code it has set. */
#ifndef RECEDE_COLOUR_ERROR_H
#define RECEDE_COLOUR_ERROR_H

#include "recede.h"

/* All of the error set: code and path given, found "" and numbers 0. */
recede_code recede_fail(recede_error *error, recede_code code, const char *path);

/* A number outside its limits: RECEDE_NOT_FINITE for NaN and infinities, else
 * RECEDE_OUT_OF_RANGE. */
recede_code recede_fail_range(recede_error *error, const char *path, double number, double least,
                              double most);

/* A text that will not do; too long a text is cut between characters. */
recede_code recede_fail_name(recede_error *error, recede_code code, const char *path,
                             const char *found);

/* Too many or too few of something. */
recede_code recede_fail_count(recede_error *error, recede_code code, const char *path,
                              size_t count, size_t least, size_t most);

/* RECEDE_OK when number is finite and within least to most, both included;
 * else as recede_fail_range. The error is left alone when all is well. */
recede_code recede_check_range(recede_error *error, const char *path, double number, double least,
                               double most);

/* "planes[2].distance" from "planes", 2 and "distance"; "planes[2]" where field
 * is NULL or "". Cut at size, always ended with NUL; size 0 writes nothing. */
void recede_path_index(char *out, size_t size, const char *array, size_t index,
                       const char *field);

/* "light.sun_height" from "light" and "sun_height", cut likewise. */
void recede_path_field(char *out, size_t size, const char *object, const char *field);

/* Copies text into size bytes, cut before a UTF-8 character that does not fit
 * whole; returns the length. */
size_t recede_copy_text(char *out, size_t size, const char *text);

#endif

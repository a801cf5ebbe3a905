/* Numbers as text, whatever the locale. */
#ifndef RECEDE_TEXT_NUMBERS_H
#define RECEDE_TEXT_NUMBERS_H

#include <stddef.h>

#define RECEDE_NUMBER_SIZE 40  /* room for any number written here */
#define RECEDE_NUMBER_LENGTH 40 /* characters of the longest number read */

/* The shortest of 15, 16 or 17 digits that reads back the same. Finite only. */
size_t recede_number_write(char out[RECEDE_NUMBER_SIZE], double number);

/* Rounded to 0 to 9 decimals; trimmed: without zeros at the end. */
size_t recede_number_fixed(char out[RECEDE_NUMBER_SIZE], double number, int decimals);
size_t recede_number_trimmed(char out[RECEDE_NUMBER_SIZE], double number, int decimals);

/* How many bytes at the start of text make a number as JSON (RFC 8259) writes
 * it; 0 if none do. */
size_t recede_number_length(const char *text, size_t size);

/* The value of such a number, at most RECEDE_NUMBER_LENGTH characters long; it
 * is infinite where a double cannot hold it. */
double recede_number_value(const char *text, size_t length);

#endif

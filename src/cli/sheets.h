/* What commands that draw a sheet have in common. */
#ifndef RECEDE_CLI_SHEETS_H
#define RECEDE_CLI_SHEETS_H

#include "draw/sheet.h"

/* A sheet's content with the two ways to draw it. */
typedef struct recede_cli_sheet {
    const void *content;
    recede_sheet_result (*pixels)(const void *content, const recede_sheet_options *options,
                                  recede_sheet_pixels *out);
    recede_sheet_result (*pdf)(const void *content, const recede_sheet_options *options,
                               recede_buffer *out);
} recede_cli_sheet;

/* Of a sheet that is drawn already page by page. */
recede_cli_sheet recede_cli_sheet_of(const recede_sheet *sheet);

/* The same as JSON, which a PNG also keeps inside, and as text to read; each
 * may be empty: then there is none. */
typedef struct recede_cli_words {
    recede_buffer json, text;
} recede_cli_words;

/* Draws a sheet, a PDF where path ends in .pdf, else a PNG, and writes it and
 * the JSON to their paths (NULL: not written), the text to standard output
 * unless one of them goes there. Returns an exit code; what is wrong has been
 * said. */
int recede_cli_sheet_write(const recede_cli_sheet *sheet, const char *path,
                           const recede_cli_words *words, const char *json_path);

#endif

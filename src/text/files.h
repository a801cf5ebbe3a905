/* Files that a scene or a palette file names: paints of the painter's own. Text
 * does no input: whoever reads a scene passes in how such a file is had. */
#ifndef RECEDE_TEXT_FILES_H
#define RECEDE_TEXT_FILES_H

#include "text/buffer.h"
#include "text/message.h"

#define RECEDE_FILE_MOST_BYTES ((size_t)1 << 20)

/* A palette and a pigment file for each of its paints. */
#define RECEDE_MOST_FILES (1 + RECEDE_MOST_PAINTS)

/* read adds the bytes of a file to out, which the caller has started. name has
 * passed recede_file_name_wrong, unless the user gave it on the command line. On
 * failure what is wrong stands in error->what; its place is set by the caller.
 * NULL instead of a recede_files: files cannot be read here. */
typedef struct recede_files {
    recede_text_status (*read)(void *context, const char *name, recede_buffer *out,
                               recede_text_error *error);
    void *context;
} recede_files;

/* Whether a palette's text means a file: it ends in ".json". */
int recede_is_file_name(const char *name);

/* Why a scene or a palette file may not name this file; NULL: it may. Only what
 * lies in the own folder or below: no root, no drive, no "..", no backslash. */
const char *recede_file_name_wrong(const char *name);

/* The name of a file that `file` names, as seen from where `file` is seen:
 * "boxes/green.json" for "green.json" in "boxes/box.json". 0: too long. */
int recede_file_beside(const char *file, const char *name, char out[RECEDE_NAME_SIZE]);

#endif

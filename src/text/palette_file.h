/* Palette files: a painter's box, with its medium and paper. docs/paints.md has
 * the format. */
#ifndef RECEDE_TEXT_PALETTE_FILE_H
#define RECEDE_TEXT_PALETTE_FILE_H

#include "text/pigment_file.h"

/* Big: keep it off small stacks. */
typedef struct recede_palette_file {
    char purpose[RECEDE_NAME_SIZE]; /* "" where the file has none */
    int has_medium;
    recede_medium medium;
    int has_paper;
    recede_own paper; /* as given: RECEDE_OWN_COLOUR, _LAB or _REFLECTANCE */
    size_t count;
    /* Those of the library have ingredients and nothing beside paint; those with
     * paint.file come from that pigment file; the rest stand inline. */
    recede_pigment_file paints[RECEDE_MOST_PAINTS];
} recede_palette_file;

/* Reads a palette file, or a pigment file as a palette of one paint. name: as for a
 * pigment file; files named in it lie beside it. files NULL: none can be read. */
recede_text_status recede_palette_file_read(const char *bytes, size_t size, const char *name,
                                            const recede_files *files,
                                            const recede_allocator *allocator,
                                            recede_palette_file *out, recede_text_error *error);

/* As a file: ends with a line end. Pigment files are named as paint.file has
 * them. Reads back the same, to the last bit. */
void recede_palette_file_write(const recede_palette_file *palette, recede_buffer *out);

/* Has files read the named palette or pigment file and reads that. Errors of the
 * file's content have error->file; where it could not be had, that is "". */
recede_text_status recede_palette_file_load(const char *name, const recede_files *files,
                                            const recede_allocator *allocator,
                                            recede_palette_file *out, recede_text_error *error);

/* Puts its paints and paper into a scene, and its medium; the scene's palette
 * is called `name`. */
void recede_palette_file_use(const recede_palette_file *palette, const char *name,
                             recede_scene *scene);

#endif

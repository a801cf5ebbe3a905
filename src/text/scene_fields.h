/* The scene file as a table: which keys stand where, how each value is read
 * and written, and which field of the scene it fills. Reading, writing and
 * wording errors all go by it. */
#ifndef RECEDE_TEXT_SCENE_FIELDS_H
#define RECEDE_TEXT_SCENE_FIELDS_H

#include "recede.h"
#include "text/files.h"
#include "text/json.h"
#include "text/tree.h"
#include "text/units.h"

typedef struct recede_reader {
    const recede_tree *tree;
    recede_scene *scene; /* NULL where the text is none */
    recede_text_error *error;
    const recede_files *files; /* NULL: no files can be read */
    const char *name;          /* of the file that the text is; "" for a scene */
} recede_reader;

typedef struct recede_field recede_field;

/* How a kind of value is read and written. at is the field's place. */
typedef struct recede_form {
    const char *expected; /* "a number"; NULL: the field's words */
    const char *unit;     /* of the number in the scene: " m", " km", "" */
    recede_text_status (*read)(recede_reader *reader, size_t value, const recede_field *field,
                               void *at);
    void (*write)(recede_json *json, const recede_field *field, const void *at);
} recede_form;

typedef struct recede_fields {
    const char *called; /* "air", "a plane": for messages */
    const recede_field *list;
    size_t count;
    /* What holds between the fields, once all are read; NULL: nothing. */
    recede_text_status (*finish)(recede_reader *reader, size_t value, void *base);
} recede_fields;

struct recede_field {
    const char *key;
    const recede_form *form;
    size_t offset;               /* from the scene, inside planes from the plane */
    const recede_word *words;    /* for forms that take words */
    const recede_fields *inside; /* for objects */
    int required;
    int (*written)(const void *base); /* whether to write it; NULL: always */
};

extern const recede_fields recede_scene_fields;

/* The field a path such as "planes[2].distance" names, or NULL. */
const recede_field *recede_field_of_path(const char *path);

/* Reads and writes an object by its fields. */
recede_text_status recede_fields_read(recede_reader *reader, size_t value,
                                      const recede_fields *fields, void *base);
void recede_fields_write(recede_json *json, const recede_fields *fields, const void *base);

/* Refuses an object that has none of these keys, or more than one: "OWNER has no
 * THING". */
recede_text_status recede_fields_one_of(recede_reader *reader, size_t value,
                                        const char *const *keys, size_t count,
                                        const char *owner, const char *thing);

/* Forms of single values. Numbers are double, whole numbers int, texts arrays
 * of RECEDE_NAME_SIZE. */
extern const recede_form recede_form_title, recede_form_name, recede_form_number,
    recede_form_whole, recede_form_length, recede_form_visibility, recede_form_haze,
    recede_form_sun_height, recede_form_sun_side, recede_form_sky, recede_form_medium,
    recede_form_choice; /* of two words; the number is an int, 0 or 1 */
extern const recede_word recede_sky_words[], recede_medium_words[], recede_darks_words[],
    recede_shadows_words[];

/* Forms of an own colour; the place is a recede_own. */
extern const recede_form recede_form_foliage, recede_form_surface, recede_form_colour,
    recede_form_lab, recede_form_reflectance;

/* So many numbers in a list. */
recede_text_status recede_read_numbers(recede_reader *reader, size_t value,
                                       const recede_field *field, double *out, size_t count);

/* An own colour mixed of the scene's paints; the place is a recede_own. Its paints
 * are found when the whole scene is read, for they may stand after it; and it is
 * written apart, for their names stand in the scene. */
extern const recede_form recede_form_mix;
recede_text_status recede_mix_find(recede_reader *reader, size_t value, recede_own *own);
void recede_own_mix_write(recede_json *json, const recede_scene *scene, const recede_own *own);

/* A name, a file or a list; the place is the scene. */
extern const recede_form recede_form_palette;

/* An object by field->inside; the place is the base of its fields. */
extern const recede_form recede_form_object;

/* "KEY is FOUND; expected EXPECTED", at the value. */
recede_text_status recede_refuse_value(recede_reader *reader, size_t value, const char *expected);

/* "KEY is FOUND: WHY; expected EXPECTED", at the value. */
recede_text_status recede_refuse_because(recede_reader *reader, size_t value, const char *why,
                                         const char *expected);

/* The value as it stands in the file, cut where long; lists and objects are
 * named as such. */
#define RECEDE_SHOWN_SIZE 100
void recede_show_value(const recede_tree *tree, size_t value, char out[RECEDE_SHOWN_SIZE]);

/* "clear", "overcast" or "painted". */
void recede_show_words(const recede_word *words, char *out, size_t size);

#endif

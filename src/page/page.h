/* The planning page's side of the library: what JavaScript calls.
 *
 * A page reads a scene from bytes that JavaScript put into its room, plans it
 * with the box of paints it has mixed before, and answers in JSON or in pixels.
 * All in memory. A call returns 1 where it was done and 0 where not; then the
 * reply holds what is wrong: {"line": 1, "column": 5, "what": "..."}. */
#ifndef RECEDE_PAGE_PAGE_H
#define RECEDE_PAGE_PAGE_H

#include "recede.h"
#include "text/buffer.h"
#include "text/files.h"
#include "text/json.h"

/* A box: what takes time to make ready when the tubes change. */
typedef struct recede_page_box {
    recede_palette *palette;
    recede_index *index;
    recede_rules rules;
    recede_medium medium;
} recede_page_box;

/* A file that was opened beside the scene: a palette, a paint. */
typedef struct recede_page_file {
    char name[RECEDE_NAME_SIZE];
    char *bytes;
    size_t size;
} recede_page_file;

typedef struct recede_page {
    char *room;              /* what JavaScript writes into */
    size_t room_size, bytes; /* bytes of it: the scene that was read last */
    recede_page_file files[RECEDE_MOST_FILES];
    size_t file_count;
    recede_scene scene;
    int has_scene;
    recede_page_box box;
    recede_plan *plan;
    recede_sketch *sketch[2]; /* of pictures at rest and of those under a moving hand */
    unsigned char *rgb, *rgba;
    size_t pixels; /* places in rgba */
    float *skylines;
    recede_buffer reply;
} recede_page;

#ifdef __wasm__
#define RECEDE_PAGE_CALL(name) __attribute__((export_name(#name)))
#else
#define RECEDE_PAGE_CALL(name)
#endif

/* Begins a reply that is one object; what it says so far is forgotten. */
recede_json recede_page_reply_start(recede_page *page);
/* Ends it; 1, or 0 where memory ran out on the way. */
int recede_page_reply_end(recede_page *page, recede_json *json);

/* What is wrong, as the reply; both return 0. */
int recede_page_refuse(recede_page *page, size_t line, size_t column, const char *what);
int recede_page_refuse_core(recede_page *page, const recede_error *error);

/* "#rrggbb" of a colour, as a member. */
void recede_page_hex(recede_json *json, const char *key, recede_srgb srgb);

/* What a buffer holds, as a member; the buffer is freed. */
void recede_page_words(recede_json *json, const char *key, recede_buffer *words);

/* A recipe with its colour and its words, as a member; ground: what it lies on. */
void recede_page_recipe(recede_json *json, const char *key, const recede_palette *palette,
                        const recede_recipe *recipe, recede_ground ground);

/* A paint of the library as the page's pans show it in a medium, as an element. */
void recede_page_pan(recede_json *json, const char *name, recede_medium medium);

/* An own colour for the page's sentences: a dab shows it, so that one given by its
 * figures is a colour of one's own, without them. */
recede_own recede_page_own_in_words(const recede_own *own);

/* How a scene has the opened files read. */
recede_files recede_page_files(recede_page *page);

/* What is wrong with a text, or a file that it names, as the reply, with "missing" where
 * such a file is not there; returns 0. */
int recede_page_refuse_text(recede_page *page, recede_text_status status,
                            const recede_text_error *error);

/* Progress of a long call, told to JavaScript. */
recede_progress recede_page_progress(void);

/* ---- what JavaScript calls */

recede_page *recede_page_new(void); /* NULL: no memory */
void recede_page_free(recede_page *page); /* NULL is allowed */
char *recede_page_room(recede_page *page, size_t size); /* NULL: no memory */
const char *recede_page_reply(const recede_page *page);
size_t recede_page_reply_size(const recede_page *page);

/* Keeps a file for scenes to name: the room holds its name, then its bytes. One of
 * the same name is replaced. And puts all of them away. */
int recede_page_file_open(recede_page *page, size_t name_size, size_t bytes_size);
void recede_page_files_free(recede_page *page);
/* Whether the `size` bytes in the room are a "scene", a "palette" or a "pigment"; the
 * last two are read whole. */
int recede_page_kind(recede_page *page, size_t size);
/* Reads the scene of `size` bytes in the room. */
int recede_page_read(recede_page *page, size_t size);
/* The scene that was read, with everything filled in. */
int recede_page_scene(recede_page *page);

/* The paints of the scene that was read, with their colours. */
int recede_page_box_told(recede_page *page);

/* Makes the box of the scene's paints ready, where it is not. */
int recede_page_mix(recede_page *page);
/* Plans the scene; its box must be ready. */
int recede_page_plan(recede_page *page);
/* Names in the plan's warnings the pigments that would help: takes its time. */
int recede_page_advise(recede_page *page);
/* The plan as the command line writes it. */
int recede_page_plan_json(recede_page *page);
/* The plan as the page shows it: colours, numbers and words. */
int recede_page_view(recede_page *page);

/* The picture in 4 bytes a pixel, red, green, blue and 255; NULL where it fails. */
unsigned char *recede_page_picture(recede_page *page, size_t width, size_t height, int greys,
                                   int moving);
/* For each plane of the plan, far to near, the y of its skyline at each column. */
float *recede_page_skylines(recede_page *page, size_t width, size_t height, int moving);

/* All names that a scene can use, with their colours. */
int recede_page_lists(recede_page *page);

/* One plane's own colour at a row of distances in the scene's air. */
int recede_page_ladder(recede_page *page, size_t plane);
/* The mixing chart of the scene's paints; third is a paint's number or -1. */
int recede_page_chart(recede_page *page, int third);
/* The order of work with 1 to 3 wells. */
int recede_page_work(recede_page *page, int wells);
/* Other recipes for a wash: plane as in the plan (-1: the sky), shadow side,
 * base of a graded wash. */
int recede_page_match(recede_page *page, int plane, int shadow, int base);
/* Likewise for a plane's own colour, as it is seen close to. */
int recede_page_match_own(recede_page *page, size_t plane);

#endif

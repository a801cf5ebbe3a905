/* Plan to bytes: JSON as docs/plan.md describes it, and a table to read. */
#ifndef RECEDE_TEXT_PLAN_WRITE_H
#define RECEDE_TEXT_PLAN_WRITE_H

#include "recede.h"
#include "text/buffer.h"
#include "text/work_write.h"
#include "text/json.h"
#include "text/words_wet.h"

/* As a file: ends with a line end. */
void recede_plan_write(const recede_plan *plan, recede_buffer *out);

/* The same with the order of work, as its member "work". */
void recede_plan_write_with_work(const recede_work_told *told, recede_buffer *out);

/* A table of at most 100 columns for the terminal, far to near. */
void recede_plan_table(const recede_plan *plan, recede_buffer *out);

/* Pieces of a plan, as docs/plan.md has them: a colour (value_as_seen NULL:
 * without it), the member "mix" with how it looks wet (NULL: without that), the
 * member "recipe", and the members of a wash. */
void recede_colour_write(recede_json *json, const char *key, const recede_colour *colour,
                         const double *value_as_seen);
void recede_mix_colour_write(recede_json *json, const recede_colour *colour,
                             const recede_wet_look *wet);
void recede_mix_write(recede_json *json, const recede_palette *palette, const recede_mix *mix);
void recede_wash_write_members(recede_json *json, const recede_palette *palette,
                               const recede_wash *wash, const recede_wet_look *wet);

#endif

/* The order of work as bytes: JSON as docs/work.md has it, and text to read. */
#ifndef RECEDE_TEXT_WORK_WRITE_H
#define RECEDE_TEXT_WORK_WRITE_H

#include "recede.h"
#include "text/json.h"

/* An order with what else one might do; choices may be none. */
typedef struct recede_work_told {
    const recede_plan *plan;
    const recede_work *work;
    const recede_work_choice *choices;
    size_t choice_count;
} recede_work_told;

/* The member "work" of a plan. */
void recede_work_write(const recede_work_told *told, recede_json *json);

/* A table of at most 100 columns, what it adds up to, and the choices. */
void recede_work_table(const recede_work_told *told, recede_buffer *out);

#endif

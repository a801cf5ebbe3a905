/* Scene to bytes: every field, numbers in plain SI units, such that reading
 * them back plans to the same bytes. */
#ifndef RECEDE_TEXT_SCENE_WRITE_H
#define RECEDE_TEXT_SCENE_WRITE_H

#include "recede.h"
#include "text/buffer.h"
#include "text/json.h"

/* As a file: ends with a line end. */
void recede_scene_write(const recede_scene *scene, recede_buffer *out);

/* Its members, inside an object that is open. */
void recede_scene_write_members(const recede_scene *scene, recede_json *json);

#endif

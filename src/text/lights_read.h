/* Bytes to a set of lights. The format is described in docs/teaching.md. */
#ifndef RECEDE_TEXT_LIGHTS_READ_H
#define RECEDE_TEXT_LIGHTS_READ_H

#include "recede.h"
#include "text/message.h"

/* What a light leaves open of the air it takes from the scene; a sky it leaves
 * open is a clear one. lights has RECEDE_MOST_LIGHTS places. */
recede_text_status recede_lights_read(const char *bytes, size_t size, const recede_scene *scene,
                                      const recede_allocator *allocator,
                                      recede_sky_light *lights, size_t *count,
                                      recede_text_error *error);

#endif

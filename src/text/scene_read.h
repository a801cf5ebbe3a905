/* Bytes to scene. The format is described in docs/scene.md. */
#ifndef RECEDE_TEXT_SCENE_READ_H
#define RECEDE_TEXT_SCENE_READ_H

#include "recede.h"
#include "text/files.h"
#include "text/message.h"

#define RECEDE_SCENE_MOST_BYTES ((size_t)1 << 20)

/* Reads a scene, fills in what it leaves open and checks it: what comes out is
 * ready for recede_plan_new. files: how the files that it names are had, NULL where
 * none can be. On failure out holds nothing of use. */
recede_text_status recede_scene_read(const char *bytes, size_t size, const recede_files *files,
                                     const recede_allocator *allocator, recede_scene *out,
                                     recede_text_error *error);

/* Words an error of the core about a scene read from these bytes, and finds
 * the place it means. For what only shows when the scene is planned. */
recede_text_status recede_scene_explain(const char *bytes, size_t size,
                                        const recede_allocator *allocator,
                                        const recede_error *core, recede_text_error *error);

#endif

/* Fuzz target for scenes: whatever the bytes, reading them ends in a scene or
 * in one line that says where and why; and a scene that was read is written so
 * that it reads back the same. Built with libFuzzer by `make fuzz`; `make test`
 * runs the seeds through it. */
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "text/scene_read.h"
#include "text/scene_write.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void insist(int truth)
{
    if (!truth)
        abort();
}

static void check_error(recede_text_status status, const recede_text_error *error)
{
    insist(status == RECEDE_TEXT_REFUSED || status == RECEDE_TEXT_NO_MEMORY);
    insist(error->what[0] != '\0' && !strchr(error->what, '\n'));
    insist(strlen(error->what) < sizeof error->what);
}

static void check_round_trip(const recede_scene *scene)
{
    static recede_scene again;
    recede_text_error error;
    recede_buffer first, second;
    recede_buffer_start(&first, NULL);
    recede_buffer_start(&second, NULL);
    recede_scene_write(scene, &first);
    insist(!first.failed);
    insist(recede_scene_read(first.bytes, first.size, NULL, &again, &error) == RECEDE_TEXT_OK);
    recede_scene_write(&again, &second);
    insist(first.size == second.size && memcmp(first.bytes, second.bytes, first.size) == 0);
    insist(memcmp(scene->planes, again.planes, sizeof again.planes) == 0);
    recede_buffer_free(&first);
    recede_buffer_free(&second);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static recede_scene scene;
    recede_text_error error;
    memset(&error, 0, sizeof error);
    recede_text_status status =
        recede_scene_read((const char *)data, size, NULL, &scene, &error);
    if (status)
        check_error(status, &error);
    else
        check_round_trip(&scene);
    return 0;
}

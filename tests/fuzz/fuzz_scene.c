/* Fuzz target for scenes and the files that they name: whatever the bytes, reading
 * them ends in a scene or in one line that says where and why; and a scene that was
 * read is written so that it reads back the same. What stands after a first byte of
 * 0 is the content of every file that the scene names, and is read as a palette and
 * as a pigment besides. Built with libFuzzer by `make fuzz`; `make test`
 * runs the seeds through it. */
#include <stdlib.h>
#include <string.h>

#include "fuzz/insist.h"
#include "text/palette_file.h"
#include "text/scene_read.h"
#include "text/scene_write.h"

typedef struct {
    const char *bytes;
    size_t size;
} content;

static recede_text_status read_content(void *context, const char *name, recede_buffer *out,
                                       recede_text_error *error)
{
    const content *file = context;
    (void)error;
    insist(recede_file_name_wrong(name) == NULL);
    recede_buffer_add(out, file->bytes, file->size);
    return RECEDE_TEXT_OK;
}

static void check_error(recede_text_status status, const recede_text_error *error)
{
    insist(status == RECEDE_TEXT_REFUSED || status == RECEDE_TEXT_NO_MEMORY);
    insist(strlen(error->file) < sizeof error->file);
    insist(error->what[0] != '\0' && !strchr(error->what, '\n'));
    insist(strlen(error->what) < sizeof error->what);
}

static void check_round_trip(const recede_scene *scene, const recede_files *files)
{
    static recede_scene again;
    recede_text_error error;
    recede_buffer first, second;
    recede_buffer_start(&first, NULL);
    recede_buffer_start(&second, NULL);
    recede_scene_write(scene, &first);
    insist(!first.failed);
    insist(recede_scene_read(first.bytes, first.size, files, NULL, &again, &error) ==
           RECEDE_TEXT_OK);
    recede_scene_write(&again, &second);
    insist(first.size == second.size && memcmp(first.bytes, second.bytes, first.size) == 0);
    insist(memcmp(scene->planes, again.planes, sizeof again.planes) == 0);
    recede_buffer_free(&first);
    recede_buffer_free(&second);
}

static void check_palette(const content *file, const recede_files *files)
{
    static recede_palette_file palette, again;
    recede_text_error error;
    recede_text_status status =
        recede_palette_file_read(file->bytes, file->size, "", files, NULL, &palette, &error);
    if (status) {
        check_error(status, &error);
        return;
    }
    recede_buffer first, second;
    recede_buffer_start(&first, NULL);
    recede_buffer_start(&second, NULL);
    recede_palette_file_write(&palette, &first);
    insist(recede_palette_file_read(first.bytes, first.size, "", files, NULL, &again, &error) ==
           RECEDE_TEXT_OK);
    recede_palette_file_write(&again, &second);
    insist(first.size == second.size && memcmp(first.bytes, second.bytes, first.size) == 0);
    recede_buffer_free(&first);
    recede_buffer_free(&second);
}

static void check_pigment(const content *file)
{
    recede_pigment_file pigment, again;
    recede_text_error error;
    recede_text_status status =
        recede_pigment_file_read(file->bytes, file->size, "", NULL, &pigment, &error);
    if (status) {
        check_error(status, &error);
        return;
    }
    recede_buffer out;
    recede_buffer_start(&out, NULL);
    recede_pigment_file_write(&pigment, &out);
    insist(recede_pigment_file_read(out.bytes, out.size, "", NULL, &again, &error) ==
           RECEDE_TEXT_OK);
    insist(memcmp(&pigment, &again, sizeof pigment) == 0);
    recede_buffer_free(&out);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static recede_scene scene;
    const char *bytes = (const char *)data, *parting = size ? memchr(bytes, 0, size) : NULL;
    size_t length = parting ? (size_t)(parting - bytes) : size;
    content file = {parting ? parting + 1 : "", parting ? size - length - 1 : 0};
    const recede_files files = {read_content, &file};
    recede_text_error error;
    memset(&error, 0, sizeof error);
    recede_text_status status =
        recede_scene_read(bytes, length, &files, NULL, &scene, &error);
    if (status)
        check_error(status, &error);
    else
        check_round_trip(&scene, &files);
    if (parting) {
        check_palette(&file, &files);
        check_pigment(&file);
    }
    return 0;
}

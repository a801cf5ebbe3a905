/* Files that the page has opened, for scenes to name. */
#include <stdlib.h>
#include <string.h>

#include "colour/error.h"
#include "page/page.h"

static recede_page_file *file_named(recede_page *page, const char *name)
{
    for (size_t i = 0; i < page->file_count; i++)
        if (strcmp(page->files[i].name, name) == 0)
            return &page->files[i];
    return NULL;
}

/* A browser does not tell the folder of a file: its bare name will do. */
static recede_text_status read_opened(void *context, const char *name, recede_buffer *out,
                                      recede_text_error *error)
{
    recede_page *page = context;
    const char *slash = strrchr(name, '/');
    const recede_page_file *file = file_named(page, name);
    if (!file && slash)
        file = file_named(page, slash + 1);
    if (!file) {
        recede_text_refuse(error, 0, 0, "the file \"%s\" is not here yet; open it too, or all of "
                           "them together", name);
        return RECEDE_TEXT_UNREADABLE;
    }
    recede_buffer_add(out, file->bytes, file->size);
    return RECEDE_TEXT_OK;
}

recede_files recede_page_files(recede_page *page)
{
    return (recede_files){read_opened, page};
}

static int keep(recede_page_file *file, const char *bytes, size_t size)
{
    char *kept = malloc(size ? size : 1);
    if (!kept)
        return 0;
    memcpy(kept, bytes, size);
    free(file->bytes);
    file->bytes = kept;
    file->size = size;
    return 1;
}

RECEDE_PAGE_CALL(page_file) int recede_page_file_open(recede_page *page, size_t name_size,
                                                      size_t bytes_size)
{
    char name[RECEDE_NAME_SIZE];
    if (name_size >= sizeof name)
        return recede_page_refuse(page, 0, 0, "the file's name is over 200 bytes long");
    if (bytes_size > RECEDE_FILE_MOST_BYTES)
        return recede_page_refuse(page, 0, 0, "the file is larger than the 1 MiB that is read");
    memcpy(name, page->room, name_size);
    name[name_size] = '\0';
    const char *wrong = recede_file_name_wrong(name);
    if (wrong)
        return recede_page_refuse(page, 0, 0, wrong);
    recede_page_file *file = file_named(page, name);
    if (!file && page->file_count == RECEDE_MOST_FILES)
        return recede_page_refuse(page, 0, 0, "too many files are open; load the page anew");
    recede_page_file *place = file ? file : &page->files[page->file_count];
    if (!keep(place, page->room + name_size, bytes_size))
        return recede_page_refuse(page, 0, 0, "not enough memory");
    recede_copy_text(place->name, sizeof place->name, name);
    page->file_count += file == NULL;
    return 1;
}

RECEDE_PAGE_CALL(page_files_free) void recede_page_files_free(recede_page *page)
{
    for (size_t i = 0; i < page->file_count; i++) {
        free(page->files[i].bytes);
        page->files[i].bytes = NULL;
    }
    page->file_count = 0;
}

#include "cli/load.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "cli/commands.h"
#include "cli/files.h"
#include "cli/inputs.h"
#include "text/message.h"
#include "text/scene_read.h"

/* Standard error is not buffered: one call a line keeps lines whole. */
void recede_cli_say(const char *format, ...)
{
    char line[1600];
    va_list list;
    va_start(list, format);
    vsnprintf(line, sizeof line, format, list);
    va_end(list);
    fprintf(stderr, "%s\n", line);
}

int recede_cli_wrong(const char *command, const char *option, const char *text, const char *why)
{
    recede_buffer shown;
    recede_buffer_start(&shown, NULL);
    recede_message_name(&shown, text);
    recede_cli_say("recede %s: --%s is %s: %s; see recede %s --help", command, option,
                   recede_buffer_string(&shown), why, command);
    recede_buffer_free(&shown);
    return RECEDE_EXIT_USAGE;
}

int recede_cli_no_memory(void)
{
    recede_cli_say("recede: not enough memory; close other programs and try again");
    return RECEDE_EXIT_FAILED;
}

static int read_bytes(const char *path, recede_loaded *loaded)
{
    recede_file_problem problem;
    if (!path) {
        loaded->name = "built-in scene";
        loaded->bytes = recede_builtin_scene;
        loaded->size = recede_builtin_scene_size;
        return RECEDE_EXIT_DONE;
    }
    loaded->name = strcmp(path, "-") == 0 ? "standard input" : path;
    if (recede_cli_read(path, RECEDE_SCENE_MOST_BYTES, &loaded->read, &problem) != 0) {
        recede_cli_say("%s", problem.text);
        return problem.refused ? RECEDE_EXIT_REFUSED : RECEDE_EXIT_FAILED;
    }
    loaded->bytes = recede_buffer_string(&loaded->read);
    loaded->size = loaded->read.size;
    return RECEDE_EXIT_DONE;
}

int recede_cli_load(const char *path, recede_loaded *loaded)
{
    recede_cli_files files;
    recede_text_error error;
    *loaded = (recede_loaded){0};
    recede_buffer_start(&loaded->read, NULL);
    int code = read_bytes(path, loaded);
    if (code)
        return code;
    loaded->scene = malloc(sizeof *loaded->scene);
    if (!loaded->scene)
        return recede_cli_no_memory();
    recede_cli_files_start(&files, path);
    recede_text_status status = recede_scene_read(loaded->bytes, loaded->size, &files.files, NULL,
                                                  loaded->scene, &error);
    return status ? recede_cli_say_text_error(loaded->name, status, &error) : RECEDE_EXIT_DONE;
}

void recede_cli_unload(recede_loaded *loaded)
{
    free(loaded->scene);
    recede_buffer_free(&loaded->read);
    *loaded = (recede_loaded){0};
}

int recede_cli_explain(const recede_loaded *loaded, const recede_error *error)
{
    recede_text_error text;
    recede_text_status status =
        recede_scene_explain(loaded->bytes, loaded->size, NULL, error, &text);
    return recede_cli_say_text_error(loaded->name, status, &text);
}

static int say_was_read(const char *path)
{
    recede_buffer shown;
    recede_buffer_start(&shown, NULL);
    recede_message_name(&shown, path);
    recede_cli_say("%s: the output would take the place of a file that was read; choose another "
                   "name for it", recede_buffer_string(&shown));
    recede_buffer_free(&shown);
    return RECEDE_EXIT_USAGE;
}

int recede_cli_write(const recede_output *outputs, size_t count)
{
    recede_file_problem problem;
    for (size_t i = 0; i < count; i++)
        if (recede_cli_was_read(outputs[i].path))
            return say_was_read(outputs[i].path);
    if (recede_file_write(outputs, count, &problem) == 0)
        return RECEDE_EXIT_DONE;
    recede_cli_say("%s", problem.text);
    return RECEDE_EXIT_FAILED;
}

int recede_cli_print(recede_buffer *buffer)
{
    int code;
    if (buffer->failed) {
        code = recede_cli_no_memory();
    } else {
        recede_output output = {"-", recede_buffer_string(buffer), buffer->size};
        code = recede_cli_write(&output, 1);
    }
    recede_buffer_free(buffer);
    return code;
}

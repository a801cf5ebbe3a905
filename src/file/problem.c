#include "file/problem.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "colour/error.h"
#include "text/message.h"

static const char *shown_name(recede_buffer *buffer, const char *path, const char *stream)
{
    if (strcmp(path, "-") == 0)
        return stream;
    recede_message_name(buffer, path);
    return recede_buffer_string(buffer);
}

/* What a painter can do about it. */
static const char *remedy_for(int error_number)
{
    static const struct {
        int number;
        const char *remedy;
    } remedies[] = {
        {ENOENT, "check the name and the folder"},
        {ENOTDIR, "check the folder's name"},
        {EISDIR, "name a file, not a folder"},
        {EACCES, "choose a place you may use"},
        {EPERM, "choose a place you may use"},
        {EROFS, "choose a place that can be written to"},
        {ENOSPC, "make room, or choose another place"},
        {EDQUOT, "make room, or choose another place"},
        {EFBIG, "raise the limit on file sizes, or choose another place"},
        {ENAMETOOLONG, "choose a shorter name"},
        {ELOOP, "name the file itself, not the links to it"},
        {EPIPE, "the program that reads it has ended"},
        {EBADF, "it is closed: open it or name a file"},
        {ENOMEM, "close other programs and try again"},
    };
    for (size_t i = 0; i < sizeof remedies / sizeof remedies[0]; i++)
        if (remedies[i].number == error_number)
            return remedies[i].remedy;
    return "try another place";
}

/* Where there is no memory even for the line, the cause stands without the name. */
static void shorten(recede_file_problem *problem, int refused, const recede_buffer *line,
                    int failed, const char *nameless)
{
    problem->refused = refused;
    recede_copy_text(problem->text, sizeof problem->text,
                     failed ? nameless : recede_buffer_string(line));
}

int recede_file_fail(recede_file_problem *problem, const char *path, const char *verb,
                     int error_number)
{
    recede_buffer name, line;
    recede_buffer_start(&name, NULL);
    recede_buffer_start(&line, NULL);
    char nameless[200];
    const char *stream = strcmp(verb, "read") == 0 ? "standard input" : "standard output";
    snprintf(nameless, sizeof nameless, "a file cannot be %s: %s; %s", verb,
             strerror(error_number), remedy_for(error_number));
    recede_buffer_format(&line, "%s: cannot be %s: %s; %s", shown_name(&name, path, stream), verb,
                         strerror(error_number), remedy_for(error_number));
    shorten(problem, 0, &line, name.failed || line.failed, nameless);
    recede_buffer_free(&name);
    recede_buffer_free(&line);
    return -1;
}

int recede_file_say(recede_file_problem *problem, int refused, const char *path, const char *what)
{
    recede_buffer name, line;
    recede_buffer_start(&name, NULL);
    recede_buffer_start(&line, NULL);
    recede_buffer_format(&line, "%s: %s", shown_name(&name, path, "standard input"), what);
    shorten(problem, refused, &line, name.failed || line.failed, what);
    recede_buffer_free(&name);
    recede_buffer_free(&line);
    return -1;
}

/* What every command does: read a scene, report errors, write outputs. */
#ifndef RECEDE_CLI_LOAD_H
#define RECEDE_CLI_LOAD_H

#include "file/write.h"
#include "recede.h"
#include "text/buffer.h"

/* A scene with the bytes it came from. */
typedef struct recede_loaded {
    const char *name; /* for messages */
    const char *bytes;
    size_t size;
    recede_buffer read; /* holds the bytes of a file */
    recede_scene *scene;
} recede_loaded;

/* path NULL: the built-in scene; "-": standard input. Returns an exit code;
 * what is wrong has been said. recede_cli_unload afterwards in any case. */
int recede_cli_load(const char *path, recede_loaded *loaded);
void recede_cli_unload(recede_loaded *loaded);

/* Says on standard error what the core found wrong with the scene, with its
 * place. Returns the exit code. */
int recede_cli_explain(const recede_loaded *loaded, const recede_error *error);

/* Writes all outputs; returns an exit code, what is wrong has been said. A
 * buffer that has failed is reported as a lack of memory: pass it as such. */
int recede_cli_write(const recede_output *outputs, size_t count);

/* Writes a buffer's text to standard output; frees it. Returns an exit code. */
int recede_cli_print(recede_buffer *buffer);

/* One line on standard error. */
void recede_cli_say(const char *format, ...) __attribute__((format(printf, 1, 2)));

/* "recede COMMAND: --OPTION is TEXT: why; see ..." on standard error. Returns the exit
 * code for wrong usage. */
int recede_cli_wrong(const char *command, const char *option, const char *text, const char *why);

/* Says that memory ran out; returns the exit code for it. */
int recede_cli_no_memory(void);

#endif

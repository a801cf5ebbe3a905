#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <unistd.h>

#include "cli/commands.h"
#include "cli/load.h"
#include "file/cleanup.h"
#include "text/message.h"
#include "text/nearest.h"

typedef struct {
    const char *name, *help;
    int (*run)(int count, char **words);
} command;

static const command commands[] = {
    {"study", "plan a scene and draw the study with its recipes", recede_cli_study},
    {"check", "check a scene and print it in full", recede_cli_check},
    {"names", "list the foliage, surfaces, palettes and tubes that a scene may name",
     recede_cli_names},
    {"palette", "tell about palettes and pigments, and draw their swatches", recede_cli_palette},
    {"swatch", "learn paints of your own from painted swatches", recede_cli_swatch},
    {"match", "seek recipes for one colour", recede_cli_match},
    {"chart", "draw a mixing chart, or what a palette reaches", recede_cli_chart},
    {"puddle", "put the work in order: what to add to which puddle", recede_cli_puddle},
    {"wish", "find the air and light that grant a wish for values", recede_cli_wish},
    {"ladder", "draw one colour at many distances, to teach with", recede_cli_ladder},
    {"skies", "plan a scene in several lights and tell what they change", recede_cli_skies},
    {"page", "write the planning page, one file for a browser", recede_cli_page},
};
enum { COMMANDS = sizeof commands / sizeof commands[0] };

static int print_help(void)
{
    recede_buffer out;
    recede_buffer_start(&out, NULL);
    recede_buffer_text(&out, "recede COMMAND ...\n\n"
                             "Plans the colours of a painted landscape by distance.\n\n");
    for (size_t i = 0; i < COMMANDS; i++)
        recede_buffer_format(&out, "  %-10s%s\n", commands[i].name, commands[i].help);
    recede_buffer_text(&out, "\nrecede COMMAND --help says more about each; recede --version "
                             "tells the version.\n"
                             "Exit codes: 0 done, 1 input refused, 2 wrong usage, 3 could not "
                             "read or write.\n");
    return recede_cli_print(&out);
}

static int print_version(void)
{
    recede_buffer out;
    recede_buffer_start(&out, NULL);
    recede_buffer_text(&out, "recede " RECEDE_VERSION "\n");
    return recede_cli_print(&out);
}

static int unknown_command(const char *word)
{
    char offer[3 * RECEDE_NAME_SIZE];
    recede_nearest nearest;
    recede_buffer name;
    recede_nearest_start(&nearest, word);
    for (size_t i = 0; i < COMMANDS; i++)
        recede_nearest_offer(&nearest, commands[i].name);
    recede_nearest_say(&nearest, offer, sizeof offer);
    recede_buffer_start(&name, NULL);
    recede_message_name(&name, word);
    recede_cli_say("recede: there is no command %s; %s See recede --help",
                   recede_buffer_string(&name), offer);
    recede_buffer_free(&name);
    return RECEDE_EXIT_USAGE;
}

static int run(int count, char **words)
{
    if (count < 2) {
        recede_cli_say("recede: no command given; see recede --help");
        return RECEDE_EXIT_USAGE;
    }
    if (strcmp(words[1], "--help") == 0)
        return print_help();
    if (strcmp(words[1], "--version") == 0)
        return print_version();
    for (size_t i = 0; i < COMMANDS; i++)
        if (strcmp(commands[i].name, words[1]) == 0)
            return commands[i].run(count - 2, words + 2);
    return unknown_command(words[1]);
}

/* A standard stream that is closed must not become the next file opened: its
 * place is taken by something that fails when used. */
static void hold_standard_streams(void)
{
    for (int file = STDIN_FILENO; file <= STDERR_FILENO; file++)
        if (fcntl(file, F_GETFD) < 0 && errno == EBADF)
            (void)!open("/dev/null", file == STDIN_FILENO ? O_WRONLY : O_RDONLY);
}

int main(int count, char **words)
{
    hold_standard_streams();
    recede_cleanup_install();
    int code = run(count, words);
    /* some systems tell only now that what was written has not arrived */
    if (close(STDOUT_FILENO) != 0 && code == RECEDE_EXIT_DONE) {
        recede_cli_say("standard output: cannot be written: %s; try another place",
                       strerror(errno));
        code = RECEDE_EXIT_FAILED;
    }
    return code;
}

/* The commands of the program. Each gets the words after its own name and
 * returns an exit code. */
#ifndef RECEDE_CLI_COMMANDS_H
#define RECEDE_CLI_COMMANDS_H

#include <stddef.h>

enum {
    RECEDE_EXIT_DONE = 0,
    RECEDE_EXIT_REFUSED = 1, /* the input was refused */
    RECEDE_EXIT_USAGE = 2,   /* wrong usage */
    RECEDE_EXIT_FAILED = 3   /* could not read or write, or no memory */
};

int recede_cli_study(int count, char **words);
int recede_cli_check(int count, char **words);
int recede_cli_names(int count, char **words);
int recede_cli_palette(int count, char **words);
int recede_cli_swatch(int count, char **words);
int recede_cli_match(int count, char **words);
int recede_cli_chart(int count, char **words);
int recede_cli_puddle(int count, char **words);
int recede_cli_wish(int count, char **words);
int recede_cli_ladder(int count, char **words);
int recede_cli_skies(int count, char **words);
int recede_cli_page(int count, char **words);

/* The scene used where none is given; made from scenes/ by the Makefile. */
extern const char recede_builtin_scene[];
extern const size_t recede_builtin_scene_size;

/* The planning page; of size 0 where it was built without what the page needs. */
extern const char recede_planner_page[];
extern const size_t recede_planner_page_size;

#endif

/* A small parser for a command's words: options from a table, the rest are
 * operands. Words are taken strictly from left to right; "--" ends the options;
 * "-" is an operand. "-o FILE", "-oFILE", "--json FILE" and "--json=FILE". */
#ifndef RECEDE_CLI_OPTIONS_H
#define RECEDE_CLI_OPTIONS_H

#include <stddef.h>

typedef struct recede_option {
    char letter;       /* 'o' for -o, 0 for none */
    const char *name;  /* "json" for --json, NULL for none */
    const char *value; /* what it takes ("FILE"), NULL for nothing */
    const char *help;
    const char **text; /* where the value goes; options without value: "" is put there */
} recede_option;

typedef struct recede_usage {
    const char *command;  /* "study" */
    const char *operands; /* "[SCENE]" */
    const char *summary;  /* what the command does: a sentence or two */
    const recede_option *options;
    size_t option_count;
    size_t most_operands;
} recede_usage;

enum { RECEDE_OPTIONS_GO_ON = -1 };

/* Fills the options' places and operands (room for most_operands; those not
 * given are NULL). Returns RECEDE_OPTIONS_GO_ON, or the exit code with which
 * the command ends at once: help was asked for and printed, or the words are
 * wrong and that has been said. */
int recede_options_read(const recede_usage *usage, int count, char **words,
                        const char **operands);

#endif

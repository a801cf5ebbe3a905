/* What went wrong with a file, in one line without a line end. */
#ifndef RECEDE_FILE_PROBLEM_H
#define RECEDE_FILE_PROBLEM_H

typedef struct recede_file_problem {
    int refused; /* 1: the content is at fault, 0: it could not be read or written */
    char text[700];
} recede_file_problem;

/* "NAME: cannot be VERB: what the system says; remedy". NAME is shown safely,
 * "-" as the standard stream. Returns -1. */
int recede_file_fail(recede_file_problem *problem, const char *path, const char *verb,
                     int error_number);

/* "NAME: what", refused or not. Returns -1. */
int recede_file_say(recede_file_problem *problem, int refused, const char *path,
                    const char *what);

#endif

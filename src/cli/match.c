/* recede match: recipes for one colour. */
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "cli/commands.h"
#include "cli/load.h"
#include "cli/options.h"
#include "cli/paints.h"
#include "cli/progress.h"
#include "text/match_write.h"
#include "text/message.h"
#include "text/numbers.h"

static const char command[] = "match";

/* Terminals that take 24-bit colours say so in COLORTERM (common practice, no
 * source); NO_COLOR, if set and not empty, asks for none. */
static int shows_colours(void)
{
    const char *depth = getenv("COLORTERM"), *terminal = getenv("TERM"), *no = getenv("NO_COLOR");
    if (!isatty(STDOUT_FILENO) || (no && *no) || !depth)
        return 0;
    if (!terminal || strcmp(terminal, "dumb") == 0)
        return 0;
    return strcmp(depth, "truecolor") == 0 || strcmp(depth, "24bit") == 0;
}

/* -------------------------------------------------------------- colours -- */

static int wrong_colour(const char *text, const char *why)
{
    recede_buffer shown;
    recede_buffer_start(&shown, NULL);
    recede_message_name(&shown, text);
    recede_cli_say("recede %s: the colour is %s: %s; see recede %s --help", command,
                   recede_buffer_string(&shown), why, command);
    recede_buffer_free(&shown);
    return RECEDE_EXIT_USAGE;
}

static int read_srgb(const char *text, recede_lab *lab)
{
    double part[3];
    if (strlen(text) != 7 || strspn(text + 1, "0123456789abcdefABCDEF") != 6)
        return wrong_colour(text, "after # stand six of 0 to 9 and a to f, as in #6a7f4c");
    for (int i = 0; i < 3; i++) {
        const char pair[] = {text[1 + 2 * i], text[2 + 2 * i], '\0'};
        part[i] = (double)strtoul(pair, NULL, 16) / 255.0;
    }
    recede_srgb srgb = {part[0], part[1], part[2]};
    *lab = recede_lab_of_xyz(recede_xyz_of_srgb(srgb), recede_white());
    return RECEDE_EXIT_DONE;
}

/* A number and the sign after it; NULL where they are not there. */
static const char *next_number(const char *at, char sign, double *number)
{
    at += strspn(at, " ");
    size_t length = recede_number_length(at, strlen(at));
    if (length == 0 || length > RECEDE_NUMBER_LENGTH)
        return NULL;
    *number = recede_number_value(at, length);
    at += length + strspn(at + length, " ");
    return *at == sign ? at + (sign != '\0') : NULL;
}

static int read_lab(const char *text, recede_lab *lab)
{
    const char *at = next_number(text, ',', &lab->l);
    if (at)
        at = next_number(at, ',', &lab->a);
    if (at)
        at = next_number(at, '\0', &lab->b);
    if (!at)
        return wrong_colour(text, "expected '#rrggbb' (in quotes, for # starts a comment in most "
                                  "shells) or L,a,b, as in 52,-14,22");
    if (!(lab->l >= 0 && lab->l <= 100 && fabs(lab->a) <= 150 && fabs(lab->b) <= 150))
        return wrong_colour(text, "L* goes from 0 to 100, a* and b* from -150 to 150");
    return RECEDE_EXIT_DONE;
}

static int read_colour(const char *text, recede_lab *lab)
{
    if (!text) {
        recede_cli_say("recede %s: a colour is missing (if it was #rrggbb, put it in quotes); see "
                       "recede %s --help", command, command);
        return RECEDE_EXIT_USAGE;
    }
    return text[0] == '#' ? read_srgb(text, lab) : read_lab(text, lab);
}

/* --------------------------------------------------------------- output -- */

static int write_all(const recede_match_told *told, const char *json_path)
{
    recede_output outputs[2];
    recede_buffer json, text;
    size_t count = 0;
    recede_buffer_start(&json, NULL);
    recede_buffer_start(&text, NULL);
    recede_match_write(told, &json);
    recede_match_text(told, shows_colours(), &text);
    if (json_path)
        outputs[count++] = (recede_output){json_path, json.bytes, json.size};
    if (!json_path || strcmp(json_path, "-") != 0)
        outputs[count++] = (recede_output){"-", text.bytes, text.size};
    int code = json.failed || text.failed ? recede_cli_no_memory()
                                          : recede_cli_write(outputs, count);
    recede_buffer_free(&json);
    recede_buffer_free(&text);
    return code;
}

/* --------------------------------------------------------------- search -- */

typedef struct {
    const recede_scene *scene;
    recede_palette *palette;
    recede_lab target;
    recede_matches matches;
    recede_addition addition;
} search;

static recede_code seek(search *s, const recede_progress *progress, recede_error *error)
{
    recede_index *index;
    const recede_rules *rules = &s->scene->rules;
    recede_code code = recede_index_new(s->palette, rules, 0, NULL, progress, &index, error);
    if (code)
        return code;
    code = recede_match(index, s->target, &s->matches, NULL, progress, error);
    recede_index_free(index);
    if (!code && s->matches.of[RECEDE_MATCH_CLOSEST].recipe.reach != RECEDE_REACHABLE)
        code = recede_best_additions(s->palette, rules, NULL, &s->target, 1, &s->addition, NULL,
                                     progress, error);
    return code;
}

static int match(search *s, const char *json_path)
{
    recede_cli_progress progress;
    recede_error error;
    recede_cli_progress_start(&progress, "seeking recipes");
    recede_code failed = seek(s, &progress.progress, &error);
    recede_cli_progress_end(&progress);
    if (failed)
        return recede_cli_paints_explain(command, &error);
    int sought = s->matches.of[RECEDE_MATCH_CLOSEST].recipe.reach != RECEDE_REACHABLE;
    const recede_match_told told = {
        recede_colour_of_xyz(recede_xyz_of_lab(s->target, recede_white())), s->palette,
        s->scene->palette, &s->scene->rules, &s->matches, sought ? &s->addition : NULL};
    return write_all(&told, json_path);
}

static int run(const char *colour, const recede_cli_paints *given, const char *json_path)
{
    recede_error error;
    search s = {0};
    int code = read_colour(colour, &s.target);
    if (code)
        return code;
    recede_scene *scene = malloc(sizeof *scene);
    if (!scene)
        return recede_cli_no_memory();
    recede_scene_default(scene);
    s.scene = scene;
    code = recede_cli_paints_take(command, given, scene);
    if (!code && recede_palette_new(scene->paints, scene->paint_count, scene->medium, &scene->paper,
                                    NULL, &s.palette, &error))
        code = recede_cli_paints_explain(command, &error);
    if (!code)
        code = match(&s, json_path);
    recede_palette_free(s.palette);
    free(scene);
    return code;
}

int recede_cli_match(int count, char **words)
{
    recede_cli_paints given = {0};
    const char *json = NULL, *colour = NULL;
    const recede_option options[] = {
        RECEDE_CLI_PAINT_OPTIONS(given),
        {0, "json", "FILE", "write the recipes to FILE as JSON", &json},
    };
    const recede_usage usage = {
        command, "COLOUR",
        "Seeks recipes for one colour: the closest, the simplest, the one that forgives a slip\n"
        "of the hand best, and the one that holds up best in lamp light.\n"
        "COLOUR is '#rrggbb' (sRGB, in quotes) or L,a,b (CIE L*a*b* under D65).",
        options, sizeof options / sizeof options[0], 1};
    int code = recede_options_read(&usage, count, words, &colour);
    return code == RECEDE_OPTIONS_GO_ON ? run(colour, &given, json) : code;
}

/* A colour mixed of the scene's paints, as words of the command line. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "cli/commands.h"
#include "cli/load.h"
#include "cli/values.h"
#include "text/nearest.h"
#include "text/numbers.h"
#include "text/paint_name.h"

static const char option[] = "mix";
enum { LONGEST = RECEDE_NAME_SIZE + RECEDE_NUMBER_LENGTH + 8 };

/* "3 hansa yellow" taken apart; NULL where there is no number before a name. */
static const char *take_apart(char *piece, double *number)
{
    size_t end = strlen(piece), digits;
    while (end > 0 && piece[end - 1] == ' ')
        piece[--end] = '\0';
    digits = recede_number_length(piece, end);
    if (digits == 0 || digits > RECEDE_NUMBER_LENGTH || piece[digits] != ' ')
        return NULL;
    *number = recede_number_value(piece, digits);
    return piece + digits + strspn(piece + digits, " ");
}

/* "hansa yellow, 1 PB29": the next paint behind a comma, which names may have too. */
static int goes_on(const char *name)
{
    const char *at = name;
    while ((at = strpbrk(at, ",;")) != NULL) {
        at += 1 + strspn(at + 1, " ");
        if (recede_number_length(at, strlen(at)))
            return 1;
    }
    return 0;
}

static int unknown(const char *command, const recede_scene *scene, const char *name, int found)
{
    char offer[3 * RECEDE_NAME_SIZE];
    recede_nearest nearest;
    if (found == RECEDE_PAINT_MANY)
        return recede_cli_wrong(command, option, name, "several of the paints answer to that");
    if (goes_on(name))
        return recede_cli_wrong(command, option, name, "join paints with +, as in "
                                                       "'3 hansa yellow + 1 PB29'");
    recede_nearest_start(&nearest, name);
    for (size_t i = 0; i < scene->paint_count; i++)
        recede_nearest_offer(&nearest, scene->paints[i].name);
    recede_nearest_say(&nearest, offer, sizeof offer);
    return recede_cli_wrong(command, option, name, offer);
}

static int add_paint(const char *command, const recede_scene *scene, const char *name,
                     double parts, recede_mix *mix)
{
    int found = recede_paint_meant(scene->paints, scene->paint_count, name), at = mix->count;
    if (found < 0)
        return unknown(command, scene, name, found);
    if (!(parts >= 1 && parts <= RECEDE_MOST_PARTS && parts == floor(parts)))
        return recede_cli_wrong(command, option, name, "expected whole parts, 1 to 12");
    if (mix->count == RECEDE_MOST_IN_MIX)
        return recede_cli_wrong(command, option, name, "a mix has at most 4 paints");
    for (int i = 0; i < mix->count; i++)
        if (mix->paint[i] == found)
            return recede_cli_wrong(command, option, name, "it stands twice; add the parts up");
    for (; at > 0 && mix->paint[at - 1] > found; at--) {
        mix->paint[at] = mix->paint[at - 1];
        mix->parts[at] = mix->parts[at - 1];
    }
    mix->paint[at] = found;
    mix->parts[at] = (int)parts;
    mix->count++;
    return RECEDE_EXIT_DONE;
}

static int add(const char *command, const recede_scene *scene, char *piece, recede_mix *mix)
{
    double number;
    const char *name = take_apart(piece, &number);
    if (!name || !*name)
        return recede_cli_wrong(command, option, piece, "expected parts and a paint, as in "
                                                        "'3 hansa yellow + 2 water'");
    if (strcmp(name, "water") != 0)
        return add_paint(command, scene, name, number, mix);
    if (scene->medium != RECEDE_WATERCOLOUR)
        return recede_cli_wrong(command, option, piece, "only watercolour takes water");
    if (!(number >= 0 && number <= 1000))
        return recede_cli_wrong(command, option, piece, "expected 0 to 1000 parts of water");
    mix->water = number;
    return RECEDE_EXIT_DONE;
}

static int check(const char *command, const char *text, const recede_mix *mix)
{
    int parts = 0;
    for (int i = 0; i < mix->count; i++)
        parts += mix->parts[i];
    if (mix->count == 0)
        return recede_cli_wrong(command, option, text, "no paint stands in it");
    if (parts > RECEDE_MOST_PARTS)
        return recede_cli_wrong(command, option, text, "that is over 12 parts of paint in all");
    return RECEDE_EXIT_DONE;
}

int recede_cli_own_mix(const char *command, const char *text, const recede_scene *scene,
                       recede_own *own)
{
    char piece[LONGEST];
    memset(own, 0, sizeof *own);
    own->kind = RECEDE_OWN_MIX;
    for (const char *at = text; at;) {
        at += strspn(at, " ");
        size_t length = strcspn(at, "+");
        snprintf(piece, sizeof piece, "%.*s", (int)(length < LONGEST ? length : LONGEST - 1), at);
        int code = add(command, scene, piece, &own->mix);
        if (code)
            return code;
        at = at[length] ? at + length + 1 : NULL;
    }
    return check(command, text, &own->mix);
}

#include "cli/values.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "cli/commands.h"
#include "cli/load.h"
#include "colour/error.h"
#include "text/message.h"
#include "text/nearest.h"
#include "text/units.h"

int recede_cli_visibility(const char *command, const char *option, const char *text, double *km)
{
    static const double least_m = 20.0, most_m = 250000.0;
    const recede_word *word = recede_word_named(recede_visibility_words, text);
    double metres = word ? word->number : 0.0;
    const char *fault = word ? NULL : recede_length_of(text, &metres);
    if (fault)
        return recede_cli_wrong(command, option, text, fault);
    if (!(metres >= least_m && metres <= most_m))
        return recede_cli_wrong(command, option, text, "expected 20 m to 250 km");
    *km = metres / 1000.0;
    return RECEDE_EXIT_DONE;
}

/* Puts a distance among those before it; 0 where it stands there already. */
static int insert(double *metres, size_t count, double distance)
{
    size_t place = count;
    for (; place > 0 && metres[place - 1] > distance; place--)
        metres[place] = metres[place - 1];
    metres[place] = distance;
    return place == 0 || metres[place - 1] != distance;
}

int recede_cli_distances(const char *command, const char *option, const char *text, size_t most,
                         double *metres, size_t *count)
{
    enum { LONGEST = 60 };
    char one[LONGEST], why[LONGEST];
    snprintf(why, sizeof why, "it has more than %zu distances", most);
    *count = 0;
    for (const char *at = text; at; ) {
        at += strspn(at, " ");
        size_t length = strcspn(at, ",");
        double distance;
        snprintf(one, sizeof one, "%.*s", (int)(length < LONGEST ? length : LONGEST - 1), at);
        const char *fault = recede_length_of(one, &distance);
        if (fault)
            return recede_cli_wrong(command, option, one, fault);
        if (!(distance >= 0.1 && distance <= 300000.0))
            return recede_cli_wrong(command, option, one, "expected 10 cm to 300 km");
        if (*count == most)
            return recede_cli_wrong(command, option, text, why);
        if (!insert(metres, (*count)++, distance))
            return recede_cli_wrong(command, option, one, "it stands twice");
        at = at[length] ? at + length + 1 : NULL;
    }
    if (*count < 2)
        return recede_cli_wrong(command, option, text, "it has a single distance; give two or more");
    return RECEDE_EXIT_DONE;
}

/* ---- colours */

typedef struct {
    const char *option;
    size_t (*count)(void);
    const recede_own_entry *(*at)(size_t index);
} collection;

static int unknown(const char *command, const collection *known, const char *text)
{
    char offer[3 * RECEDE_NAME_SIZE];
    recede_nearest nearest;
    recede_buffer shown;
    recede_nearest_start(&nearest, text);
    for (size_t i = 0; i < known->count(); i++)
        recede_nearest_offer(&nearest, known->at(i)->name);
    recede_nearest_say(&nearest, offer, sizeof offer);
    recede_buffer_start(&shown, NULL);
    recede_message_name(&shown, text);
    recede_cli_say("recede %s: --%s %s is not known; %s See recede %s --help", command,
                   known->option, recede_buffer_string(&shown), offer, command);
    recede_buffer_free(&shown);
    return RECEDE_EXIT_USAGE;
}

static int own_named(const char *command, const collection *known, recede_own_kind kind,
                     const char *text, recede_own *own)
{
    for (size_t i = 0; i < known->count(); i++) {
        const recede_own_entry *entry = known->at(i);
        if (strcmp(entry->name, text) == 0) {
            own->kind = kind;
            own->reflectance = entry->reflectance;
            recede_copy_text(own->name, sizeof own->name, entry->name);
            return RECEDE_EXIT_DONE;
        }
    }
    return unknown(command, known, text);
}

static int own_coloured(const char *command, const char *text, recede_own *own)
{
    if (strlen(text) != 7 || text[0] != '#' || strspn(text + 1, "0123456789abcdefABCDEF") != 6)
        return recede_cli_wrong(command, "colour", text, "expected an sRGB colour as #rrggbb");
    own->kind = RECEDE_OWN_COLOUR;
    unsigned long rgb = strtoul(text + 1, NULL, 16);
    own->srgb = (recede_srgb){(double)(rgb >> 16) / 255.0, (double)(rgb >> 8 & 255) / 255.0,
                              (double)(rgb & 255) / 255.0};
    own->reflectance = recede_smooth_of_xyz(recede_xyz_of_srgb(own->srgb)).reflectance;
    return RECEDE_EXIT_DONE;
}

int recede_cli_own(const char *command, recede_own_kind kind, const char *text, recede_own *own)
{
    static const collection foliage = {"foliage", recede_foliage_count, recede_foliage_at};
    static const collection surfaces = {"surface", recede_surface_count, recede_surface_at};
    memset(own, 0, sizeof *own);
    if (kind == RECEDE_OWN_COLOUR)
        return own_coloured(command, text, own);
    return own_named(command, kind == RECEDE_OWN_FOLIAGE ? &foliage : &surfaces, kind, text, own);
}

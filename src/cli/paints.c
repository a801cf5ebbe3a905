#include "cli/paints.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "cli/commands.h"
#include "cli/load.h"
#include "cli/own_paints.h"
#include "paint/names.h"
#include "plan/fits.h"
#include "text/message.h"
#include "text/nearest.h"
#include "text/numbers.h"
#include "text/paint_name.h"
#include "text/scene_fields.h"

/* --------------------------------------------------------------- paints -- */

enum { LONGEST = RECEDE_NAME_SIZE };

/* Names may hold commas themselves ("phthalo blue, green shade"): of the pieces
 * that follow, as many as make a name together. */
enum { MOST_PIECES = 3 };

static const char *piece_end(const char *at, int pieces)
{
    const char *end = at + strcspn(at, ",");
    while (--pieces > 0) {
        if (!*end)
            return NULL;
        end += 1 + strcspn(end + 1, ",");
    }
    return end;
}

static void copy_trimmed(const char *from, const char *end, char name[LONGEST])
{
    while (from < end && *from == ' ')
        from++;
    while (end > from && end[-1] == ' ')
        end--;
    snprintf(name, LONGEST, "%.*s", (int)(end - from), from);
}

/* Paints that the scene has go before those of the library. */
static int is_paint(const recede_scene *scene, const char *name, recede_paint *paint)
{
    int place = recede_paint_meant(scene->paints, scene->paint_count, name);
    if (place < 0)
        return recede_paint_named(name, paint, NULL) == RECEDE_OK;
    *paint = scene->paints[place];
    return 1;
}

/* The paint at the head of a list, and where the rest starts (NULL: nowhere). A file
 * that is no paint of the scene is left to be read: file is 1. */
static int next_paint(const recede_scene *scene, const char **rest, recede_paint *paint,
                      char name[LONGEST], int *file)
{
    for (int pieces = MOST_PIECES; pieces >= 1; pieces--) {
        const char *end = piece_end(*rest, pieces);
        if (!end)
            continue;
        copy_trimmed(*rest, end, name);
        int known = is_paint(scene, name, paint);
        *file = !known && pieces == 1 && recede_is_file_name(name);
        if (known || *file) {
            *rest = *end ? end + 1 : NULL;
            return 1;
        }
    }
    return 0;
}

static int unknown(const char *command, const char *option, const char *name, int palettes)
{
    char offer[3 * RECEDE_NAME_SIZE];
    recede_nearest nearest;
    recede_buffer shown;
    if (!*name) {
        recede_cli_say("recede %s: --%s: a name is missing beside a comma; see recede %s --help",
                       command, option, command);
        return RECEDE_EXIT_USAGE;
    }
    recede_nearest_start(&nearest, name);
    for (size_t i = 0; palettes && i < recede_palette_entry_count(); i++)
        recede_nearest_offer(&nearest, recede_palette_entry_at(i)->name);
    for (size_t i = 0; i < recede_pigment_count(); i++) {
        recede_nearest_offer(&nearest, recede_pigment_at(i)->name);
        recede_nearest_offer(&nearest, recede_pigment_at(i)->colour_index);
    }
    for (size_t i = 0; i < recede_tube_count(); i++)
        recede_nearest_offer(&nearest, recede_tube_name_at(i));
    recede_nearest_say(&nearest, offer, sizeof offer);
    recede_buffer_start(&shown, NULL);
    recede_message_name(&shown, name);
    recede_cli_say("recede %s: --%s: no paint is called \"%s\"; %s%s See recede %s --help", command,
                   option, recede_buffer_string(&shown), offer,
                   strchr(offer, '?') ? "" : ".", command);
    recede_buffer_free(&shown);
    return RECEDE_EXIT_USAGE;
}

/* Where a paint stands in the scene's palette; added where it does not. */
static int place_of(const char *command, const char *option, recede_scene *scene,
                    const recede_paint *paint, int *place)
{
    for (size_t i = 0; i < scene->paint_count; i++) {
        const recede_paint *there = &scene->paints[i];
        if (!recede_same_paint_name(there->name, paint->name))
            continue;
        *place = (int)i;
        if (recede_same_spectrum(&there->k, &paint->k) && recede_same_spectrum(&there->s, &paint->s))
            return RECEDE_EXIT_DONE;
        return recede_cli_wrong(command, option, paint->name,
                                "another paint of that name stands in the palette");
    }
    if (scene->paint_count == RECEDE_MOST_PAINTS)
        return recede_cli_wrong(command, option, paint->name,
                                "a palette holds 24 paints, and this is one more");
    scene->palette[0] = '\0';
    scene->paints[scene->paint_count] = *paint;
    *place = (int)scene->paint_count++;
    return RECEDE_EXIT_DONE;
}

int recede_cli_paints_find(const char *command, const char *option, const char *text,
                           recede_scene *scene, int *index, int *count)
{
    *count = 0;
    for (const char *rest = text; rest; ) {
        recede_paint paint;
        char name[LONGEST];
        int file, place = 0, code = RECEDE_EXIT_DONE;
        if (!next_paint(scene, &rest, &paint, name, &file))
            return unknown(command, option, name, *count == 0 && scene->paint_count == 0);
        if (file)
            code = recede_cli_pigment_file(command, option, name, &paint);
        if (!code)
            code = place_of(command, option, scene, &paint, &place);
        if (code)
            return code;
        for (int i = 0; i < *count; i++)
            if (index[i] == place)
                return recede_cli_wrong(command, option, name, "it stands twice; keep one");
        index[(*count)++] = place;
    }
    return RECEDE_EXIT_DONE;
}

static int take_palette(const char *command, const char *text, recede_scene *scene)
{
    int index[RECEDE_MOST_PAINTS], count;
    if (recede_scene_use_palette(scene, text, NULL) == RECEDE_OK)
        return RECEDE_EXIT_DONE;
    if (!strchr(text, ',') && recede_is_file_name(text))
        return recede_cli_palette_file(command, "palette", text, scene);
    scene->palette[0] = '\0';
    scene->paint_count = 0;
    return recede_cli_paints_find(command, "palette", text, scene, index, &count);
}

/* -------------------------------------------------------------- numbers -- */

static int take_number(const char *command, const char *option, const char *text, double least,
                       double most, int whole, double *number)
{
    char why[80];
    size_t length = strlen(text);
    snprintf(why, sizeof why, "expected a %snumber from %d to %d", whole ? "whole " : "",
             (int)least, (int)most);
    if (length > RECEDE_NUMBER_LENGTH || recede_number_length(text, length) != length)
        return recede_cli_wrong(command, option, text, why);
    *number = recede_number_value(text, length);
    if (!(*number >= least && *number <= most) || (whole && *number != floor(*number)))
        return recede_cli_wrong(command, option, text, why);
    return RECEDE_EXIT_DONE;
}

static int take_rules(const char *command, const recede_cli_paints *given, recede_rules *rules)
{
    double pigments = rules->most_pigments, parts = rules->most_parts;
    int code = RECEDE_EXIT_DONE;
    if (given->pigments)
        code = take_number(command, "pigments", given->pigments, 1, RECEDE_MOST_IN_MIX, 1,
                           &pigments);
    if (!code && given->parts)
        code = take_number(command, "parts", given->parts, 1, RECEDE_MOST_PARTS, 1, &parts);
    if (!code && given->tie)
        code = take_number(command, "tie", given->tie, 0, 10, 0, &rules->tie);
    rules->most_pigments = (int)pigments;
    rules->most_parts = (int)parts;
    return code;
}

/* --------------------------------------------------------------- medium -- */

static int take_medium(const char *command, const char *text, recede_scene *scene)
{
    const recede_word *word = recede_word_named(recede_medium_words, text);
    if (!word)
        return recede_cli_wrong(command, "medium", text, "expected watercolour, gouache, acrylic or oil");
    if (scene->medium != (recede_medium)word->number)
        scene->shadows_over = -1; /* as is usual in the new medium */
    scene->medium = (recede_medium)word->number;
    return RECEDE_EXIT_DONE;
}

static int has_white(const recede_scene *scene)
{
    for (size_t i = 0; i < scene->paint_count; i++)
        if (scene->paints[i].is_white)
            return 1;
    return 0;
}

/* The built-in palette for opaque media, where only the medium was given. */
static const char *opaque_palette(void)
{
    size_t i = 0;
    while (i + 1 < recede_palette_entry_count() && !recede_palette_entry_at(i)->opaque)
        i++;
    return recede_palette_entry_at(i)->name;
}

/* Where the medium changes, so do the parts that are usual in it. */
static void use_usual_parts(recede_scene *scene, recede_medium before)
{
    if (recede_usual_parts(scene->medium) != recede_usual_parts(before))
        scene->rules.most_parts = recede_usual_parts(scene->medium);
}

/* Planes mixed of the scene's paints keep their colour when those change. */
static void keep_mixes(recede_scene *scene)
{
    for (size_t i = 0; i < scene->plane_count; i++)
        if (scene->planes[i].own.kind == RECEDE_OWN_MIX)
            scene->planes[i].own.kind = RECEDE_OWN_REFLECTANCE;
}

int recede_cli_paints_take(const char *command, const recede_cli_paints *given,
                           recede_scene *scene)
{
    recede_medium before = scene->medium;
    int code = take_rules(command, given, &scene->rules);
    if (given->palette || given->medium)
        keep_mixes(scene);
    if (!code && given->palette)
        code = take_palette(command, given->palette, scene);
    if (!code && given->medium)
        code = take_medium(command, given->medium, scene);
    if (!code && given->medium && !given->palette && scene->medium != RECEDE_WATERCOLOUR &&
        !has_white(scene))
        recede_scene_use_palette(scene, opaque_palette(), NULL);
    if (!given->parts)
        use_usual_parts(scene, before);
    return code;
}

int recede_cli_paints_explain(const char *command, const recede_error *error)
{
    if (error->code == RECEDE_NO_MEMORY)
        return recede_cli_no_memory();
    if (error->code == RECEDE_NO_WHITE)
        recede_cli_say("recede %s: an opaque medium needs a white among its paints: add "
                       "\"titanium white\" to the list of paints, or to the \"paints\" of the "
                       "palette file, or take %s; see recede %s --help",
                       command, opaque_palette(), command);
    else
        recede_cli_say("recede %s: these paints make no palette: %s; see recede %s --help",
                       command, error->found[0] ? error->found : error->path, command);
    return RECEDE_EXIT_REFUSED;
}

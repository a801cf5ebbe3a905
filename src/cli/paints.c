#include "cli/paints.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "cli/commands.h"
#include "cli/load.h"
#include "text/message.h"
#include "text/nearest.h"
#include "text/numbers.h"
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

/* The paint at the head of a list, and where the rest starts (NULL: nowhere). */
static int next_paint(const char **rest, recede_paint *paint, char name[LONGEST])
{
    for (int pieces = MOST_PIECES; pieces >= 1; pieces--) {
        const char *end = piece_end(*rest, pieces);
        if (!end)
            continue;
        copy_trimmed(*rest, end, name);
        if (recede_paint_named(name, paint, NULL) == RECEDE_OK) {
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

/* Where a paint stands in the scene's palette; added where it does not. -1: full. */
static int place_of(recede_scene *scene, const recede_paint *paint)
{
    for (size_t i = 0; i < scene->paint_count; i++)
        if (strcmp(scene->paints[i].name, paint->name) == 0)
            return (int)i;
    if (scene->paint_count == RECEDE_MOST_PAINTS)
        return -1;
    scene->palette[0] = '\0';
    scene->paints[scene->paint_count] = *paint;
    return (int)scene->paint_count++;
}

int recede_cli_paints_find(const char *command, const char *option, const char *text,
                           recede_scene *scene, int *index, int *count)
{
    *count = 0;
    for (const char *rest = text; rest; ) {
        recede_paint paint;
        char name[LONGEST];
        if (!next_paint(&rest, &paint, name))
            return unknown(command, option, name, *count == 0 && scene->paint_count == 0);
        int place = place_of(scene, &paint);
        if (place < 0)
            return recede_cli_wrong(command, option, name, "a palette holds 24 paints, and this is one more");
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
static void use_opaque_palette(recede_scene *scene)
{
    for (size_t i = 0; i < recede_palette_entry_count(); i++)
        if (recede_palette_entry_at(i)->opaque) {
            recede_scene_use_palette(scene, recede_palette_entry_at(i)->name, NULL);
            return;
        }
}

int recede_cli_paints_take(const char *command, const recede_cli_paints *given,
                           recede_scene *scene)
{
    int code = take_rules(command, given, &scene->rules);
    if (!code && given->palette)
        code = take_palette(command, given->palette, scene);
    if (!code && given->medium)
        code = take_medium(command, given->medium, scene);
    if (!code && given->medium && !given->palette && scene->medium != RECEDE_WATERCOLOUR &&
        !has_white(scene))
        use_opaque_palette(scene);
    return code;
}

int recede_cli_paints_explain(const char *command, const recede_error *error)
{
    if (error->code == RECEDE_NO_MEMORY)
        return recede_cli_no_memory();
    if (error->code == RECEDE_NO_WHITE)
        recede_cli_say("recede %s: an opaque medium needs a white among its paints: add titanium "
                       "white; see recede %s --help", command, command);
    else
        recede_cli_say("recede %s: these paints make no palette: %s; see recede %s --help",
                       command, error->found[0] ? error->found : error->path, command);
    return RECEDE_EXIT_REFUSED;
}

#include <math.h>
#include <string.h>

#include "colour/error.h"
#include "recede.h"

void recede_scene_default(recede_scene *scene)
{
    memset(scene, 0, sizeof *scene);
    scene->air.visibility_km = 20.0;
    scene->air.angstrom = 1.0;
    scene->air.eye_m = 2.0;
    scene->sky.kind = RECEDE_SKY_CLEAR;
    scene->sky.sun_height_deg = 40.0;
    scene->sky.sun_side_deg = 100.0;
    scene->medium = RECEDE_WATERCOLOUR;
    scene->rules.most_pigments = 3;
    scene->rules.most_parts = recede_usual_parts(scene->medium);
    scene->rules.tie = 1.0;
    scene->shadows_over = -1;
    scene->paper = recede_paper_white();
    scene->paper_width_m = 0.38;
    scene->paper_height_m = 0.28;
    scene->sky_value = NAN;
    scene->adaptation = 0.8;
    scene->darks_fitted = 1;
    recede_scene_use_palette(scene, "landscape-twelve", NULL);
}

int recede_usual_parts(recede_medium medium)
{
    return medium == RECEDE_WATERCOLOUR ? 8 : RECEDE_MOST_PARTS;
}

static const recede_palette_entry *entry_named(const char *name)
{
    for (size_t i = 0; i < recede_palette_entry_count(); i++)
        if (strcmp(recede_palette_entry_at(i)->name, name) == 0)
            return recede_palette_entry_at(i);
    return NULL;
}

/* Copies the next of the names separated by '|' and returns where to go on. */
static const char *next_name(const char *at, char *name)
{
    size_t length = 0;
    while (*at == ' ' || *at == '|')
        at++;
    for (; *at && *at != '|'; at++)
        if (length + 1 < RECEDE_NAME_SIZE)
            name[length++] = *at;
    while (length && name[length - 1] == ' ')
        length--;
    name[length] = '\0';
    return at;
}

recede_code recede_scene_use_palette(recede_scene *scene, const char *name, recede_error *error)
{
    const recede_palette_entry *entry = entry_named(name);
    if (!entry)
        return recede_fail_name(error, RECEDE_UNKNOWN_NAME, "paint.palette", name);
    char paint[RECEDE_NAME_SIZE];
    size_t count = 0;
    for (const char *at = next_name(entry->paints, paint);
         paint[0] && count < RECEDE_MOST_PAINTS; at = next_name(at, paint)) {
        recede_code code = recede_paint_named(paint, &scene->paints[count], error);
        if (code)
            return code;
        count++;
    }
    scene->paint_count = count;
    strcpy(scene->palette, entry->name);
    return RECEDE_OK;
}

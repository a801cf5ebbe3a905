/* What a name on a tube stands for. */
#include "recede.h"

#include <string.h>

#include "colour/error.h"
#include "data/tables.h"
#include "paint/names.h"

size_t recede_tube_count(void)
{
    return recede_table_tubes_count;
}

const char *recede_tube_name_at(size_t index)
{
    return recede_table_tubes[index].name;
}

static void add_ingredient(recede_paint *paint, const recede_pigment *pigment, int parts)
{
    recede_ingredient *next = &paint->of[paint->ingredients++];
    next->pigment = pigment;
    next->parts = parts;
}

static void add_text(char *out, size_t size, const char *text)
{
    size_t used = strlen(out);
    recede_copy_text(out + used, size - used, text);
}

/* "PB29 + PBk7": each Colour Index name once, in the ingredients' order. */
static void write_colour_index(recede_paint *paint)
{
    for (int i = 0; i < paint->ingredients; i++) {
        int stands = 0;
        for (int j = 0; j < i; j++)
            stands |= strcmp(paint->of[j].pigment->colour_index,
                             paint->of[i].pigment->colour_index) == 0;
        if (stands)
            continue;
        if (i)
            add_text(paint->colour_index, sizeof paint->colour_index, " + ");
        add_text(paint->colour_index, sizeof paint->colour_index,
                 paint->of[i].pigment->colour_index);
    }
}

/* K, S, Colour Index names and whiteness, from the ingredients. */
static void derive(recede_paint *paint)
{
    double total = 0;
    paint->is_white = 1;
    for (int i = 0; i < paint->ingredients; i++) {
        total += paint->of[i].parts;
        paint->is_white &= strncmp(paint->of[i].pigment->colour_index, "PW", 2) == 0;
    }
    for (int band = 0; band < RECEDE_BANDS; band++) {
        double k = 0, s = 0;
        for (int i = 0; i < paint->ingredients; i++) {
            k += paint->of[i].parts * paint->of[i].pigment->k.at[band];
            s += paint->of[i].parts * paint->of[i].pigment->s.at[band];
        }
        paint->k.at[band] = k / total;
        paint->s.at[band] = s / total;
    }
    write_colour_index(paint);
}

/* Reads one "pigment name*parts" up to '|' or the end; returns where it ends. */
static const char *read_ingredient(recede_paint *paint, const char *at)
{
    char name[RECEDE_NAME_SIZE];
    size_t length = 0;
    int parts = 0;
    while (*at == ' ')
        at++;
    while (*at && *at != '*' && length + 1 < sizeof name)
        name[length++] = *at++;
    name[length] = '\0';
    for (; *at && *at != '|'; at++)
        if (*at >= '0' && *at <= '9')
            parts = 10 * parts + (*at - '0');
    const recede_pigment *pigment = recede_pigment_named(name);
    if (pigment && paint->ingredients < RECEDE_MOST_IN_MIX)
        add_ingredient(paint, pigment, parts);
    return *at ? at + 1 : at;
}

static void take_tube(recede_paint *paint, const recede_tube *tube)
{
    recede_copy_text(paint->name, sizeof paint->name, tube->name);
    for (const char *at = tube->made_of; *at;)
        at = read_ingredient(paint, at);
    paint->let_down = tube->made_by[0] != '\0';
    derive(paint);
}

static void take_pigment(recede_paint *paint, const recede_pigment *pigment)
{
    recede_copy_text(paint->name, sizeof paint->name, pigment->name);
    add_ingredient(paint, pigment, 1);
    derive(paint);
}

static const recede_pigment *find_pigment(const char *name, int (*same)(const char *, const char *),
                                          int by_index)
{
    for (size_t i = 0; i < recede_table_pigments_count; i++) {
        const recede_pigment *pigment = &recede_table_pigments[i];
        if (same(name, by_index ? pigment->colour_index : pigment->name))
            return pigment;
    }
    return NULL;
}

static const recede_tube *find_tube(const char *name)
{
    for (size_t i = 0; i < recede_table_tubes_count; i++)
        if (recede_same_paint_name(name, recede_table_tubes[i].name))
            return &recede_table_tubes[i];
    return NULL;
}

recede_code recede_paint_named(const char *name, recede_paint *out, recede_error *error)
{
    const recede_pigment *pigment = find_pigment(name, recede_same_paint_name, 0);
    const recede_tube *tube = pigment ? NULL : find_tube(name);
    if (!pigment && !tube)
        pigment = find_pigment(name, recede_same_colour_index, 1);
    if (!pigment && !tube)
        return recede_fail_name(error, RECEDE_UNKNOWN_NAME, "paint.palette", name);
    memset(out, 0, sizeof *out);
    if (tube)
        take_tube(out, tube);
    else
        take_pigment(out, pigment);
    return RECEDE_OK;
}

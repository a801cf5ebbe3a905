#include "text/words_wet.h"

#include <math.h>
#include <stddef.h>

recede_wet_look recede_wet_look_of(const recede_palette *palette, const recede_mix *mix,
                                   const recede_mix *under)
{
    recede_spectrum below = under ? recede_mix_reflectance(palette, under, NULL)
                                  : *recede_palette_paper(palette);
    recede_spectrum wet = recede_wet_reflectance(palette, mix, &below);
    recede_spectrum dry = recede_mix_reflectance(palette, mix, &below);
    recede_colour dries = recede_colour_of_xyz(recede_xyz_of_reflectance(&dry));
    recede_wet_look look = {recede_colour_of_xyz(recede_xyz_of_reflectance(&wet)), 0};
    look.darker = dries.lab.l - look.colour.lab.l;
    return look;
}

recede_wet_look recede_wet_look_in(const recede_plan *plan, const recede_wash *wash)
{
    recede_wash_place places[RECEDE_MOST_WASH_PLACES];
    const recede_mix *under = NULL;
    size_t count = recede_plan_washes(plan, places);
    for (size_t i = 0; i < count; i++)
        if (places[i].wash == wash && places[i].under)
            under = &places[i].under->recipe.mix;
    return recede_wet_look_of(recede_plan_palette(plan), &wash->recipe.mix, under);
}

/* The limits are our own: half a unit of L* is hardly seen, and the mean shift of
 * masstones is 2.3 (see recede_wet_reflectance). */
typedef struct {
    double least;
    const char *words, *beside;
} grade;

static const grade *grade_of(double darker)
{
    static const grade grades[] = {
        {3.0, "wet it looks clearly darker: it dries lighter",
         "mix clearly darker than this: it dries lighter"},
        {1.5, "wet it looks a little darker: it dries lighter",
         "mix a little darker than this: it dries lighter"},
        {0.5, "wet it looks a touch darker: it dries lighter",
         "mix a touch darker than this: it dries lighter"},
        {-INFINITY, "", ""},
    };
    const grade *at = grades;
    while (darker < at->least)
        at++;
    return at;
}

const char *recede_words_wet(double darker)
{
    return grade_of(darker)->words;
}

const char *recede_words_wet_beside(double darker)
{
    return grade_of(darker)->beside;
}

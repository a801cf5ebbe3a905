#include "paint/recipe.h"

#include "paint/reach.h"
#include "paint/slip.h"

recede_recipe recede_recipe_of(const recede_palette *palette, const recede_mix *mix,
                               recede_lab target, double closest)
{
    recede_recipe recipe = {.mix = *mix};
    recede_spectrum seen = recede_mix_reflectance(palette, mix, NULL);
    recipe.colour = recede_colour_of_xyz(recede_xyz_of_reflectance(&seen));
    recipe.delta_e = recede_delta_e(recipe.colour.lab, target);
    recipe.slip = recede_slip(palette, mix, target);
    recipe.reach = recede_reach_of(closest, target, recipe.colour.lab, recipe.delta_e);
    return recipe;
}

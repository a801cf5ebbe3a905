/* What the study's pages share. */
#include "draw/study_parts.h"
#include "text/numbers.h"
#include "text/words.h"

recede_rect recede_study_set(recede_study *study, const recede_page *page, recede_buffer *words,
                             recede_rect room, const recede_style *style)
{
    return recede_page_set(page, words, room, style, &study->failed);
}

void recede_study_value(recede_buffer *words, double value)
{
    char number[RECEDE_NUMBER_SIZE];
    recede_buffer_add(words, number, recede_number_fixed(number, value, 1));
}

recede_srgb recede_study_paint_colour(const recede_palette *palette, int paint)
{
    recede_mix mix = {1, {paint}, {1}, 0};
    if (recede_medium_takes_water(recede_palette_medium(palette)))
        mix.water = 3;
    recede_spectrum seen = recede_mix_reflectance(palette, &mix, NULL);
    return recede_colour_of_xyz(recede_xyz_of_reflectance(&seen)).srgb;
}

/* One patch of a chart: the colour, and its value in a paler or darker shade of
 * the same, so that the numbers do not outshout the colours. */
#include "draw/chart_parts.h"
#include "draw/dab.h"
#include "text/numbers.h"

/* How far the number's lightness stands from the patch's. */
static const double number_step_l = 46;

static recede_srgb number_ink(const recede_colour *colour)
{
    recede_lab lab = colour->lab;
    int paler = lab.l < 56;
    lab.l += paler ? number_step_l : -number_step_l;
    lab.a *= 0.4;
    lab.b *= 0.4;
    return recede_colour_of_xyz(recede_xyz_of_lab(lab, recede_white())).srgb;
}

void recede_chart_draw_patch(const recede_page *page, const recede_chart_patch *patch,
                             recede_rect room, uint32_t seed)
{
    char number[RECEDE_NUMBER_SIZE];
    recede_style style = {7.5, 7, 1, RECEDE_CENTRE, number_ink(&patch->colour), 0};
    recede_dab_square(page, room, seed, patch->colour.srgb);
    recede_number_fixed(number, patch->colour.value, 1);
    recede_type_set(page->type, page->cr, number,
                    recede_type_middle(page->type, room, &style), &style);
}

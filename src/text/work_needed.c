#include "text/work_needed.h"

/* A tube that holds this pigment and no other. */
static int holds_only(const recede_paint *tube, const recede_pigment *pigment)
{
    return !tube->let_down && tube->ingredients == 1 && tube->of[0].pigment == pigment;
}

static unsigned long tubes_of(const recede_palette *palette, const recede_paint *let_down)
{
    unsigned long tubes = 0;
    for (int i = 0; i < let_down->ingredients; i++)
        for (size_t j = 0; j < recede_palette_count(palette); j++)
            if (holds_only(recede_palette_paint(palette, j), let_down->of[i].pigment))
                tubes |= 1ul << j;
    return tubes;
}

unsigned long recede_work_needed(const recede_palette *palette, unsigned long in_use)
{
    unsigned long needed = in_use;
    for (size_t i = 0; i < recede_palette_count(palette); i++) {
        const recede_paint *paint = recede_palette_paint(palette, i);
        if (in_use >> i & 1 && paint->let_down)
            needed |= tubes_of(palette, paint);
    }
    return needed;
}

recede_work_count recede_work_count_of(const recede_palette *palette, unsigned long paints)
{
    recede_work_count count = {0, 0};
    for (size_t i = 0; i < recede_palette_count(palette); i++)
        if (paints >> i & 1)
            ++*(recede_palette_paint(palette, i)->let_down ? &count.let_down : &count.tubes);
    return count;
}

int recede_work_lets_down(const recede_palette *palette)
{
    return recede_work_count_of(palette, ~0ul).let_down > 0;
}

#include "plan/work_needed.h"

/* A tube that holds this pigment and no other. */
static int holds_only(const recede_paint *tube, const recede_pigment *pigment)
{
    return !tube->let_down && tube->ingredients == 1 && tube->of[0].pigment == pigment;
}

static unsigned long tubes_of(const recede_palette *palette, const recede_pigment *pigment)
{
    unsigned long tubes = 0;
    for (size_t i = 0; i < recede_palette_count(palette); i++)
        if (holds_only(recede_palette_paint(palette, i), pigment))
            tubes |= 1ul << i;
    return tubes;
}

/* What a paint that is let down is made from; 0 where the palette lacks a part of it. */
static unsigned long made_from(const recede_palette *palette, const recede_paint *paint)
{
    unsigned long tubes = 0;
    for (int i = 0; paint->let_down && i < paint->ingredients; i++) {
        unsigned long own = tubes_of(palette, paint->of[i].pigment);
        if (!own)
            return 0;
        tubes |= own;
    }
    return tubes;
}

unsigned long recede_work_in_use(const recede_work *work)
{
    unsigned long paints = 0;
    for (size_t i = 0; i < work->count; i++)
        for (int j = 0; j < work->steps[i].mix.count; j++)
            paints |= 1ul << work->steps[i].mix.paint[j];
    return paints;
}

unsigned long recede_work_needed(const recede_palette *palette, unsigned long in_use)
{
    unsigned long needed = in_use;
    for (size_t i = 0; i < recede_palette_count(palette); i++)
        if (in_use >> i & 1)
            needed |= made_from(palette, recede_palette_paint(palette, i));
    return needed;
}

unsigned long recede_work_tubes(const recede_palette *palette)
{
    unsigned long tubes = 0;
    for (size_t i = 0; i < recede_palette_count(palette); i++) {
        const recede_paint *paint = recede_palette_paint(palette, i);
        if (!paint->let_down || !made_from(palette, paint))
            tubes |= 1ul << i;
    }
    return tubes;
}

unsigned long recede_work_lost_without(const recede_palette *palette, size_t paint)
{
    unsigned long lost = 1ul << paint;
    for (size_t i = 0; i < recede_palette_count(palette); i++)
        if (made_from(palette, recede_palette_paint(palette, i)) >> paint & 1)
            lost |= 1ul << i;
    return lost;
}

recede_work_count recede_work_count_of(const recede_palette *palette, unsigned long paints)
{
    recede_work_count count = {0, 0};
    unsigned long tubes = recede_work_tubes(palette);
    for (size_t i = 0; i < recede_palette_count(palette); i++)
        if (paints >> i & 1)
            ++*(tubes >> i & 1 ? &count.tubes : &count.let_down);
    return count;
}

int recede_work_lets_down(const recede_palette *palette)
{
    return recede_work_count_of(palette, ~0ul).let_down > 0;
}

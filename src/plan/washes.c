/* All washes of a plan in one row. */
#include "recede.h"

typedef struct {
    recede_wash_place *out;
    size_t count;
} row;

/* The end of the lit side that a shadow's end lies on. */
static const recede_wash *under(const recede_wash *wash, const recede_side *lit, int base)
{
    if (!lit || wash->ground != RECEDE_ON_LIT)
        return NULL;
    return base && lit->graded ? &lit->base : &lit->crest;
}

static void add_side(row *r, const recede_side *side, int plane, const recede_side *lit)
{
    for (int base = 0; base <= (side->graded != 0); base++) {
        const recede_wash *wash = base ? &side->base : &side->crest;
        r->out[r->count++] = (recede_wash_place){plane, lit != NULL, side->graded != 0, base, wash,
                                                 under(wash, lit, base)};
    }
}

size_t recede_plan_washes(const recede_plan *plan, recede_wash_place *out)
{
    row r = {out, 0};
    add_side(&r, recede_plan_sky(plan), -1, NULL);
    for (size_t i = 0; i < recede_plan_count(plan); i++) {
        const recede_planned *planned = recede_plan_at(plan, i);
        add_side(&r, &planned->lit, (int)planned->plane, NULL);
        add_side(&r, &planned->shadow, (int)planned->plane, &planned->lit);
    }
    return r.count;
}

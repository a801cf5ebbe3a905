#include "text/words_layers.h"

#include "text/words.h"
#include "text/words_media.h"

void recede_words_wash(recede_buffer *out, const recede_palette *palette,
                       const recede_wash *wash)
{
    const recede_mix *mix = &wash->recipe.mix;
    if (wash->ground != RECEDE_ON_LIT) {
        recede_words_recipe(out, palette, mix);
    } else if (mix->count == 0) {
        recede_buffer_text(out, "the lit wash as it is");
    } else {
        recede_words_recipe(out, palette, mix);
        recede_buffer_text(out, "; over the dry lit wash");
    }
}

#define SIDE_BY_SIDE \
    "The sky stops at the crests, and each plane at the crest of the next: they lie side by side " \
    "on bare paper."
#define OVER \
    " Let a lit wash run over its whole plane and dry; then the shadow goes over it."

static size_t count_over(const recede_plan *plan)
{
    size_t over = 0;
    for (size_t i = 0; i < recede_plan_count(plan); i++)
        over += recede_plan_at(plan, i)->shadow.crest.ground == RECEDE_ON_LIT;
    return over;
}

const char *recede_words_layers(const recede_plan *plan)
{
    recede_medium medium = recede_palette_medium(recede_plan_palette(plan));
    if (!recede_medium_takes_water(medium))
        return recede_trade_of(medium)->layers;
    size_t over = count_over(plan);
    if (over == 0)
        return SIDE_BY_SIDE " So do lit sides and shadows: nothing is laid over another wash.";
    if (over == recede_plan_count(plan))
        return SIDE_BY_SIDE OVER;
    return SIDE_BY_SIDE OVER " A shadow whose recipe says nothing of the lit wash goes on bare "
                              "paper: keep its place bare.";
}

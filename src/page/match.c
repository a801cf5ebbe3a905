/* Other recipes for one wash of the plan. */
#include "page/page.h"
#include "text/words.h"
#include "text/words_match.h"

static const recede_wash *find_wash(const recede_plan *plan, int plane, int shadow, int base)
{
    const recede_side *side = recede_plan_sky(plan);
    if (plane >= (int)recede_plan_count(plan))
        return NULL;
    if (plane >= 0) {
        const recede_planned *planned = recede_plan_at(plan, (size_t)plane);
        side = shadow ? &planned->shadow : &planned->lit;
    }
    return base && side->graded ? &side->base : &side->crest;
}

static void write_match(recede_json *json, const recede_palette *palette,
                        const recede_match_recipe *match, recede_match_kind kind)
{
    recede_json_object(json, NULL);
    recede_json_string(json, "kind", recede_words_match_kind(kind));
    recede_page_recipe(json, "recipe", palette, &match->recipe, RECEDE_ON_PAPER);
    recede_page_hex(json, "by_lamp", match->by_lamp.srgb);
    recede_json_number(json, "lamp_delta_e", match->lamp_delta_e);
    recede_json_string(json, "lamp", recede_words_difference(match->lamp_delta_e));
    recede_json_end_object(json);
}

RECEDE_PAGE_CALL(page_match)
int recede_page_match(recede_page *page, int plane, int shadow, int base)
{
    recede_matches matches;
    recede_error error;
    const recede_wash *wash = page->plan ? find_wash(page->plan, plane, shadow, base) : NULL;
    if (!wash || !page->box.index)
        return recede_page_refuse(page, 0, 0, "there is no such wash");
    if (recede_match(page->box.index, wash->target.lab, &matches, NULL, NULL, &error))
        return recede_page_refuse_core(page, &error);
    recede_json json = recede_page_reply_start(page);
    recede_json_array(&json, "matches");
    for (int kind = 0; kind < RECEDE_MATCH_KINDS; kind++)
        write_match(&json, page->box.palette, &matches.of[kind], kind);
    recede_json_end_array(&json);
    return recede_page_reply_end(page, &json);
}

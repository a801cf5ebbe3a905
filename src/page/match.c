/* Other recipes for one wash of the plan, and those for a plane's own colour. */
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

static int reply_with_matches(recede_page *page, recede_lab target)
{
    recede_matches matches;
    recede_error error;
    if (recede_match(page->box.index, target, &matches, NULL, NULL, &error))
        return recede_page_refuse_core(page, &error);
    recede_json json = recede_page_reply_start(page);
    recede_json_array(&json, "matches");
    for (int kind = 0; kind < RECEDE_MATCH_KINDS; kind++)
        write_match(&json, page->box.palette, &matches.of[kind], kind);
    recede_json_end_array(&json);
    return recede_page_reply_end(page, &json);
}

RECEDE_PAGE_CALL(page_match)
int recede_page_match(recede_page *page, int plane, int shadow, int base)
{
    const recede_wash *wash = page->plan ? find_wash(page->plan, plane, shadow, base) : NULL;
    if (!wash || !page->box.index)
        return recede_page_refuse(page, 0, 0, "there is no such wash");
    return reply_with_matches(page, wash->target.lab);
}

RECEDE_PAGE_CALL(page_match_own) int recede_page_match_own(recede_page *page, size_t plane)
{
    if (!page->plan || !page->box.index || plane >= recede_plan_count(page->plan))
        return recede_page_refuse(page, 0, 0, "there is no such plane");
    const recede_planned *planned = recede_plan_at(page->plan, plane);
    const recede_own *own = &recede_plan_scene(page->plan)->planes[planned->plane].own;
    return reply_with_matches(
        page, recede_colour_of_xyz(recede_xyz_of_reflectance(&own->reflectance)).lab);
}

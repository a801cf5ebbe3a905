#include "paint/visit.h"

typedef struct { float bound; int lane; } child;

/* The boxes of a block within the limit, nearest first. */
static int nearest_first(const recede_visit *visit, const recede_class *class, int level,
                         size_t block, child *out)
{
    float bounds[RECEDE_BLOCK], within = recede_bound_within(visit->limit);
    int boxes = recede_block_count(class, level, block), count = 0;
    visit->cost->blocks++;
    recede_bounds_of_boxes(visit->aim, recede_block_boxes(visit->index, class, level, block),
                           bounds);
    for (int lane = 0; lane < boxes; lane++) {
        int place = count;
        if (bounds[lane] > within)
            continue;
        for (; place > 0 && out[place - 1].bound > bounds[lane]; place--)
            out[place] = out[place - 1];
        out[place] = (child){bounds[lane], lane};
        count++;
    }
    return count;
}

static const recede_leaves *leaves_at(const recede_visit *visit, const recede_class *class,
                                      size_t block)
{
    return &recede_index_leaves(visit->index)[class->first_block[0] + block];
}

static recede_code visit_block(recede_visit *visit, const recede_class *class, int level,
                               size_t block)
{
    child children[RECEDE_BLOCK];
    recede_code code = RECEDE_OK;
    int count = nearest_first(visit, class, level, block, children);
    for (int i = 0; !code && i < count; i++) {
        if (children[i].bound > recede_bound_within(visit->limit))
            break;
        size_t below = block * RECEDE_BLOCK + (size_t)children[i].lane;
        code = level ? visit_block(visit, class, level - 1, below)
                     : visit->leaf(visit, leaves_at(visit, class, block), children[i].lane,
                                   children[i].bound);
    }
    return code;
}

recede_code recede_visit_class(recede_visit *visit, int class)
{
    const recede_class *c = &visit->index->class[class];
    return visit_block(visit, c, c->height - 1, 0);
}

recede_code recede_visit_start(recede_visit *visit, recede_frontier *frontier)
{
    recede_code code = RECEDE_OK;
    for (int i = 0; !code && i < visit->index->classes; i++)
        code = recede_frontier_add(frontier, (recede_place_ahead){
            0.0f, 0, (uint8_t)i, (uint8_t)visit->index->class[i].height});
    return code;
}

recede_code recede_visit_step(recede_visit *visit, recede_frontier *frontier)
{
    recede_place_ahead place;
    child children[RECEDE_BLOCK];
    recede_code code = RECEDE_OK;
    if (!recede_frontier_take(frontier, &place) ||
        place.bound > recede_bound_within(visit->limit))
        return code;
    const recede_class *c = &visit->index->class[place.class];
    size_t block = place.at / RECEDE_BLOCK;
    if (place.level == 0)
        return visit->leaf(visit, leaves_at(visit, c, block), (int)(place.at % RECEDE_BLOCK),
                           place.bound);
    int count = nearest_first(visit, c, place.level - 1, place.at, children);
    for (int i = 0; !code && i < count; i++)
        code = recede_frontier_add(frontier, (recede_place_ahead){
            children[i].bound, place.at * RECEDE_BLOCK + (uint32_t)children[i].lane,
            place.class, (uint8_t)(place.level - 1)});
    return code;
}

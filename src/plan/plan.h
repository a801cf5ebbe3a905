/* The plan's inside: what its parts fill in, in the order they run. */
#ifndef RECEDE_PLAN_PLAN_H
#define RECEDE_PLAN_PLAN_H

#include "plan/known.h"
#include "plan/sight.h"
#include "plan/tone.h"
#include "recede.h"

/* Merged neighbours, and per plane: gone, own colour, and per side not reached
 * at either end and two washes; the sky likewise; and four for the whole. */
#define RECEDE_MOST_WARNINGS ((RECEDE_MOST_PLANES + 1) * 9 + 4)

struct recede_plan {
    recede_allocator allocator;
    recede_scene scene;
    recede_palette *palette;
    double darkest_paint_y, palest_paint_y;
    recede_atmosphere air;
    recede_light light;
    recede_adaptation adaptation;
    recede_sights sky_sights;
    double lightest_sky_y;
    recede_tone tone;
    recede_side sky;
    recede_planned planes[RECEDE_MOST_PLANES]; /* far to near */
    size_t warning_count;
    recede_warning warnings[RECEDE_MOST_WARNINGS];
    recede_known known;
    const struct recede_plan *before; /* while this is made: see recede_plan_after */
};

/* A plan of a scene, checked, with its palette and nothing seen yet; to be freed. */
recede_code recede_plan_start(const recede_scene *scene, const recede_allocator *allocator,
                              struct recede_plan **out, recede_error *error);

/* As recede_plan_with_index, to the same plan: what an earlier one has that is the same
 * is taken from there. before may be NULL, or of any scene. */
recede_code recede_plan_after(const recede_plan *before, const recede_scene *scene,
                              const recede_index *index, const recede_allocator *allocator,
                              const recede_progress *progress, recede_plan **out,
                              recede_error *error);

/* Air, light and targets of plan->scene as it stands: its air and sky may have
 * changed since the start, nothing else. Recipes are untouched. */
recede_code recede_plan_look(struct recede_plan *plan, recede_wash_target *targets,
                             recede_error *error);

/* Every wash's target: light through the air, adaptation, values. */
void recede_plan_targets(struct recede_plan *plan, recede_wash_target *targets);

/* A wash's target, on paper; its recipe is left alone. */
void recede_wash_aim(const recede_tone *tone, const recede_sight *sight, recede_wash *wash);

/* Every wash's ground and recipe; targets as recede_plan_targets lists them. */
recede_code recede_plan_recipes(struct recede_plan *plan, const recede_index *index,
                                const recede_wash_target *targets,
                                const recede_progress *progress, recede_error *error);

/* Steps and edges between neighbours, from the colours the mixes give. */
void recede_plan_neighbours(struct recede_plan *plan);

/* All that a painter should be told beforehand. */
void recede_plan_warnings(struct recede_plan *plan);

/* The colour at a side's foot: the one its nearer neighbour's crest meets. */
const recede_wash *recede_side_foot(const recede_side *side);

#endif

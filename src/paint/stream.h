/*
 * One pass over mixes that no index holds, for many goals at once. A mix's colours
 * with all its water are found in single precision and its stretches held in boxes
 * against every goal; a film is found in double precision only where it may matter.
 */
#ifndef RECEDE_PAINT_STREAM_H
#define RECEDE_PAINT_STREAM_H

#include "paint/box.h"
#include "paint/index.h"
#include "paint/mixes.h"

/* limit: asked before each mix, the largest difference that matters, in millionths;
 * below 0 none does. film: a film within it; it may lower the limit. */
typedef struct recede_stream_goal recede_stream_goal;
struct recede_stream_goal {
    recede_aim aim;
    double (*limit)(recede_stream_goal *goal, const recede_mixes *walk);
    recede_code (*film)(recede_stream_goal *goal, const recede_mixes *walk, double water,
                        double difference, double *limit);
    void *context;
    size_t number;
};

/* Tells of a share from low to high. */
typedef struct recede_stream_progress {
    const recede_progress *to; /* may be NULL */
    double low, high;
} recede_stream_progress;

/* All mixes of more than so many pigments under the index's rules, in the order of
 * paint/mixes.h. RECEDE_CANCELLED, or what a goal's film returned. */
recede_code recede_stream(const recede_index *index, int held_pigments,
                          recede_stream_goal *goals, size_t count,
                          const recede_stream_progress *progress);

#endif

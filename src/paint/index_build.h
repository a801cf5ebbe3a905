/* Fills an index that has been laid out. */
#ifndef RECEDE_PAINT_INDEX_BUILD_H
#define RECEDE_PAINT_INDEX_BUILD_H

#include "paint/index.h"

/* RECEDE_NO_MEMORY or RECEDE_CANCELLED leave the block half filled. */
recede_code recede_index_build(recede_index *index, const recede_allocator *allocator,
                               const recede_progress *progress);

#endif

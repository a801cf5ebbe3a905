/* A plane's own colour as a mix of the scene's paints. */
#ifndef RECEDE_PLAN_OWN_MIX_H
#define RECEDE_PLAN_OWN_MIX_H

#include "recede.h"

/* Checks the mix of that plane and works out its reflectance; planes of other own
 * colours are left as they are. Path planes[index].mix. */
recede_code recede_own_mix_check(recede_scene *scene, size_t index, recede_error *error);

#endif

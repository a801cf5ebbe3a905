/* The lines by which planes are told apart, for whoever points at them. */
#include "colour/error.h"
#include "picture/sketch.h"
#include "picture/terrain.h"

enum { LARGEST = 8192 };

recede_code recede_picture_skylines(recede_sketch *sketch, const recede_plan *plan, size_t width,
                                    size_t height, float *y, recede_error *error)
{
    recede_terrain terrain;
    recede_code code = recede_check_range(error, "picture.width", (double)width, 1, LARGEST);
    if (!code)
        code = recede_check_range(error, "picture.height", (double)height, 1, LARGEST);
    if (code)
        return code;
    code = recede_terrain_lay_on(sketch, plan, width, height, &terrain);
    if (code)
        return recede_fail(error, code, "picture");
    for (size_t i = 0; i < terrain.count; i++)
        for (size_t x = 0; x < width; x++)
            *y++ = (float)terrain.band[i].base_y - terrain.band[i].height[x];
    recede_terrain_clear(&terrain);
    return RECEDE_OK;
}

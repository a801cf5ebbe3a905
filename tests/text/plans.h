/* Plans for the tests of what is written: small palettes, quickly sought. */
#ifndef RECEDE_TESTS_PLANS_H
#define RECEDE_TESTS_PLANS_H

#include <string.h>

#include "support/assert_near.h"
#include "text/scene_read.h"

#define TEST_PLANES \
    "\"planes\":[{\"name\":\"near bank\",\"distance\":30,\"foliage\":\"meadow grass\"}," \
    "{\"name\":\"alder line\",\"distance\":\"400 yd\",\"foliage\":\"summer oak\"}," \
    "{\"name\":\"tall peak\",\"distance\":\"9 km\",\"base\":\"100 m\",\"crest\":\"2600 m\"," \
    "\"surface\":\"rock\"}," \
    "{\"name\":\"far ridge\",\"distance\":\"40 km\",\"foliage\":\"heather\"}]"

static const char *const test_watercolour =
    "{\"title\":\"Tarn\",\"air\":{\"visibility\":\"18 km\",\"mist\":{\"visibility\":\"2 km\","
    "\"top\":\"150 m\"}},\"light\":{\"sun_height\":4,\"sun_side\":20},"
    "\"paint\":{\"palette\":[\"sap green\",\"PB29\",\"PY74\",\"burnt sienna\"],"
    "\"most_pigments\":2,\"most_parts\":4}," TEST_PLANES "}";
static const char *const test_oil =
    "{\"light\":{\"sky\":\"overcast\"},\"paint\":{\"medium\":\"oil\",\"most_pigments\":2,"
    "\"most_parts\":3}," TEST_PLANES "}";

/* The plan of a scene; the test fails where there is none. */
static inline recede_plan *test_plan(const char *text)
{
    static recede_scene scene;
    recede_text_error error;
    recede_error core;
    recede_plan *plan = NULL;
    if (recede_scene_read(text, strlen(text), NULL, NULL, &scene, &error))
        fail_msg("%zu:%zu: %s", error.line, error.column, error.what);
    if (recede_plan_new(&scene, NULL, NULL, &plan, &core))
        fail_msg("no plan: code %d at %s", core.code, core.path);
    return plan;
}

#endif

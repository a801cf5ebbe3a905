/* Words in the name of a plane that give it a form: alone, in either plural, in any
 * case, the last that there is, and never as a part of another word. */
#include "picture/landform.h"

#include <string.h>

#include "support/assert_near.h"

static recede_landform form_of_name(const char *name)
{
    recede_plane plane;
    memset(&plane, 0, sizeof plane);
    strncpy(plane.name, name, sizeof plane.name - 1);
    plane.distance_m = 800;
    plane.own.kind = RECEDE_OWN_REFLECTANCE;
    return recede_look_of(&plane).form;
}

static void words_give_the_form(void **state)
{
    static const struct {
        const char *name;
        recede_landform form;
    } cases[] = {
        {"far ridge", RECEDE_LANDFORM_HILL},      {"Far Ridges", RECEDE_LANDFORM_HILL},
        {"rush", RECEDE_LANDFORM_BANK},           {"rushes by the way", RECEDE_LANDFORM_BANK},
        {"old larches", RECEDE_LANDFORM_CONIFERS}, {"firs", RECEDE_LANDFORM_CONIFERS},
        {"first", RECEDE_LANDFORM_WOOD},          {"the path home", RECEDE_LANDFORM_FIELD},
        {"pathology", RECEDE_LANDFORM_WOOD},      {"farm pond", RECEDE_LANDFORM_WATER},
        {"pond farm", RECEDE_LANDFORM_HOUSES},    {"nameless", RECEDE_LANDFORM_WOOD},
    };
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++)
        if (form_of_name(cases[i].name) != cases[i].form)
            fail_msg("%s: form %d, not %d", cases[i].name, (int)form_of_name(cases[i].name),
                     (int)cases[i].form);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(words_give_the_form)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}

/* recede ladder: the teaching picture. One colour at many distances. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "cli/commands.h"
#include "cli/load.h"
#include "cli/options.h"
#include "cli/progress.h"
#include "cli/sheets.h"
#include "cli/values.h"
#include "draw/ladder.h"
#include "text/ladder_write.h"

static const char command[] = "ladder";

/* The words as given. */
typedef struct {
    const char *scene, *foliage, *surface, *colour, *mix, *white, *visibility, *haze, *distances;
    const char *blank, *sheet, *json;
} given;

typedef struct {
    const recede_ladder *ladder;
    int blank;
} content;

static recede_sheet_result pixels(const void *made, const recede_sheet_options *options,
                                  recede_sheet_pixels *out)
{
    const content *c = made;
    return recede_ladder_pixels(c->ladder, c->blank, options, out);
}

static recede_sheet_result pdf(const void *made, const recede_sheet_options *options,
                               recede_buffer *out)
{
    const content *c = made;
    return recede_ladder_pdf(c->ladder, c->blank, options, out);
}

static int say_wrong(const char *what)
{
    recede_cli_say("recede %s: %s; see recede %s --help", command, what, command);
    return RECEDE_EXIT_USAGE;
}

/* The light used where no scene is given: morning, the sun rather before the
 * painter, where the horizon is bright and far things have room to grow pale. */
static void set_usual_scene(recede_scene *scene)
{
    recede_scene_default(scene);
    scene->air.visibility_km = 60.0;
    scene->sky.sun_height_deg = 30.0;
    scene->sky.sun_side_deg = 60.0;
}

static int read_colours(const given *words, const recede_scene *scene, recede_ladder_wish *wish)
{
    int count = !!words->foliage + !!words->surface + !!words->colour + !!words->mix;
    if (count > 1)
        return say_wrong("--foliage, --surface, --colour and --mix are four ways to give one "
                         "colour: keep one");
    int code = recede_cli_own(command, RECEDE_OWN_SURFACE,
                              words->white ? words->white : "whitewash", &wish->white);
    if (code)
        return code;
    if (words->surface)
        return recede_cli_own(command, RECEDE_OWN_SURFACE, words->surface, &wish->own);
    if (words->colour)
        return recede_cli_own(command, RECEDE_OWN_COLOUR, words->colour, &wish->own);
    if (words->mix)
        return recede_cli_own_mix(command, words->mix, scene, &wish->own);
    return recede_cli_own(command, RECEDE_OWN_FOLIAGE,
                          words->foliage ? words->foliage : "summer oak", &wish->own);
}

/* The second air: 8 km, or a quarter of the first where that is less. */
static int read_airs(const given *words, double scene_visibility_km, recede_ladder_wish *wish)
{
    double *km = wish->visibility_km;
    int code = RECEDE_EXIT_DONE;
    wish->air_count = 2;
    km[0] = scene_visibility_km;
    if (words->visibility)
        code = recede_cli_visibility(command, "visibility", words->visibility, &km[0]);
    km[1] = fmax(0.02, fmin(8.0, km[0] / 4.0));
    if (!code && words->haze)
        code = recede_cli_visibility(command, "haze-visibility", words->haze, &km[1]);
    if (!code && km[1] >= km[0])
        code = say_wrong("the haze is no thicker than the clear air: give a smaller "
                         "--haze-visibility");
    return code;
}

static int read_wish(const given *words, const recede_scene *scene, recede_ladder_wish *wish)
{
    memset(wish, 0, sizeof *wish);
    int code = read_colours(words, scene, wish);
    if (!code)
        code = read_airs(words, scene->air.visibility_km, wish);
    if (!code)
        code = recede_cli_distances(command, "distances",
                                    words->distances ? words->distances
                                                     : "10 m, 30 m, 100 m, 300 m, 1 km, 2 km, "
                                                       "5 km, 10 km, 20 km",
                                    RECEDE_MOST_RUNGS, wish->distance_m, &wish->rung_count);
    return code;
}

static int write_ladder(const recede_ladder *ladder, const given *words)
{
    content made = {ladder, words->blank != NULL};
    const recede_cli_sheet sheet = {&made, pixels, pdf};
    recede_cli_words said;
    recede_buffer_start(&said.json, NULL);
    recede_buffer_start(&said.text, NULL);
    recede_ladder_write(ladder, &said.json);
    recede_ladder_tell(ladder, &said.text);
    int code = recede_cli_sheet_write(&sheet, words->sheet, &said, words->json);
    recede_buffer_free(&said.json);
    recede_buffer_free(&said.text);
    return code;
}

static int make(const recede_loaded *loaded, const recede_scene *scene, const given *words)
{
    recede_ladder_wish wish;
    recede_ladder *ladder;
    recede_cli_progress progress;
    recede_error error;
    int code = read_wish(words, scene, &wish);
    if (code)
        return code;
    recede_cli_progress_start(&progress, "seeking recipes");
    recede_code failed = recede_ladder_new(scene, &wish, NULL, &progress.progress, &ladder, &error);
    recede_cli_progress_end(&progress);
    if (failed)
        return recede_cli_explain(loaded, &error);
    code = write_ladder(ladder, words);
    recede_ladder_free(ladder);
    return code;
}

/* With a scene, its light and paints; else the usual ones. */
static int run(const given *words)
{
    recede_loaded loaded;
    int code = recede_cli_load(words->scene, &loaded);
    if (!code && !words->scene)
        set_usual_scene(loaded.scene);
    if (!code)
        code = make(&loaded, loaded.scene, words);
    recede_cli_unload(&loaded);
    return code;
}

int recede_cli_ladder(int count, char **words)
{
    given g = {0};
    const recede_option options[] = {
        {'o', NULL, "FILE", "draw the ladder to FILE, a PNG, or a PDF where it ends in .pdf", &g.sheet},
        {0, "json", "FILE", "write its numbers to FILE as JSON", &g.json},
        {0, "blank", NULL, "draw an exercise with empty boxes, and its answers", &g.blank},
        {0, "foliage", "NAME", "the colour: a built-in foliage (summer oak)", &g.foliage},
        {0, "surface", "NAME", "or a built-in surface", &g.surface},
        {0, "colour", "#rrggbb", "or any colour", &g.colour},
        {0, "mix", "PARTS", "or the scene's paints: '3 hansa yellow + 1 PB29 + 2 water'", &g.mix},
        {0, "white", "NAME", "the white beside it, a built-in surface (whitewash)", &g.white},
        {0, "distances", "LIST", "2 to 12 distances (10 m, 30 m, ... 20 km)", &g.distances},
        {0, "visibility", "LENGTH", "of the clear air (60 km, or the scene's)", &g.visibility},
        {0, "haze-visibility", "LENGTH", "of the haze (8 km, or a quarter where that is less)", &g.haze},
    };
    const recede_usage usage = {
        command, "[SCENE]",
        "Draws one colour at a row of distances, lit and in shadow, with a white beside it,\n"
        "in clear air and in haze: what the air does to a colour, and why. Prints the captions\n"
        "to read out.\n"
        "SCENE is a scene file, - for standard input, whose light, paint and paper are taken;\n"
        "without one, a clear morning with the sun 30 degrees high.",
        options, sizeof options / sizeof options[0], 1};
    int code = recede_options_read(&usage, count, words, &g.scene);
    return code == RECEDE_OPTIONS_GO_ON ? run(&g) : code;
}

/* recede wish: which air, which light would give these values? */
#include <string.h>

#include "cli/commands.h"
#include "cli/load.h"
#include "cli/options.h"
#include "cli/progress.h"
#include "colour/error.h"
#include "text/message.h"
#include "text/nearest.h"
#include "text/numbers.h"
#include "text/scene_write.h"
#include "text/words_wish.h"

/* The words as given. */
typedef struct {
    const char *scene, *steps, *value, *shadows, *without_sky, *sun, *scene_path, *json_path;
} given;

static int wrong(const char *what)
{
    recede_cli_say("recede wish: %s; see recede wish --help", what);
    return RECEDE_EXIT_USAGE;
}

/* As wrong, with a word of the user's own between two texts. */
static int wrong_word(const char *before, const char *word, const char *after)
{
    recede_buffer shown;
    recede_buffer_start(&shown, NULL);
    recede_message_name(&shown, word);
    recede_cli_say("recede wish: %s%s%s", before, recede_buffer_string(&shown), after);
    recede_buffer_free(&shown);
    return RECEDE_EXIT_USAGE;
}

static int read_number(const char *option, const char *text, double least, double most,
                       const char *expected, double *out)
{
    size_t length = recede_number_length(text, strlen(text));
    int is_number = length > 0 && !text[length] && length <= RECEDE_NUMBER_LENGTH;
    *out = is_number ? recede_number_value(text, length) : 0.0;
    if (is_number && *out >= least && *out <= most)
        return RECEDE_EXIT_DONE;
    return wrong_word(option, text, expected);
}

static int unknown_plane(const recede_scene *scene, const char *name)
{
    char offer[3 * RECEDE_NAME_SIZE + 8];
    recede_nearest nearest;
    recede_nearest_start(&nearest, name);
    for (size_t i = 0; i < scene->plane_count; i++)
        recede_nearest_offer(&nearest, scene->planes[i].name);
    strcpy(offer, "; ");
    recede_nearest_say(&nearest, offer + 2, sizeof offer - 2);
    return wrong_word("the scene has no plane ", name, offer);
}

/* "far ridge=7.5": the name may hold an equals sign, so the last one counts. */
static int read_value(const char *text, const recede_scene *scene, recede_wish *wish)
{
    const char *equals = strrchr(text, '=');
    if (!equals)
        return wrong_word("--value is ", text, "; write a plane and its value, as "
                                               "--value \"far ridge=7.5\"");
    wish->kind = RECEDE_WISH_VALUE;
    int code = read_number("the value wished for is ", equals + 1, 0.0, 10.0,
                           "; expected a number from 0, black, to 10, white", &wish->value);
    if (code)
        return code;
    char name[RECEDE_NAME_SIZE];
    size_t length = (size_t)(equals - text);
    if (length >= sizeof name)
        length = sizeof name - 1;
    memcpy(name, text, length);
    name[length] = '\0';
    recede_copy_text(wish->plane, sizeof wish->plane, name);
    for (size_t i = 0; i < scene->plane_count; i++)
        if (strcmp(scene->planes[i].name, name) == 0)
            return RECEDE_EXIT_DONE;
    return unknown_plane(scene, name);
}

static int read_steps(const given *words, const recede_scene *scene, recede_wish *wish)
{
    wish->kind = RECEDE_WISH_STEPS;
    wish->shadows = words->shadows != NULL;
    wish->without_sky = words->without_sky != NULL;
    if (wish->without_sky && scene->plane_count < 2)
        return wrong("the scene has one plane and no neighbour but the sky: leave "
                     "--without-sky out");
    return read_number("--steps is ", words->steps, 0.1, 9.0,
                       "; expected a number from 0.1 to 9, such as 0.7", &wish->value);
}

static int read_wish(const given *words, const recede_scene *scene, recede_wish *wish)
{
    memset(wish, 0, sizeof *wish);
    wish->move_sun = words->sun != NULL;
    if (wish->move_sun && scene->sky.kind != RECEDE_SKY_CLEAR)
        return wrong("only a clear sky has a sun to move: leave --sun out, or give the scene a "
                     "clear sky");
    if (words->value)
        return read_value(words->value, scene, wish);
    return read_steps(words, scene, wish);
}

static int check_words(const given *words)
{
    if (!words->steps == !words->value)
        return wrong(words->steps ? "--steps and --value are two wishes: give one at a time"
                                  : "no wish is given: --steps 0.7 or --value \"far ridge=7.5\"");
    if (words->value && (words->shadows || words->without_sky))
        return wrong("--shadows and --without-sky belong to --steps");
    return RECEDE_EXIT_DONE;
}

/* ---- the answer */

typedef struct {
    recede_buffer scene, json, text;
} products;

static int write_all(const given *words, const products *made)
{
    recede_output outputs[3];
    size_t count = 0;
    int taken = 0;
    if (words->scene_path)
        outputs[count++] =
            (recede_output){words->scene_path, made->scene.bytes, made->scene.size};
    if (words->json_path)
        outputs[count++] = (recede_output){words->json_path, made->json.bytes, made->json.size};
    for (size_t i = 0; i < count; i++)
        taken |= strcmp(outputs[i].path, "-") == 0;
    if (!taken)
        outputs[count++] = (recede_output){"-", made->text.bytes, made->text.size};
    return recede_cli_write(outputs, count);
}

/* The scene becomes the one that was found. */
static int tell(const given *words, recede_scene *scene, const recede_wish *wish,
                const recede_wish_answer *answer)
{
    const recede_wish_told told = {scene, wish, answer};
    products made;
    recede_buffer_start(&made.scene, NULL);
    recede_buffer_start(&made.json, NULL);
    recede_buffer_start(&made.text, NULL);
    recede_wish_write(&made.json, &told);
    recede_wish_table(&made.text, &told);
    scene->air.visibility_km = answer->found.visibility_km;
    scene->sky.sun_height_deg = answer->found.sun_height_deg;
    recede_scene_write(scene, &made.scene);
    int failed = made.scene.failed || made.json.failed || made.text.failed;
    int code = failed ? recede_cli_no_memory() : write_all(words, &made);
    recede_buffer_free(&made.scene);
    recede_buffer_free(&made.json);
    recede_buffer_free(&made.text);
    return code;
}

static int make(const given *words, const recede_loaded *loaded)
{
    recede_wish wish;
    recede_wish_answer answer;
    recede_cli_progress progress;
    recede_error error;
    int code = read_wish(words, loaded->scene, &wish);
    if (code)
        return code;
    recede_cli_progress_start(&progress, "trying air and light");
    recede_code failed = recede_wish_grant(loaded->scene, &wish, NULL, &progress.progress,
                                           &answer, &error);
    recede_cli_progress_end(&progress);
    if (failed)
        return recede_cli_explain(loaded, &error);
    return tell(words, loaded->scene, &wish, &answer);
}

static int run(const given *words)
{
    recede_loaded loaded;
    int code = check_words(words);
    if (code)
        return code;
    code = recede_cli_load(words->scene, &loaded);
    if (!code)
        code = make(words, &loaded);
    recede_cli_unload(&loaded);
    return code;
}

int recede_cli_wish(int count, char **words)
{
    given g = {0};
    const recede_option options[] = {
        {0, "steps", "NUMBER", "every plane so far in value from what lies behind it", &g.steps},
        {0, "value", "PLANE=NUMBER", "the lit side of one plane at a value", &g.value},
        {0, "shadows", NULL, "with --steps: the shadow sides as well", &g.shadows},
        {0, "without-sky", NULL, "with --steps: not the farthest plane against the sky",
         &g.without_sky},
        {0, "sun", NULL, "the sun's height may change too", &g.sun},
        {'o', NULL, "FILE", "write the scene that grants it, or comes nearest, to FILE",
         &g.scene_path},
        {0, "json", "FILE", "write the answer to FILE as JSON", &g.json_path},
    };
    const recede_usage usage = {
        "wish", "[SCENE]",
        "Finds the visibility, from 0.2 to 250 km, that grants a wish for the values of the\n"
        "planes as seen, their darks fitted to the paints, with the least change from the scene\n"
        "as given; or says that none does and how near one comes. No mixes are sought: what a\n"
        "study paints may be some tenths off. With --sun, visibility and sun together: halving\n"
        "or doubling the visibility counts as much as 7 degrees of the sun.\n"
        "SCENE is a scene file, - for standard input; without one, the built-in scene.",
        options, sizeof options / sizeof options[0], 1};
    int code = recede_options_read(&usage, count, words, &g.scene);
    return code == RECEDE_OPTIONS_GO_ON ? run(&g) : code;
}

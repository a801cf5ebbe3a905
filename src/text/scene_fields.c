/* Which keys stand where in a scene file. docs/scene.md says what they mean. */
#include "text/scene_fields.h"

#include <math.h>
#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof((list)[0]))
#define SCENE(member) offsetof(recede_scene, member)
#define PLANE(member) offsetof(recede_plane, member)

static recede_text_status finish_light(recede_reader *reader, size_t value, void *base);
static recede_text_status finish_paint(recede_reader *reader, size_t value, void *base);
static recede_text_status finish_plane(recede_reader *reader, size_t value, void *base);
static recede_text_status finish_scene(recede_reader *reader, size_t value, void *base);
static const recede_form form_planes;

/* ---- when a field is written */

static int has_mist(const void *scene)
{
    return ((const recede_scene *)scene)->air.mist_visibility_km > 0.0;
}

static int is_painted(const void *scene)
{
    return ((const recede_scene *)scene)->sky.kind == RECEDE_SKY_PAINTED;
}

static recede_own_kind own_kind(const void *plane)
{
    return ((const recede_plane *)plane)->own.kind;
}

static int is_foliage(const void *plane)
{
    return own_kind(plane) == RECEDE_OWN_FOLIAGE;
}

static int is_surface(const void *plane)
{
    return own_kind(plane) == RECEDE_OWN_SURFACE;
}

static int is_colour(const void *plane)
{
    return own_kind(plane) == RECEDE_OWN_COLOUR;
}

static int is_lab(const void *plane)
{
    return own_kind(plane) == RECEDE_OWN_LAB;
}

static int is_reflectance(const void *plane)
{
    return own_kind(plane) == RECEDE_OWN_REFLECTANCE;
}

/* Written by write_planes, which knows the paints. */
static int never(const void *plane)
{
    (void)plane;
    return 0;
}

/* A file knows no number for a height still open. */
static int has_base(const void *plane)
{
    return !isnan(((const recede_plane *)plane)->base_m);
}

static int has_crest(const void *plane)
{
    return !isnan(((const recede_plane *)plane)->crest_m);
}

static int has_sky_value(const void *scene)
{
    return !isnan(((const recede_scene *)scene)->sky_value);
}

static int has_most_tubes(const void *scene)
{
    return ((const recede_scene *)scene)->most_tubes > 0;
}

static int has_shadows(const void *scene)
{
    return ((const recede_scene *)scene)->shadows_over >= 0;
}

/* ---- the fields */

static const recede_field mist_list[] = {
    {"visibility", &recede_form_visibility, .offset = SCENE(air.mist_visibility_km),
     .words = recede_visibility_words, .required = 1},
    {"top", &recede_form_length, .offset = SCENE(air.mist_top_m), .required = 1},
};
static const recede_fields mist = {"mist", mist_list, COUNT(mist_list), NULL};

static const recede_field air_list[] = {
    {"visibility", &recede_form_visibility, .offset = SCENE(air.visibility_km),
     .words = recede_visibility_words},
    {"haze", &recede_form_haze, .offset = SCENE(air.angstrom), .words = recede_haze_words},
    {"eye", &recede_form_length, .offset = SCENE(air.eye_m)},
    {"mist", &recede_form_object, .inside = &mist, .written = has_mist},
};
static const recede_fields air = {"air", air_list, COUNT(air_list), NULL};

static const recede_field light_list[] = {
    {"sky", &recede_form_sky, .offset = SCENE(sky.kind), .words = recede_sky_words},
    {"sun_height", &recede_form_sun_height, .offset = SCENE(sky.sun_height_deg)},
    {"sun_side", &recede_form_sun_side, .offset = SCENE(sky.sun_side_deg),
     .words = recede_sun_side_words},
    {"horizon", &recede_form_colour, .offset = SCENE(sky_horizon), .written = is_painted},
    {"light", &recede_form_colour, .offset = SCENE(sky_light), .written = is_painted},
};
static const recede_fields light = {"light", light_list, COUNT(light_list), finish_light};

static const recede_field paint_list[] = {
    {"palette", &recede_form_palette, .offset = 0},
    {"medium", &recede_form_medium, .offset = SCENE(medium), .words = recede_medium_words},
    {"most_pigments", &recede_form_whole, .offset = SCENE(rules.most_pigments)},
    {"most_parts", &recede_form_whole, .offset = SCENE(rules.most_parts)},
    {"tie", &recede_form_number, .offset = SCENE(rules.tie)},
    {"most_tubes", &recede_form_whole, .offset = SCENE(most_tubes), .written = has_most_tubes},
    {"shadows", &recede_form_choice, .offset = SCENE(shadows_over),
     .words = recede_shadows_words, .written = has_shadows},
};
static const recede_fields paint = {"paint", paint_list, COUNT(paint_list), finish_paint};

static const recede_field paper_list[] = {
    {"width", &recede_form_length, .offset = SCENE(paper_width_m)},
    {"height", &recede_form_length, .offset = SCENE(paper_height_m)},
};
static const recede_fields paper = {"paper", paper_list, COUNT(paper_list), NULL};

static const recede_field picture_list[] = {
    {"sky_value", &recede_form_number, .offset = SCENE(sky_value), .written = has_sky_value},
    {"adaptation", &recede_form_number, .offset = SCENE(adaptation)},
    {"darks", &recede_form_choice, .offset = SCENE(darks_fitted), .words = recede_darks_words},
};
static const recede_fields picture = {"picture", picture_list, COUNT(picture_list), NULL};

static const recede_field plane_list[] = {
    {"name", &recede_form_name, .offset = PLANE(name), .required = 1},
    {"distance", &recede_form_length, .offset = PLANE(distance_m), .required = 1},
    {"base", &recede_form_length, .offset = PLANE(base_m), .written = has_base},
    {"crest", &recede_form_length, .offset = PLANE(crest_m), .written = has_crest},
    {"share", &recede_form_number, .offset = PLANE(share)},
    {"foliage", &recede_form_foliage, .offset = PLANE(own), .written = is_foliage},
    {"surface", &recede_form_surface, .offset = PLANE(own), .written = is_surface},
    {"colour", &recede_form_colour, .offset = PLANE(own), .written = is_colour},
    {"lab", &recede_form_lab, .offset = PLANE(own), .written = is_lab},
    {"reflectance", &recede_form_reflectance, .offset = PLANE(own), .written = is_reflectance},
    {"mix", &recede_form_mix, .offset = PLANE(own), .written = never},
};
static const recede_fields plane = {"a plane", plane_list, COUNT(plane_list), finish_plane};

static const recede_field scene_list[] = {
    {"title", &recede_form_title, .offset = SCENE(title)},
    {"air", &recede_form_object, .inside = &air},
    {"light", &recede_form_object, .inside = &light},
    {"paint", &recede_form_object, .inside = &paint},
    {"paper", &recede_form_object, .inside = &paper},
    {"picture", &recede_form_object, .inside = &picture},
    {"planes", &form_planes, .inside = &plane, .required = 1},
};
const recede_fields recede_scene_fields = {"the scene", scene_list, COUNT(scene_list),
                                          finish_scene};

/* ---- what holds between fields */

static recede_text_status finish_light(recede_reader *reader, size_t value, void *base)
{
    recede_scene *scene = base;
    static const char *const keys[] = {"horizon", "light"};
    for (size_t i = 0; i < COUNT(keys); i++) {
        size_t given = recede_tree_member(reader->tree, value, keys[i]);
        size_t at = given == RECEDE_TREE_NONE ? value : given;
        const recede_scanned *place = recede_tree_place(reader->tree, at);
        if (is_painted(scene) && given == RECEDE_TREE_NONE)
            return recede_text_refuse(reader->error, place->value.line, place->value.column,
                                      "a painted sky has no \"%s\"; add it as \"#rrggbb\"",
                                      keys[i]);
        if (!is_painted(scene) && given != RECEDE_TREE_NONE)
            return recede_text_refuse(reader->error, place->key.line, place->key.column,
                                      "found \"%s\", which only a painted sky takes; drop it or "
                                      "write \"sky\": \"painted\"", keys[i]);
    }
    scene->sky.horizon_colour = scene->sky_horizon.reflectance;
    scene->sky.light_colour = scene->sky_light.reflectance;
    return RECEDE_TEXT_OK;
}

static const char *opaque_palette(void)
{
    for (size_t i = 0; i < recede_palette_entry_count(); i++)
        if (recede_palette_entry_at(i)->opaque)
            return recede_palette_entry_at(i)->name;
    return "";
}

static int has_white(const recede_scene *scene)
{
    for (size_t i = 0; i < scene->paint_count; i++)
        if (scene->paints[i].is_white)
            return 1;
    return 0;
}

/* Opaque paint hides what it is laid over. */
static recede_text_status refuse_over(recede_reader *reader, const recede_scene *scene,
                                      size_t value)
{
    size_t given = recede_tree_member(reader->tree, value, "shadows");
    if (scene->shadows_over != 1 || given == RECEDE_TREE_NONE)
        return RECEDE_TEXT_OK;
    recede_place place = recede_tree_place(reader->tree, given)->value;
    return recede_text_refuse(reader->error, place.line, place.column,
                              "shadows is \"over\", but %s hides what it is laid over; write "
                              "\"beside\", or leave it out",
                              recede_word_numbered(recede_medium_words, scene->medium)->word);
}

/* A palette file brings its medium; the scene's own goes first, wherever it stands. */
static recede_text_status take_medium(recede_reader *reader, recede_scene *scene, size_t value)
{
    static const recede_field field = {"medium", &recede_form_medium,
                                       .words = recede_medium_words};
    size_t given = recede_tree_member(reader->tree, value, "medium");
    return given == RECEDE_TREE_NONE
               ? RECEDE_TEXT_OK : field.form->read(reader, given, &field, &scene->medium);
}

/* Opaque media are lightened with white: without a palette they take the one
 * that has it. */
static recede_text_status finish_paint(recede_reader *reader, size_t value, void *base)
{
    recede_scene *scene = base;
    recede_text_status status = take_medium(reader, scene, value);
    if (status || scene->medium == RECEDE_WATERCOLOUR)
        return status;
    status = refuse_over(reader, scene, value);
    if (status)
        return status;
    if (recede_tree_member(reader->tree, value, "most_parts") == RECEDE_TREE_NONE)
        scene->rules.most_parts = recede_usual_parts(scene->medium);
    size_t given = recede_tree_member(reader->tree, value, "palette");
    if (given == RECEDE_TREE_NONE)
        recede_scene_use_palette(scene, opaque_palette(), NULL);
    if (has_white(scene) || given == RECEDE_TREE_NONE)
        return RECEDE_TEXT_OK;
    recede_place place = recede_tree_place(reader->tree, given)->value;
    return recede_text_refuse(reader->error, place.line, place.column,
                              "%s is lightened with white and this palette has none; add "
                              "\"titanium white\" or take \"%s\"",
                              recede_word_numbered(recede_medium_words, scene->medium)->word,
                              opaque_palette());
}

static recede_text_status finish_plane(recede_reader *reader, size_t value, void *base)
{
    static const char *const keys[] = {"foliage", "surface", "colour", "lab", "reflectance",
                                       "mix"};
    (void)base;
    return recede_fields_one_of(reader, value, keys, COUNT(keys), "a plane", "own colour");
}

/* Mixes name paints of the palette, which may stand after the planes. */
static recede_text_status finish_scene(recede_reader *reader, size_t value, void *base)
{
    recede_scene *scene = base;
    const recede_tree *tree = reader->tree;
    size_t planes = recede_tree_member(tree, value, "planes");
    recede_text_status status = RECEDE_TEXT_OK;
    for (size_t i = 0; !status && i < scene->plane_count; i++) {
        size_t mix = recede_tree_member(tree, recede_tree_element(tree, planes, i), "mix");
        if (mix != RECEDE_TREE_NONE)
            status = recede_mix_find(reader, mix, &scene->planes[i].own);
    }
    return status;
}

/* ---- the list of planes */

static recede_text_status read_planes(recede_reader *reader, size_t value,
                                      const recede_field *field, void *at)
{
    const recede_tree *tree = reader->tree;
    recede_scene *scene = at;
    if (!cJSON_IsArray(recede_tree_item(tree, value)))
        return recede_refuse_value(reader, value, field->form->expected);
    if (recede_tree_count(tree, value) == 0)
        return recede_refuse_because(reader, value, "it is empty", field->form->expected);
    size_t end = recede_tree_end(tree, value);
    for (size_t c = recede_tree_first(tree, value); c < end; c = recede_tree_next(tree, c)) {
        recede_place place = recede_tree_place(tree, c)->value;
        if (scene->plane_count == RECEDE_MOST_PLANES)
            return recede_text_refuse(reader->error, place.line, place.column,
                                      "found %zu planes; this is the first beyond %d: leave some "
                                      "out", recede_tree_count(tree, value), RECEDE_MOST_PLANES);
        recede_plane *next = &scene->planes[scene->plane_count];
        memset(next, 0, sizeof *next);
        next->base_m = next->crest_m = NAN; /* open: the core fills them in */
        recede_text_status status = recede_fields_read(reader, c, field->inside, next);
        if (status)
            return status;
        scene->plane_count++;
    }
    return RECEDE_TEXT_OK;
}

static void write_planes(recede_json *json, const recede_field *field, const void *at)
{
    const recede_scene *scene = at;
    recede_json_array(json, field->key);
    for (size_t i = 0; i < scene->plane_count; i++) {
        recede_json_object(json, NULL);
        recede_fields_write(json, field->inside, &scene->planes[i]);
        if (scene->planes[i].own.kind == RECEDE_OWN_MIX)
            recede_own_mix_write(json, scene, &scene->planes[i].own);
        recede_json_end_object(json);
    }
    recede_json_end_array(json);
}

static const recede_form form_planes = {"a list of 1 to 64 planes", "", read_planes,
                                        write_planes};

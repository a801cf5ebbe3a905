/* recede swatch: the painter's own paints, learnt from painted swatches. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "cli/commands.h"
#include "cli/files.h"
#include "cli/inputs.h"
#include "cli/load.h"
#include "cli/meter.h"
#include "cli/options.h"
#include "cli/progress.h"
#include "colour/error.h"
#include "text/palette_file.h"
#include "text/swatch_table.h"

static const char command[] = "swatch";

typedef struct {
    const char *card, *measured, *photo, *output;
} given;

/* Everything of one run. */
typedef struct {
    recede_swatch_card card;
    recede_cli_readings readings;
    const recede_metered *paper; /* NULL in opaque media */
    recede_learnt learnt[RECEDE_MOST_PAINTS];
    recede_palette_file palette;
} work;

static const char *shown_name(const given *g)
{
    return strcmp(g->card, "-") == 0 ? "standard input" : g->card;
}

static int say_error(const given *g, recede_text_status status, const recede_text_error *error)
{
    return recede_cli_say_text_error(shown_name(g), status, error);
}

/* ---- the description */

static int read_card(const given *g, recede_swatch_card *card)
{
    recede_file_problem problem;
    recede_text_error error;
    recede_buffer bytes;
    recede_buffer_start(&bytes, NULL);
    if (recede_cli_read(g->card, RECEDE_CARD_MOST_BYTES, &bytes, &problem)) {
        recede_buffer_free(&bytes);
        recede_cli_say("%s", problem.text);
        return problem.refused ? RECEDE_EXIT_REFUSED : RECEDE_EXIT_FAILED;
    }
    recede_text_status status = recede_swatch_card_read(recede_buffer_string(&bytes), bytes.size,
                                                        NULL, card, &error);
    recede_buffer_free(&bytes);
    return status ? say_error(g, status, &error) : RECEDE_EXIT_DONE;
}

/* ---- learning */

/* A paint is one share of the whole. */
typedef struct {
    const recede_progress *whole;
    size_t done, count;
} share;

static int report(void *context, double share_done)
{
    const share *s = context;
    return s->whole->report(s->whole->context,
                            ((double)s->done + share_done) / (double)s->count);
}

/* Where only its colour is known, the smoothest reflectance of that colour. */
static recede_smooth paper_of(const recede_metered *read)
{
    if (read->has_reflectance)
        return (recede_smooth){read->reflectance, 0, 1};
    return recede_smooth_of_xyz(recede_xyz_of_lab(read->lab, recede_white()));
}

static recede_swatches swatches_of(const work *w, const recede_learnt *learnt)
{
    const recede_swatch_card *card = &w->card;
    recede_swatches out = {.medium = card->medium,
                           .surface_excluded = card->surface_excluded,
                           .count = learnt->painted->count};
    if (w->paper)
        out.paper = paper_of(w->paper).reflectance;
    else
        out.white = &card->white;
    for (size_t i = 0; i < out.count; i++) {
        double added = recede_swatch_added(card->medium, &learnt->painted->swatches[i]);
        out.of[i] = (recede_swatch){.water = w->paper ? added : 0,
                                    .white = w->paper ? 0 : added,
                                    .has_reflectance = learnt->read[i].has_reflectance,
                                    .reflectance = learnt->read[i].reflectance,
                                    .lab = learnt->read[i].lab};
    }
    return out;
}

/* What a swatch of what was learnt looks like. */
static recede_lab fitted_lab(const recede_paint_fit *fit, const recede_swatches *swatches,
                             size_t index)
{
    const recede_swatch *swatch = &swatches->of[index];
    recede_spectrum k = fit->k, s = fit->s, ground = swatches->paper;
    double film = recede_film_of_water(swatch->water);
    if (swatches->white) {
        film = INFINITY;
        for (int band = 0; band < RECEDE_BANDS; band++) {
            k.at[band] = (k.at[band] + swatch->white * swatches->white->k.at[band]) /
                         (1 + swatch->white);
            s.at[band] = (s.at[band] + swatch->white * swatches->white->s.at[band]) /
                         (1 + swatch->white);
        }
    }
    recede_spectrum seen = recede_film(&k, &s, film, &ground);
    return recede_lab_of_xyz(recede_xyz_of_reflectance(&seen), recede_white());
}

/* The bare paper, or the white alone. */
static recede_lab thinnest_lab(const recede_swatches *swatches)
{
    recede_spectrum seen = swatches->paper;
    if (swatches->white)
        seen = recede_film(&swatches->white->k, &swatches->white->s, INFINITY, &seen);
    return recede_lab_of_xyz(recede_xyz_of_reflectance(&seen), recede_white());
}

static int learn(const given *g, work *w, size_t paint, const recede_progress *progress)
{
    recede_learnt *learnt = &w->learnt[paint];
    recede_swatches swatches = swatches_of(w, learnt);
    recede_error core;
    recede_text_error error;
    learnt->thinnest = thinnest_lab(&swatches);
    if (recede_paint_learn(&swatches, NULL, progress, &learnt->fit, &core))
        return say_error(g, recede_explain_learning(&w->card, w->paper, paint, &core, &error),
                         &error);
    if (!recede_is_learnt(&learnt->fit))
        return say_error(g, recede_refuse_learnt(&w->card, learnt, &error), &error);
    for (size_t i = 0; i < swatches.count; i++)
        learnt->fitted[i] = fitted_lab(&learnt->fit, &swatches, i);
    return RECEDE_EXIT_DONE;
}

/* No paper turns back more light than falls on it: in a photograph the light is uneven
 * then, or the card misnamed. */
static int check_paper(const given *g, const work *w)
{
    static const double farthest = 2.0;
    recede_text_error error;
    if (!w->paper || paper_of(w->paper).delta_e <= farthest)
        return RECEDE_EXIT_DONE;
    return say_error(g, recede_refuse_paper(&w->card, w->paper, &error), &error);
}

static int learn_all(const given *g, work *w)
{
    recede_cli_progress shown;
    const recede_metered *next = w->readings.read;
    if (w->card.medium == RECEDE_WATERCOLOUR)
        w->paper = next++;
    int code = check_paper(g, w);
    recede_cli_progress_start(&shown, "learning paints");
    for (size_t i = 0; i < w->card.count && !code; i++) {
        share s = {&shown.progress, i, w->card.count};
        const recede_progress progress = {report, &s};
        recede_learnt *learnt = &w->learnt[i];
        learnt->painted = &w->card.paints[i];
        learnt->surface_excluded = w->card.surface_excluded;
        memcpy(learnt->read, next, learnt->painted->count * sizeof *next);
        next += learnt->painted->count;
        code = learn(g, w, i, &progress);
    }
    recede_cli_progress_end(&shown);
    return code;
}

/* ---- what is written */

/* The library's caution for a paint of that Colour Index name, where the painter gave
 * none. */
static void take_caution(recede_pigment_file *pigment)
{
    recede_paint known;
    if (pigment->paint.caution[0] || !pigment->paint.colour_index[0])
        return;
    if (recede_paint_named(pigment->paint.colour_index, &known, NULL) == RECEDE_OK)
        recede_copy_text(pigment->paint.caution, sizeof pigment->paint.caution,
                         known.of[0].pigment->caution);
}

/* Returns 0 when memory runs out. */
static int finish_pigment(recede_painted *painted, const recede_learnt *learnt)
{
    recede_pigment_file *pigment = &painted->pigment;
    recede_buffer measured;
    recede_buffer_start(&measured, NULL);
    recede_words_measured(&measured, learnt);
    recede_copy_text(pigment->measured, sizeof pigment->measured,
                     recede_buffer_string(&measured));
    int whole = !measured.failed;
    recede_buffer_free(&measured);
    pigment->paint.k = learnt->fit.k;
    pigment->paint.s = learnt->fit.s;
    take_caution(pigment);
    return whole;
}

static void add_palette(work *w, recede_buffer *out)
{
    recede_palette_file *palette = &w->palette;
    palette->has_medium = 1;
    palette->medium = w->card.medium;
    palette->count = w->card.count;
    /* read without its surface a paper is not as seen */
    palette->has_paper = w->paper != NULL && !w->card.surface_excluded;
    if (palette->has_paper) {
        palette->paper.kind = RECEDE_OWN_REFLECTANCE;
        palette->paper.reflectance = paper_of(w->paper).reflectance;
    }
    for (size_t i = 0; i < palette->count; i++)
        palette->paints[i] = w->card.paints[i].pigment;
    recede_palette_file_write(palette, out);
}

static void add_table(const work *w, recede_buffer *out)
{
    const recede_photo_told told = {w->readings.card, w->card.card_count, w->readings.uneven,
                                    w->readings.remark, w->paper, w->learnt, w->card.count};
    for (size_t i = 0; i < w->card.count; i++)
        recede_swatch_table(&w->learnt[i], out);
    recede_photo_warnings(&told, out);
}

static void add_last_line(const given *g, const work *w, recede_buffer *out)
{
    recede_buffer name;
    if (!g->output) {
        recede_buffer_text(out, "Nothing is written; with -o FILE.json it would be.\n");
        return;
    }
    recede_buffer_start(&name, NULL);
    recede_message_name(&name, g->output);
    recede_buffer_format(out, "%s holds the %s; name it as the palette of a scene, or with "
                         "--palette.\n", recede_buffer_string(&name),
                         w->card.count == 1 ? "paint" : "paints");
    out->failed |= name.failed;
    recede_buffer_free(&name);
}

static int write_all(const given *g, work *w)
{
    recede_output outputs[2];
    recede_buffer text, file;
    size_t count = 0;
    recede_buffer_start(&text, NULL);
    recede_buffer_start(&file, NULL);
    for (size_t i = 0; i < w->card.count; i++)
        file.failed |= !finish_pigment(&w->card.paints[i], &w->learnt[i]);
    add_table(w, &text);
    add_last_line(g, w, &text);
    if (w->card.count == 1)
        recede_pigment_file_write(&w->card.paints[0].pigment, &file);
    else
        add_palette(w, &file);
    if (g->output)
        outputs[count++] = (recede_output){g->output, file.bytes, file.size};
    if (!g->output || strcmp(g->output, "-") != 0)
        outputs[count++] = (recede_output){"-", text.bytes, text.size};
    int code = text.failed || file.failed ? recede_cli_no_memory()
                                          : recede_cli_write(outputs, count);
    recede_buffer_free(&text);
    recede_buffer_free(&file);
    return code;
}

static int run(const given *g)
{
    work *w = calloc(1, sizeof *w);
    if (!w)
        return recede_cli_no_memory();
    const recede_cli_meter meter = {shown_name(g), &w->card, g->measured, g->photo};
    int code = read_card(g, &w->card);
    if (!code)
        code = recede_cli_meter_read(&meter, &w->readings);
    if (!code)
        code = learn_all(g, w);
    if (!code)
        code = write_all(g, w);
    free(w);
    return code;
}

int recede_cli_swatch(int count, char **words)
{
    given g = {0};
    const recede_option options[] = {
        {0, "photo", "FILE", "a PNG photograph of swatches and card, for patches", &g.photo},
        {0, "measured", "FILE", "measurements (CGATS text), for samples", &g.measured},
        {'o', NULL, "FILE", "write the paint or paints learnt to FILE, JSON", &g.output},
    };
    const recede_usage usage = {
        command, "CARD.json",
        "Learns paints from swatches: the masstone of each and two or more washes (opaque\n"
        "media: tints), measured, photographed or given as colours. CARD.json describes them;\n"
        "docs/own-paints.md shows how. Tells how well they were learnt; with -o writes a\n"
        "pigment file, or for several paints a palette file, if all is well.",
        options, sizeof options / sizeof options[0], 1};
    int code = recede_options_read(&usage, count, words, &g.card);
    if (code != RECEDE_OPTIONS_GO_ON)
        return code;
    if (!g.card) {
        recede_cli_say("recede %s: name the description of the swatches; see recede %s --help",
                       command, command);
        return RECEDE_EXIT_USAGE;
    }
    return run(&g);
}

#include "cli/meter.h"

#include <stdlib.h>
#include <string.h>

#include "cli/commands.h"
#include "cli/files.h"
#include "cli/inputs.h"
#include "cli/load.h"
#include "cli/samples.h"
#include "colour/error.h"
#include "file/png_read.h"

/* ---- what has to be given */

typedef struct {
    const recede_cli_meter *meter;
    recede_text_error *error;
    int samples, patches;
} need;

static recede_text_status count_needs(void *context, const recede_source *source)
{
    need *n = context;
    n->samples += source->kind == RECEDE_SOURCE_SAMPLE;
    n->patches += source->kind == RECEDE_SOURCE_PATCH;
    if (source->kind == RECEDE_SOURCE_SAMPLE && !n->meter->measured)
        return recede_text_refuse(n->error, source->place.line, source->place.column,
                                  "\"sample\" names a measurement, and no file of them is given; "
                                  "add --measured FILE");
    if (source->kind == RECEDE_SOURCE_PATCH && !n->meter->photo)
        return recede_text_refuse(n->error, source->place.line, source->place.column,
                                  "\"patch\" is part of a photograph, and none is given; add "
                                  "--photo FILE");
    return RECEDE_TEXT_OK;
}

static recede_text_status check_needs(const recede_cli_meter *meter, recede_text_error *error)
{
    need n = {meter, error, 0, 0};
    const recede_swatch_card *card = meter->card;
    recede_text_status status = recede_sources_visit(card, count_needs, &n);
    if (status)
        return status;
    if (card->card_count && !meter->photo)
        return recede_text_refuse(error, card->card[0].place.line, card->card[0].place.column,
                                  "\"card\" is part of a photograph, and none is given; add "
                                  "--photo FILE, or leave \"card\" out");
    if (meter->measured && !n.samples)
        return recede_text_refuse(error, 1, 1, "nothing here is a \"sample\" of --measured; name "
                                  "samples, or leave that option out");
    if (meter->photo && !n.patches)
        return recede_text_refuse(error, 1, 1, "nothing here is a \"patch\" of --photo; give "
                                  "patches, or leave that option out");
    if (meter->photo && !card->card_count)
        return recede_text_refuse(error, 1, 1, "there is no \"card\"; a photograph is read by a "
                                  "grey or white card in it: add \"card\": [{\"reflectance\": "
                                  "0.18, \"patch\": [left, top, width, height]}]");
    return RECEDE_TEXT_OK;
}

/* ---- the photograph */

static int read_png(const char *path, recede_png_photo *out)
{
    recede_file_problem problem;
    recede_buffer bytes;
    recede_buffer_start(&bytes, NULL);
    int failed = recede_cli_read(path, RECEDE_PNG_MOST_BYTES, &bytes, &problem) ||
                 recede_png_read(path, bytes.bytes, bytes.size, NULL, out, &problem);
    recede_buffer_free(&bytes);
    if (!failed)
        return RECEDE_EXIT_DONE;
    recede_cli_say("%s", problem.text);
    return problem.refused ? RECEDE_EXIT_REFUSED : RECEDE_EXIT_FAILED;
}

static int read_patches(const recede_cli_meter *meter, const recede_photo *photo,
                        recede_patch_reading *patches, int *uneven)
{
    recede_patch where[RECEDE_MOST_PATCHES];
    recede_error core;
    recede_text_error error;
    size_t count = recede_card_patches(meter->card, where);
    if (recede_photo_read(photo, where, count, NULL, patches, uneven, &core) == RECEDE_OK)
        return RECEDE_EXIT_DONE;
    recede_text_status status = recede_explain_photo(meter->card, photo, &core, &error);
    return recede_cli_say_text_error(meter->card_name, status, &error);
}

static int read_photo(const recede_cli_meter *meter, recede_patch_reading *patches,
                      recede_cli_readings *out)
{
    recede_png_photo png;
    if (!meter->photo)
        return RECEDE_EXIT_DONE;
    int code = read_png(meter->photo, &png);
    if (code)
        return code;
    code = read_patches(meter, &png.photo, patches, &out->uneven);
    recede_copy_text(out->remark, sizeof out->remark, png.remark);
    memcpy(out->card, patches, meter->card->card_count * sizeof *patches);
    recede_png_photo_free(&png, NULL);
    return code;
}

/* ---- all sources */

typedef struct {
    const recede_cli_meter *meter;
    const recede_measurements *samples;
    const recede_patch_reading *patch; /* the next */
    recede_cli_readings *out;
    recede_text_error *error;
} metering;

static recede_lab lab_of(const recede_spectrum *reflectance)
{
    return recede_lab_of_xyz(recede_xyz_of_reflectance(reflectance), recede_white());
}

static void take_patch(metering *m, recede_metered *read)
{
    read->by_photo = 1;
    read->photo = *m->patch++;
    read->lab = read->photo.lab;
}

static recede_text_status take(void *context, const recede_source *source)
{
    metering *m = context;
    recede_metered *read = &m->out->read[m->out->count++];
    *read = (recede_metered){.reflectance = source->own.reflectance, .lab = source->own.lab};
    switch (source->kind) {
    case RECEDE_SOURCE_REFLECTANCE:
        read->has_reflectance = 1;
        read->lab = lab_of(&read->reflectance);
        return RECEDE_TEXT_OK;
    case RECEDE_SOURCE_COLOUR:
        read->lab = recede_lab_of_xyz(recede_xyz_of_srgb(source->own.srgb), recede_white());
        return RECEDE_TEXT_OK;
    case RECEDE_SOURCE_SAMPLE:
        return recede_cli_samples_take(m->samples, source, m->meter->card->surface_excluded, read,
                                       m->error);
    case RECEDE_SOURCE_PATCH:
        take_patch(m, read);
        return RECEDE_TEXT_OK;
    default: /* lab, as it stands */
        return RECEDE_TEXT_OK;
    }
}

static int take_all(const recede_cli_meter *meter, const recede_measurements *samples,
                    const recede_patch_reading *patches, recede_cli_readings *out)
{
    recede_text_error error;
    metering m = {meter, samples, patches + meter->card->card_count, out, &error};
    out->count = 0;
    recede_text_status status = recede_sources_visit(meter->card, take, &m);
    return status ? recede_cli_say_text_error(meter->card_name, status, &error)
                  : RECEDE_EXIT_DONE;
}

int recede_cli_meter_read(const recede_cli_meter *meter, recede_cli_readings *out)
{
    recede_patch_reading patches[RECEDE_MOST_PATCHES];
    recede_measurements samples;
    recede_text_error error;
    memset(out, 0, sizeof *out);
    recede_text_status status = check_needs(meter, &error);
    if (status)
        return recede_cli_say_text_error(meter->card_name, status, &error);
    int code = recede_cli_samples_read(meter->measured, &samples);
    if (!code)
        code = read_photo(meter, patches, out);
    if (!code)
        code = take_all(meter, &samples, patches, out);
    recede_measurements_free(&samples);
    return code;
}

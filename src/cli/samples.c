#include "cli/samples.h"

#include <string.h>

#include "cli/commands.h"
#include "cli/files.h"
#include "cli/inputs.h"
#include "cli/load.h"
#include "text/nearest.h"

int recede_cli_samples_read(const char *path, recede_measurements *out)
{
    recede_file_problem problem;
    recede_text_error error;
    recede_buffer bytes;
    *out = (recede_measurements){.count = 0};
    if (!path)
        return RECEDE_EXIT_DONE;
    recede_buffer_start(&bytes, NULL);
    if (recede_cli_read(path, RECEDE_CGATS_MOST_BYTES, &bytes, &problem)) {
        recede_buffer_free(&bytes);
        recede_cli_say("%s", problem.text);
        return problem.refused ? RECEDE_EXIT_REFUSED : RECEDE_EXIT_FAILED;
    }
    recede_text_status status = recede_measurements_read(recede_buffer_string(&bytes), bytes.size,
                                                         NULL, out, &error);
    recede_buffer_free(&bytes);
    const char *shown = strcmp(path, "-") == 0 ? "standard input" : path;
    return status ? recede_cli_say_text_error(shown, status, &error) : RECEDE_EXIT_DONE;
}

static void offer_names(recede_nearest *nearest, const recede_measurement *sample)
{
    if (sample->id[0])
        recede_nearest_offer(nearest, sample->id);
    if (sample->name[0] && strcmp(sample->name, sample->id) != 0)
        recede_nearest_offer(nearest, sample->name);
}

static recede_text_status refuse_unknown(const recede_measurements *samples,
                                         const recede_source *source, recede_text_error *error)
{
    char offer[3 * RECEDE_NAME_SIZE];
    recede_nearest nearest;
    recede_nearest_start(&nearest, source->sample);
    for (size_t i = 0; i < samples->count; i++)
        offer_names(&nearest, &samples->of[i]);
    recede_nearest_say(&nearest, offer, sizeof offer);
    return recede_text_refuse(error, source->place.line, source->place.column,
                              "no sample of the measurements is called \"%s\"; %s",
                              source->sample, offer);
}

recede_text_status recede_cli_samples_take(const recede_measurements *samples,
                                           const recede_source *source, int surface_excluded,
                                           recede_metered *out, recede_text_error *error)
{
    const recede_measurement *found;
    size_t count = recede_measurements_named(samples, source->sample, &found);
    if (count == 0)
        return refuse_unknown(samples, source, error);
    if (count > 1)
        return recede_text_refuse(error, source->place.line, source->place.column,
                                  "%zu samples of the measurements are called \"%s\"; name one by "
                                  "its SAMPLE_ID", count, source->sample);
    if (surface_excluded && !found->has_reflectance)
        return recede_text_refuse(error, source->place.line, source->place.column,
                                  "the sample \"%s\" has no spectrum, and \"surface\" is "
                                  "\"excluded\", which only spectra can be; measure spectra, or "
                                  "leave \"surface\" out", source->sample);
    out->has_reflectance = found->has_reflectance;
    out->reflectance = found->reflectance;
    out->lab = found->lab;
    if (found->has_reflectance)
        out->lab = recede_lab_of_xyz(recede_xyz_of_reflectance(&found->reflectance),
                                     recede_white());
    return RECEDE_TEXT_OK;
}

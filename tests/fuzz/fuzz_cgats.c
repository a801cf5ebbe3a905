/* Fuzz target for measurement files: whatever the bytes, reading them ends in samples that
 * keep what the header promises, or in one line that says where and why. */
#include <math.h>
#include <string.h>

#include "fuzz/insist.h"
#include "text/cgats.h"
#include "text/utf8.h"

static void check_error(recede_text_status status, const recede_text_error *error)
{
    insist(status == RECEDE_TEXT_REFUSED || status == RECEDE_TEXT_NO_MEMORY);
    insist(error->file[0] == '\0' && error->what[0] != '\0');
    insist(strlen(error->what) < sizeof error->what);
    for (size_t at = 0, length; error->what[at]; at += length) {
        unsigned long character;
        length = recede_utf8_decode(error->what + at, strlen(error->what + at), &character);
        insist(length > 0 && !recede_utf8_is_control(character));
    }
}

static void check_sample(const recede_measurements *all, const recede_measurement *sample)
{
    const recede_measurement *first = NULL;
    insist(sample->has_reflectance || sample->has_lab);
    insist(sample->place.line > 0 && sample->place.column > 0);
    insist(strlen(sample->id) < RECEDE_NAME_SIZE && strlen(sample->name) < RECEDE_NAME_SIZE);
    if (sample->id[0])
        insist(recede_measurements_named(all, sample->id, &first) == 1 && first == sample);
    else
        insist(recede_measurements_named(all, sample->name, &first) >= 1);
    for (int band = 0; sample->has_reflectance && band < RECEDE_BANDS; band++)
        insist(sample->reflectance.at[band] >= 0 && sample->reflectance.at[band] <= 1);
    if (sample->has_lab)
        insist(isfinite(sample->lab.l) && isfinite(sample->lab.a) && isfinite(sample->lab.b));
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    recede_measurements found;
    recede_text_error error;
    memset(&error, 0, sizeof error);
    recede_text_status status =
        recede_measurements_read((const char *)data, size, NULL, &found, &error);
    if (status) {
        check_error(status, &error);
        insist(found.count == 0 && !found.of);
        return 0;
    }
    insist(found.count >= 1 && found.count <= RECEDE_CGATS_MOST_SAMPLES);
    for (size_t i = 0; i < found.count; i++)
        check_sample(&found, &found.of[i]);
    recede_measurements_free(&found);
    return 0;
}

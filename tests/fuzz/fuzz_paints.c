/* Fuzz target for the files of one's own paints: by its first byte an input is read as
 * a pigment file, a palette file or a swatch description. Whatever the bytes, reading
 * ends in a struct whose numbers are within bounds and which is written so that it reads
 * back the same, or in one line that says where and why. */
#include <math.h>
#include <string.h>

#include "fuzz/insist.h"
#include "text/palette_file.h"
#include "text/swatch_read.h"

static void check_error(recede_text_status status, const recede_text_error *error)
{
    insist(status == RECEDE_TEXT_REFUSED || status == RECEDE_TEXT_UNREADABLE);
    insist(error->what[0] != '\0' && !strchr(error->what, '\n'));
    insist(strlen(error->what) < sizeof error->what);
}

static void check_alike(recede_buffer *first, recede_buffer *second)
{
    insist(!first->failed && !second->failed);
    insist(first->size == second->size && memcmp(first->bytes, second->bytes, first->size) == 0);
    recede_buffer_free(first);
    recede_buffer_free(second);
}

static void check_bands(const recede_spectrum *spectrum)
{
    for (int band = 0; band < RECEDE_BANDS; band++)
        insist(isfinite(spectrum->at[band]) && spectrum->at[band] >= 0);
}

static void read_pigment(const char *bytes, size_t size)
{
    static recede_pigment_file pigment, again;
    recede_text_error error;
    recede_buffer first, second;
    recede_text_status status = recede_pigment_file_read(bytes, size, "a.json", NULL, &pigment,
                                                         &error);
    if (status) {
        check_error(status, &error);
        return;
    }
    check_bands(&pigment.paint.k);
    check_bands(&pigment.paint.s);
    recede_buffer_start(&first, NULL);
    recede_buffer_start(&second, NULL);
    recede_pigment_file_write(&pigment, &first);
    insist(!recede_pigment_file_read(first.bytes, first.size, "a.json", NULL, &again, &error));
    recede_pigment_file_write(&again, &second);
    check_alike(&first, &second);
}

static void read_palette(const char *bytes, size_t size)
{
    static recede_palette_file palette, again;
    recede_text_error error;
    recede_buffer first, second;
    recede_text_status status = recede_palette_file_read(bytes, size, "a.json", NULL, NULL,
                                                         &palette, &error);
    if (status) {
        check_error(status, &error);
        return;
    }
    insist(palette.count >= 1 && palette.count <= RECEDE_MOST_PAINTS);
    for (size_t i = 0; i < palette.count; i++) {
        check_bands(&palette.paints[i].paint.k);
        if (palette.paints[i].paint.file[0]) /* written by that name, which cannot be read here */
            return;
    }
    recede_buffer_start(&first, NULL);
    recede_buffer_start(&second, NULL);
    recede_palette_file_write(&palette, &first);
    insist(!recede_palette_file_read(first.bytes, first.size, "a.json", NULL, NULL, &again, &error));
    recede_palette_file_write(&again, &second);
    check_alike(&first, &second);
}

static void read_card(const char *bytes, size_t size)
{
    static recede_swatch_card card;
    recede_text_error error;
    recede_text_status status = recede_swatch_card_read(bytes, size, NULL, &card, &error);
    if (status) {
        check_error(status, &error);
        return;
    }
    insist(card.count >= 1 && card.count <= RECEDE_MOST_PAINTS);
    for (size_t i = 0; i < card.count; i++) {
        insist(card.paints[i].count <= RECEDE_MOST_SWATCHES);
        for (size_t k = 0; k < card.paints[i].count; k++) {
            const recede_painted_swatch *swatch = &card.paints[i].swatches[k];
            insist(isfinite(card.medium == RECEDE_WATERCOLOUR ? swatch->water : swatch->white));
        }
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static void (*const readers[])(const char *, size_t) = {read_pigment, read_palette, read_card};
    if (size)
        readers[data[0] % 3]((const char *)data + 1, size - 1);
    return 0;
}

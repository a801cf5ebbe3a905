#include "cli/sheets.h"

#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "cli/commands.h"
#include "cli/load.h"
#include "file/png_write.h"
#include "text/message.h"

static int is_pdf(const char *path)
{
    size_t length = strlen(path);
    return length >= 4 && strcasecmp(path + length - 4, ".pdf") == 0;
}

/* What a sheet's name may lead one to expect, and would not get. */
static int is_other_kind(const char *path)
{
    static const char *const others[] = {".jpg", ".jpeg", ".gif", ".tif", ".tiff", ".webp",
                                         ".svg", ".bmp", ".json", ".txt", ".html"};
    size_t length = strlen(path);
    for (size_t i = 0; i < sizeof others / sizeof others[0]; i++) {
        size_t ending = strlen(others[i]);
        if (length > ending && strcasecmp(path + length - ending, others[i]) == 0)
            return 1;
    }
    return 0;
}

static int say_other_kind(const char *path)
{
    recede_buffer shown;
    recede_buffer_start(&shown, NULL);
    recede_message_name(&shown, path);
    recede_cli_say("%s: a sheet is a PNG or a PDF; let its name end in .png or .pdf",
                   recede_buffer_string(&shown));
    recede_buffer_free(&shown);
    return RECEDE_EXIT_USAGE;
}

static void say_missing(void *context, const char *text, int count)
{
    (void)context;
    recede_cli_say("note: the font lacks %d of the characters in '%s'; boxes stand in their place",
                   count, text);
}

static int say_result(recede_sheet_result result)
{
    switch (result) {
    case RECEDE_SHEET_OK:
        return RECEDE_EXIT_DONE;
    case RECEDE_SHEET_NO_FONT:
        recede_cli_say("the sheet's font cannot be read: " RECEDE_FONT
                       "; install it (Debian: fonts-lato) and try again");
        return RECEDE_EXIT_FAILED;
    default:
        return recede_cli_no_memory();
    }
}

static int draw_png(const recede_cli_sheet *sheet, const recede_sheet_options *options,
                    const char *json, recede_buffer *out)
{
    recede_sheet_pixels pixels;
    recede_file_problem problem;
    int code = say_result(sheet->pixels(sheet->content, options, &pixels));
    if (code)
        return code;
    recede_png png = {pixels.width, pixels.height, pixels.rgb, pixels.row_bytes,
                      RECEDE_SHEET_DPI, json};
    if (recede_png_encode(&png, out, &problem)) {
        recede_cli_say("%s", problem.text);
        code = RECEDE_EXIT_FAILED;
    }
    free(pixels.rgb);
    return code;
}

static int draw(const recede_cli_sheet *sheet, const char *path, const recede_buffer *json,
                recede_buffer *out)
{
    const recede_sheet_options options = {.missing = say_missing};
    int code = is_pdf(path) ? say_result(sheet->pdf(sheet->content, &options, out))
                            : draw_png(sheet, &options, json->size ? json->bytes : NULL, out);
    return !code && out->failed ? recede_cli_no_memory() : code;
}

static int is_taken(const recede_output *outputs, size_t count)
{
    for (size_t i = 0; i < count; i++)
        if (strcmp(outputs[i].path, "-") == 0)
            return 1;
    return 0;
}

static recede_sheet_result pixels_of(const void *sheet, const recede_sheet_options *options,
                                     recede_sheet_pixels *out)
{
    return recede_sheet_to_pixels(sheet, options, out);
}

static recede_sheet_result pdf_of(const void *sheet, const recede_sheet_options *options,
                                  recede_buffer *out)
{
    return recede_sheet_to_pdf(sheet, options, out);
}

recede_cli_sheet recede_cli_sheet_of(const recede_sheet *sheet)
{
    return (recede_cli_sheet){sheet, pixels_of, pdf_of};
}

int recede_cli_sheet_write(const recede_cli_sheet *sheet, const char *path,
                           const recede_cli_words *words, const char *json_path)
{
    recede_output outputs[3];
    recede_buffer drawn;
    size_t count = 0;
    int code = RECEDE_EXIT_DONE;
    recede_buffer_start(&drawn, NULL);
    if (words->json.failed || words->text.failed)
        code = recede_cli_no_memory();
    if (!code && path && is_other_kind(path))
        code = say_other_kind(path);
    if (!code && path)
        code = draw(sheet, path, &words->json, &drawn);
    if (path)
        outputs[count++] = (recede_output){path, drawn.bytes, drawn.size};
    if (json_path)
        outputs[count++] = (recede_output){json_path, words->json.bytes, words->json.size};
    if (words->text.size && !is_taken(outputs, count))
        outputs[count++] = (recede_output){"-", words->text.bytes, words->text.size};
    if (!code)
        code = recede_cli_write(outputs, count);
    recede_buffer_free(&drawn);
    return code;
}

#include "draw/sheet.h"

#include "colour/memory.h"

#include <cairo-pdf.h>
#include <errno.h>
#include <string.h>

/* A sheet carries no hour of its making: the same scene, the same bytes. */
static const char fixed_date[] = "2000-01-01T00:00:00Z";

static recede_type *type_for(const recede_sheet_options *options)
{
    return recede_type_new(options->font_path ? options->font_path : RECEDE_FONT, options->log,
                           options->missing, options->missing_context);
}

/* The content on one page; units of cr are millimetres. */
static int draw_page(const recede_sheet *sheet, recede_type *type, cairo_t *cr, size_t index)
{
    recede_page page = {cr, type, RECEDE_SHEET_DPI / 25.4};
    recede_type_turn_to(type, index);
    recede_page_blank(&page);
    return sheet->draw(sheet->content, &page, index) || recede_type_is_troubled(type);
}

/* ------------------------------------------------------------- pixels -- */

static void take_pixels(cairo_surface_t *surface, unsigned char *rgb)
{
    cairo_surface_flush(surface);
    const unsigned char *row = cairo_image_surface_get_data(surface);
    size_t stride = (size_t)cairo_image_surface_get_stride(surface);
    for (size_t y = 0; y < RECEDE_SHEET_PAGE_HEIGHT; y++, row += stride) {
        for (size_t x = 0; x < RECEDE_SHEET_WIDTH; x++, rgb += 3) {
            unsigned word;
            memcpy(&word, row + 4 * x, sizeof word);
            rgb[0] = (unsigned char)(word >> 16);
            rgb[1] = (unsigned char)(word >> 8);
            rgb[2] = (unsigned char)word;
        }
    }
}

static recede_sheet_result draw_pixels(const recede_sheet *sheet, recede_type *type,
                                       recede_sheet_pixels *out)
{
    cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, RECEDE_SHEET_WIDTH,
                                                          RECEDE_SHEET_PAGE_HEIGHT);
    cairo_t *cr = cairo_create(surface);
    int failed = cairo_status(cr) != CAIRO_STATUS_SUCCESS;
    cairo_scale(cr, RECEDE_SHEET_DPI / 25.4, RECEDE_SHEET_DPI / 25.4);
    for (size_t i = 0; i < out->pages && !failed; i++) {
        failed = draw_page(sheet, type, cr, i) || cairo_status(cr) != CAIRO_STATUS_SUCCESS;
        if (!failed)
            take_pixels(surface, out->rgb + i * RECEDE_SHEET_PAGE_HEIGHT * out->row_bytes);
    }
    cairo_destroy(cr);
    cairo_surface_destroy(surface);
    return failed ? RECEDE_SHEET_NO_MEMORY : RECEDE_SHEET_OK;
}

recede_sheet_result recede_sheet_to_pixels(const recede_sheet *sheet,
                                           const recede_sheet_options *options,
                                           recede_sheet_pixels *out)
{
    recede_sheet_result result = RECEDE_SHEET_NO_MEMORY;
    memset(out, 0, sizeof *out);
    recede_type *type = type_for(options);
    if (!type)
        return errno == ENOMEM ? RECEDE_SHEET_NO_MEMORY : RECEDE_SHEET_NO_FONT;
    if (!sheet->lay(sheet->content, type, &out->pages)) {
        out->width = RECEDE_SHEET_WIDTH;
        out->row_bytes = 3 * (size_t)RECEDE_SHEET_WIDTH;
        out->height = out->pages * RECEDE_SHEET_PAGE_HEIGHT;
        out->rgb = recede_allocate_array(options->allocator, out->height, out->row_bytes);
        if (out->rgb)
            result = draw_pixels(sheet, type, out);
    }
    if (result) {
        recede_release(options->allocator, out->rgb);
        memset(out, 0, sizeof *out);
    }
    recede_type_free(type);
    return result;
}

/* ---------------------------------------------------------------- PDF -- */

static cairo_status_t add_bytes(void *buffer, const unsigned char *bytes, unsigned size)
{
    recede_buffer_add(buffer, bytes, size);
    return ((recede_buffer *)buffer)->failed ? CAIRO_STATUS_WRITE_ERROR : CAIRO_STATUS_SUCCESS;
}

static void describe(cairo_surface_t *surface, const char *title)
{
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, title);
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR, "recede " RECEDE_VERSION);
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, fixed_date);
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_MOD_DATE, fixed_date);
}

recede_sheet_result recede_sheet_to_pdf(const recede_sheet *sheet,
                                        const recede_sheet_options *options, recede_buffer *out)
{
    static const double points_per_mm = 72 / 25.4;
    size_t pages = 0;
    recede_type *type = type_for(options);
    if (!type)
        return errno == ENOMEM ? RECEDE_SHEET_NO_MEMORY : RECEDE_SHEET_NO_FONT;
    int failed = sheet->lay(sheet->content, type, &pages);
    cairo_surface_t *surface =
        cairo_pdf_surface_create_for_stream(add_bytes, out, recede_page_width_mm * points_per_mm,
                                            recede_page_height_mm * points_per_mm);
    describe(surface, sheet->title);
    cairo_t *cr = cairo_create(surface);
    cairo_scale(cr, points_per_mm, points_per_mm);
    for (size_t i = 0; i < pages && !failed; i++) {
        failed = draw_page(sheet, type, cr, i);
        cairo_show_page(cr);
    }
    failed = failed || cairo_status(cr) != CAIRO_STATUS_SUCCESS;
    cairo_destroy(cr);
    cairo_surface_finish(surface);
    failed = failed || cairo_surface_status(surface) != CAIRO_STATUS_SUCCESS || out->failed;
    cairo_surface_destroy(surface);
    recede_type_free(type);
    return failed ? RECEDE_SHEET_NO_MEMORY : RECEDE_SHEET_OK;
}

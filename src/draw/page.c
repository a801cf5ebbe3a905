#include "draw/page.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

const double recede_page_width_mm = 297, recede_page_height_mm = 210, recede_page_margin_mm = 15;

#define INK {0.17, 0.165, 0.16}
#define INK_PALE {0.39, 0.38, 0.365}

const recede_srgb recede_ink_pale = INK_PALE, recede_paper_tone = {0.914, 0.906, 0.886},
                  recede_mount_tone = {0.965, 0.96, 0.95}, recede_line_tone = {0.66, 0.65, 0.63};
const recede_style recede_style_title = {21, 12, 2, RECEDE_LEFT, INK, 0},
                   recede_style_heading = {13, 9, 1, RECEDE_LEFT, INK, 0},
                   recede_style_body = {9.5, 8, 20, RECEDE_LEFT, INK, 0},
                   recede_style_small = {8, 7, 20, RECEDE_LEFT, INK_PALE, 0},
                   recede_style_recipe = {12, 12, 3, RECEDE_LEFT, INK, 1};

static void use(const recede_page *page, recede_srgb colour)
{
    cairo_set_source_rgb(page->cr, colour.r, colour.g, colour.b);
}

void recede_page_fill(const recede_page *page, recede_rect rect, recede_srgb colour)
{
    use(page, colour);
    cairo_rectangle(page->cr, rect.x, rect.y, rect.w, rect.h);
    cairo_fill(page->cr);
}

void recede_page_blank(const recede_page *page)
{
    recede_page_fill(page, (recede_rect){0, 0, recede_page_width_mm, recede_page_height_mm},
                     recede_paper_tone);
}

void recede_page_frame(const recede_page *page, recede_rect rect, double line_mm)
{
    use(page, recede_line_tone);
    cairo_set_line_width(page->cr, line_mm);
    cairo_rectangle(page->cr, rect.x, rect.y, rect.w, rect.h);
    cairo_stroke(page->cr);
}

void recede_page_rule(const recede_page *page, double x, double y, double w)
{
    use(page, recede_line_tone);
    cairo_set_line_width(page->cr, 0.18);
    cairo_move_to(page->cr, x, y);
    cairo_line_to(page->cr, x + w, y);
    cairo_stroke(page->cr);
}

void recede_page_foot(const recede_page *page, const char *text, size_t number, size_t count)
{
    char words[64];
    double y = recede_page_height_mm - 10.5, margin = recede_page_margin_mm;
    recede_style left = {7.5, 7, 1, RECEDE_LEFT, recede_ink_pale, 0}, right = left;
    right.align = RECEDE_RIGHT;
    snprintf(words, sizeof words, "%zu of %zu", number, count);
    recede_type_set(page->type, page->cr, text,
                    (recede_rect){margin, y, recede_page_width_mm - 2 * margin - 22, 4}, &left);
    recede_type_set(page->type, page->cr, words,
                    (recede_rect){recede_page_width_mm - margin - 20, y, 20, 4}, &right);
}

static const double care_top_mm = 196.4;

void recede_page_care(const recede_page *page, const char *caution)
{
    const recede_style style = {7, 7, 1, RECEDE_LEFT, recede_ink_pale, 0};
    const recede_rect room = {recede_page_margin_mm, care_top_mm,
                              recede_page_width_mm - 2 * recede_page_margin_mm, 3};
    if (*caution)
        recede_type_set(page->type, page->cr, caution, room, &style);
}

double recede_page_bottom_mm(double usual_mm, const char *caution)
{
    return *caution ? fmin(usual_mm, care_top_mm) : usual_mm;
}

recede_rect recede_page_snap(const recede_page *page, recede_rect rect, size_t *width,
                             size_t *height)
{
    double dots = page->dots_per_mm;
    double x = round(rect.x * dots), y = round(rect.y * dots);
    double w = fmax(1, round(rect.w * dots)), h = fmax(1, round(rect.h * dots));
    *width = (size_t)w;
    *height = (size_t)h;
    return (recede_rect){x / dots, y / dots, w / dots, h / dots};
}

/* Cairo's pixels are words of 0xRRGGBB. */
static void copy_row(unsigned char *to, const unsigned char *rgb, size_t width)
{
    for (size_t x = 0; x < width; x++, rgb += 3, to += 4) {
        unsigned word = (unsigned)rgb[0] << 16 | (unsigned)rgb[1] << 8 | rgb[2];
        memcpy(to, &word, sizeof word);
    }
}

int recede_page_picture(const recede_page *page, recede_rect rect, const unsigned char *rgb,
                        size_t width, size_t height)
{
    cairo_t *cr = page->cr;
    cairo_surface_t *image =
        cairo_image_surface_create(CAIRO_FORMAT_RGB24, (int)width, (int)height);
    if (cairo_surface_status(image)) {
        cairo_surface_destroy(image);
        return -1;
    }
    size_t stride = (size_t)cairo_image_surface_get_stride(image);
    cairo_surface_flush(image);
    unsigned char *pixels = cairo_image_surface_get_data(image);
    for (size_t y = 0; y < height; y++)
        copy_row(pixels + y * stride, rgb + y * width * 3, width);
    cairo_surface_mark_dirty(image);
    cairo_save(cr);
    cairo_translate(cr, rect.x, rect.y);
    cairo_scale(cr, rect.w / (double)width, rect.h / (double)height);
    cairo_set_source_surface(cr, image, 0, 0);
    cairo_pattern_set_filter(cairo_get_source(cr), CAIRO_FILTER_NEAREST);
    cairo_rectangle(cr, 0, 0, (double)width, (double)height);
    cairo_fill(cr);
    cairo_restore(cr);
    cairo_surface_destroy(image);
    return 0;
}

int recede_page_mounted(const recede_page *page, recede_rect rect, double mount_mm,
                        const unsigned char *rgb, size_t width, size_t height)
{
    recede_rect mount = {rect.x - mount_mm, rect.y - mount_mm, rect.w + 2 * mount_mm,
                         rect.h + 2 * mount_mm};
    recede_page_fill(page, mount, recede_mount_tone);
    recede_page_frame(page, mount, 0.15);
    return recede_page_picture(page, rect, rgb, width, height);
}

recede_rect recede_page_set(const recede_page *page, recede_buffer *words, recede_rect room,
                            const recede_style *style, int *failed)
{
    const char *text = recede_buffer_string(words);
    recede_rect taken = recede_type_set(page->type, page->cr, text, room, style);
    *failed |= words->failed;
    recede_buffer_free(words);
    return taken;
}

/* The picture, as a canvas takes it. */
#include <stdlib.h>

#include "page/page.h"

static int make_room(recede_page *page, size_t pixels)
{
    if (pixels <= page->pixels)
        return 1;
    free(page->rgb);
    free(page->rgba);
    page->rgb = malloc(pixels * 3);
    page->rgba = malloc(pixels * 4);
    page->pixels = page->rgb && page->rgba ? pixels : 0;
    return page->pixels != 0;
}

/* Pictures under a moving hand are coarser: each size has a sketch of its own. */
static recede_sketch *sketch_of(recede_page *page, int moving)
{
    recede_error error;
    recede_sketch **sketch = &page->sketch[moving != 0];
    if (!*sketch && recede_sketch_new(NULL, sketch, &error))
        return NULL;
    return *sketch;
}

static void widen(const unsigned char *rgb, size_t pixels, unsigned char *rgba)
{
    for (size_t i = 0; i < pixels; i++, rgb += 3, rgba += 4) {
        rgba[0] = rgb[0];
        rgba[1] = rgb[1];
        rgba[2] = rgb[2];
        rgba[3] = 255;
    }
}

RECEDE_PAGE_CALL(page_picture)
unsigned char *recede_page_picture(recede_page *page, size_t width, size_t height, int greys,
                                   int moving)
{
    const recede_picture_options options = {.width = width, .height = height, .greys = greys};
    recede_error error;
    recede_sketch *sketch = sketch_of(page, moving);
    if (!page->plan || !sketch || !make_room(page, width * height) ||
        recede_picture_repaint(sketch, page->plan, &options, page->rgb, 3 * width, &error))
        return NULL;
    widen(page->rgb, width * height, page->rgba);
    return page->rgba;
}

RECEDE_PAGE_CALL(page_skylines)
float *recede_page_skylines(recede_page *page, size_t width, size_t height, int moving)
{
    recede_error error;
    recede_sketch *sketch = sketch_of(page, moving);
    if (!page->plan || !sketch)
        return NULL;
    free(page->skylines);
    page->skylines = malloc(sizeof(float) * width * (recede_plan_count(page->plan) + 1));
    if (!page->skylines ||
        recede_picture_skylines(sketch, page->plan, width, height, page->skylines, &error))
        return NULL;
    return page->skylines;
}

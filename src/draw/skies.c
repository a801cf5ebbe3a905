#include "draw/skies.h"

#include "colour/memory.h"
#include "draw/skies_parts.h"
#include "text/words_skies.h"

#include <math.h>
#include <string.h>

static const double mount_mm = 1.6;

recede_rect recede_skies_set(recede_skies_sheet *sheet, const recede_page *page,
                             recede_buffer *words, recede_rect room, const recede_style *style)
{
    const char *text = recede_buffer_string(words);
    recede_rect taken = recede_type_set(page->type, page->cr, text, room, style);
    sheet->failed |= words->failed;
    recede_buffer_free(words);
    return taken;
}

void recede_skies_light_line(recede_skies_sheet *sheet, recede_buffer *words, size_t plan)
{
    const recede_scene *scene = recede_plan_scene(sheet->skies->plan[plan]);
    recede_words_light_line(words, &scene->air, &scene->sky);
}

recede_rect recede_skies_picture(recede_skies_sheet *sheet, const recede_page *page, size_t plan,
                                 recede_rect room)
{
    const recede_scene *scene = recede_plan_scene(sheet->skies->plan[plan]);
    double aspect = fmin(fmax(scene->paper_width_m / scene->paper_height_m, 0.4), 4);
    double w = fmin(room.w - 2 * mount_mm, (room.h - 2 * mount_mm) * aspect);
    recede_picture_options options = {0};
    recede_rect rect = recede_page_snap(page, (recede_rect){room.x + mount_mm, room.y + mount_mm, w, w / aspect},
                                        &options.width, &options.height);
    recede_rect mount = {rect.x - mount_mm, rect.y - mount_mm, rect.w + 2 * mount_mm, rect.h + 2 * mount_mm};
    unsigned char *rgb = recede_allocate_array(sheet->allocator, options.width * options.height, 3);
    int failed = !rgb || recede_picture_paint(sheet->skies->plan[plan], &options, rgb, 3 * options.width,
                                              sheet->allocator, NULL);
    recede_page_fill(page, mount, recede_mount_tone);
    recede_page_frame(page, mount, 0.15);
    if (!failed)
        failed = recede_page_picture(page, rect, rgb, options.width, options.height);
    recede_release(sheet->allocator, rgb);
    if (failed)
        mount.h = -1;
    return mount;
}

static int lay(void *content, recede_type *type, size_t *pages)
{
    recede_skies_sheet *sheet = content;
    if (recede_skies_lay_changes(sheet, type))
        return -1;
    *pages = 1 + sheet->change_pages;
    return sheet->failed ? -1 : 0;
}

static int draw(void *content, const recede_page *page, size_t index)
{
    recede_skies_sheet *sheet = content;
    recede_page_foot(page, recede_plan_scene(sheet->skies->plan[0])->title, index + 1, 1 + sheet->change_pages);
    int failed = index == 0 ? recede_skies_draw_pictures(sheet, page)
                            : recede_skies_draw_changes(sheet, page, index - 1);
    return failed || sheet->failed ? -1 : 0;
}

static recede_skies_sheet *sheet_new(const recede_skies *skies, const recede_allocator *allocator)
{
    recede_skies_sheet *sheet = recede_allocate_array(allocator, 1, sizeof *sheet);
    if (sheet) {
        memset(sheet, 0, sizeof *sheet);
        sheet->skies = skies;
        sheet->allocator = allocator;
    }
    return sheet;
}

static void sheet_free(recede_skies_sheet *sheet)
{
    recede_release(sheet->allocator, sheet->blocks);
    recede_release(sheet->allocator, sheet);
}

recede_sheet_result recede_skies_pixels(const recede_skies *skies,
                                        const recede_sheet_options *options,
                                        recede_sheet_pixels *out)
{
    memset(out, 0, sizeof *out);
    recede_skies_sheet *content = sheet_new(skies, options->allocator);
    if (!content)
        return RECEDE_SHEET_NO_MEMORY;
    const recede_sheet sheet = {content, lay, draw, ""};
    recede_sheet_result result = recede_sheet_to_pixels(&sheet, options, out);
    sheet_free(content);
    return result;
}

recede_sheet_result recede_skies_pdf(const recede_skies *skies, const recede_sheet_options *options,
                                     recede_buffer *out)
{
    recede_skies_sheet *content = sheet_new(skies, options->allocator);
    if (!content)
        return RECEDE_SHEET_NO_MEMORY;
    const recede_sheet sheet = {content, lay, draw, recede_plan_scene(skies->plan[0])->title};
    recede_sheet_result result = recede_sheet_to_pdf(&sheet, options, out);
    sheet_free(content);
    return result;
}

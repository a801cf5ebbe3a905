/* What the pages of the skies share. */
#include "draw/skies_parts.h"

#include "colour/memory.h"
#include "text/words_skies.h"

#include <math.h>

static const double mount_mm = 1.6;

recede_rect recede_skies_set(recede_skies_sheet *sheet, const recede_page *page,
                             recede_buffer *words, recede_rect room, const recede_style *style)
{
    return recede_page_set(page, words, room, style, &sheet->failed);
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
    recede_rect inside = {room.x + mount_mm, room.y + mount_mm, w, w / aspect};
    recede_rect rect = recede_page_snap(page, inside, &options.width, &options.height);
    recede_rect mount = {rect.x - mount_mm, rect.y - mount_mm, rect.w + 2 * mount_mm,
                         rect.h + 2 * mount_mm};
    unsigned char *rgb = recede_allocate_array(sheet->allocator, options.width * options.height, 3);
    int failed = !rgb || recede_picture_paint(sheet->skies->plan[plan], &options, rgb,
                                              3 * options.width, sheet->allocator, NULL);
    if (!failed)
        failed = recede_page_mounted(page, rect, mount_mm, rgb, options.width, options.height);
    recede_release(sheet->allocator, rgb);
    if (failed)
        mount.h = -1;
    return mount;
}

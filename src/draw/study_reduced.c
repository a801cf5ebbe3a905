/* The reduced study: the picture in a few greys, as one blocks it in. */
#include "colour/memory.h"
#include "draw/study_parts.h"

/* Its edges are hard, so it is painted larger and averaged. */
enum { FINER = 3 };

static void average(const unsigned char *fine, size_t width, size_t height, unsigned char *rgb)
{
    size_t row = (size_t)3 * FINER * width;
    for (size_t y = 0; y < height; y++) {
        for (size_t x = 0; x < width; x++) {
            const unsigned char *block = fine + FINER * (y * row + 3 * x);
            unsigned sum = FINER * FINER / 2;
            for (size_t i = 0; i < (size_t)FINER * FINER; i++)
                sum += block[i / FINER * row + 3 * (i % FINER)];
            for (int c = 0; c < 3; c++)
                *rgb++ = (unsigned char)(sum / (FINER * FINER));
        }
    }
}

static int place(recede_study *study, const recede_page *page, recede_rect room,
                 const recede_groups *groups)
{
    size_t width, height;
    recede_rect rect = recede_page_snap(page, room, &width, &height);
    recede_picture_options options = {FINER * width, FINER * height, 1, 0, groups};
    unsigned char *fine = recede_allocate_array(study->allocator, options.width * options.height, 3);
    unsigned char *rgb = recede_allocate_array(study->allocator, width * height, 3);
    int failed = !fine || !rgb ||
                 recede_picture_paint(study->plan, &options, fine, 3 * options.width,
                                      study->allocator, NULL);
    if (!failed) {
        average(fine, width, height, rgb);
        failed = recede_page_mounted(page, rect, RECEDE_STUDY_MOUNT_MM, rgb, width, height);
    }
    recede_release(study->allocator, fine);
    recede_release(study->allocator, rgb);
    return failed ? -1 : 0;
}

/* A grey with its value under it. */
static void set_step(recede_study *study, const recede_page *page, double value, recede_rect room)
{
    double y = recede_y_of_value(value), bar_mm = 2.2;
    recede_xyz white = recede_white();
    recede_srgb grey = recede_colour_of_xyz((recede_xyz){white.x * y, y, white.z * y}).srgb;
    recede_style style = recede_style_body;
    recede_buffer words;
    style.size_pt = style.least_pt = 7;
    style.most_lines = 1;
    style.align = RECEDE_CENTRE;
    recede_page_fill(page, (recede_rect){room.x, room.y, room.w, bar_mm}, grey);
    recede_buffer_start(&words, study->allocator);
    recede_study_value(&words, value);
    recede_study_set(study, page, &words,
                     (recede_rect){room.x, room.y + bar_mm + 0.2, room.w, room.h - bar_mm}, &style);
}

int recede_study_draw_reduced(recede_study *study, const recede_page *page, recede_rect picture,
                              recede_rect steps)
{
    recede_grouping grouping;
    const recede_groups *groups = &grouping.groups;
    if (recede_picture_group(study->plan, 0, &grouping, study->allocator, NULL) ||
        place(study, page, picture, groups))
        return -1;
    double width = steps.w / groups->count;
    for (int i = 0; i < groups->count; i++)
        set_step(study, page, groups->value[i],
                 (recede_rect){steps.x + width * i, steps.y, width, steps.h});
    return 0;
}

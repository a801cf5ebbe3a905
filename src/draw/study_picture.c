/* The first page: the picture, and its greys with their values. */
#include "draw/study_parts.h"

#include "colour/memory.h"
#include "text/words.h"
#include "text/words_media.h"

#include <math.h>

static const double top_mm = 37, bottom_mm = 188, mount_mm = RECEDE_STUDY_MOUNT_MM;
static const double list_head_mm = 8.5, least_pitch_mm = 2.85;
static const double between_mm = 2 * 2.4 + 3, steps_mm = 7; /* beside and under the reduced study */

static const char guide[] = "The picture is made of the colours that the mixes give. Printed or on "
                            "a screen they are only a "
                            "guide: paints of one name differ from maker to maker. ";

static void put_guide(recede_study *study, const recede_page *page, recede_rect room)
{
    const recede_scene *scene = recede_plan_scene(study->plan);
    recede_buffer words;
    recede_buffer_start(&words, study->allocator);
    recede_buffer_format(&words, "%s%s.", guide, recede_trade_of(scene->medium)->scrap);
    recede_study_set(study, page, &words, room, &recede_style_small);
}

static int place_picture(recede_study *study, const recede_page *page, recede_rect room, int greys)
{
    recede_picture_options options = {0, 0, greys, 0, NULL};
    recede_rect rect = recede_page_snap(page, room, &options.width, &options.height);
    unsigned char *rgb = recede_allocate_array(study->allocator, options.width * options.height, 3);
    if (!rgb)
        return -1;
    int failed =
        recede_picture_paint(study->plan, &options, rgb, 3 * options.width, study->allocator, NULL);
    if (!failed)
        failed = recede_page_mounted(page, rect, mount_mm, rgb, options.width, options.height);
    recede_release(study->allocator, rgb);
    return failed ? -1 : 0;
}

static void add_sheet_size(recede_buffer *words, const recede_scene *scene)
{
    recede_buffer_format(words, "%s, %zu paints, on ",
                         recede_words_medium(scene->medium), scene->paint_count);
    recede_buffer_number(words, 100 * scene->paper_width_m, 1);
    recede_buffer_text(words, " x ");
    recede_buffer_number(words, 100 * scene->paper_height_m, 1);
    recede_buffer_text(words, " cm");
}

static void set_head(recede_study *study, const recede_page *page)
{
    const recede_scene *scene = recede_plan_scene(study->plan);
    double x = recede_page_margin_mm, w = recede_page_width_mm - 2 * x;
    recede_style line = recede_style_body;
    recede_buffer words;
    line.most_lines = 1;
    recede_type_set(page->type, page->cr, scene->title, (recede_rect){x, 10.5, w, 11},
                    &recede_style_title);
    recede_buffer_start(&words, study->allocator);
    recede_words_air_and_light(&words, scene);
    recede_study_set(study, page, &words, (recede_rect){x, 22.5, w, 5}, &line);
    recede_buffer_start(&words, study->allocator);
    add_sheet_size(&words, scene);
    recede_study_set(study, page, &words, (recede_rect){x, 27.3, w, 5}, &line);
}

/* One line of the list of values: a name, and for each side a grey and its
 * number. */
typedef struct value_line {
    const char *name;
    const recede_wash *lit, *shadow;
} value_line;

static value_line line_at(const recede_study *study, size_t i)
{
    const recede_side *sky = recede_plan_sky(study->plan);
    if (i == 0)
        return (value_line){sky->graded ? "top of the sky, horizon" : "sky", &sky->crest,
                            sky->graded ? &sky->base : NULL};
    const recede_planned *planned = recede_plan_at(study->plan, i - 1);
    return (value_line){recede_plan_scene(study->plan)->planes[planned->plane].name,
                        &planned->lit.crest, &planned->shadow.crest};
}

/* Where things stand, by the shape of the painter's sheet: the greys, the
 * reduced study and the list of values beside the picture, or under one that is
 * very wide. */
typedef struct places {
    recede_rect picture, greys, reduced, steps, values;
} places;

/* The reduced study as large as the greys and to their right, its values under
 * it. */
static void place_reduced(places *p)
{
    p->reduced = p->greys;
    p->reduced.x += p->greys.w + between_mm;
    p->steps = (recede_rect){p->reduced.x - mount_mm, p->reduced.y + p->reduced.h + mount_mm + 1,
                             p->reduced.w + 2 * mount_mm, steps_mm - 1};
}

static places beside(double aspect, size_t lines)
{
    double left = recede_page_margin_mm + mount_mm,
           right = recede_page_width_mm - recede_page_margin_mm;
    double top = top_mm + mount_mm, w = fmin(180, (bottom_mm - mount_mm - top) * aspect);
    double x = left + w + 2 * mount_mm + 6, wide = (right - mount_mm - x - between_mm) / 2;
    double listed = list_head_mm + fmin((double)lines, (double)(lines + 1) / 2) * least_pitch_mm;
    double high = fmin(62, fmax(20, bottom_mm - top - mount_mm - steps_mm - 4 - listed));
    double gw = fmin(wide, high * aspect), gh = gw / aspect;
    double below = top + gh + mount_mm + steps_mm + 4;
    places p;
    p.picture = (recede_rect){left, top, w, w / aspect};
    p.greys = (recede_rect){x, top, gw, gh};
    place_reduced(&p);
    p.values =
        (recede_rect){x - mount_mm, below, fmin(right - x + mount_mm, 110), bottom_mm - below};
    return p;
}

static places beneath(double aspect, size_t lines)
{
    double left = recede_page_margin_mm + mount_mm,
           right = recede_page_width_mm - recede_page_margin_mm;
    double top = top_mm + mount_mm, w = right - mount_mm - left, h = w / aspect;
    double y = top + h + 2 * mount_mm + 5, high = bottom_mm - mount_mm - y;
    double gw = fmin(w * (lines > 24 ? 0.15 : 0.28), (high - steps_mm) * aspect);
    double x = left + 2 * gw + between_mm + mount_mm + 6;
    places p;
    p.picture = (recede_rect){left, top, w, h};
    p.greys = (recede_rect){left, y, gw, gw / aspect};
    place_reduced(&p);
    p.values = (recede_rect){x, y - mount_mm, lines > 24 ? right - x : fmin(right - x, 110),
                             high + mount_mm};
    return p;
}

static places find_places(const recede_study *study)
{
    const recede_scene *scene = recede_plan_scene(study->plan);
    double aspect = fmin(fmax(scene->paper_width_m / scene->paper_height_m, 0.4), 4);
    size_t lines = recede_plan_count(study->plan) + 1;
    return aspect > 2.3 ? beneath(aspect, lines) : beside(aspect, lines);
}

/* The list of values: in as few columns and as large as the room allows. */
typedef struct list {
    recede_rect room;
    size_t count, columns, rows;
    double pitch, width;
    recede_style style;
} list;

static list list_of(const recede_study *study, recede_rect room)
{
    list l;
    l.room = (recede_rect){room.x, room.y + list_head_mm, room.w, room.h - list_head_mm};
    l.count = recede_plan_count(study->plan) + 1;
    size_t fit = (size_t)fmax(1, floor(l.room.h / least_pitch_mm));
    l.columns = (l.count + fit - 1) / fit;
    l.rows = (l.count + l.columns - 1) / l.columns;
    l.pitch = fmin(5.6, l.room.h / (double)l.rows);
    l.width = room.w / (double)l.columns;
    l.style = recede_style_body;
    l.style.size_pt = fmax(7, fmin(9.5, l.pitch / 0.4234));
    l.style.least_pt = fmax(7, l.style.size_pt - 1);
    l.style.most_lines = 1;
    return l;
}

static void set_value(recede_study *study, const recede_page *page, const recede_wash *wash,
                      recede_rect room, const recede_style *style)
{
    double y = recede_y_of_value(wash->recipe.colour.value), side = room.h * 0.8;
    recede_xyz white = recede_white();
    recede_srgb grey = recede_colour_of_xyz((recede_xyz){white.x * y, y, white.z * y}).srgb;
    recede_buffer words;
    recede_page_fill(page, (recede_rect){room.x, room.y + 0.1 * room.h, side * 1.3, side}, grey);
    recede_buffer_start(&words, study->allocator);
    recede_study_value(&words, wash->recipe.colour.value);
    recede_rect number = {room.x + side * 1.3 + 0.9, room.y, room.w - side * 1.3 - 0.9, room.h};
    recede_study_set(study, page, &words, recede_type_middle(page->type, number, style), style);
}

static void set_values(recede_study *study, const recede_page *page, const list *l)
{
    double number = l->style.size_pt * 1.36;
    for (size_t i = 0; i < l->count; i++) {
        value_line line = line_at(study, i);
        size_t column = i / l->rows, row = i % l->rows;
        double x = l->room.x + l->width * (double)column;
        double y = l->room.y + l->pitch * (double)row;
        double end = x + l->width - (column + 1 < l->columns ? 2 : 0);
        recede_rect name = {x, y, end - x - 2 * number - 1, l->pitch};
        recede_type_set(page->type, page->cr, line.name,
                        recede_type_middle(page->type, name, &l->style), &l->style);
        set_value(study, page, line.lit, (recede_rect){end - 2 * number, y, number, l->pitch},
                  &l->style);
        if (line.shadow)
            set_value(study, page, line.shadow, (recede_rect){end - number, y, number, l->pitch},
                      &l->style);
    }
}

/* What to know beforehand, under the list; measured only where page is NULL.
 * Returns where it ends. */
static double put_warnings(recede_study *study, recede_type *type, const recede_page *page,
                           const list *l)
{
    recede_style style = recede_style_body;
    double x = l->room.x, w = l->room.w, y = l->room.y + (double)l->rows * l->pitch + 4;
    style.least_pt = style.size_pt = 8.5;
    if (page)
        recede_type_set(type, page->cr, "Before you start", (recede_rect){x, y, w, 5},
                        &recede_style_heading);
    y += 6.5;
    for (size_t i = 0; i < recede_plan_warning_count(study->plan); i++) {
        recede_buffer words;
        recede_buffer_start(&words, study->allocator);
        recede_words_warning(&words, recede_plan_scene(study->plan),
                             recede_plan_warning(study->plan, i));
        double high = recede_type_height(type, recede_buffer_string(&words), w, &style);
        if (page)
            recede_type_set(type, page->cr, recede_buffer_string(&words),
                            (recede_rect){x, y, w, high + 0.05}, &style);
        study->failed |= words.failed;
        recede_buffer_free(&words);
        y += high + 1.5;
    }
    return y;
}

void recede_study_lay_picture(recede_study *study, recede_type *type)
{
    list l = list_of(study, find_places(study).values);
    study->warned_first = put_warnings(study, type, NULL, &l) <= bottom_mm + 1;
}

int recede_study_draw_picture(recede_study *study, const recede_page *page)
{
    places p = find_places(study);
    list l = list_of(study, p.values);
    set_head(study, page);
    if (place_picture(study, page, p.picture, 0) || place_picture(study, page, p.greys, 1) ||
        recede_study_draw_reduced(study, page, p.reduced, p.steps))
        return -1;
    recede_type_set(
        page->type, page->cr,
        "The same in greys and in a few values only, and the Munsell values of the mixes on the "
        "lit and the shadow side",
        (recede_rect){p.values.x, p.values.y, p.values.w, list_head_mm - 1}, &recede_style_small);
    set_values(study, page, &l);
    if (study->warned_first && recede_plan_warning_count(study->plan) > 0)
        put_warnings(study, page->type, page, &l);
    put_guide(study, page,
              (recede_rect){recede_page_margin_mm, 190.5,
                            recede_page_width_mm - 2 * recede_page_margin_mm, 7.5});
    return study->failed ? -1 : 0;
}

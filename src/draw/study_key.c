/* The key: the mixes of sky and planes, far to near. */
#include "draw/study_parts.h"

#include "text/words.h"
#include "text/words_let_down.h"
#include "text/words_media.h"

#include <math.h>

enum { MOST_PLANES_A_PAGE = 6 };

static const double top_mm = 26.5, bottom_mm = 198.5, gap_mm = 2.2;
static const double plane_width_mm = 40, wash_width_mm = 110, between_mm = 3.5;

static const char legend[] = "The middle of each dab is the mix, its rim the colour wanted: where "
                             "you see no rim, they agree. ";

static double wash_x(int right)
{
    return recede_page_margin_mm + plane_width_mm + between_mm
           + (right ? wash_width_mm + between_mm : 0);
}

static recede_style name_style(void)
{
    recede_style style = recede_style_recipe;
    style.least_pt = 9;
    style.most_lines = 3;
    style.is_recipe = 0;
    return style;
}

static recede_key_row *add_row(recede_study *study, const recede_planned *planned)
{
    recede_key_row *row = &study->rows[study->row_count++];
    row->planned = planned;
    row->name = planned ? recede_plan_scene(study->plan)->planes[planned->plane].name : "sky";
    return row;
}

static void add_sky(recede_study *study)
{
    const recede_side *sky = recede_plan_sky(study->plan);
    recede_key_row *row = add_row(study, NULL);
    row->left_side = row->right_side = sky;
    row->left_label = sky->graded ? "top of the sky" : "all over";
    row->left = &sky->crest;
    row->right_label = "at the horizon";
    row->right = sky->graded ? &sky->base : NULL;
}

static void add_plane(recede_study *study, const recede_planned *planned)
{
    const recede_side *lit = &planned->lit, *shadow = &planned->shadow;
    recede_key_row *row = add_row(study, planned);
    row->left_side = lit;
    row->right_side = shadow;
    row->left = &lit->crest;
    row->right = &shadow->crest;
    row->left_label = lit->graded ? "lit side, at its crest" : "lit side";
    row->right_label = shadow->graded ? "shadow side, at its crest" : "shadow side";
    if (!lit->graded && !shadow->graded)
        return;
    row = add_row(study, planned);
    row->foot = 1;
    row->left_side = lit;
    row->right_side = shadow;
    row->left = lit->graded ? &lit->base : NULL;
    row->right = shadow->graded ? &shadow->base : NULL;
    row->left_label = "lit side, at its foot";
    row->right_label = "shadow side, at its foot";
}

/* How a sky that is not of one colour is painted. */
static const char *words_of_grading(const recede_study *study, const recede_side *side)
{
    recede_medium medium = recede_palette_medium(recede_plan_palette(study->plan));
    return recede_trade_of(medium)->graded[side->two_washes != 0];
}

/* What is said of a plane beneath its name: how far, its edge, how it stands
 * against what lies behind it. */
static void describe(recede_study *study, const recede_key_row *row, recede_buffer *distance,
                     recede_buffer *more)
{
    recede_buffer_start(distance, study->allocator);
    recede_buffer_start(more, study->allocator);
    if (!row->planned) {
        if (row->left_side->graded)
            recede_buffer_text(more, words_of_grading(study, row->left_side));
        return;
    }
    if (row->foot) {
        recede_buffer_text(more, "its foot, as the crest runs down into it");
        return;
    }
    recede_words_distance(distance,
                          recede_plan_scene(study->plan)->planes[row->planned->plane].distance_m);
    double step = row->planned->value_step;
    recede_buffer_format(more, "%s edge; ", recede_words_edge(row->planned->edge));
    if (fabs(step) < 0.05) {
        recede_buffer_text(more, "its lit side has the value of what lies behind");
        return;
    }
    recede_buffer_text(more, "its lit side is ");
    recede_study_value(more, fabs(step));
    recede_buffer_format(more, " in value %s than what lies behind",
                         step < 0 ? "lighter" : "darker");
}

static double head_height(recede_study *study, recede_type *type, const recede_key_row *row)
{
    recede_style name = name_style();
    recede_buffer distance, more;
    describe(study, row, &distance, &more);
    double height = recede_type_height(type, row->name, plane_width_mm, &name) + 5
                    + recede_type_height(type, recede_buffer_string(&more), plane_width_mm,
                                         &recede_style_small);
    study->failed |= distance.failed | more.failed;
    recede_buffer_free(&distance);
    recede_buffer_free(&more);
    return height;
}

static double row_height(recede_study *study, recede_type *type, const recede_key_row *row)
{
    double height = head_height(study, type, row);
    if (row->left)
        height = fmax(height, recede_study_wash_height(study, type, row->left_side, row->left,
                                                       wash_width_mm));
    if (row->right)
        height = fmax(height, recede_study_wash_height(study, type, row->right_side, row->right,
                                                       wash_width_mm));
    return height;
}

/* Rows go down the page until it is full, holds so many, or six planes. Returns
 * how many pages that makes. */
static size_t fill_pages(recede_study *study, size_t most_rows)
{
    size_t planes = 0, rows = 0, page = 0;
    double y = top_mm;
    for (size_t i = 0; i < study->row_count; i++) {
        recede_key_row *row = &study->rows[i];
        int starts = row->planned && !row->foot;
        if (y + row->height > bottom_mm || rows == most_rows
            || (starts && planes == MOST_PLANES_A_PAGE)) {
            page++;
            y = top_mm;
            planes = rows = 0;
        }
        planes += row->planned && (starts || planes == 0);
        rows++;
        row->page = page;
        row->y = y;
        y += row->height + gap_mm;
    }
    return page + 1;
}

/* Room that a page has left is shared between its rows. */
static void spread(recede_study *study, size_t page)
{
    size_t first = 0;
    while (study->rows[first].page != page)
        first++;
    size_t end = first;
    while (end < study->row_count && study->rows[end].page == page)
        end++;
    const recede_key_row *last = &study->rows[end - 1];
    double left = bottom_mm - last->y - last->height, most = 7;
    double each = end - first > 1 ? fmin(most, left / (double)(end - first - 1)) : 0;
    for (size_t i = first; i < end; i++)
        study->rows[i].y += each * (double)(i - first);
}

void recede_study_lay_key(recede_study *study, recede_type *type)
{
    study->row_count = 0;
    add_sky(study);
    for (size_t i = 0; i < recede_plan_count(study->plan); i++)
        add_plane(study, recede_plan_at(study->plan, i));
    for (size_t i = 0; i < study->row_count; i++)
        study->rows[i].height = row_height(study, type, &study->rows[i]);
    size_t least = fill_pages(study, study->row_count);
    size_t even = (study->row_count + least - 1) / least;
    while (fill_pages(study, even) > least)
        even++;
    study->key_pages = least;
    for (size_t page = 0; page < least; page++)
        spread(study, page);
}

static void draw_head(recede_study *study, const recede_page *page, const recede_key_row *row)
{
    recede_style name = name_style(), line = recede_style_body;
    recede_buffer distance, more;
    recede_rect room = {recede_page_margin_mm, row->y, plane_width_mm, row->height - 4.5};
    line.most_lines = 1;
    describe(study, row, &distance, &more);
    recede_rect taken = recede_type_set(page->type, page->cr, row->name, room, &name);
    double y = taken.y + taken.h + 0.4, left = row->y + row->height - y;
    recede_rect said =
        recede_study_set(study, page, &distance, (recede_rect){room.x, y, room.w, 4.5}, &line);
    y = row->planned && !row->foot ? said.y + said.h + 0.4 : y;
    recede_study_set(study, page, &more, (recede_rect){room.x, y, room.w, fmax(left - 5, 3.5)},
                     &recede_style_small);
}

static void draw_row(recede_study *study, const recede_page *page, const recede_key_row *row,
                     double above)
{
    if (row->y > top_mm)
        recede_page_rule(page, recede_page_margin_mm, row->y - above,
                         recede_page_width_mm - 2 * recede_page_margin_mm);
    draw_head(study, page, row);
    if (row->left)
        recede_study_draw_wash(study, page, row->left_side, row->left, row->left_label,
                               (recede_rect){wash_x(0), row->y, wash_width_mm, row->height});
    if (row->right)
        recede_study_draw_wash(study, page, row->right_side, row->right, row->right_label,
                               (recede_rect){wash_x(1), row->y, wash_width_mm, row->height});
}

static void put_legend(recede_study *study, const recede_page *page, recede_rect room)
{
    const recede_palette *palette = recede_plan_palette(study->plan);
    recede_buffer words;
    recede_buffer_start(&words, study->allocator);
    recede_buffer_format(&words, "%s%s%s", legend,
                         recede_trade_of(recede_palette_medium(palette))->box_legend,
                         recede_words_let_down_note(palette));
    recede_study_set(study, page, &words, room, &recede_style_small);
}

void recede_study_draw_key(recede_study *study, const recede_page *page, size_t index)
{
    double x = recede_page_margin_mm, w = recede_page_width_mm - 2 * x;
    recede_type_set(page->type, page->cr, "The mixes, from far to near", (recede_rect){x, 11, w, 6},
                    &recede_style_heading);
    put_legend(study, page, (recede_rect){x, 18, w, 4});
    recede_page_rule(page, x, 24, w);
    for (size_t i = 0; i < study->row_count; i++) {
        const recede_key_row *row = &study->rows[i];
        double gap = i > 0 ? row->y - row[-1].y - row[-1].height : 0;
        if (row->page == index)
            draw_row(study, page, row, 0.6 * gap);
    }
}

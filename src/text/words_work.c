#include "text/words_work.h"

#include "plan/work_needed.h"
#include "text/words.h"
#include "text/words_amounts.h"
#include "text/words_let_down.h"
#include "text/words_media.h"
#include "text/words_wet.h"

static const double far_off = 10;

const char *recede_words_step_kind(recede_step_kind kind)
{
    static const char *const words[] = {"bare", "start", "washed", "added"};
    return words[kind];
}

const char *recede_words_paper_state(recede_paper_state paper)
{
    static const char *const words[] = {"dry", "damp", "wet"};
    return words[paper];
}

/* ---- which wash */

static const char *side_of(const recede_work_step *step)
{
    return step->shadow ? "shadow" : "lit";
}

void recede_words_step_wash(recede_buffer *out, const recede_scene *scene,
                            const recede_work_step *step)
{
    if (step->plane < 0) {
        recede_buffer_text(out, !step->graded ? "the sky"
                                : step->base  ? "the sky at the horizon"
                                              : "the top of the sky");
        return;
    }
    if (step->graded)
        recede_buffer_text(out, step->base ? "the foot of " : "the crest of ");
    recede_buffer_format(out, "the %s side of %s", side_of(step),
                         scene->planes[step->plane].name);
}

void recede_words_step_label(recede_buffer *out, const recede_scene *scene,
                             const recede_work_step *step)
{
    if (step->plane < 0) {
        recede_buffer_text(out, !step->graded ? "sky"
                                : step->base  ? "sky, horizon" : "top of the sky");
        return;
    }
    recede_buffer_format(out, "%s, %s%s", scene->planes[step->plane].name, side_of(step),
                         !step->graded ? "" : step->base ? " foot" : " crest");
}

/* ---- amounts */

void recede_words_ml(recede_buffer *out, double ml)
{
    recede_buffer_number(out, ml, ml < 0.095 ? 2 : ml < 9.95 ? 1 : 0);
    recede_buffer_text(out, " ml");
}

/* "A, B and C", paints in the order of the recipe, then water. */
static void add_poured(recede_buffer *out, const recede_palette *palette,
                       const recede_work_step *step)
{
    int said = 0;
    for (int i = 0; i <= step->mix.count; i++) {
        int water = i == step->mix.count;
        double ml = water ? step->water_ml : step->paint_ml[i];
        if (!(ml > 0))
            continue;
        recede_buffer_text(out, !said ? "" : said + 1 < step->additions ? ", " : " and ");
        if (!water) {
            recede_words_paint_amount(
                out, ml, recede_palette_paint(palette, (size_t)step->mix.paint[i])->name);
        } else {
            recede_words_drops(out, ml);
            recede_buffer_text(out, " of water");
        }
        said++;
    }
}

/* Round the well's number and the amounts, by medium and kind. */
typedef struct {
    const char *before, *between, *after;
} phrase;

static const phrase phrases[2][4] = {
    {{"", "", ""}, {"On clean place ", " mix ", ""}, {"Wipe place ", " clean and mix ", " there"},
     {"To what is left on place ", " add ", ""}},
    {{"", "", ""}, {"In clean well ", " mix ", ""}, {"Wash well ", " out and mix ", " in it"},
     {"To what is left in well ", " add ", ""}},
};

void recede_words_step_mix(recede_buffer *out, const recede_palette *palette,
                           const recede_work_step *step)
{
    int water = recede_medium_takes_water(recede_palette_medium(palette));
    const phrase *own = &phrases[water][step->kind];
    if (step->kind == RECEDE_STEP_BARE) {
        recede_buffer_text(out, step->ground == RECEDE_ON_LIT
                                    ? "Paint nothing: the dry lit wash will do"
                                : water ? "Paint nothing: the paper stays bare"
                                        : "Paint nothing: the ground stays bare");
        return;
    }
    if (!step->additions) {
        recede_buffer_format(out, "Take what is left %s %d as it is",
                             recede_trade_of(recede_palette_medium(palette))->at_well,
                             step->well + 1);
        return;
    }
    recede_buffer_format(out, "%s%d%s", own->before, step->well + 1, own->between);
    add_poured(out, palette, step);
    recede_buffer_text(out, own->after);
}

/* ---- paper */

/* Both ends of a graded wash in one go: the other mix must be there already. */
static int needs_the_next(const recede_work *work, size_t index)
{
    const recede_work_step *next = &work->steps[index + 1];
    return index + 1 < work->count && next->second && next->paper == RECEDE_PAPER_WET &&
           next->after == (int)index && next->well != work->steps[index].well;
}

static void add_wait(recede_buffer *out, const recede_scene *scene, const recede_work *work,
                     const recede_work_step *step)
{
    static const char *const first[] = {"on dry paper", "damp the paper first",
                                        "wet the paper first"};
    static const char *const before[] = {"wait until ", "wait until ", "at once, while "};
    static const char *const after[] = {" is dry", " has lost its shine", " is wet"};
    if (step->after < 0) {
        recede_buffer_text(out, first[step->paper]);
        return;
    }
    recede_buffer_text(out, before[step->paper]);
    recede_words_step_wash(out, scene, &work->steps[step->after]);
    recede_buffer_text(out, after[step->paper]);
}

void recede_words_step_paper(recede_buffer *out, const recede_plan *plan,
                             const recede_work *work, size_t index)
{
    static const char *const opaque[] = {"a clean edge", "soften the edge", "lose the edge"};
    const recede_work_step *step = &work->steps[index];
    if (step->kind == RECEDE_STEP_BARE)
        return;
    if (!recede_medium_takes_water(recede_palette_medium(recede_plan_palette(plan)))) {
        recede_buffer_text(out, opaque[step->paper]);
        return;
    }
    add_wait(out, recede_plan_scene(plan), work, step);
    if (needs_the_next(work, index))
        recede_buffer_text(out, "; have the next mix ready");
}

void recede_words_step_rest(recede_buffer *out, const recede_scene *scene,
                            const recede_work *work, size_t index)
{
    for (size_t i = index + 1; i < work->count; i++)
        if (work->steps[i].kind == RECEDE_STEP_ADDED && work->steps[i].before == (int)index) {
            recede_buffer_text(out, "the rest is for ");
            recede_words_step_wash(out, scene, &work->steps[i]);
        }
}

/* ---- far off */

void recede_words_step_far(recede_buffer *out, const recede_work_step *step)
{
    if (step->delta_e <= far_off)
        return;
    recede_buffer_text(out, "mind: ");
    recede_buffer_fixed(out, step->delta_e, 0);
    recede_buffer_text(out, " off, another colour than the one wanted");
    if (step->planned_delta_e > step->delta_e - 1) {
        recede_buffer_text(out, ", and these paints come no nearer");
        return;
    }
    recede_buffer_text(out, "; mixed by itself, as the study has it, it is ");
    recede_buffer_fixed(out, step->planned_delta_e, 1);
    recede_buffer_text(out, " off");
}

/* ---- wet */

/* The mix of the lit side that a step is laid over; NULL: it lies on the paper. */
static const recede_mix *mix_under(const recede_work *work, const recede_work_step *step)
{
    const recede_mix *found = NULL;
    for (size_t i = 0; step->ground == RECEDE_ON_LIT && i < work->count; i++) {
        const recede_work_step *lit = &work->steps[i];
        if (lit->plane == step->plane && !lit->shadow && (!lit->graded || lit->base == step->base))
            found = &lit->mix;
    }
    return found;
}

const char *recede_words_step_wet(const recede_palette *palette, const recede_work *work,
                                  size_t index)
{
    const recede_work_step *step = &work->steps[index];
    return recede_words_wet(
        recede_wet_look_of(palette, &step->mix, mix_under(work, step)).darker);
}

/* ---- all of it */

static void end_sentence(recede_buffer *out, const recede_buffer *words)
{
    if (words->size)
        recede_buffer_format(out, ". %c%s", words->bytes[0] - 'a' + 'A', words->bytes + 1);
    out->failed |= words->failed;
}

static void add_volume(recede_buffer *out, const recede_scene *scene, const recede_work *work,
                       size_t index)
{
    const recede_work_step *step = &work->steps[index];
    recede_buffer rest;
    recede_buffer_start(&rest, out->allocator);
    recede_buffer_text(out, ", ");
    recede_words_ml(out, step->mixed_ml);
    recede_buffer_text(out, ", of which you need ");
    recede_words_ml(out, step->need_ml);
    recede_words_step_rest(&rest, scene, work, index);
    if (rest.size)
        recede_buffer_format(out, "; %s", rest.bytes);
    out->failed |= rest.failed;
    recede_buffer_free(&rest);
}

void recede_words_step(recede_buffer *out, const recede_plan *plan, const recede_work *work,
                       size_t index)
{
    const recede_scene *scene = recede_plan_scene(plan);
    const recede_work_step *step = &work->steps[index];
    recede_buffer paper;
    recede_words_step_mix(out, recede_plan_palette(plan), step);
    recede_buffer_text(out, ": that is ");
    recede_words_step_wash(out, scene, step);
    if (step->kind != RECEDE_STEP_BARE)
        add_volume(out, scene, work, index);
    recede_buffer_start(&paper, out->allocator);
    recede_buffer_text(&paper, recede_words_step_wet(recede_plan_palette(plan), work, index));
    end_sentence(out, &paper);
    recede_buffer_free(&paper);
    recede_words_step_paper(&paper, plan, work, index);
    end_sentence(out, &paper);
    recede_buffer_free(&paper);
    recede_words_step_far(&paper, step);
    end_sentence(out, &paper);
    recede_buffer_free(&paper);
    recede_buffer_text(out, ".");
}

static void add_washings(recede_buffer *out, const recede_trade *trade, int washings)
{
    static const char *const times[] = {"", "once", "twice"};
    if (!washings) {
        recede_buffer_format(out, " and no %s %s", trade->well, trade->to_wash);
        return;
    }
    recede_buffer_format(out, " and a %s %s ", trade->well, trade->washed);
    if (washings < 3)
        recede_buffer_text(out, times[washings]);
    else
        recede_buffer_format(out, "%d times", washings);
}

/* What to bring; pale paints are made of it. */
static void add_tubes(recede_buffer *out, const recede_palette *palette, const recede_work *work)
{
    recede_work_count count =
        recede_work_count_of(palette, recede_work_needed(palette, recede_work_in_use(work)));
    recede_buffer_format(out, " It takes %d %s", count.tubes, count.tubes == 1 ? "tube" : "tubes");
    if (count.let_down)
        recede_buffer_format(out, "; %d %s let down from them beforehand", count.let_down,
                             count.let_down == 1 ? "paint is" : "paints are");
    recede_buffer_text(out, ".");
}

void recede_words_order(recede_buffer *out, const recede_plan *plan, const recede_work *work)
{
    const recede_trade *trade = recede_trade_of(recede_plan_scene(plan)->medium);
    double each = work->count ? 1.0 / (double)work->count : 0;
    recede_buffer_format(out, "In this order the %s follow one from another, and so differ from "
                              "the study's. The %s are ",
                         trade->puddles, trade->washes);
    recede_buffer_fixed(out, work->difference * each, 1);
    recede_buffer_text(out, " CIEDE2000 off on average (1 is just seen; each mixed by itself, as "
                            "the study has it, ");
    recede_buffer_fixed(out, work->planned_difference * each, 1);
    recede_buffer_format(out, "), with %d %s", work->additions,
                         trade->to_pour[work->additions != 1]);
    add_washings(out, trade, work->washings);
    recede_buffer_text(out, work->exact ? "." : "; there may be a better order.");
    add_tubes(out, recede_plan_palette(plan), work);
}

void recede_words_amounts(recede_buffer *out, const recede_plan *plan)
{
    const recede_scene *scene = recede_plan_scene(plan);
    int water = recede_medium_takes_water(scene->medium);
    recede_buffer_text(out, "A pea of paint is a quarter of a millilitre");
    recede_buffer_text(out, water ? ", a drop of water a twentieth. " : ". ");
    recede_buffer_text(out, "Amounts are for ");
    recede_buffer_number(out, 100 * scene->paper_width_m, 1);
    recede_buffer_text(out, " by ");
    recede_buffer_number(out, 100 * scene->paper_height_m, 1);
    recede_buffer_format(out, " cm and a %s ", recede_trade_of(scene->medium)->film);
    recede_buffer_number(out, recede_work_film_mm(scene->medium), 2);
    recede_buffer_text(out, " mm thick, and half as much again: how much yours takes, the first "
                            "one tells you.");
}

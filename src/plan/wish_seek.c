/* For each height of the sun, from the given visibility outward in small steps
 * of its logarithm until the wish is granted; then by halves to the very place.
 * Heights come nearest first, and none is walked farther than would still mean
 * less change than the best so far. */
#include <math.h>

#include "colour/error.h"
#include "plan/wish.h"

static const double STEP = 0.1;      /* of the logarithm: a tenth of the visibility */
static const double EXACT = 1e-10;   /* the same, for the place itself */
static const double DEG_A_UNIT = 10.0; /* a fist of the sun's height counts as a factor e */
enum { HIGHEST_SUN_DEG = 90 };

static double height_change(const recede_wish_search *s, double sun_deg)
{
    return s->wish->move_sun ? fabs(sun_deg - s->given_sun_deg) / DEG_A_UNIT : 0.0;
}

/* A spot the scene cannot have is as far from granting the wish as can be. */
static recede_wish_spot look(recede_wish_search *s, double log_km, double sun_deg)
{
    recede_wish_spot spot = {log_km, sun_deg,
                             fabs(log_km - s->given_log_km) + height_change(s, sun_deg),
                             -INFINITY};
    if (recede_wish_look(s, log_km, sun_deg, NULL))
        return spot;
    spot.excess = recede_wish_state_of(s).reached - s->wish->value;
    if (s->wish->kind == RECEDE_WISH_VALUE)
        spot.excess *= s->side;
    if (spot.excess > s->nearest.excess ||
        (spot.excess == s->nearest.excess && spot.change < s->nearest.change))
        s->nearest = spot;
    return spot;
}

/* The granting end of ever smaller halves. */
static recede_wish_spot halve(recede_wish_search *s, recede_wish_spot denied,
                              recede_wish_spot granted)
{
    while (fabs(granted.log_km - denied.log_km) > EXACT) {
        recede_wish_spot middle =
            look(s, 0.5 * (denied.log_km + granted.log_km), granted.sun_deg);
        if (middle.excess >= 0.0)
            granted = middle;
        else
            denied = middle;
    }
    return granted;
}

static void take(recede_wish_search *s, recede_wish_spot granted)
{
    if (granted.change < s->best.change)
        s->best = granted;
}

/* The highest spot between two, by golden section; the first that grants will
 * do. */
static recede_wish_spot peak_between(recede_wish_search *s, double low, double high,
                                     double sun_deg)
{
    const double golden = 0.5 * (sqrt(5.0) - 1.0);
    recede_wish_spot one = look(s, high - golden * (high - low), sun_deg);
    recede_wish_spot other = look(s, low + golden * (high - low), sun_deg);
    while (high - low > 1e-6 && one.excess < 0.0 && other.excess < 0.0) {
        if (one.excess >= other.excess) {
            high = other.log_km;
            other = one;
            one = look(s, high - golden * (high - low), sun_deg);
        } else {
            low = one.log_km;
            one = other;
            other = look(s, low + golden * (high - low), sun_deg);
        }
    }
    return one.excess >= other.excess ? one : other;
}

/* Whether between three spots a peak may hide that grants the wish or, as long as
 * nothing does, comes nearer than all so far: an arched curve stays below the
 * lines through its neighbours. */
static int may_hide_a_peak(const recede_wish_search *s, const recede_wish_spot *before,
                           const recede_wish_spot *at, const recede_wish_spot *after)
{
    double first = at->excess - before->excess, second = at->excess - after->excess;
    double wanted = isinf(s->best.change) ? s->nearest.excess : 0.0;
    return first >= 0.0 && second >= 0.0 && at->excess + fmax(first, second) >= wanted;
}

/* Where three spots hide one that grants the wish, takes the way to it from the
 * spot given. */
static int try_peak(recede_wish_search *s, const recede_wish_spot *before,
                    const recede_wish_spot *at, const recede_wish_spot *after,
                    const recede_wish_spot *from)
{
    if (!may_hide_a_peak(s, before, at, after))
        return 0;
    recede_wish_spot peak = peak_between(s, fmin(before->log_km, after->log_km),
                                         fmax(before->log_km, after->log_km), at->sun_deg);
    if (peak.excess < 0.0)
        return 0;
    take(s, halve(s, *from, peak));
    return 1;
}

/* From the given visibility one way, 1 or -1, to its end or to the first place
 * that grants the wish. */
static void walk(recede_wish_search *s, recede_wish_spot start, double way)
{
    double end = way > 0.0 ? s->most_log_km : s->least_log_km;
    recede_wish_spot before = start, at = start;
    for (int i = 1; at.log_km != end && before.change < s->best.change; i++) {
        double next = start.log_km + way * i * STEP;
        recede_wish_spot after =
            look(s, way * next < way * end ? next : end, start.sun_deg);
        if (i > 1 && try_peak(s, &before, &at, &after, &before))
            return;
        if (after.excess >= 0.0) {
            take(s, halve(s, at, after));
            return;
        }
        before = at;
        at = after;
    }
}

/* A plane's value may have to rise or to fall. */
static double side_of(recede_wish_search *s, double sun_deg)
{
    if (s->wish->kind != RECEDE_WISH_VALUE ||
        recede_wish_look(s, s->given_log_km, sun_deg, NULL))
        return 1.0;
    return recede_wish_state_of(s).reached <= s->wish->value ? 1.0 : -1.0;
}

static void seek_under(recede_wish_search *s, double sun_deg)
{
    s->side = side_of(s, sun_deg);
    recede_wish_spot start = look(s, s->given_log_km, sun_deg);
    if (start.excess >= 0.0) {
        take(s, start);
        return;
    }
    double below = fmax(start.log_km - STEP, s->least_log_km);
    double above = fmin(start.log_km + STEP, s->most_log_km);
    recede_wish_spot before = look(s, below, sun_deg), after = look(s, above, sun_deg);
    if (try_peak(s, &before, &start, &after, &start))
        return;
    walk(s, start, -1.0);
    walk(s, start, 1.0);
}

/* The next height to try, ever farther from the given one, lower before higher
 * where both are as far; 0 when there are no more. */
static int next_height(const recede_wish_search *s, int *lower, int *higher)
{
    double down = s->given_sun_deg - *lower, up = *higher - s->given_sun_deg;
    if (*lower < 1 && *higher > HIGHEST_SUN_DEG)
        return 0;
    if (*higher > HIGHEST_SUN_DEG || (*lower >= 1 && down <= up))
        return (*lower)--;
    return (*higher)++;
}

static recede_code report(const recede_progress *progress, int done, recede_error *error)
{
    if (progress && progress->report(progress->context, (double)done / HIGHEST_SUN_DEG))
        return recede_fail(error, RECEDE_CANCELLED, "");
    return RECEDE_OK;
}

recede_code recede_wish_seek(recede_wish_search *s, const recede_progress *progress,
                             recede_error *error)
{
    int whole = (int)floor(s->given_sun_deg), higher = whole + 1;
    int lower = whole == s->given_sun_deg ? whole - 1 : whole;
    recede_code code = report(progress, 0, error);
    if (code)
        return code;
    seek_under(s, s->given_sun_deg);
    for (int done = 1; s->wish->move_sun; done++) {
        int sun_deg = next_height(s, &lower, &higher);
        if (sun_deg == 0 || height_change(s, sun_deg) >= s->best.change)
            break;
        code = report(progress, done, error);
        if (code)
            return code;
        seek_under(s, sun_deg);
    }
    return RECEDE_OK;
}

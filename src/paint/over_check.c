#include "paint/over_check.h"

#include "colour/error.h"
#include "paint/targets.h"

/* What the surface itself turns back (paint/film.h): nothing dry is seen darker. */
#define LEAST_SEEN 0.03

/* A last digit of rounding over white does no harm. */
#define MOST_SEEN (1 + 1e-12)

static recede_code check_ground(const recede_spectrum *ground, size_t index, const char *field,
                                recede_error *error)
{
    char path[96];
    recede_path_index(path, sizeof path, "targets", index, field);
    for (int band = 0; band < RECEDE_BANDS; band++) {
        recede_code code =
            recede_check_range(error, path, ground->at[band], LEAST_SEEN, MOST_SEEN);
        if (code)
            return code;
    }
    return RECEDE_OK;
}

static recede_code check_target(const recede_over_target *target, size_t index,
                                recede_error *error)
{
    recede_code code = recede_targets_check(&target->wash, 1, error);
    if (!code)
        code = check_ground(&target->from_ground, index, "from_ground", error);
    if (!code && target->wash.graded)
        code = check_ground(&target->to_ground, index, "to_ground", error);
    if (!code && target->wash.graded)
        code = check_ground(&target->half_ground, index, "half_ground", error);
    return code;
}

recede_code recede_over_check(const recede_palette *palette, const recede_rules *rules,
                              const recede_over_target *targets, size_t count,
                              recede_error *error)
{
    if (recede_palette_medium(palette) != RECEDE_WATERCOLOUR)
        return recede_fail_name(error, RECEDE_CONFLICT, "paint.shadows", "over");
    recede_code code = recede_rules_check(rules, error);
    for (size_t i = 0; !code && i < count; i++)
        code = check_target(&targets[i], i, error);
    return code;
}

recede_rules recede_over_rules(const recede_rules *rules)
{
    recede_rules fewer = *rules;
    if (fewer.most_pigments > RECEDE_MOST_LAID_OVER)
        fewer.most_pigments = RECEDE_MOST_LAID_OVER;
    return fewer;
}

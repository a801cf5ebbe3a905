#include "paint/targets.h"

#include "colour/error.h"

/* Any colour there is lies well within; beyond, CIEDE2000 would overflow. */
#define MOST_LAB 1000.0

static recede_code check_lab(recede_lab lab, size_t index, const char *field, recede_error *error)
{
    char path[96];
    const double part[3] = {lab.l, lab.a, lab.b};
    recede_path_index(path, sizeof path, "targets", index, field);
    for (int i = 0; i < 3; i++) {
        recede_code code = recede_check_range(error, path, part[i], -MOST_LAB, MOST_LAB);
        if (code)
            return code;
    }
    return RECEDE_OK;
}

static recede_code check_target(const recede_wash_target *target, size_t index,
                                recede_error *error)
{
    recede_code code = check_lab(target->from, index, "from", error);
    if (!code && target->graded)
        code = check_lab(target->to, index, "to", error);
    if (!code && target->graded)
        code = check_lab(target->half, index, "half", error);
    return code;
}

recede_code recede_targets_check(const recede_wash_target *targets, size_t count,
                                 recede_error *error)
{
    recede_code code = RECEDE_OK;
    for (size_t i = 0; !code && i < count; i++)
        code = check_target(&targets[i], i, error);
    return code;
}

recede_code recede_rules_check(const recede_rules *rules, recede_error *error)
{
    recede_code code = recede_check_range(error, "paint.most_pigments", rules->most_pigments, 1,
                                          RECEDE_MOST_IN_MIX);
    if (!code)
        code = recede_check_range(error, "paint.most_parts", rules->most_parts, 1,
                                  RECEDE_MOST_PARTS);
    return code ? code : recede_check_range(error, "paint.tie", rules->tie, 0, 10);
}

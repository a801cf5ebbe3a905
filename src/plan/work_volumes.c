#include "plan/work_volumes.h"

#include "plan/work_costs.h"

static double growth_at(const recede_washes *washes, const recede_work_path *path, size_t wash)
{
    const recede_work_wash *from = &washes->wash[path->before[wash]], *to = &washes->wash[wash];
    return recede_pour_between(&from->offers[path->offer[path->before[wash]]].puddle,
                               &to->offers[path->offer[wash]].puddle).growth;
}

void recede_work_volumes(const recede_washes *washes, const recede_work_path *path,
                         double *mixed_ml)
{
    for (size_t i = 0; i < washes->count; i++) {
        double need_ml = washes->wash[i].need_ml, left_ml = 0, growth = 0;
        if (path->move[i] == RECEDE_MOVE_ADD) {
            left_ml = mixed_ml[path->before[i]] - washes->wash[path->before[i]].need_ml;
            growth = growth_at(washes, path, i);
        }
        mixed_ml[i] = path->move[i] == RECEDE_MOVE_BARE
                          ? 0 : recede_mixed_ml(need_ml, left_ml, growth);
    }
    for (size_t i = washes->count; i-- > 0;)
        if (path->move[i] == RECEDE_MOVE_ADD)
            mixed_ml[path->before[i]] = washes->wash[path->before[i]].need_ml +
                                        mixed_ml[i] / growth_at(washes, path, i);
}

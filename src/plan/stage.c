#include "plan/stage.h"

static int report(void *context, double share_done)
{
    const recede_stage *stage = context;
    double share = stage->from + share_done * (stage->to - stage->from);
    return stage->whole->report(stage->whole->context, share);
}

const recede_progress *recede_stage_start(recede_stage *stage, const recede_progress *whole,
                                          double from, double to)
{
    *stage = (recede_stage){whole, from, to, {report, stage}};
    return whole ? &stage->progress : NULL;
}

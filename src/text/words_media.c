#include "text/words_media.h"

#define OPAQUE_WORDS                                                                           \
    .wash = "passage", .washes = "passages", .puddle = "mix", .puddles = "mixes",              \
    .well = "place", .wells = "places", .at_well = "on place",                                 \
    .to_wash = "to wipe", .washed = "wiped clean",                                             \
    .to_pour = {"addition of paint", "additions of paint"}, .film = "coat",                              \
    .bare = "bare ground",                                                                     \
    .middle = "mix the middle by itself and blend it into both",                               \
    .middle_short = "mix the middle by itself too",                                            \
    .middle_mix = "mix the middle by itself too",                                              \
    .graded = {"graded from the one mix into the other",                                       \
               "graded by way of a middle that is mixed by itself"}

#define DRIES                                                                                  \
    .box = "judge dry",                                                                        \
    .box_legend = "Paint a trial in the empty box, let it dry, and judge it then.",            \
    .beside = "paint your own beside it, and judge it dry", .judge = "Judge it dry."

/* Far to near and dark to light: common practice, no source. */
#define FAR_TO_NEAR                                                                            \
    "The sky and the far planes go first, each nearer plane over the edge of what lies "       \
    "behind it; in each plane the darks before the lights."

static const recede_trade trades[] = {
    [RECEDE_WATERCOLOUR] =
        {.wash = "wash", .washes = "washes", .puddle = "puddle", .puddles = "puddles",
         .well = "well", .wells = "wells", .at_well = "in well",
         .to_wash = "to wash out", .washed = "washed out",
         .to_pour = {"addition of paint or water", "additions of paint or water"},
         .film = "wet wash", .bare = "bare paper",
         .middle = "lay two washes and let the first dry between",
         .middle_short = "two washes, dry between",
         .middle_mix = "let the first wash dry",
         .graded = {"one wash, graded from the one puddle into the other",
                    "two washes, one after the other: let the first dry"},
         .scrap = "Try each mix on a scrap of the same paper and judge it dry",
         .box = "judge dry",
         .box_legend = "A small dab beside it is the mix while it is wet. Paint a trial in the "
                       "empty box, let it dry, and judge it then.",
         .beside = "paint your own beside it, and judge it dry", .judge = "Judge it dry.",
         .caution = "", .layers = ""},
    [RECEDE_GOUACHE] =
        {OPAQUE_WORDS, DRIES,
         .scrap = "Try each mix on a scrap of the same ground and judge it dry",
         .caution = "",
         .layers = FAR_TO_NEAR " Let a coat dry before another goes over it, or it lifts."},
    [RECEDE_ACRYLIC] =
        {OPAQUE_WORDS, DRIES,
         .scrap = "Try each mix on a scrap of the same ground and judge it dry",
         .caution = "",
         .layers = FAR_TO_NEAR " A coat is soon dry: have both mixes of an edge that is to be "
                               "blended ready before you start on it."},
    [RECEDE_OIL] =
        {OPAQUE_WORDS,
         .scrap = "Try each mix on a scrap of the same ground first",
         .box = "trial",
         .box_legend = "Paint a trial in the empty box and hold it against the dab.",
         .beside = "paint your own beside it",
         .judge = "Oil changes little as it dries: judge it as soon as it is laid.",
         .caution = "Solvents, mediums and drying oils: go by their labels, work in fresh air, "
                    "and keep flames away. Rags wet with oil can take fire by themselves: "
                    "spread them out to dry outdoors or shut them in a metal can.",
         .layers = FAR_TO_NEAR " Where a coat goes over another, keep the upper one the "
                               "richer in oil: fat over lean."},
};

const recede_trade *recede_trade_of(recede_medium medium)
{
    return &trades[medium];
}

/* What holds for the text of any sheet, by the log that the type keeps. */
#ifndef RECEDE_TESTS_SHEET_LOG_H
#define RECEDE_TESTS_SHEET_LOG_H

#include "draw/sheet.h"
#include "support/assert_near.h"

#include <stdlib.h>
#include <string.h>

static inline int sheet_log_apart(recede_rect a, recede_rect b)
{
    const double touch = 0.02; /* mm */
    return a.x + a.w <= b.x + touch || b.x + b.w <= a.x + touch || a.y + a.h <= b.y + touch
           || b.y + b.h <= a.y + touch;
}

static inline void sheet_log_check_one(const recede_type_record *a)
{
    const double edge_mm = 7, overhang_mm = 0.6;
    assert_true(a->size_pt >= 7 - 1e-9);
    assert_true(!a->is_recipe || (a->size_pt >= 12 - 1e-9 && !a->is_cut));
    if (a->ink.x < edge_mm || a->ink.y < edge_mm || a->ink.x + a->ink.w > 297 - edge_mm
        || a->ink.y + a->ink.h > 210 - edge_mm)
        fail_msg("page %zu: ink %g %g %g %g near the edge", a->page, a->ink.x, a->ink.y, a->ink.w,
                 a->ink.h);
    if (a->ink.x < a->room.x - overhang_mm || a->ink.y < a->room.y - overhang_mm
        || a->ink.x + a->ink.w > a->room.x + a->room.w + overhang_mm
        || a->ink.y + a->ink.h > a->room.y + a->room.h + overhang_mm)
        fail_msg("page %zu: ink %g %g %g %g outside room %g %g %g %g", a->page, a->ink.x, a->ink.y,
                 a->ink.w, a->ink.h, a->room.x, a->room.y, a->room.w, a->room.h);
}

/* No text under 7 pt, no recipe under 12 or cut, no ink outside its room, near
 * the paper's edge or over other ink. Returns how many pages have text. */
static inline size_t sheet_log_check(const recede_type_log *log)
{
    size_t pages = 0;
    for (size_t i = 0; i < log->count; i++) {
        const recede_type_record *a = &log->records[i];
        sheet_log_check_one(a);
        pages = a->page + 1 > pages ? a->page + 1 : pages;
        for (size_t j = 0; j < i; j++) {
            const recede_type_record *b = &log->records[j];
            if (b->page == a->page && !sheet_log_apart(a->ink, b->ink))
                fail_msg("page %zu: ink at %g %g %g %g over ink at %g %g %g %g", a->page, a->ink.x,
                         a->ink.y, a->ink.w, a->ink.h, b->ink.x, b->ink.y, b->ink.w, b->ink.h);
        }
    }
    return pages;
}

static inline size_t sheet_log_recipes(const recede_type_log *log)
{
    size_t count = 0;
    for (size_t i = 0; i < log->count; i++)
        count += log->records[i].is_recipe != 0;
    return count;
}

static inline void sheet_log_free(recede_type_log *log)
{
    free(log->records);
    memset(log, 0, sizeof *log);
}

/* The longest names there may be, 200 bytes: in one word and in many. */
static const char sheet_long_word[] =
    "LlanfairpwllgwyngyllgogerychwyrndrobwllllantysiliogogogochXXLlanfairpwllgwyngyllgogerychwy"
    "rndrobwllllantysiliogogogochXXLlanfairpwllgwyngyllgogerychwyrndrobwllllantysiliogogogochXX"
    "Llanfairpwllgwyngyll";
static const char sheet_long_words[] =
    "the long low wood that runs behind the upper meadow from the old quarry as far as the seco"
    "nd of the two stone bridges and then on beyond the mill to the white gate below the last f"
    "arm before the high ";

#endif

/* What the ladder's pages share. */
#include "draw/ladder_parts.h"
#include "picture/noise.h"
#include "text/words_media.h"

recede_rect recede_ladder_set(recede_ladder_sheet *sheet, const recede_page *page,
                              recede_buffer *words, recede_rect room, const recede_style *style)
{
    return recede_page_set(page, words, room, style, &sheet->failed);
}

const char *recede_ladder_caution(const recede_ladder_sheet *sheet)
{
    return recede_trade_of(sheet->ladder->scene->medium)->caution;
}

double recede_ladder_bottom_mm(const recede_ladder_sheet *sheet)
{
    return recede_page_bottom_mm(198, recede_ladder_caution(sheet));
}

uint32_t recede_ladder_seed(size_t air, size_t rung, int row)
{
    return recede_seed_with((uint32_t)(air * 100 + rung), (uint32_t)row);
}

/* Where the fields of the reach stand. */
#include "draw/range_parts.h"

const double recede_range_column_mm = 84;
static const double gutter_mm = 7.5;

double recede_range_column_x(int field)
{
    return recede_page_margin_mm + field * (recede_range_column_mm + gutter_mm);
}

#include "recede.h"

#include "data/tables.h"

recede_spectrum recede_paper_white(void)
{
    return recede_table_papers[0].values;
}

/* The colours of a swatch description's sources: given, measured or photographed. */
#ifndef RECEDE_CLI_METER_H
#define RECEDE_CLI_METER_H

#include "text/words_swatch.h"

/* Where they are read. Names NULL: not given. */
typedef struct recede_cli_meter {
    const char *card_name; /* of the description, for messages */
    const recede_swatch_card *card;
    const char *measured, *photo;
} recede_cli_meter;

enum { RECEDE_MOST_SOURCES = 1 + RECEDE_MOST_PAINTS * RECEDE_MOST_SWATCHES };

/* As read, in the order of recede_sources_visit; patches of a photograph's card. */
typedef struct recede_cli_readings {
    size_t count;
    recede_metered read[RECEDE_MOST_SOURCES];
    recede_patch_reading card[RECEDE_MOST_PATCHES];
    int uneven;
    char remark[500];
} recede_cli_readings;

/* Returns an exit code; what is wrong has been said. */
int recede_cli_meter_read(const recede_cli_meter *meter, recede_cli_readings *out);

#endif

/* recede names: what a scene may call things. */
#include "cli/commands.h"
#include "cli/load.h"
#include "cli/options.h"
#include "text/names_write.h"

int recede_cli_names(int count, char **words)
{
    const recede_usage usage = {
        "names", "",
        "Lists the names that a scene may use: foliage, surfaces, palettes and their paints,\n"
        "pigments, and tubes with what each is taken for.",
        NULL, 0, 0};
    int code = recede_options_read(&usage, count, words, NULL);
    if (code != RECEDE_OPTIONS_GO_ON)
        return code;
    recede_buffer out;
    recede_buffer_start(&out, NULL);
    recede_names_write(&out);
    return recede_cli_print(&out);
}

/* recede page: writes the planning page, which the program carries. */
#include "cli/commands.h"
#include "cli/load.h"
#include "cli/options.h"

static int say_how_to_get_it(void)
{
    recede_cli_say("this recede was built without the planning page: where it was built there was "
                   "no clang and lld for wasm32, wasi-libc or libclang-rt-14-dev-wasm32; run "
                   "'make page' and then 'make' in its sources, or take the page from a release");
    return RECEDE_EXIT_FAILED;
}

int recede_cli_page(int count, char **words)
{
    const char *path = NULL;
    const recede_option options[] = {
        {'o', NULL, "FILE", "write the page to FILE instead of standard output", &path},
    };
    const recede_usage usage = {
        "page", "",
        "Writes the planning page: one HTML file that opens in any browser, with no server and\n"
        "no network, and plans scenes under your hand.",
        options, sizeof options / sizeof options[0], 0};
    int code = recede_options_read(&usage, count, words, NULL);
    if (code != RECEDE_OPTIONS_GO_ON)
        return code;
    if (recede_planner_page_size == 0)
        return say_how_to_get_it();
    recede_output output = {path ? path : "-", recede_planner_page, recede_planner_page_size};
    return recede_cli_write(&output, 1);
}

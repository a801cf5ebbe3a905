#include "cli/options.h"

#include <string.h>

#include "cli/commands.h"
#include "cli/load.h"
#include "text/message.h"
#include "text/nearest.h"

typedef struct {
    const recede_usage *usage;
    int count, at; /* the word being read */
    char **words;
    const char **operands;
    size_t operand_count;
    int only_operands, help;
} reader;

static int wrong(const reader *r, const char *what, const char *word)
{
    recede_buffer name;
    recede_buffer_start(&name, NULL);
    recede_message_name(&name, word);
    recede_cli_say("recede %s: %s %s; see recede %s --help", r->usage->command, what,
                   recede_buffer_string(&name), r->usage->command);
    recede_buffer_free(&name);
    return RECEDE_EXIT_USAGE;
}

static int unknown(const reader *r, const char *word, size_t length)
{
    char offer[3 * RECEDE_NAME_SIZE], found[64];
    recede_nearest nearest;
    size_t kept = length < sizeof found ? length : sizeof found - 1;
    memcpy(found, word, kept);
    found[kept] = '\0';
    recede_nearest_start(&nearest, found);
    recede_nearest_offer(&nearest, "help");
    for (size_t i = 0; i < r->usage->option_count; i++)
        if (r->usage->options[i].name)
            recede_nearest_offer(&nearest, r->usage->options[i].name);
    recede_nearest_say(&nearest, offer, sizeof offer);
    int likely = strncmp(offer, "did", 3) == 0;
    recede_buffer name;
    recede_buffer_start(&name, NULL);
    recede_message_name(&name, r->words[r->at]);
    recede_cli_say("recede %s: there is no option %s; %s%ssee recede %s --help",
                   r->usage->command, recede_buffer_string(&name), likely ? offer : "",
                   likely ? " " : "", r->usage->command);
    recede_buffer_free(&name);
    return RECEDE_EXIT_USAGE;
}

static const recede_option *option_named(const recede_usage *usage, const char *name,
                                         size_t length)
{
    for (size_t i = 0; i < usage->option_count; i++) {
        const char *known = usage->options[i].name;
        if (known && strlen(known) == length && memcmp(known, name, length) == 0)
            return &usage->options[i];
    }
    return NULL;
}

static const recede_option *option_lettered(const recede_usage *usage, char letter)
{
    for (size_t i = 0; i < usage->option_count; i++)
        if (usage->options[i].letter == letter)
            return &usage->options[i];
    return NULL;
}

/* value: what stands in the same word, or NULL. */
static int take(reader *r, const recede_option *option, const char *value)
{
    const char *word = r->words[r->at];
    if (*option->text)
        return wrong(r, "this option stands twice:", word);
    if (!option->value) {
        if (value)
            return wrong(r, "this option takes no value:", word);
        value = "";
    } else if (!value) {
        if (r->at + 1 >= r->count)
            return wrong(r, "a value must follow", word);
        value = r->words[++r->at];
    }
    if (option->value && !*value)
        return wrong(r, "the value is empty after", word);
    *option->text = value;
    return RECEDE_OPTIONS_GO_ON;
}

static int take_long(reader *r, const char *name)
{
    const char *equals = strchr(name, '=');
    size_t length = equals ? (size_t)(equals - name) : strlen(name);
    if (length == 4 && memcmp(name, "help", 4) == 0 && !equals) {
        r->help = 1;
        return RECEDE_OPTIONS_GO_ON;
    }
    const recede_option *option = option_named(r->usage, name, length);
    if (!option)
        return unknown(r, name, length);
    return take(r, option, equals ? equals + 1 : NULL);
}

static int take_short(reader *r, const char *letters)
{
    const recede_option *option = option_lettered(r->usage, letters[0]);
    if (!option)
        return unknown(r, letters, strlen(letters));
    return take(r, option, letters[1] ? letters + 1 : NULL);
}

static int take_word(reader *r)
{
    const char *word = r->words[r->at];
    if (!r->only_operands && strcmp(word, "--") == 0) {
        r->only_operands = 1;
        return RECEDE_OPTIONS_GO_ON;
    }
    if (!r->only_operands && word[0] == '-' && word[1] == '-')
        return take_long(r, word + 2);
    if (!r->only_operands && word[0] == '-' && word[1])
        return take_short(r, word + 1);
    if (r->operand_count == r->usage->most_operands)
        return wrong(r, "there is one word too many:", word);
    r->operands[r->operand_count++] = word;
    return RECEDE_OPTIONS_GO_ON;
}

static void add_option(recede_buffer *out, const recede_option *option)
{
    enum { HELP_COLUMN = 20 };
    size_t start = out->size;
    recede_buffer_text(out, "  ");
    if (option->letter)
        recede_buffer_format(out, "-%c%s", option->letter, option->name ? ", " : "");
    if (option->name)
        recede_buffer_format(out, "--%s", option->name);
    if (option->value)
        recede_buffer_format(out, " %s", option->value);
    size_t used = out->size - start;
    recede_buffer_repeat(out, ' ', used < HELP_COLUMN ? HELP_COLUMN - used : 2);
    recede_buffer_format(out, "%s\n", option->help);
}

static int print_help(const recede_usage *usage)
{
    static const recede_option help = {0, "help", NULL, "show this", NULL};
    recede_buffer out;
    recede_buffer_start(&out, NULL);
    recede_buffer_format(&out, "recede %s %s%s[OPTIONS]\n\n%s\n\n", usage->command,
                         usage->operands, *usage->operands ? " " : "", usage->summary);
    for (size_t i = 0; i < usage->option_count; i++)
        add_option(&out, &usage->options[i]);
    add_option(&out, &help);
    return recede_cli_print(&out);
}

int recede_options_read(const recede_usage *usage, int count, char **words,
                        const char **operands)
{
    reader r = {.usage = usage, .count = count, .words = words, .operands = operands};
    for (size_t i = 0; i < usage->most_operands; i++)
        operands[i] = NULL;
    for (; r.at < count; r.at++) {
        int code = take_word(&r);
        if (code != RECEDE_OPTIONS_GO_ON)
            return code;
    }
    return r.help ? print_help(usage) : RECEDE_OPTIONS_GO_ON;
}

#include "text/cgats_light.h"

#include <stdio.h>
#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof((list)[0]))

enum { NOTHING = RECEDE_CGATS_TOPICS };

typedef struct {
    const char *word;
    int meaning;
} meaning;

/* Keywords whose line is looked at. */
static const char *const keywords[] = {
    "ILLUMINANT", "ILLUMINATION", "ILLUMINATION_NAME", "OBSERVER", "OBSERVER_ANGLE",
    "WEIGHTING_FUNCTION", "MEASUREMENT_SOURCE", "COMPUTATIONAL_PARAMETER",
};

/* Behind these the illuminant or the observer is named. */
static const meaning openings[] = {
    {"ILLUMINANT", RECEDE_CGATS_ILLUMINANT},  {"ILLUMINATION", RECEDE_CGATS_ILLUMINANT},
    {"OBSERVER", RECEDE_CGATS_OBSERVER},      {"OBSERVERANGLE", RECEDE_CGATS_OBSERVER},
};

/* These may stand between. */
static const meaning fillers[] = {{"NAME", 0}, {"ANGLE", 0}, {"CIE", 0}, {"STANDARD", 0}};

/* Spellings of the two observers: the angle, and the year of the CIE's table. */
static const struct {
    const char *said, *word;
} observers[] = {
    {"2DEG", "2"}, {"1931", "2"}, {"10DEG", "10"}, {"1964", "10"},
};

static const meaning *find(const meaning *list, size_t count, const char *text, size_t size)
{
    for (size_t i = 0; i < count; i++)
        if (recede_cgats_same(text, size, list[i].word))
            return &list[i];
    return NULL;
}

static int is_letter_or_digit(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

static recede_cgats_fact fact_of(recede_cgats_topic topic, const char *text, size_t size,
                                 recede_place place)
{
    recede_cgats_fact fact = {.place = place};
    size_t kept = size < sizeof fact.word ? size : sizeof fact.word - 1;
    for (size_t i = 0; i < kept; i++)
        fact.word[i] = text[i] >= 'a' && text[i] <= 'z' ? (char)(text[i] - 'a' + 'A') : text[i];
    for (size_t i = 0; topic == RECEDE_CGATS_OBSERVER && i < COUNT(observers); i++)
        if (strcmp(fact.word, observers[i].said) == 0)
            strcpy(fact.word, observers[i].word);
    return fact;
}

static recede_text_status set_fact(recede_cgats_light *light, recede_cgats_topic topic,
                                   const recede_cgats_fact *fact, recede_text_error *error)
{
    const recede_cgats_fact *known = &light->of[topic];
    if (known->word[0] && strcmp(known->word, fact->word) != 0)
        return recede_text_refuse(error, fact->place.line, fact->place.column,
                                  "found the %s %s, but line %zu says %s; keep the one that the "
                                  "colours were computed for",
                                  topic == RECEDE_CGATS_OBSERVER ? "observer" : "illuminant",
                                  fact->word, known->place.line, known->word);
    light->of[topic] = *fact;
    return RECEDE_TEXT_OK;
}

/* awaited: the topic that was opened and not yet named, or NOTHING. */
static recede_text_status hear_token(recede_cgats_light *light, const recede_cgats_token *token,
                                     int *awaited, recede_text_error *error)
{
    recede_text_status status = RECEDE_TEXT_OK;
    for (size_t at = 0, size; !status && at < token->size; at += size ? size : 1) {
        const char *text = token->text + at;
        for (size = 0; at + size < token->size && is_letter_or_digit(text[size]);)
            size++;
        const meaning *opening = find(openings, COUNT(openings), text, size);
        if (opening)
            *awaited = opening->meaning;
        if (opening || !size || *awaited == NOTHING || find(fillers, COUNT(fillers), text, size))
            continue;
        recede_cgats_topic topic = (recede_cgats_topic)*awaited;
        recede_cgats_fact fact = fact_of(topic, text, size, token->place);
        status = set_fact(light, topic, &fact, error);
        *awaited = NOTHING;
    }
    return status;
}

recede_text_status recede_cgats_hear(recede_cgats_light *light, recede_cgats_scanner *scanner)
{
    const recede_cgats_token *token = &scanner->token;
    int listening = 0, awaited = NOTHING;
    for (size_t i = 0; i < COUNT(keywords); i++)
        listening = listening || recede_cgats_is(token, keywords[i]);
    while (token->kind == RECEDE_CGATS_WORD || token->kind == RECEDE_CGATS_STRING) {
        recede_text_status status =
            listening ? hear_token(light, token, &awaited, scanner->error) : RECEDE_TEXT_OK;
        if (!status)
            status = recede_cgats_next(scanner);
        if (status)
            return status;
    }
    return RECEDE_TEXT_OK;
}

/* ---- colours */

/* Whites, Y = 1. D50: ISO 13655 and CIE 015. */
static const recede_xyz white_d50 = {0.96422, 1, 0.82521};

const char *recede_cgats_light_wrong(const recede_cgats_light *light, char *out, size_t size)
{
    const char *illuminant = light->of[RECEDE_CGATS_ILLUMINANT].word;
    const char *observer = light->of[RECEDE_CGATS_OBSERVER].word;
    if (!illuminant[0])
        return "found LAB_ columns, but no word of their illuminant; export spectra, or add the "
               "line ILLUMINANT \"D50\" (or \"D65\"), whichever they were computed for";
    if (strcmp(illuminant, "D50") != 0 && strcmp(illuminant, "D65") != 0) {
        snprintf(out, size, "found LAB_ columns for the illuminant %s; export spectra, or LAB_ "
                 "columns for D65 or D50", illuminant);
        return out;
    }
    if (observer[0] && strcmp(observer, "2") != 0) {
        snprintf(out, size, "found LAB_ columns for the observer %s; export spectra, or LAB_ "
                 "columns for the observer of 2 degrees", observer);
        return out;
    }
    return NULL;
}

recede_lab recede_cgats_lab_d65(const recede_cgats_light *light, recede_lab lab)
{
    if (strcmp(light->of[RECEDE_CGATS_ILLUMINANT].word, "D50") != 0)
        return lab;
    recede_xyz seen = recede_xyz_of_lab(lab, white_d50), white = recede_white();
    return recede_lab_of_xyz(recede_cat16(seen, white_d50, white, 1), white);
}

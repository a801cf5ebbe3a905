#include "text/cgats_header.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "text/cgats.h"
#include "text/nearest.h"

#define COUNT(list) (sizeof(list) / sizeof((list)[0]))

typedef recede_text_status read_keyword(recede_cgats_header *header, recede_cgats_scanner *s);

void recede_cgats_header_start(recede_cgats_header *header, const recede_allocator *allocator)
{
    memset(header, 0, sizeof *header);
    recede_cgats_format_start(&header->format, allocator);
}

void recede_cgats_header_free(recede_cgats_header *header)
{
    recede_cgats_format_free(&header->format);
}

/* ---- keywords that count */

/* The number behind a keyword, and the line's end. */
static recede_text_status read_figure(recede_cgats_scanner *s, const char *expected,
                                      recede_cgats_figure *out)
{
    char shown[RECEDE_CGATS_SHOWN];
    recede_cgats_token keyword = s->token;
    if (out->place.line)
        return recede_text_refuse(s->error, keyword.place.line, keyword.place.column,
                                  "found %s a second time, first in line %zu; keep one",
                                  recede_cgats_show(&keyword, shown), out->place.line);
    recede_text_status status = recede_cgats_next(s);
    if (!status)
        status = recede_cgats_number(s, expected, &out->number);
    if (status)
        return status;
    out->place = s->token.place;
    status = recede_cgats_next(s);
    if (status || s->token.kind == RECEDE_CGATS_LINE_END || s->token.kind == RECEDE_CGATS_END)
        return status;
    return recede_text_refuse(s->error, s->token.place.line, s->token.place.column,
                              "found %s behind the number; expected the end of the line",
                              recede_cgats_show(&s->token, shown));
}

static recede_text_status check_figure(recede_cgats_scanner *s, const recede_cgats_figure *figure,
                                       int fits, const char *expected)
{
    if (fits)
        return RECEDE_TEXT_OK;
    return recede_text_refuse(s->error, figure->place.line, figure->place.column,
                              "found %s; expected %s",
                              recede_cgats_show_number(figure->number).text, expected);
}

static recede_text_status read_count(recede_cgats_scanner *s, recede_cgats_figure *out,
                                     double most, const char *expected)
{
    recede_text_status status = read_figure(s, expected, out);
    double number = out->number;
    return status ? status
                  : check_figure(s, out, number >= 1 && number <= most && number == floor(number),
                                 expected);
}

static recede_text_status read_fields(recede_cgats_header *header, recede_cgats_scanner *s)
{
    return read_count(s, &header->fields, RECEDE_CGATS_MOST_FIELDS,
                      "the number of columns, 1 to 1024");
}

static recede_text_status read_sets(recede_cgats_header *header, recede_cgats_scanner *s)
{
    return read_count(s, &header->sets, RECEDE_CGATS_MOST_SAMPLES,
                      "the number of samples, 1 to 4096");
}

static recede_text_status read_norm(recede_cgats_header *header, recede_cgats_scanner *s)
{
    const char *expected = "1 (readings are shares of 1) or 100 (percent)";
    recede_text_status status = read_figure(s, expected, &header->norm);
    double number = header->norm.number;
    return status ? status
                  : check_figure(s, &header->norm, number == 1 || number == 100, expected);
}

/* ---- other keywords */

static recede_text_status read_format(recede_cgats_header *header, recede_cgats_scanner *s)
{
    return recede_cgats_format_read(&header->format, s);
}

/* KEYWORD "NAME": a keyword that the standard does not have. */
static recede_text_status read_declaration(recede_cgats_header *header, recede_cgats_scanner *s)
{
    char shown[RECEDE_CGATS_SHOWN];
    (void)header;
    recede_text_status status = recede_cgats_next(s);
    if (status)
        return status;
    if (s->token.kind != RECEDE_CGATS_STRING || s->token.size == 0)
        return recede_text_refuse(s->error, s->token.place.line, s->token.place.column,
                                  "found %s behind KEYWORD; expected a name in double quotes",
                                  recede_cgats_show(&s->token, shown));
    return recede_cgats_next(s);
}

static recede_text_status refuse_stray_end(recede_cgats_header *header, recede_cgats_scanner *s)
{
    char shown[RECEDE_CGATS_SHOWN];
    (void)header;
    return recede_text_refuse(s->error, s->token.place.line, s->token.place.column,
                              "found %s without its beginning; put BEGIN_DATA_FORMAT before the "
                              "columns and BEGIN_DATA before the samples",
                              recede_cgats_show(&s->token, shown));
}

static const struct {
    const char *word;
    read_keyword *read;
} keywords[] = {
    {"BEGIN_DATA_FORMAT", read_format},    {"NUMBER_OF_FIELDS", read_fields},
    {"NUMBER_OF_SETS", read_sets},         {"SPECTRAL_NORM", read_norm},
    {"KEYWORD", read_declaration},         {"END_DATA_FORMAT", refuse_stray_end},
    {"END_DATA", refuse_stray_end},        {"BEGIN_DATA", NULL},
};

/* A keyword that is none of those, but nearly: a slip of the pen would otherwise only be
 * noticed lines later. */
static recede_text_status check_spelling(const recede_cgats_scanner *s)
{
    enum { LIKELY = 2, MOST = 24, LEAST = 8 };
    char word[MOST + 1];
    const recede_cgats_token *token = &s->token;
    if (token->size > MOST || token->size < LEAST)
        return RECEDE_TEXT_OK;
    memcpy(word, token->text, token->size);
    word[token->size] = '\0';
    for (size_t i = 0; i < COUNT(keywords); i++)
        if (recede_edit_distance(word, keywords[i].word) <= LIKELY)
            return recede_text_refuse(s->error, token->place.line, token->place.column,
                                      "found the keyword %s; did you mean %s?", word,
                                      keywords[i].word);
    return RECEDE_TEXT_OK;
}

static recede_text_status read_line(recede_cgats_header *header, recede_cgats_scanner *s)
{
    char shown[RECEDE_CGATS_SHOWN];
    char first = s->token.size ? s->token.text[0] : '\0';
    for (size_t i = 0; i < COUNT(keywords); i++)
        if (recede_cgats_is(&s->token, keywords[i].word))
            return keywords[i].read(header, s);
    if (s->token.kind != RECEDE_CGATS_WORD ||
        !((first >= 'A' && first <= 'Z') || (first >= 'a' && first <= 'z') || first == '_'))
        return recede_text_refuse(s->error, s->token.place.line, s->token.place.column,
                                  "found %s; expected a keyword at the start of the line, and "
                                  "BEGIN_DATA before the samples",
                                  recede_cgats_show(&s->token, shown));
    recede_text_status status = check_spelling(s);
    return status ? status : recede_cgats_hear(&header->light, s);
}

/* ---- the whole */

/* The first line: one word that names the kind of file. */
static recede_text_status read_identifier(recede_cgats_scanner *s)
{
    char shown[RECEDE_CGATS_SHOWN];
    recede_text_status status = recede_cgats_next_value(s);
    if (status)
        return status;
    recede_cgats_token first = s->token;
    int word = first.kind == RECEDE_CGATS_WORD;
    for (size_t i = 0; i < COUNT(keywords); i++)
        word = word && !recede_cgats_is(&first, keywords[i].word);
    status = recede_cgats_next(s);
    if (status || (word && s->token.kind != RECEDE_CGATS_WORD &&
                   s->token.kind != RECEDE_CGATS_STRING))
        return status;
    return recede_text_refuse(s->error, first.place.line, first.place.column,
                              "found %s%s; expected a line with one word for the kind of file, "
                              "as CGATS.17, before everything else",
                              recede_cgats_show(&first, shown), word ? " and more" : "");
}

static recede_text_status check_header(const recede_cgats_header *header,
                                       const recede_cgats_scanner *s)
{
    const char *missing = !header->format.place.line ? "BEGIN_DATA_FORMAT, the columns and "
                                                       "END_DATA_FORMAT"
                        : !header->fields.place.line ? "NUMBER_OF_FIELDS and the number of columns"
                        : !header->sets.place.line   ? "NUMBER_OF_SETS and the number of samples"
                                                     : NULL;
    size_t columns = header->format.columns.count;
    if (missing)
        return recede_text_refuse(s->error, s->token.place.line, s->token.place.column,
                                  "found BEGIN_DATA; expected before it %s", missing);
    if (header->fields.number != (double)columns)
        return recede_text_refuse(s->error, header->fields.place.line,
                                  header->fields.place.column,
                                  "found %s, but there are %zu columns; correct the number, or "
                                  "the columns",
                                  recede_cgats_show_number(header->fields.number).text, columns);
    return RECEDE_TEXT_OK;
}

recede_text_status recede_cgats_header_read(recede_cgats_header *header, recede_cgats_scanner *s)
{
    recede_text_status status = read_identifier(s);
    while (!status && !recede_cgats_is(&s->token, "BEGIN_DATA")) {
        if (s->token.kind == RECEDE_CGATS_END)
            return recede_text_refuse(s->error, s->token.place.line, s->token.place.column,
                                      "found the end of the file; expected BEGIN_DATA, the "
                                      "samples and END_DATA");
        status = s->token.kind == RECEDE_CGATS_LINE_END ? recede_cgats_next(s)
                                                        : read_line(header, s);
    }
    return status ? status : check_header(header, s);
}

#include "text/cgats_format.h"

#include <string.h>

#include "text/numbers.h"

#define COUNT(list) (sizeof(list) / sizeof((list)[0]))

void recede_cgats_format_start(recede_cgats_format *format, const recede_allocator *allocator)
{
    *format = (recede_cgats_format){.scale = 0};
    recede_array_start(&format->columns, allocator, sizeof(recede_cgats_column));
}

void recede_cgats_format_free(recede_cgats_format *format)
{
    recede_array_free(&format->columns);
}

recede_cgats_column *recede_cgats_column_at(const recede_cgats_format *format, size_t index)
{
    return (recede_cgats_column *)format->columns.items + index;
}

int recede_cgats_is_reading(const recede_cgats_column *column)
{
    return column->field >= RECEDE_CGATS_READING;
}

/* ---- one column */

static const struct {
    const char *word;
    recede_cgats_field field;
    double scale;
} words[] = {
    {"SAMPLE_ID", RECEDE_CGATS_ID, 0},         {"SAMPLE_NAME", RECEDE_CGATS_NAME, 0},
    {"LAB_L", RECEDE_CGATS_LAB_L, 0},          {"LAB_A", RECEDE_CGATS_LAB_A, 0},
    {"LAB_B", RECEDE_CGATS_LAB_B, 0},          {"SPECTRAL_NM", RECEDE_CGATS_NM, 0},
    {"SPECTRAL_PCT", RECEDE_CGATS_READING, 100}, {"SPECTRAL_DEC", RECEDE_CGATS_READING, 1},
};

/* Before a wavelength; the longer before those that they begin with. */
static const struct {
    const char *word;
    double scale;
} openings[] = {
    {"SPECTRAL_PCT_", 100}, {"SPECTRAL_PCT", 100}, {"SPECTRAL_DEC_", 1}, {"SPECTRAL_DEC", 1},
    {"SPECTRAL_NM_", 0},    {"SPECTRAL_NM", 0},    {"SPECTRAL_", 0},     {"SPEC_", 0},
    {"NM_", 0},             {"NM", 0},
};

/* "400", "400.5", "400nm", or thousandths, "400500"; 0 where it is no such number. */
static double wavelength_of(const char *text, size_t size)
{
    if (size > 2 && recede_cgats_same(text + size - 2, 2, "NM"))
        size -= 2;
    if (size > 12 || recede_number_length(text, size) != size || text[0] == '-')
        return 0;
    double nm = recede_number_value(text, size);
    return nm >= 100000 ? nm / 1000 : nm;
}

/* The scale that the column tells, 0 where it tells none, -1 where it is no band. */
static double read_band(recede_cgats_column *column)
{
    const recede_cgats_token *token = &column->token;
    for (size_t i = 0; i < COUNT(openings); i++) {
        size_t opening = strlen(openings[i].word);
        if (token->size <= opening || !recede_cgats_same(token->text, opening, openings[i].word))
            continue;
        column->nm = wavelength_of(token->text + opening, token->size - opening);
        if (column->nm > 0) {
            column->field = RECEDE_CGATS_BAND;
            return openings[i].scale;
        }
    }
    return -1;
}

static double read_column(recede_cgats_column *column)
{
    for (size_t i = 0; i < COUNT(words); i++)
        if (recede_cgats_same(column->token.text, column->token.size, words[i].word)) {
            column->field = words[i].field;
            return words[i].scale;
        }
    return read_band(column);
}

static recede_text_status refuse_column(recede_cgats_scanner *s, const char *why)
{
    char shown[RECEDE_CGATS_SHOWN];
    const recede_cgats_token *token = &s->token;
    return recede_text_refuse(s->error, token->place.line, token->place.column,
                              "found the column %s%s", recede_cgats_show(token, shown), why);
}

static recede_text_status check_column(recede_cgats_format *format, recede_cgats_scanner *s,
                                       const recede_cgats_column *column, double scale)
{
    const double shortest_nm = 200, longest_nm = 2600;
    size_t count = format->columns.count;
    int after_nm = count > 1 && recede_cgats_column_at(format, count - 2)->field ==
                                    RECEDE_CGATS_NM;
    if (column->field < RECEDE_CGATS_ONCE && column->field != RECEDE_CGATS_OTHER &&
        format->where[column->field])
        return refuse_column(s, " a second time; keep one");
    if (column->field == RECEDE_CGATS_BAND &&
        (column->nm < shortest_nm || column->nm > longest_nm))
        return refuse_column(s, "; expected a wavelength of 200 to 2600 nm in its name");
    if ((column->field == RECEDE_CGATS_READING) != after_nm)
        return refuse_column(s, after_nm ? "; expected SPECTRAL_PCT or SPECTRAL_DEC behind "
                                           "SPECTRAL_NM"
                                         : " without SPECTRAL_NM before it; put that there, or "
                                           "the wavelength into its name, as SPECTRAL_NM400");
    if (scale > 0 && format->scale > 0 && scale != format->scale)
        return refuse_column(s, ", but others count the other way; give all readings in percent "
                                "or all as shares of 1");
    return RECEDE_TEXT_OK;
}

static recede_text_status add_column(recede_cgats_format *format, recede_cgats_scanner *s)
{
    recede_cgats_column *column = recede_array_add(&format->columns);
    if (!column)
        return recede_text_no_memory(s->error);
    *column = (recede_cgats_column){.field = RECEDE_CGATS_OTHER, .token = s->token};
    if (format->columns.count > RECEDE_CGATS_MOST_FIELDS)
        return refuse_column(s, ", which is one more than 1024; export fewer columns");
    double scale = read_column(column);
    recede_text_status status = check_column(format, s, column, scale);
    if (status)
        return status;
    if (scale > 0)
        format->scale = scale;
    if (column->field < RECEDE_CGATS_ONCE)
        format->where[column->field] = format->columns.count;
    format->in_pairs = format->in_pairs || column->field == RECEDE_CGATS_NM;
    format->bands += recede_cgats_is_reading(column) ? 1 : 0;
    return RECEDE_TEXT_OK;
}

/* ---- all of them */

static recede_text_status refuse_format(const recede_cgats_format *format,
                                        recede_cgats_scanner *s, const char *what)
{
    return recede_text_refuse(s->error, format->place.line, format->place.column, "%s", what);
}

static recede_text_status check_lab(const recede_cgats_format *format, recede_cgats_scanner *s)
{
    int found = 0;
    for (int i = RECEDE_CGATS_LAB_L; i <= RECEDE_CGATS_LAB_B; i++)
        found += format->where[i] > 0;
    if (found == 0 && format->bands == 0)
        return refuse_format(format, s, "found neither spectra nor colours among the columns; "
                             "export SPECTRAL_NM400 and so on, or LAB_L LAB_A LAB_B");
    if (found != 0 && found != 3)
        return refuse_format(format, s, "found some of LAB_L, LAB_A and LAB_B, but not all; "
                             "export all three or none");
    return RECEDE_TEXT_OK;
}

static recede_text_status check_format(const recede_cgats_format *format,
                                       recede_cgats_scanner *s)
{
    size_t count = format->columns.count;
    if (count == 0)
        return refuse_format(format, s, "found no columns; name them between BEGIN_DATA_FORMAT "
                             "and END_DATA_FORMAT");
    if (recede_cgats_column_at(format, count - 1)->field == RECEDE_CGATS_NM)
        return refuse_format(format, s, "found SPECTRAL_NM as the last column; expected "
                             "SPECTRAL_PCT or SPECTRAL_DEC behind it");
    if (!format->where[RECEDE_CGATS_ID] && !format->where[RECEDE_CGATS_NAME])
        return refuse_format(format, s, "found neither SAMPLE_ID nor SAMPLE_NAME among the "
                             "columns; samples need a name to go by: add one");
    return check_lab(format, s);
}

recede_text_status recede_cgats_format_read(recede_cgats_format *format, recede_cgats_scanner *s)
{
    char shown[RECEDE_CGATS_SHOWN];
    if (format->place.line)
        return recede_text_refuse(s->error, s->token.place.line, s->token.place.column,
                                  "found a second BEGIN_DATA_FORMAT; keep one");
    format->place = s->token.place;
    for (;;) {
        recede_text_status status = recede_cgats_next_value(s);
        if (status)
            return status;
        if (recede_cgats_is(&s->token, "END_DATA_FORMAT"))
            break;
        if (s->token.kind == RECEDE_CGATS_END || recede_cgats_is(&s->token, "BEGIN_DATA"))
            return recede_text_refuse(s->error, s->token.place.line, s->token.place.column,
                                      "found %s among the columns; expected END_DATA_FORMAT "
                                      "behind the last", recede_cgats_show(&s->token, shown));
        status = add_column(format, s);
        if (status)
            return status;
    }
    recede_text_status status = check_format(format, s);
    return status ? status : recede_cgats_next(s);
}

#include "text/cgats_data.h"

#include <stdio.h>
#include <string.h>

#include "colour/memory.h"
#include "text/cgats_grid.h"
#include "text/cgats_scale.h"

typedef struct {
    recede_cgats_header *header;
    recede_cgats_scanner *scanner;
    recede_measurements *out;
    recede_cgats_grid grid;
    recede_cgats_extremes extremes;
    double *values, *room; /* one of each a column */
    const char *light_wrong;
} reader;

static size_t fields_of(const reader *r)
{
    return r->header->format.columns.count;
}

/* ---- one value */

static recede_text_status refuse_missing(const reader *r, size_t field)
{
    char shown[RECEDE_CGATS_SHOWN];
    const recede_cgats_token *token = &r->scanner->token;
    if (field == 0)
        return recede_text_refuse(r->scanner->error, token->place.line, token->place.column,
                                  "found %s; expected END_DATA behind the samples",
                                  recede_cgats_show(token, shown));
    return recede_text_refuse(r->scanner->error, token->place.line, token->place.column,
                              "found %s after %zu of the %zu values of a sample that starts in "
                              "line %zu; is a value missing there or before?",
                              recede_cgats_show(token, shown), field, fields_of(r),
                              r->out->of[r->out->count].place.line);
}

static recede_text_status read_number(reader *r, const recede_cgats_column *column,
                                      double *value)
{
    char expected[200], shown[RECEDE_CGATS_SHOWN];
    snprintf(expected, sizeof expected,
             "a number for %s (the sample starts in line %zu; is a value missing or in excess?)",
             recede_cgats_show(&column->token, shown), r->out->of[r->out->count].place.line);
    return recede_cgats_number(r->scanner, expected, value);
}

/* Wavelengths among the data are those of the first sample throughout. */
static recede_text_status take_wavelength(reader *r, size_t field, double nm)
{
    const double shortest_nm = 200, longest_nm = 2600;
    const recede_cgats_token *token = &r->scanner->token;
    recede_cgats_column *reading = recede_cgats_column_at(&r->header->format, field + 1);
    if (nm < shortest_nm || nm > longest_nm)
        return recede_text_refuse(r->scanner->error, token->place.line, token->place.column,
                                  "found %s as a wavelength; expected 200 to 2600 nm",
                                  recede_cgats_show_number(nm).text);
    if (r->out->count == 0)
        *reading = (recede_cgats_column){RECEDE_CGATS_READING, nm, *token};
    if (nm != reading->nm)
        return recede_text_refuse(r->scanner->error, token->place.line, token->place.column,
                                  "found the wavelength %s, where the first sample has %s; "
                                  "export all samples on one grid",
                                  recede_cgats_show_number(nm).text,
                                  recede_cgats_show_number(reading->nm).text);
    return RECEDE_TEXT_OK;
}

static recede_text_status read_value(reader *r, size_t field)
{
    recede_measurement *sample = &r->out->of[r->out->count];
    const recede_cgats_column *column = recede_cgats_column_at(&r->header->format, field);
    recede_text_status status;
    switch (column->field) {
    case RECEDE_CGATS_ID:
        return recede_cgats_name(r->scanner, sample->id);
    case RECEDE_CGATS_NAME:
        return recede_cgats_name(r->scanner, sample->name);
    case RECEDE_CGATS_OTHER:
        return RECEDE_TEXT_OK;
    default:
        break;
    }
    status = read_number(r, column, &r->values[field]);
    if (!status && column->field == RECEDE_CGATS_NM)
        status = take_wavelength(r, field, r->values[field]);
    if (!status && recede_cgats_is_reading(column))
        recede_cgats_extremes_note(&r->extremes, r->values[field], r->scanner->token.place);
    return status;
}

/* ---- one sample */

static recede_text_status take_lab(reader *r, recede_measurement *sample)
{
    const size_t *where = r->header->format.where;
    if (!where[RECEDE_CGATS_LAB_L] || r->light_wrong)
        return RECEDE_TEXT_OK;
    recede_lab lab = {r->values[where[RECEDE_CGATS_LAB_L] - 1],
                      r->values[where[RECEDE_CGATS_LAB_A] - 1],
                      r->values[where[RECEDE_CGATS_LAB_B] - 1]};
    if (lab.l < 0 || lab.l > 110 || lab.a < -200 || lab.a > 200 || lab.b < -200 || lab.b > 200)
        return recede_text_refuse(r->scanner->error, sample->place.line, sample->place.column,
                                  "found the colour %s %s %s in the sample that starts here; "
                                  "expected L* from 0 to 110 and a*, b* from -200 to 200",
                                  recede_cgats_show_number(lab.l).text,
                                  recede_cgats_show_number(lab.a).text,
                                  recede_cgats_show_number(lab.b).text);
    sample->has_lab = 1;
    sample->lab = recede_cgats_lab_d65(&r->header->light, lab);
    return RECEDE_TEXT_OK;
}

static recede_text_status take_spectrum(reader *r, recede_measurement *sample)
{
    recede_cgats_format *format = &r->header->format;
    if (!format->bands)
        return RECEDE_TEXT_OK;
    if (format->in_pairs && r->out->count == 0) {
        recede_text_status status =
            recede_cgats_grid_make(&r->grid, format, r->scanner->error);
        if (status)
            return status;
    }
    sample->has_reflectance = 1;
    sample->reflectance = recede_cgats_grid_bands(&r->grid, r->values, r->room);
    return RECEDE_TEXT_OK;
}

static recede_text_status check_name(const reader *r, const recede_measurement *sample)
{
    if (!sample->id[0] && !sample->name[0])
        return recede_text_refuse(r->scanner->error, sample->place.line, sample->place.column,
                                  "found a sample with an empty name; give it one");
    for (size_t i = 0; sample->id[0] && i < r->out->count; i++)
        if (strcmp(r->out->of[i].id, sample->id) == 0)
            return recede_text_refuse(r->scanner->error, sample->place.line,
                                      sample->place.column,
                                      "found the SAMPLE_ID %.60s a second time, first in line "
                                      "%zu; give each sample its own", sample->id,
                                      r->out->of[i].place.line);
    return RECEDE_TEXT_OK;
}

/* The scanner stands at its first value. */
static recede_text_status read_sample(reader *r)
{
    recede_measurement *sample = &r->out->of[r->out->count];
    memset(sample, 0, sizeof *sample);
    sample->place = r->scanner->token.place;
    for (size_t field = 0; field < fields_of(r); field++) {
        recede_text_status status = field ? recede_cgats_next_value(r->scanner) : RECEDE_TEXT_OK;
        if (status)
            return status;
        if (r->scanner->token.kind == RECEDE_CGATS_END ||
            recede_cgats_is(&r->scanner->token, "END_DATA"))
            return refuse_missing(r, field);
        status = read_value(r, field);
        if (status)
            return status;
    }
    recede_text_status status = check_name(r, sample);
    if (!status)
        status = take_lab(r, sample);
    if (!status)
        status = take_spectrum(r, sample);
    return status;
}

/* ---- all of them */

static recede_text_status refuse_count(const reader *r, int more)
{
    const recede_cgats_token *token = &r->scanner->token;
    const recede_cgats_figure *sets = &r->header->sets;
    return recede_text_refuse(r->scanner->error, token->place.line, token->place.column,
                              "found %s %zu samples, but NUMBER_OF_SETS in line %zu says %zu; "
                              "correct the number, or the samples", more ? "more than" : "only",
                              r->out->count, sets->place.line, (size_t)sets->number);
}

static recede_text_status read_samples(reader *r)
{
    for (;;) {
        recede_text_status status = recede_cgats_next_value(r->scanner);
        if (status)
            return status;
        int over = recede_cgats_is(&r->scanner->token, "END_DATA");
        if (over || (double)r->out->count == r->header->sets.number) {
            if (!over && r->scanner->token.kind == RECEDE_CGATS_END)
                return refuse_missing(r, 0);
            return over && (double)r->out->count == r->header->sets.number
                       ? RECEDE_TEXT_OK : refuse_count(r, !over);
        }
        status = read_sample(r);
        if (status)
            return status;
        r->out->count++;
    }
}

static recede_text_status check_end(const reader *r)
{
    char shown[RECEDE_CGATS_SHOWN];
    recede_text_status status = recede_cgats_next_value(r->scanner);
    const recede_cgats_token *token = &r->scanner->token;
    if (status || token->kind == RECEDE_CGATS_END)
        return status;
    return recede_text_refuse(r->scanner->error, token->place.line, token->place.column,
                              "found %s behind END_DATA; one table is read: put a second into a "
                              "file of its own", recede_cgats_show(token, shown));
}

/* Colours for an unknown light do no harm where there are spectra, and are left out. */
static recede_text_status check_light(reader *r, char *room, size_t size)
{
    const recede_cgats_format *format = &r->header->format;
    if (!format->where[RECEDE_CGATS_LAB_L])
        return RECEDE_TEXT_OK;
    r->light_wrong = recede_cgats_light_wrong(&r->header->light, room, size);
    if (!r->light_wrong || format->bands)
        return RECEDE_TEXT_OK;
    recede_place place =
        recede_cgats_column_at(format, format->where[RECEDE_CGATS_LAB_L] - 1)->token.place;
    return recede_text_refuse(r->scanner->error, place.line, place.column, "%s", r->light_wrong);
}

static recede_text_status make_room(reader *r)
{
    const recede_allocator *allocator = r->out->allocator;
    r->values = recede_allocate_array(allocator, 2 * fields_of(r), sizeof *r->values);
    r->out->of = recede_allocate_array(allocator, (size_t)r->header->sets.number,
                                       sizeof *r->out->of);
    if (!r->values || !r->out->of)
        return recede_text_no_memory(r->scanner->error);
    r->room = r->values + fields_of(r);
    return RECEDE_TEXT_OK;
}

static recede_text_status read_table(reader *r)
{
    char room[200];
    const recede_cgats_format *format = &r->header->format;
    recede_text_status status = check_light(r, room, sizeof room);
    if (!status && format->bands && !format->in_pairs)
        status = recede_cgats_grid_make(&r->grid, format, r->scanner->error);
    if (!status)
        status = make_room(r);
    if (!status)
        status = read_samples(r);
    if (!status)
        status = check_end(r);
    if (!status && format->bands)
        status = recede_cgats_to_shares(r->header, &r->extremes, r->out, r->scanner->error);
    return status;
}

recede_text_status recede_cgats_data_read(recede_cgats_header *header,
                                          recede_cgats_scanner *scanner,
                                          recede_measurements *out)
{
    reader r = {.header = header, .scanner = scanner, .out = out};
    recede_cgats_grid_start(&r.grid, out->allocator);
    recede_text_status status = read_table(&r);
    recede_cgats_grid_free(&r.grid);
    recede_release(out->allocator, r.values);
    return status;
}

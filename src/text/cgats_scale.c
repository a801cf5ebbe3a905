#include "text/cgats_scale.h"

#include <math.h>

/* Noise of black may reach below 0, paper with brighteners above 1. */
static const double least_share = -0.02, greatest_share = 1.2;
static const double surely_percent = 2; /* a reading beyond this */

void recede_cgats_extremes_note(recede_cgats_extremes *extremes, double reading,
                                recede_place place)
{
    const recede_cgats_figure figure = {reading, place};
    if (!extremes->least.place.line || reading < extremes->least.number)
        extremes->least = figure;
    if (!extremes->greatest.place.line || reading > extremes->greatest.number)
        extremes->greatest = figure;
}

/* 1 or 100; 0 where neither is sure. */
static double guess(double greatest)
{
    return greatest > surely_percent ? 100 : greatest <= greatest_share ? 1 : 0;
}

static recede_text_status find_scale(const recede_cgats_header *header,
                                     const recede_cgats_figure *greatest, double *scale,
                                     recede_text_error *error)
{
    double columns = header->format.scale;
    double norm = header->norm.place.line ? header->norm.number : 0;
    const recede_place *place = &greatest->place;
    *scale = columns > 0 ? columns : norm > 0 ? norm : guess(greatest->number);
    if (columns > 0 && norm > 0 && columns != norm)
        return recede_text_refuse(error, header->norm.place.line, header->norm.place.column,
                                  "found SPECTRAL_NORM %s, but columns named for %s; make them "
                                  "agree", norm > 1 ? "100" : "1",
                                  columns > 1 ? "percent" : "shares of 1");
    if (*scale == 0)
        return recede_text_refuse(error, place->line, place->column,
                                  "found %s as the greatest of all readings, which may be a "
                                  "share of 1 or percent; add the line SPECTRAL_NORM 1 or "
                                  "SPECTRAL_NORM 100",
                                  recede_cgats_show_number(greatest->number).text);
    if (*scale == 100 && greatest->number <= greatest_share)
        return recede_text_refuse(error, place->line, place->column,
                                  "found %s as the greatest of all readings, though they are "
                                  "said to be percent; if they are shares of 1, say "
                                  "SPECTRAL_NORM 1 or SPECTRAL_DEC",
                                  recede_cgats_show_number(greatest->number).text);
    return RECEDE_TEXT_OK;
}

static recede_text_status check_extreme(const recede_cgats_figure *figure, double scale,
                                        recede_text_error *error)
{
    double share = figure->number / scale;
    if (share >= least_share && share <= greatest_share)
        return RECEDE_TEXT_OK;
    return recede_text_refuse(error, figure->place.line, figure->place.column,
                              "found the reading %s; expected a reflectance, %s",
                              recede_cgats_show_number(figure->number).text,
                              scale > 1 ? "-2 to 120 percent" : "-0.02 to 1.2");
}

recede_text_status recede_cgats_to_shares(const recede_cgats_header *header,
                                          const recede_cgats_extremes *extremes,
                                          recede_measurements *out, recede_text_error *error)
{
    double scale;
    recede_text_status status = find_scale(header, &extremes->greatest, &scale, error);
    if (!status)
        status = check_extreme(&extremes->greatest, scale, error);
    if (!status)
        status = check_extreme(&extremes->least, scale, error);
    for (size_t i = 0; !status && i < out->count; i++)
        for (int band = 0; band < RECEDE_BANDS; band++) {
            double *share = &out->of[i].reflectance.at[band];
            *share = fmin(1, fmax(0, *share / scale));
        }
    return status;
}

#include "text/cgats_grid.h"

#include <math.h>
#include <stdlib.h>

#include "text/cgats_bands.h"

void recede_cgats_grid_start(recede_cgats_grid *grid, const recede_allocator *allocator)
{
    *grid = (recede_cgats_grid){.first_nm = 0};
    recede_array_start(&grid->nodes, allocator, sizeof(recede_cgats_node));
}

void recede_cgats_grid_free(recede_cgats_grid *grid)
{
    recede_array_free(&grid->nodes);
}

static const recede_cgats_node *node_at(const recede_cgats_grid *grid, size_t index)
{
    return (const recede_cgats_node *)grid->nodes.items + index;
}

static int by_wavelength(const void *one, const void *other)
{
    const recede_cgats_node *a = one, *b = other;
    if (a->nm != b->nm)
        return a->nm < b->nm ? -1 : 1;
    return a->column < b->column ? -1 : 1;
}

#define REFUSE_AT(place, ...) recede_text_refuse(error, (place).line, (place).column, __VA_ARGS__)

static recede_place place_of(const recede_cgats_format *format, const recede_cgats_node *node)
{
    return recede_cgats_column_at(format, node->column)->token.place;
}

/* ---- is it a grid? */

static recede_text_status check_range(const recede_cgats_grid *grid,
                                      const recede_cgats_format *format,
                                      recede_text_error *error)
{
    const double least_nm = 400, most_nm = 700;
    const recede_cgats_node *first = node_at(grid, 0);
    const recede_cgats_node *last = node_at(grid, grid->nodes.count - 1);
    if (first->nm > least_nm)
        return REFUSE_AT(place_of(format, first), "found no reading below %s nm; export at least "
                         "400 to 700 nm", recede_cgats_show_number(first->nm).text);
    if (last->nm < most_nm)
        return REFUSE_AT(place_of(format, last), "found no reading beyond %s nm; export at least "
                         "400 to 700 nm", recede_cgats_show_number(last->nm).text);
    return RECEDE_TEXT_OK;
}

/* Names of columns are often rounded to whole nm: 380, 383, 387, 390. */
static double rounding(double step_nm)
{
    return fmin(0.51, 0.2 * step_nm);
}

static recede_text_status check_steps(const recede_cgats_grid *grid,
                                      const recede_cgats_format *format,
                                      recede_text_error *error)
{
    const double coarsest_nm = 20;
    double least = INFINITY;
    for (size_t i = 1; i < grid->nodes.count; i++) {
        const recede_cgats_node *node = node_at(grid, i);
        double step = node->nm - node_at(grid, i - 1)->nm;
        if (!(step > 0))
            return REFUSE_AT(place_of(format, node), "found a second column for %s nm; keep one",
                             recede_cgats_show_number(node->nm).text);
        least = fmin(least, step);
    }
    if (least > coarsest_nm)
        return REFUSE_AT(place_of(format, node_at(grid, 1)), "found readings %s nm apart; export "
                         "them every 20 nm or closer", recede_cgats_show_number(least).text);
    for (size_t i = 1; i < grid->nodes.count; i++) {
        const recede_cgats_node *node = node_at(grid, i);
        double before = node_at(grid, i - 1)->nm;
        if (node->nm - before > least + 2 * rounding(least))
            return REFUSE_AT(place_of(format, node), "found no reading between %s and %s nm, "
                             "where others are closer; export readings evenly apart",
                             recede_cgats_show_number(before).text,
                             recede_cgats_show_number(node->nm).text);
    }
    return RECEDE_TEXT_OK;
}

static recede_text_status check_even(const recede_cgats_grid *grid,
                                     const recede_cgats_format *format,
                                     recede_text_error *error)
{
    for (size_t i = 0; i < grid->nodes.count; i++) {
        const recede_cgats_node *node = node_at(grid, i);
        double even = grid->first_nm + grid->step_nm * (double)i;
        if (fabs(node->nm - even) > rounding(grid->step_nm))
            return REFUSE_AT(place_of(format, node), "found a reading at %s nm, which would be "
                             "%s nm if all were evenly apart; export readings evenly apart",
                             recede_cgats_show_number(node->nm).text,
                             recede_cgats_show_number(even).text);
    }
    return RECEDE_TEXT_OK;
}

static recede_text_status gather(recede_cgats_grid *grid, const recede_cgats_format *format,
                                 recede_text_error *error)
{
    for (size_t i = 0; i < format->columns.count; i++) {
        const recede_cgats_column *column = recede_cgats_column_at(format, i);
        if (!recede_cgats_is_reading(column))
            continue;
        recede_cgats_node *node = recede_array_add(&grid->nodes);
        if (!node)
            return recede_text_no_memory(error);
        *node = (recede_cgats_node){column->nm, i};
    }
    qsort(grid->nodes.items, grid->nodes.count, sizeof(recede_cgats_node), by_wavelength);
    return RECEDE_TEXT_OK;
}

recede_text_status recede_cgats_grid_make(recede_cgats_grid *grid,
                                          const recede_cgats_format *format,
                                          recede_text_error *error)
{
    recede_text_status status = gather(grid, format, error);
    if (!status)
        status = check_range(grid, format, error);
    if (!status)
        status = check_steps(grid, format, error);
    if (status)
        return status;
    size_t last = grid->nodes.count - 1;
    grid->first_nm = node_at(grid, 0)->nm;
    grid->step_nm = (node_at(grid, last)->nm - grid->first_nm) / (double)last;
    return check_even(grid, format, error);
}

recede_spectrum recede_cgats_grid_bands(const recede_cgats_grid *grid, const double *values,
                                        double *room)
{
    for (size_t i = 0; i < grid->nodes.count; i++)
        room[i] = values[node_at(grid, i)->column];
    return recede_on_bands(room, grid->nodes.count, grid->first_nm, grid->step_nm);
}

#include "text/cgats.h"

#include <string.h>

#include "colour/memory.h"
#include "text/cgats_data.h"

static recede_text_status read_all(recede_cgats_header *header, recede_cgats_scanner *scanner,
                                   recede_measurements *out)
{
    recede_text_status status = recede_cgats_header_read(header, scanner);
    return status ? status : recede_cgats_data_read(header, scanner, out);
}

recede_text_status recede_measurements_read(const char *bytes, size_t size,
                                            const recede_allocator *allocator,
                                            recede_measurements *out, recede_text_error *error)
{
    recede_cgats_scanner scanner;
    recede_cgats_header header;
    *out = (recede_measurements){.allocator = allocator};
    if (size == 0)
        return recede_text_refuse(error, 1, 1, "the file is empty; expected measurements as "
                                  "CGATS.17 text");
    if (size > RECEDE_CGATS_MOST_BYTES)
        return recede_text_refuse(error, 0, 0, "the file is larger than 4 MiB; export fewer "
                                  "samples or columns");
    recede_text_status status = recede_cgats_start(&scanner, bytes, size, error);
    if (status)
        return status;
    recede_cgats_header_start(&header, allocator);
    status = read_all(&header, &scanner, out);
    recede_cgats_header_free(&header);
    if (status)
        recede_measurements_free(out);
    return status;
}

void recede_measurements_free(recede_measurements *measurements)
{
    recede_release(measurements->allocator, measurements->of);
    measurements->of = NULL;
    measurements->count = 0;
}

static size_t count_named(const recede_measurements *all, const char *name, int by_id,
                          const recede_measurement **first)
{
    size_t count = 0;
    for (size_t i = all->count; i-- > 0;) {
        const char *own = by_id ? all->of[i].id : all->of[i].name;
        if (!own[0] || strcmp(own, name) != 0)
            continue;
        *first = &all->of[i];
        count++;
    }
    return count;
}

size_t recede_measurements_named(const recede_measurements *measurements, const char *name,
                                 const recede_measurement **first)
{
    size_t count = count_named(measurements, name, 1, first);
    return count ? count : count_named(measurements, name, 0, first);
}

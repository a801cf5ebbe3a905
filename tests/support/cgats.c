#include "support/cgats.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <cmocka.h>

typedef struct reader {
    FILE *in;
    const char *path;
    char word[128];
    int has_id;
} reader;

static void refuse(const reader *r, const char *why)
{
    print_error("%s: %s\n", r->path, why);
    if (r->in)
        fclose(r->in);
    fail();
}

static int next_word(reader *r)
{
    return fscanf(r->in, "%127s", r->word) == 1;
}

static void skip_to(reader *r, const char *word)
{
    while (next_word(r))
        if (strcmp(r->word, word) == 0)
            return;
    refuse(r, "ends too soon");
}

/* SPEC_380 and SPEC_380000 both mean 380 nm. */
static void read_format(reader *r, cgats *out)
{
    while (next_word(r) && strcmp(r->word, "END_DATA_FORMAT") != 0) {
        double nm;
        if (strcmp(r->word, "SAMPLE_ID") == 0)
            r->has_id = 1;
        else if (sscanf(r->word, "SPEC_%lf", &nm) != 1 || out->bands == CGATS_MOST_BANDS)
            refuse(r, "a field is not understood, or one too many");
        else
            out->nm[out->bands++] = nm > 10000 ? nm / 1000 : nm;
    }
}

static void read_set(reader *r, cgats *out)
{
    int set = out->sets++;
    if (set == CGATS_MOST_SETS)
        refuse(r, "too many sets");
    if (r->has_id) {
        strcpy(out->id[set], r->word);
        if (!next_word(r))
            refuse(r, "ends too soon");
    }
    for (int i = 0; i < out->bands; i++) {
        char *end;
        out->value[set][i] = strtod(r->word, &end);
        if (*end || end == r->word)
            refuse(r, "a value is not a number");
        if (i + 1 < out->bands && !next_word(r))
            refuse(r, "ends too soon");
    }
}

void cgats_read(const char *path, cgats *out)
{
    reader r = {.in = fopen(path, "r"), .path = path};
    memset(out, 0, sizeof *out);
    if (!r.in)
        refuse(&r, "cannot be opened (package colord-data)");
    skip_to(&r, "BEGIN_DATA_FORMAT");
    read_format(&r, out);
    skip_to(&r, "BEGIN_DATA");
    while (next_word(&r) && strcmp(r.word, "END_DATA") != 0)
        read_set(&r, out);
    fclose(r.in);
    if (!out->sets)
        fail_msg("%s: holds no data", path);
}

double cgats_at(const cgats *c, int set, double nm)
{
    for (int i = 0; i < c->bands; i++)
        if (c->nm[i] == nm)
            return c->value[set][i];
    return NAN;
}

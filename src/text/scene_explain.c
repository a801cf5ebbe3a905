#include "text/scene_explain.h"

#include <stdio.h>
#include <string.h>

#include "text/numbers.h"
#include "text/scene_fields.h"

/* Where an error stands in the file, and what stands there. */
typedef struct {
    recede_place place;
    const char *unit;
    char key[RECEDE_NAME_SIZE];
    char found[RECEDE_SHOWN_SIZE];
} subject;

static void with_unit(char *out, size_t size, double number, const char *unit)
{
    char text[RECEDE_NUMBER_SIZE];
    recede_number_trimmed(text, number, 6);
    snprintf(out, size, "%s%s", text, unit);
}

/* The last name of a path: "distance" of "planes[2].distance". */
static void last_name(const char *path, char *out, size_t size)
{
    const char *dot = strrchr(path, '.');
    snprintf(out, size, "%s", dot ? dot + 1 : path);
}

static subject subject_of(const recede_tree *tree, const recede_error *core)
{
    subject s;
    int whole;
    size_t value = recede_tree_find(tree, core->path, &whole);
    const recede_field *field = recede_field_of_path(core->path);
    s.place = recede_tree_place(tree, value)->value;
    s.unit = field ? field->form->unit : "";
    last_name(core->path, s.key, sizeof s.key);
    if (whole)
        recede_show_value(tree, value, s.found);
    else
        with_unit(s.found, sizeof s.found, core->number, s.unit);
    return s;
}

static recede_text_status explain_range(const subject *s, const recede_error *core,
                                        recede_text_error *error)
{
    char least[60], most[60];
    with_unit(least, sizeof least, core->least, s->unit);
    with_unit(most, sizeof most, core->most, s->unit);
    int bare = *s->unit && (*s->found == '-' || (*s->found >= '0' && *s->found <= '9'));
    return recede_text_refuse(error, s->place.line, s->place.column,
                              "%s is %s%s; expected %s to %s", s->key, s->found,
                              bare ? ", which is metres without a unit" : "", least, most);
}

static recede_text_status explain_count(const subject *s, const recede_error *core,
                                        recede_text_error *error)
{
    return recede_text_refuse(error, s->place.line, s->place.column,
                              "%s has %.0f entries; expected %.0f to %.0f", s->key, core->number,
                              core->least, core->most);
}

static recede_text_status explain_name(const subject *s, const recede_error *core,
                                       recede_text_error *error)
{
    const char *what = core->code == RECEDE_DUPLICATE ? "stands twice; give each its own"
                                                      : "is not known; check how it is written";
    return recede_text_refuse(error, s->place.line, s->place.column, "%s \"%s\" %s", s->key,
                              core->found, what);
}

static recede_text_status explain_white(const subject *s, const recede_error *core,
                                        recede_text_error *error)
{
    (void)core;
    return recede_text_refuse(error, s->place.line, s->place.column,
                              "opaque media are lightened with white and this palette has none; "
                              "add \"titanium white\"");
}

static recede_text_status explain_conflict(const subject *s, const recede_error *core,
                                           recede_text_error *error)
{
    (void)core;
    return recede_text_refuse(error, s->place.line, s->place.column,
                              "%s contradicts another field; drop one of the two", s->key);
}

typedef recede_text_status wording(const subject *, const recede_error *, recede_text_error *);

static wording *const wordings[] = {
    [RECEDE_OUT_OF_RANGE] = explain_range, [RECEDE_NOT_FINITE] = explain_range,
    [RECEDE_UNKNOWN_NAME] = explain_name,  [RECEDE_DUPLICATE] = explain_name,
    [RECEDE_TOO_MANY] = explain_count,     [RECEDE_TOO_FEW] = explain_count,
    [RECEDE_NO_WHITE] = explain_white,     [RECEDE_CONFLICT] = explain_conflict,
};

recede_text_status recede_explain(const recede_tree *tree, const recede_error *core,
                                  recede_text_error *error)
{
    if (core->code == RECEDE_NO_MEMORY)
        return recede_text_no_memory(error);
    subject s = subject_of(tree, core);
    size_t code = (size_t)core->code;
    if (code < sizeof wordings / sizeof wordings[0] && wordings[code])
        return wordings[code](&s, core, error);
    return recede_text_refuse(error, 0, 0, "stopped before the end");
}

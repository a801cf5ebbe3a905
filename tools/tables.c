/*
 * Compiles one text table of src/data/ into C.
 *
 *     tables IN.txt > OUT.c
 *
 * A table starts with a head and holds records after a line '---':
 *
 *     record recede_pigment recede_table_pigments    type and array
 *     field name text                                in any order
 *     field k spectrum                               36 numbers
 *     field x number
 *     field opaque integer
 *     ---
 *     name: titanium white
 *     k: 1.5522 0.55725 ...
 *       0.0012 ...                 a line that starts with a blank continues
 *
 * A blank line ends a record; '#' at the start of a line is a comment. With
 * 'rows' in the head each line is a record of numbers in the fields' order.
 */
#include <ctype.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MOST_FIELDS = 24, LINE_SIZE = 8192, VALUE_SIZE = 65536, BANDS = 36 };

typedef enum { TEXT, NUMBER, INTEGER, SPECTRUM, KINDS } kind;
static const char *const kind_names[KINDS] = {"text", "number", "integer", "spectrum"};

typedef struct {
    char name[64];
    kind kind;
    char *value;
    int given;
} field;

typedef struct {
    const char *path;
    int line;
    FILE *in;
    char type[64], array[64];
    int rows, records, field_count;
    field fields[MOST_FIELDS];
} table;

static _Noreturn void refuse(const table *t, const char *format, ...)
{
    va_list list;
    fprintf(stderr, "%s:%d: ", t->path, t->line);
    va_start(list, format);
    vfprintf(stderr, format, list);
    va_end(list);
    fputc('\n', stderr);
    exit(1);
}

static int read_line(table *t, char *line)
{
    do {
        if (!fgets(line, LINE_SIZE, t->in))
            return 0;
        t->line++;
        size_t length = strlen(line);
        if (length == LINE_SIZE - 1)
            refuse(t, "a line is too long");
        while (length && isspace((unsigned char)line[length - 1]))
            line[--length] = '\0';
    } while (line[0] == '#');
    return 1;
}

static void read_head(table *t)
{
    char line[LINE_SIZE], name[64], word[64];
    while (read_line(t, line)) {
        if (strcmp(line, "---") == 0)
            break;
        if (strcmp(line, "rows") == 0) {
            t->rows = 1;
        } else if (sscanf(line, "field %63s %63s", name, word) == 2) {
            int k = 0;
            while (k < KINDS && strcmp(word, kind_names[k]) != 0)
                k++;
            if (k == KINDS || t->field_count == MOST_FIELDS)
                refuse(t, "a field of unknown kind, or one too many: %s", line);
            field *f = &t->fields[t->field_count++];
            memcpy(f->name, name, sizeof name);
            f->kind = (kind)k;
            f->value = calloc(1, VALUE_SIZE);
            if (!f->value)
                refuse(t, "out of memory");
        } else if (line[0] && sscanf(line, "record %63s %63s", t->type, t->array) != 2) {
            refuse(t, "not understood: %s", line);
        }
    }
    if (!t->type[0] || !t->field_count)
        refuse(t, "the head needs 'record' and at least one 'field'");
}

static void write_text(const char *text)
{
    putchar('"');
    for (; *text; text++) {
        if (*text == '"' || *text == '\\')
            putchar('\\');
        putchar(*text);
    }
    putchar('"');
}

/* Writes the numbers of a value as C, and insists on how many there are. */
static void write_numbers(const table *t, const field *f, int expected)
{
    const char *at = f->value;
    for (int i = 0; i < expected; i++) {
        char *end;
        double number = strtod(at, &end);
        if (end == at)
            refuse(t, "%s needs %d numbers and has %d", f->name, expected, i);
        printf(i ? ", %.17g" : "%.17g", number);
        at = end;
    }
    while (isspace((unsigned char)*at))
        at++;
    if (*at)
        refuse(t, "%s needs %d numbers, but there is more: %s", f->name, expected, at);
}

static void write_record(table *t)
{
    printf("    {");
    for (int i = 0; i < t->field_count; i++) {
        field *f = &t->fields[i];
        if (!f->given && f->kind != TEXT)
            refuse(t, "the record before this line lacks '%s'", f->name);
        printf("%s.%s = ", i ? ", " : "", f->name);
        if (f->kind == TEXT) {
            write_text(f->value);
        } else if (f->kind == SPECTRUM) {
            printf("{{");
            write_numbers(t, f, BANDS);
            printf("}}");
        } else {
            write_numbers(t, f, 1);
        }
        f->given = 0;
        f->value[0] = '\0';
    }
    printf("},\n");
    t->records++;
}

static void append(const table *t, field *f, const char *text)
{
    while (isspace((unsigned char)*text))
        text++;
    size_t used = strlen(f->value);
    if (used + strlen(text) + 2 > VALUE_SIZE)
        refuse(t, "%s is too long", f->name);
    if (used)
        strcat(f->value, " ");
    strcat(f->value, text);
}

static field *start_field(table *t, char *line)
{
    char *colon = strchr(line, ':');
    if (!colon)
        refuse(t, "expected 'field: value': %s", line);
    *colon = '\0';
    for (int i = 0; i < t->field_count; i++) {
        field *f = &t->fields[i];
        if (strcmp(f->name, line) == 0) {
            if (f->given)
                refuse(t, "'%s' stands twice", line);
            f->given = 1;
            append(t, f, colon + 1);
            return f;
        }
    }
    refuse(t, "no field is called '%s'", line);
    return NULL;
}

static void read_row(table *t, char *line)
{
    char *word = strtok(line, " \t");
    for (int i = 0; i < t->field_count; i++, word = strtok(NULL, " \t")) {
        if (!word)
            refuse(t, "a row needs %d numbers", t->field_count);
        t->fields[i].given = 1;
        append(t, &t->fields[i], word);
    }
    if (word)
        refuse(t, "a row needs %d numbers, but there is more", t->field_count);
    write_record(t);
}

static void read_records(table *t)
{
    char line[LINE_SIZE];
    field *open = NULL;
    while (read_line(t, line)) {
        if (!line[0]) {
            if (open)
                write_record(t);
            open = NULL;
        } else if (t->rows) {
            read_row(t, line);
        } else if (isspace((unsigned char)line[0])) {
            if (!open)
                refuse(t, "a line continues nothing");
            append(t, open, line);
        } else {
            open = start_field(t, line);
        }
    }
    if (open)
        write_record(t);
    if (!t->records)
        refuse(t, "no records");
}

int main(int count, char **words)
{
    static table t;
    if (count != 2) {
        fprintf(stderr, "usage: tables IN.txt > OUT.c\n");
        return 2;
    }
    t.path = words[1];
    t.in = fopen(t.path, "r");
    if (!t.in) {
        perror(t.path);
        return 3;
    }
    read_head(&t);
    printf("/* Made by tools/tables.c; edit the table it came from. */\n"
           "#include \"data/tables.h\"\n\nconst %s %s[] = {\n", t.type, t.array);
    read_records(&t);
    printf("};\nconst size_t %s_count = %d;\n", t.array, t.records);
    for (int i = 0; i < t.field_count; i++)
        free(t.fields[i].value);
    fclose(t.in);
    return fflush(stdout) || ferror(stdout) ? 3 : 0;
}

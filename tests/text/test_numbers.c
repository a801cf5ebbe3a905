/* Numbers as text, also where the program has set a locale with a decimal
 * comma or a decimal point of two bytes. Such locales are made by the test with
 * localedef, from sources of its own. */
#include <locale.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "support/assert_near.h"
#include "text/buffer.h"
#include "text/numbers.h"

static unsigned long seed = 7;

static unsigned long next(void)
{
    seed = seed * 6364136223846793005UL + 1442695040888963407UL;
    return seed ^ seed >> 29;
}

/* Any finite double: random bits. */
static double any_double(void)
{
    for (;;) {
        unsigned long bits = next() << 32 ^ next();
        double number;
        memcpy(&number, &bits, sizeof number);
        if (isfinite(number))
            return number;
    }
}

static void check_round_trips(void)
{
    for (int i = 0; i < 100000; i++) {
        char text[RECEDE_NUMBER_SIZE];
        double number = i % 2 ? any_double() : (double)(long)(next() % 2000001) / 1000.0;
        size_t length = recede_number_write(text, number);
        double back = recede_number_value(text, length);
        assert_int_equal(length, strlen(text));
        assert_int_equal(recede_number_length(text, length), length); /* it is JSON */
        assert_null(strchr(text, ','));
        assert_memory_equal(&back, &number, sizeof back);
    }
}

static void numbers_read_back_the_same(void **state)
{
    (void)state;
    check_round_trips();
}

static void the_shortest_is_written(void **state)
{
    static const struct { double number; const char *text; } cases[] = {
        {0.1, "0.1"}, {1.0, "1"}, {0.38, "0.38"}, {1.0 / 3.0, "0.3333333333333333"},
        {0.1 + 0.2, "0.30000000000000004"}, {-2.5e-7, "-2.5e-07"}, {1e22, "1e+22"}, {0.0, "0"},
    };
    char text[RECEDE_NUMBER_SIZE];
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        recede_number_write(text, cases[i].number);
        assert_string_equal(text, cases[i].text);
    }
}

static void decimals_are_rounded(void **state)
{
    char text[RECEDE_NUMBER_SIZE];
    (void)state;
    recede_number_fixed(text, 2.46, 1);
    assert_string_equal(text, "2.5");
    recede_number_fixed(text, -0.04, 1);
    assert_string_equal(text, "0.0"); /* no -0.0 on a painter's sheet */
    recede_number_trimmed(text, 2.0, 3);
    assert_string_equal(text, "2");
    recede_number_trimmed(text, 100.0, 0);
    assert_string_equal(text, "100");
    recede_number_trimmed(text, 2.50, 3);
    assert_string_equal(text, "2.5");
}

static void lengths_follow_the_grammar(void **state)
{
    static const struct { const char *text; size_t length; } cases[] = {
        {"12 m", 2},  {"0", 1},   {"-0.5x", 4}, {"1e3", 3}, {"1e", 1},     {"1.e3", 1},
        {"01", 1},    {"+1", 0},  {".5", 0},    {"-", 0},   {"1.5e-2", 6}, {"", 0},
        {"400yd", 3}, {"1,5", 1}, {"nan", 0},   {"0x1", 1},
    };
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++)
        assert_int_equal(recede_number_length(cases[i].text, strlen(cases[i].text)),
                         cases[i].length);
}

/* ---- locales */

static const char locale_source[] =
    "escape_char /\ncomment_char %%\n"
    "LC_NUMERIC\ndecimal_point \"%s\"\nthousands_sep \"%s\"\ngrouping 3;3\nEND LC_NUMERIC\n";

/* Makes a locale with such a decimal point under folder; 0 where it cannot. */
static int make_locale(const char *folder, const char *name, const char *point,
                       const char *thousands)
{
    char path[200], command[700];
    snprintf(path, sizeof path, "%s/%s.src", folder, name);
    FILE *file = fopen(path, "w");
    if (!file)
        return 0;
    fprintf(file, locale_source, point, thousands);
    fclose(file);
    /* it warns that all other categories are missing, and leaves them out */
    snprintf(command, sizeof command,
             "localedef -c --quiet --no-archive -f UTF-8 -i %s %s/%s >/dev/null 2>&1", path,
             folder, name);
    if (system(command) > 1 << 8)
        return 0;
    snprintf(path, sizeof path, "%s/%s/LC_NUMERIC", folder, name);
    return access(path, R_OK) == 0;
}

static void check_in_locale(const char *point, const char *codes, const char *thousands)
{
    char folder[] = "/tmp/recede-locale-XXXXXX", text[RECEDE_NUMBER_SIZE], printed[40];
    assert_non_null(mkdtemp(folder));
    if (!make_locale(folder, "test", codes, thousands)) {
        print_message("localedef cannot make a locale here: not tested\n");
        skip();
    }
    setenv("LOCPATH", folder, 1);
    assert_non_null(setlocale(LC_NUMERIC, "test"));
    snprintf(printed, sizeof printed, "%.1f", 0.5);
    assert_non_null(strstr(printed, point)); /* the locale is at work */

    check_round_trips();
    recede_number_write(text, 0.38);
    assert_string_equal(text, "0.38");
    recede_number_trimmed(text, 1234.5, 2);
    assert_string_equal(text, "1234.5");
    assert_near(recede_number_value("1.25e1", 6), 12.5, 0.0);

    setlocale(LC_NUMERIC, "C");
    unsetenv("LOCPATH");
    snprintf(printed, sizeof printed, "rm -r %s", folder);
    assert_int_equal(system(printed), 0);
}

static void a_decimal_comma_changes_nothing(void **state)
{
    (void)state;
    check_in_locale(",", "<U002C>", "<U002E>");
}

static void a_point_of_two_bytes_changes_nothing(void **state)
{
    (void)state;
    check_in_locale("\xD9\xAB", "<U066B>", "<U066C>");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(numbers_read_back_the_same),
        cmocka_unit_test(the_shortest_is_written),
        cmocka_unit_test(decimals_are_rounded),
        cmocka_unit_test(lengths_follow_the_grammar),
        cmocka_unit_test(a_decimal_comma_changes_nothing),
        cmocka_unit_test(a_point_of_two_bytes_changes_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

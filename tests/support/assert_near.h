/* cmocka's float assertions compare in single precision; these do not. */
#ifndef RECEDE_TESTS_ASSERT_NEAR_H
#define RECEDE_TESTS_ASSERT_NEAR_H

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <cmocka.h>

static inline void assert_near_at(double found, double expected, double tolerance,
                                  const char *what, const char *file, int line)
{
    if (!(fabs(found - expected) <= tolerance)) {
        print_error("%s: found %.12g, expected %.12g within %.3g\n", what, found, expected,
                    tolerance);
        _fail(file, line);
    }
}

#define assert_near(found, expected, tolerance) \
    assert_near_at((found), (expected), (tolerance), #found, __FILE__, __LINE__)
#define assert_below(found, limit) assert_below_at((found), (limit), #found, __FILE__, __LINE__)

/* found <= limit, and finite */
static inline void assert_below_at(double found, double limit, const char *what,
                                   const char *file, int line)
{
    if (!(found <= limit)) {
        print_error("%s: found %.12g, expected at most %.12g\n", what, found, limit);
        _fail(file, line);
    }
}

#endif

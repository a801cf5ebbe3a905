/* A library that is loaded before the program's own (LD_PRELOAD) and makes its
 * memory run out, its system calls fail and interrupts arrive, at a place chosen
 * by tests/faults/driver.py.
 *
 * Each place where that can happen is a point. At a point the process asks the
 * driver over a socket; told to try a fault it forks: the child meets the fault
 * and runs on to its end, while the parent waits, reports what became of the
 * child, and then goes on without a fault. So one run of a command tries all of
 * its points, and each fault costs only what comes after it.
 *
 * RECEDE_FAULTS           what the points are: allocations, drawing or calls
 * RECEDE_FAULT_CONTROL    the number of the socket
 * RECEDE_FAIL_ALLOCATION  without a driver: the number of the one allocation that
 *                         fails; 0 to have them counted only
 * RECEDE_FAULT_COUNT      the file into which the count is written then
 * RECEDE_FAULT_TRACE      set: the callers of the allocation that fails are shown */
#ifndef RECEDE_TESTS_FAULTS_POINTS_H
#define RECEDE_TESTS_FAULTS_POINTS_H

#include <stdint.h>

typedef enum { FAULTS_NONE, FAULTS_ALLOCATIONS, FAULTS_DRAWING, FAULTS_CALLS } fault_kind;

typedef enum {
    FAULT_NOTHING = 'g', /* go on; value: how many points to pass before asking again */
    FAULT_FAIL = 'f',    /* value: errno */
    FAULT_LAST = 'F',    /* the same for this and all later points of this name */
    FAULT_AFTER = 'd',   /* done, and errno reported all the same */
    FAULT_SHORT = 's',   /* value: the most bytes, this time */
    FAULT_SHORTS = 'S',  /* the same from now on */
    FAULT_HALF = 'h',    /* half the bytes, and the next time errno */
    FAULT_SIGNAL = 'b',  /* value: a signal, before the call */
    FAULT_SIGNALLED = 'a' /* after it */
} fault_action;

typedef struct {
    int32_t action, value;
} fault_order;

/* Whose code called: by the return address. */
typedef enum { CALLER_OTHER, CALLER_OURS, CALLER_DRAWING } fault_caller;
fault_caller fault_caller_of(const void *address);

/* Where the code of the program, from its start, called; 0 for other places. */
uintptr_t fault_offset_of(const void *address);

/* Passes a point of that kind and name; the order holds for the caller. */
fault_order fault_at(fault_kind kind, const char *name);

/* The program's own blocks that are not yet freed; one of those that called for
 * them, or NULL. */
long fault_live_blocks(const void **caller);

#endif

#define _GNU_SOURCE
#include "points.h"

#include <dirent.h>
#include <errno.h>
#include <execinfo.h>
#include <fcntl.h>
#include <link.h>
#include <pthread.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/syscall.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

enum { RANGES = 200, FILES = 16, MOST_SECONDS = 30 };

/* ---- whose code */

typedef struct {
    uintptr_t from, to;
    fault_caller caller;
} range;

static range ranges[RANGES];
static int range_count;
static uintptr_t program_start;

static fault_caller caller_named(const char *path)
{
    static const char *const ours[] = {"libcjson", "libpng"};
    static const char *const drawing[] = {"libcairo",   "libpango",  "libglib", "libgobject",
                                          "libfontconfig", "libfreetype", "libharfbuzz", "libexpat",
                                          "libpixman",  "libfribidi", "libthai", "libgio"};
    if (!*path)
        return CALLER_OURS; /* the program itself */
    for (size_t i = 0; i < sizeof ours / sizeof ours[0]; i++)
        if (strstr(path, ours[i]))
            return CALLER_OURS;
    for (size_t i = 0; i < sizeof drawing / sizeof drawing[0]; i++)
        if (strstr(path, drawing[i]))
            return CALLER_DRAWING;
    return CALLER_OTHER;
}

static int add_ranges(struct dl_phdr_info *info, size_t size, void *context)
{
    (void)size;
    (void)context;
    fault_caller caller = caller_named(info->dlpi_name);
    if (!*info->dlpi_name)
        program_start = info->dlpi_addr;
    for (int i = 0; i < info->dlpi_phnum && range_count < RANGES; i++) {
        const ElfW(Phdr) *part = &info->dlpi_phdr[i];
        if (caller == CALLER_OTHER || part->p_type != PT_LOAD || !(part->p_flags & PF_X))
            continue;
        uintptr_t from = info->dlpi_addr + part->p_vaddr;
        ranges[range_count++] = (range){from, from + part->p_memsz, caller};
    }
    return 0;
}

fault_caller fault_caller_of(const void *address)
{
    uintptr_t at = (uintptr_t)address;
    for (int i = 0; i < range_count; i++)
        if (at >= ranges[i].from && at < ranges[i].to)
            return ranges[i].caller;
    return CALLER_OTHER;
}

uintptr_t fault_offset_of(const void *address)
{
    uintptr_t at = (uintptr_t)address;
    return range_count && at >= ranges[0].from && at < ranges[0].to ? at - program_start : 0;
}

/* ---- the driver */

/* What a child leaves behind for its parent. */
typedef struct {
    int64_t live, leaked_at;
} remains;

typedef struct {
    fault_order order;
    int64_t at; /* the point's number: this one, or one that the child comes to later */
} message;

typedef struct {
    int32_t what; /* 'a' at a point, 'e' a child has ended, 'd' done */
    int32_t status;
    int64_t number, live, leaked_at;
    char name[40];
} report;

static struct {
    fault_kind kind;
    int control, busy, child, alone;
    pthread_t thread;
    int64_t number, skip, alone_number;
    message order;     /* the child's */
    char name[40];     /* of the point where it was met */
    remains *remains;
} state = {.control = -1};

static void fail_for_good(const char *what)
{
    fprintf(stderr, "faults: %s\n", what);
    syscall(SYS_exit_group, 99);
}

static void tell(int what, int status, const char *name)
{
    report r = {.what = what, .status = status, .number = state.number};
    strncpy(r.name, name, sizeof r.name - 1);
    if (what == 'a') {
        r.live = r.leaked_at = 0;
    } else {
        r.live = state.remains->live;
        r.leaked_at = state.remains->leaked_at;
    }
    if (syscall(SYS_write, state.control, &r, sizeof r) != (long)sizeof r)
        fail_for_good("the driver does not listen");
}

static message hear(void)
{
    message heard;
    if (syscall(SYS_read, state.control, &heard, sizeof heard) != (long)sizeof heard)
        fail_for_good("the driver does not answer");
    return heard;
}

/* The child shares the places in files with its parent. */
static void exchange_places(off_t places[FILES], int restore)
{
    for (int file = 0; file < FILES; file++) {
        if (file == state.control)
            continue;
        if (!restore)
            places[file] = lseek(file, 0, SEEK_CUR);
        else if (places[file] >= 0)
            lseek(file, places[file], SEEK_SET);
    }
}

/* A thread of a drawing library does not live on in a child; one just begun is given
 * time to come to rest, so that it holds no lock. */
static void let_threads_rest(void)
{
    static const struct timespec rest = {0, 200000000};
    static int known = 1;
    int count = -2; /* "." and ".." */
    DIR *threads = opendir("/proc/self/task");
    while (threads && readdir(threads))
        count++;
    if (threads)
        closedir(threads);
    if (count > known)
        nanosleep(&rest, NULL);
    known = count;
}

/* 1 in the child. */
static int try_in_child(message order, const char *name)
{
    off_t places[FILES];
    int status = 0;
    let_threads_rest();
    exchange_places(places, 0);
    *state.remains = (remains){-1, 0};
    pid_t child = fork();
    if (child < 0)
        fail_for_good("no fork");
    if (child == 0) {
        syscall(SYS_close, state.control);
        state.child = 1;
        state.order = order;
        alarm(MOST_SECONDS);
        return 1;
    }
    while (waitpid(child, &status, 0) < 0 && errno == EINTR)
        continue;
    exchange_places(places, 1);
    tell('e', status, name);
    return 0;
}

static const fault_order nothing = {FAULT_NOTHING, 0};

/* What a child meets at a point: the fault where it was told to, or one that goes on. */
static fault_order in_child(const char *name)
{
    fault_order *order = &state.order.order;
    if (state.number == state.order.at) {
        strncpy(state.name, name, sizeof state.name - 1);
        return *order;
    }
    if (strcmp(name, state.name) != 0)
        return nothing;
    switch (order->action) {
    case FAULT_LAST:
    case FAULT_SHORTS:
        return *order;
    case FAULT_HALF:
        order->action = FAULT_NOTHING;
        return (fault_order){FAULT_FAIL, order->value};
    default:
        return nothing;
    }
}

static fault_order ask(const char *name)
{
    tell('a', 0, name);
    for (;;) {
        message heard = hear();
        if (heard.order.action == FAULT_NOTHING) {
            state.skip = heard.order.value;
            return nothing;
        }
        if (try_in_child(heard, name))
            return in_child(name);
    }
}

/* For a person who looks for the place of a fault. */
static void show_callers(void)
{
    enum { CALLERS = 40 };
    void *callers[CALLERS];
    if (!getenv("RECEDE_FAULT_TRACE"))
        return;
    state.busy = 1;
    backtrace_symbols_fd(callers, backtrace(callers, CALLERS), STDERR_FILENO);
    state.busy = 0;
}

fault_order fault_at(fault_kind kind, const char *name)
{
    static const fault_order no_memory = {FAULT_FAIL, ENOMEM};
    if (kind != state.kind || state.busy || !pthread_equal(pthread_self(), state.thread))
        return nothing;
    state.number++;
    if (state.alone) {
        if (state.number == state.alone_number)
            show_callers();
        return state.number == state.alone_number ? no_memory : nothing;
    }
    if (state.child)
        return in_child(name);
    if (state.skip > 0) {
        state.skip--;
        return nothing;
    }
    int error = errno;
    state.busy = 1;
    fault_order order = ask(name);
    state.busy = 0;
    errno = error;
    return order;
}

/* ---- start and end */

static fault_kind kind_named(const char *name)
{
    static const char *const names[] = {"", "allocations", "drawing", "calls"};
    for (int i = 1; i < (int)(sizeof names / sizeof names[0]); i++)
        if (name && strcmp(name, names[i]) == 0)
            return (fault_kind)i;
    return FAULTS_NONE;
}

__attribute__((constructor)) static void begin(void)
{
    const char *control = getenv("RECEDE_FAULT_CONTROL"), *alone = getenv("RECEDE_FAIL_ALLOCATION");
    dl_iterate_phdr(add_ranges, NULL);
    state.thread = pthread_self();
    state.remains = mmap(NULL, sizeof *state.remains, PROT_READ | PROT_WRITE,
                         MAP_SHARED | MAP_ANONYMOUS, -1, 0);
    if (state.remains == MAP_FAILED)
        fail_for_good("no shared memory");
    state.control = control ? atoi(control) : -1;
    state.alone = alone != NULL;
    state.alone_number = alone ? atol(alone) : 0;
    if (control)
        fcntl(state.control, F_SETFD, FD_CLOEXEC);
    if (control || alone)
        state.kind = kind_named(getenv("RECEDE_FAULTS"));
    if (alone && !state.kind)
        state.kind = FAULTS_ALLOCATIONS;
}

static void write_count(void)
{
    const char *path = getenv("RECEDE_FAULT_COUNT");
    FILE *file = path ? fopen(path, "w") : NULL;
    if (!file)
        return;
    fprintf(file, "%lld\n", (long long)state.number);
    fclose(file);
}

__attribute__((destructor)) static void end(void)
{
    const void *caller = NULL;
    if (state.kind == FAULTS_NONE)
        return;
    state.busy = 1;
    state.remains->live = fault_live_blocks(&caller);
    state.remains->leaked_at = (int64_t)fault_offset_of(caller);
    if (state.alone)
        write_count();
    else if (!state.child)
        tell('d', 0, "");
}

/* The system calls by which the program reads and writes; each that it makes is
 * a point, named for what it is made on. */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdarg.h>
#include <stdio.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>

#include "points.h"

#define CALLER __builtin_return_address(0)

static fault_order point(const void *caller, const char *name)
{
    static const fault_order nothing = {FAULT_NOTHING, 0};
    return fault_caller_of(caller) == CALLER_OURS ? fault_at(FAULTS_CALLS, name) : nothing;
}

/* 1 where the call is not made; then errno is set. */
static int prevented(fault_order order)
{
    if (order.action == FAULT_SIGNAL)
        raise(order.value);
    if (order.action != FAULT_FAIL && order.action != FAULT_LAST)
        return 0;
    errno = order.value;
    return 1;
}

static long finished(fault_order order, long result)
{
    if (order.action == FAULT_SIGNALLED)
        raise(order.value);
    if (order.action != FAULT_AFTER)
        return result;
    errno = order.value;
    return -1;
}

static size_t most(fault_order order, size_t size)
{
    if (order.action == FAULT_HALF)
        return size / 2;
    if (order.action != FAULT_SHORT && order.action != FAULT_SHORTS)
        return size;
    return size < (size_t)order.value ? size : (size_t)order.value;
}

/* "VERB what was read" and the like. */
static const char *name_on(int file, const char *const names[4])
{
    struct stat status;
    int flags = (int)syscall(SYS_fcntl, file, F_GETFL);
    if (flags >= 0 && (flags & O_DIRECTORY))
        return names[2];
    if (flags >= 0 && (flags & O_ACCMODE) == O_RDONLY)
        return names[0];
    if (syscall(SYS_fstat, file, &status) == 0 && status.st_size == 0)
        return names[3];
    return names[1];
}

static long open_at(const void *caller, const char *path, int flags, mode_t mode)
{
    const char *name = flags & O_DIRECTORY                   ? "open a folder"
                       : (flags & O_ACCMODE) == O_RDONLY ? "open to read"
                                                         : "open to write";
    fault_order order = point(caller, name);
    if (prevented(order))
        return -1;
    return finished(order, syscall(SYS_openat, AT_FDCWD, path, flags, mode));
}

int open(const char *path, int flags, ...)
{
    mode_t mode = 0;
    if (flags & (O_CREAT | O_TMPFILE)) {
        va_list list;
        va_start(list, flags);
        mode = va_arg(list, mode_t);
        va_end(list);
    }
    return (int)open_at(CALLER, path, flags, mode);
}

int __open_2(const char *path, int flags);
int __open_2(const char *path, int flags)
{
    return (int)open_at(CALLER, path, flags, 0);
}

static long read_at(const void *caller, int file, void *bytes, size_t size)
{
    fault_order order = point(caller, "read");
    if (prevented(order))
        return -1;
    return finished(order, syscall(SYS_read, file, bytes, most(order, size)));
}

ssize_t read(int file, void *bytes, size_t size)
{
    return read_at(CALLER, file, bytes, size);
}

ssize_t __read_chk(int file, void *bytes, size_t size, size_t room);
ssize_t __read_chk(int file, void *bytes, size_t size, size_t room)
{
    return read_at(CALLER, file, bytes, size < room ? size : room);
}

ssize_t write(int file, const void *bytes, size_t size)
{
    fault_order order = point(CALLER, "write");
    if (prevented(order))
        return -1;
    return finished(order, syscall(SYS_write, file, bytes, most(order, size)));
}

int fsync(int file)
{
    static const char *const names[] = {"sync", "sync", "sync a folder", "sync"};
    fault_order order = point(CALLER, name_on(file, names));
    return prevented(order) ? -1 : (int)finished(order, syscall(SYS_fsync, file));
}

int close(int file)
{
    static const char *const names[] = {"close what was read", "close what was written",
                                        "close a folder", "close an empty file"};
    const char *name = file == STDOUT_FILENO ? "close standard output" : name_on(file, names);
    fault_order order = point(CALLER, name);
    return prevented(order) ? -1 : (int)finished(order, syscall(SYS_close, file));
}

/* The rest is all alike. */
#define WATCHED(name, parameters, ...)                                            \
    int name parameters                                                           \
    {                                                                             \
        static int(*next) parameters;                                             \
        if (!next)                                                                \
            *(void **)&next = dlsym(RTLD_NEXT, #name);                            \
        fault_order order = point(CALLER, #name);                                 \
        return prevented(order) ? -1 : (int)finished(order, next(__VA_ARGS__));   \
    }

WATCHED(link, (const char *from, const char *to), from, to)
WATCHED(rename, (const char *from, const char *to), from, to)
WATCHED(unlink, (const char *path), path)
WATCHED(fchmod, (int file, mode_t mode), file, mode)
WATCHED(faccessat, (int folder, const char *path, int mode, int flags), folder, path, mode, flags)
WATCHED(fstat, (int file, struct stat *status), file, status)
WATCHED(stat, (const char *path, struct stat *status), path, status)
WATCHED(lstat, (const char *path, struct stat *status), path, status)

#include "file/write.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "file/calls.h"
#include "file/cleanup.h"
#include "file/target.h"

static int open_file(const char *path, int flags, mode_t mode)
{
    return open(path, flags, mode);
}

const recede_file_calls recede_file_system = {open_file, write, fsync, close, link, rename};

/* A file beside the target; slot is its place among those that a signal
 * removes, path is "" while there is none. */
typedef struct {
    char path[PATH_MAX];
    int slot;
} beside;

typedef struct {
    const recede_output *output;
    recede_target target;
    beside temporary; /* the new content, until it replaces the target */
    beside backup;    /* the old content, until all is done */
    int replaced;
} job;

typedef struct {
    const recede_file_calls *calls;
    recede_file_problem *problem;
    job *jobs;
    size_t count, files; /* files: how many go to regular files */
} batch;

static int fail(const batch *b, const job *j, int error_number)
{
    return recede_file_fail(b->problem, j->output->path, "written", error_number);
}

/* ---- where to */

static int find_targets(batch *b)
{
    for (size_t i = 0; i < b->count; i++) {
        job *j = &b->jobs[i];
        int error = recede_target_find(j->output->path, &j->target);
        if (error)
            return fail(b, j, error);
        b->files += j->target.kind == RECEDE_TARGET_FILE;
        for (size_t k = 0; k < i; k++)
            if (recede_target_same(&b->jobs[k].target, &j->target))
                return recede_file_say(b->problem, 0, j->output->path,
                                       "two outputs would go to this one place; give each its own");
    }
    return 0;
}

/* ---- content */

/* Returns 0 or an error number. */
static int write_all(const recede_file_calls *calls, int file, const recede_output *output)
{
    const char *at = output->bytes;
    size_t left = output->size;
    while (left > 0) {
        ssize_t written = calls->write(file, at, left);
        if (written < 0 && errno == EINTR)
            continue;
        if (written < 0)
            return errno;
        at += written;
        left -= (size_t)written;
    }
    return 0;
}

/* Some file systems know no syncing; nothing is lost by that. */
static int sync_file(const recede_file_calls *calls, int file)
{
    return calls->sync(file) == 0 || errno == EINVAL || errno == ENOTSUP ? 0 : errno;
}

/* Makes a new file beside the target and enters it among those that a signal
 * removes. Returns it open, or -1 with errno set. */
static int create_beside(const recede_file_calls *calls, const job *j, beside *out, mode_t mode)
{
    enum { TRIES = 1000, FLAGS = O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC };
    char name[64];
    sigset_t before;
    int file = -1, error = EEXIST;
    recede_cleanup_hold(&before);
    for (int i = 0; i < TRIES && error == EEXIST; i++) {
        snprintf(name, sizeof name, ".recede-%ld-%d", (long)getpid(), i);
        error = recede_target_beside(&j->target, name, out->path);
        if (!error) {
            file = calls->open(out->path, FLAGS, mode);
            error = file < 0 ? errno : 0;
        }
    }
    if (error)
        out->path[0] = '\0';
    else
        out->slot = recede_cleanup_add(out->path);
    recede_cleanup_release(&before);
    errno = error;
    return file;
}

static void remove_beside(beside *b)
{
    if (b->path[0])
        unlink(b->path);
    recede_cleanup_drop(b->slot);
    *b = (beside){.slot = -1};
}

/* A new file gets what the umask leaves; one that replaces another keeps that
 * one's permissions. */
static int write_temporary(batch *b, job *j)
{
    enum { PERMISSIONS = 0777 };
    int file = create_beside(b->calls, j, &j->temporary, j->target.exists ? 0600 : 0666);
    if (file < 0)
        return fail(b, j, errno);
    int error = write_all(b->calls, file, j->output);
    if (!error && j->target.exists &&
        fchmod(file, j->target.status.st_mode & PERMISSIONS) != 0)
        error = errno;
    if (!error)
        error = sync_file(b->calls, file);
    if (b->calls->close(file) != 0 && !error)
        error = errno;
    return error ? fail(b, j, error) : 0;
}

static int write_directly(batch *b, job *j)
{
    int standard = j->target.kind == RECEDE_TARGET_STANDARD;
    int file = standard ? STDOUT_FILENO
                        : b->calls->open(j->target.path, O_WRONLY | O_CLOEXEC | O_NOCTTY, 0);
    if (file < 0)
        return fail(b, j, errno);
    int error = write_all(b->calls, file, j->output);
    /* some systems tell only at a close that what was written has not arrived */
    int closed = standard ? dup(file) : file;
    if (closed >= 0 && b->calls->close(closed) != 0 && !error)
        error = errno;
    return error ? fail(b, j, error) : 0;
}

/* ---- replacing */

/* Keeps the old content under another name. Where hard links are not to be
 * had, the file itself takes that name. */
static int keep_old(batch *b, job *j)
{
    int file = create_beside(b->calls, j, &j->backup, 0600);
    if (file < 0)
        return errno;
    close(file);
    unlink(j->backup.path);
    if (b->calls->link(j->target.path, j->backup.path) == 0)
        return 0;
    return b->calls->rename(j->target.path, j->backup.path) == 0 ? 0 : errno;
}

/* Puts the old content back where it was; the name must not be lost. */
static void take_back(batch *b, job *j)
{
    int had_backup = j->backup.path[0] != '\0';
    if (had_backup && (j->replaced || access(j->target.path, F_OK) != 0)) {
        b->calls->rename(j->backup.path, j->target.path);
        recede_cleanup_drop(j->backup.slot);
        j->backup = (beside){.slot = -1};
    } else if (j->replaced && !j->target.exists) {
        unlink(j->target.path);
    }
    j->replaced = 0;
}

static int replace(batch *b, job *j)
{
    /* one file alone is replaced at a stroke and needs no way back */
    int error = b->files > 1 && j->target.exists ? keep_old(b, j) : 0;
    if (!error && b->calls->rename(j->temporary.path, j->target.path) != 0)
        error = errno;
    if (error)
        return fail(b, j, error);
    recede_cleanup_drop(j->temporary.slot);
    j->temporary = (beside){.slot = -1};
    j->replaced = 1;
    return 0;
}

/* So that the new names, too, outlast a power cut; content is safe already. */
static void sync_folder(const job *j)
{
    char folder[PATH_MAX];
    if (recede_target_beside(&j->target, ".", folder) != 0)
        return;
    int file = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (file >= 0) {
        fsync(file);
        close(file);
    }
}

static int replace_all(batch *b)
{
    sigset_t before;
    int result = 0;
    recede_cleanup_hold(&before);
    for (size_t i = 0; !result && i < b->count; i++)
        if (b->jobs[i].target.kind == RECEDE_TARGET_FILE)
            result = replace(b, &b->jobs[i]);
    for (size_t i = b->count; result && i-- > 0;)
        take_back(b, &b->jobs[i]);
    for (size_t i = 0; i < b->count; i++) {
        remove_beside(&b->jobs[i].backup);
        if (b->jobs[i].replaced)
            sync_folder(&b->jobs[i]);
    }
    recede_cleanup_release(&before);
    return result;
}

/* ---- all of it */

static int write_each(batch *b, recede_target_kind kind, int (*write_one)(batch *, job *))
{
    int result = 0;
    for (size_t i = 0; !result && i < b->count; i++)
        if (b->jobs[i].target.kind == kind)
            result = write_one(b, &b->jobs[i]);
    return result;
}

int recede_file_write_by(const recede_file_calls *calls, const recede_output *outputs,
                         size_t count, recede_file_problem *problem)
{
    batch b = {.calls = calls, .problem = problem, .count = count};
    if (count > RECEDE_MOST_OUTPUTS)
        return recede_file_say(problem, 0, outputs[0].path, "too many outputs; ask for fewer");
    b.jobs = calloc(count ? count : 1, sizeof *b.jobs);
    if (!b.jobs)
        return recede_file_fail(problem, count ? outputs[0].path : "-", "written", ENOMEM);
    for (size_t i = 0; i < count; i++) {
        b.jobs[i].output = &outputs[i];
        b.jobs[i].temporary.slot = b.jobs[i].backup.slot = -1;
    }
    int result = find_targets(&b);
    if (!result)
        result = write_each(&b, RECEDE_TARGET_FILE, write_temporary);
    if (!result)
        result = write_each(&b, RECEDE_TARGET_DIRECT, write_directly);
    if (!result) /* what people read comes last, when little can fail any more */
        result = write_each(&b, RECEDE_TARGET_STANDARD, write_directly);
    if (!result)
        result = replace_all(&b);
    for (size_t i = 0; i < count; i++)
        remove_beside(&b.jobs[i].temporary);
    free(b.jobs);
    return result;
}

int recede_file_write(const recede_output *outputs, size_t count, recede_file_problem *problem)
{
    return recede_file_write_by(&recede_file_system, outputs, count, problem);
}

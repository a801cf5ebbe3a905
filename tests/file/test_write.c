/* The output function: what it writes, what it refuses, and that nothing is
 * half done when any of its system calls fails. Works as root. */
#include <errno.h>
#include <sys/resource.h>
#include <sys/wait.h>

#include "file/calls.h"
#include "file/cleanup.h"
#include "file/folder.h"
#include "file/write.h"

static recede_file_problem problem;

static recede_output text_to(const char *path, const char *text)
{
    return (recede_output){path, text, strlen(text)};
}

static int write_one(const char *path, const char *text)
{
    recede_output output = text_to(path, text);
    return recede_file_write(&output, 1, &problem);
}

static mode_t mode_of(const char *path)
{
    struct stat status;
    assert_int_equal(stat(path, &status), 0);
    return status.st_mode & 0777;
}

static void files_are_made_and_replaced(void **state)
{
    (void)state;
    umask(027);
    assert_int_equal(write_one("new.txt", "one"), 0);
    assert_file("new.txt", "one");
    assert_int_equal(mode_of("new.txt"), 0640); /* what the umask leaves */
    chmod("new.txt", 0604);
    assert_int_equal(write_one("new.txt", "two"), 0);
    assert_file("new.txt", "two");
    assert_int_equal(mode_of("new.txt"), 0604); /* what it had */
    assert_int_equal(write_one("empty.txt", ""), 0);
    assert_file("empty.txt", "");
    umask(022);
    assert_entries(".", 2);
}

static void links_stay_links(void **state)
{
    struct stat status;
    (void)state;
    assert_int_equal(mkdir("deep", 0755), 0);
    put_file("deep/target.txt", "old");
    assert_int_equal(symlink("target.txt", "deep/link"), 0);
    assert_int_equal(symlink("deep/link", "outer"), 0);
    assert_int_equal(write_one("outer", "new"), 0);
    assert_file("deep/target.txt", "new");
    lstat("outer", &status);
    assert_true(S_ISLNK(status.st_mode));
    lstat("deep/link", &status);
    assert_true(S_ISLNK(status.st_mode));
    /* a link to what is not there yet makes it there */
    assert_int_equal(symlink("deep/later.txt", "dangling"), 0);
    assert_int_equal(write_one("dangling", "now"), 0);
    assert_file("deep/later.txt", "now");
    assert_int_equal(symlink("loop", "loop"), 0);
    assert_int_equal(write_one("loop", "x"), -1);
    assert_entries(".", 4);
    assert_entries("deep", 3);
}

/* A hard link keeps the old content: the name was replaced, not the bytes. */
static void a_file_is_replaced_not_overwritten(void **state)
{
    (void)state;
    put_file("a.txt", "old");
    assert_int_equal(link("a.txt", "kept.txt"), 0);
    assert_int_equal(write_one("a.txt", "new"), 0);
    assert_file("a.txt", "new");
    assert_file("kept.txt", "old");
}

static void what_cannot_be_written_is_refused(void **state)
{
    static const struct { const char *path, *says; } cases[] = {
        {"none/a.txt", "No such file or directory; check the name and the folder"},
        {"file.txt/a.txt", "Not a directory; check the folder's name"},
        {"folder", "Is a directory; name a file"},
        {"folder/", "Is a directory; name a file"},
        {"newfolder/", "check the name"},
        {"", "check the name"},
        {"/dev/full", "No space left on device; make room"},
    };
    char long_name[400];
    (void)state;
    put_file("file.txt", "kept");
    mkdir("folder", 0755);
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        assert_int_equal(write_one(cases[i].path, "x"), -1);
        if (!strstr(problem.text, cases[i].says) &&
            !(i == 4 && strstr(problem.text, "name a file")))
            fail_msg("'%s': '%s', expected '%s'", cases[i].path, problem.text, cases[i].says);
        assert_int_equal(problem.refused, 0);
        assert_null(strchr(problem.text, '\n'));
    }
    memset(long_name, 'n', sizeof long_name - 1);
    long_name[sizeof long_name - 1] = '\0';
    assert_int_equal(write_one(long_name, "x"), -1);
    assert_non_null(strstr(problem.text, "choose a shorter name"));
    assert_file("file.txt", "kept");
    assert_entries(".", 2);
    assert_entries("folder", 0);
}

static void two_outputs_to_one_place_are_refused(void **state)
{
    static const char *const pairs[][2] = {
        {"a.txt", "a.txt"},  {"a.txt", "./a.txt"},   {"new", "./new"},  {"a.txt", "link"},
        {"-", "-"},          {"dir/../a.txt", "a.txt"}, {"new", "dir/../new"}, {"a.txt", "hard"},
        {"pipe", "./pipe"},  {"link", "link"},
    };
    (void)state;
    put_file("a.txt", "kept");
    mkdir("dir", 0755);
    assert_int_equal(symlink("a.txt", "link"), 0);
    assert_int_equal(link("a.txt", "hard"), 0);
    assert_int_equal(mkfifo("pipe", 0600), 0);
    for (size_t i = 0; i < sizeof pairs / sizeof pairs[0]; i++) {
        recede_output outputs[] = {text_to(pairs[i][0], "x"), text_to(pairs[i][1], "y")};
        if (recede_file_write(outputs, 2, &problem) != -1)
            fail_msg("%s and %s were both written", pairs[i][0], pairs[i][1]);
        assert_non_null(strstr(problem.text, "give each its own"));
    }
    recede_output nowhere[] = {text_to("/dev/null", "x"), text_to("/dev/null", "y")};
    assert_int_equal(recede_file_write(nowhere, 2, &problem), 0);
    assert_file("a.txt", "kept");
    assert_entries(".", 5);
}

static void a_failing_device_leaves_files_alone(void **state)
{
    recede_output outputs[] = {text_to("a.txt", "new"), text_to("/dev/full", "x"),
                               text_to("b.txt", "new")};
    (void)state;
    put_file("a.txt", "old");
    assert_int_equal(recede_file_write(outputs, 3, &problem), -1);
    assert_true(strncmp(problem.text, "/dev/full: ", 11) == 0);
    assert_file("a.txt", "old");
    assert_entries(".", 1);
}

static void pipes_are_written_to(void **state)
{
    char text[20];
    (void)state;
    assert_int_equal(mkfifo("pipe", 0600), 0);
    int reader = open("pipe", O_RDONLY | O_NONBLOCK);
    assert_int_equal(write_one("pipe", "through"), 0);
    assert_int_equal(read(reader, text, sizeof text), 7);
    assert_memory_equal(text, "through", 7);
    close(reader);
    assert_entries(".", 1);
}

/* The write fails after so many bytes, as on a disk that is full. */
static void a_limit_on_file_sizes_leaves_the_old_file(void **state)
{
    char big[5000];
    (void)state;
    put_file("a.txt", "old");
    memset(big, 'x', sizeof big);
    pid_t child = fork();
    if (child == 0) {
        struct rlimit limit = {1000, 1000};
        recede_output output = {"a.txt", big, sizeof big};
        recede_cleanup_install(); /* SIGXFSZ ignored */
        setrlimit(RLIMIT_FSIZE, &limit);
        int result = recede_file_write(&output, 1, &problem);
        _exit(result == -1 && strstr(problem.text, "raise the limit") ? 0 : 1);
    }
    int status;
    waitpid(child, &status, 0);
    assert_int_equal(status, 0);
    assert_file("a.txt", "old");
    assert_entries(".", 1);
}

static ssize_t watched_write(int file, const void *bytes, size_t size)
{
    struct stat status;
    assert_int_equal(fstat(file, &status), 0);
    assert_int_equal(status.st_mode & 077, 0);
    return write(file, bytes, size);
}

/* What replaces a private file is never open to others, not even for a moment. */
static void private_files_stay_private(void **state)
{
    recede_file_calls calls = recede_file_system;
    recede_output output = text_to("a.txt", "new");
    (void)state;
    calls.write = watched_write;
    put_file("a.txt", "old");
    chmod("a.txt", 0600);
    assert_int_equal(recede_file_write_by(&calls, &output, 1, &problem), 0);
    assert_file("a.txt", "new");
}

/* ---- injected failures */

static int calls_left;
static int fails(int error)
{
    if (calls_left-- != 0)
        return 0;
    errno = error;
    return 1;
}

static int failing_open(const char *path, int flags, mode_t mode)
{
    return fails(EACCES) ? -1 : open(path, flags, mode);
}
static ssize_t failing_write(int file, const void *bytes, size_t size)
{
    return fails(ENOSPC) ? -1 : write(file, bytes, size > 2 ? 2 : size); /* short writes too */
}
static int failing_sync(int file)
{
    return fails(EIO) ? -1 : fsync(file);
}
static int failing_close(int file)
{
    int result = close(file);
    return fails(EIO) ? -1 : result;
}
static int failing_link(const char *from, const char *to)
{
    return fails(EPERM) ? -1 : link(from, to); /* a file system without hard links */
}
static int failing_rename(const char *from, const char *to)
{
    return fails(EIO) ? -1 : rename(from, to);
}
static const recede_file_calls failing = {failing_open,  failing_write, failing_sync,
                                          failing_close, failing_link,  failing_rename};

/* Two files there already and one that is new; the nth call fails. */
static int write_three(int fail_at)
{
    recede_output outputs[] = {text_to("a.txt", "new a"), text_to("c.txt", "new c"),
                               text_to("b.txt", "new b")};
    put_file("a.txt", "old a");
    put_file("b.txt", "old b");
    unlink("c.txt");
    calls_left = fail_at;
    return recede_file_write_by(&failing, outputs, 3, &problem);
}

static void any_call_may_fail(void **state)
{
    int at = 0, failures = 0, survived = 0;
    (void)state;
    for (;; at++) {
        int result = write_three(at);
        int reached = calls_left < 0;
        if (result == 0) {
            assert_file("a.txt", "new a");
            assert_file("b.txt", "new b");
            assert_file("c.txt", "new c");
            assert_entries(".", 3);
            survived += reached; /* links may fail: another way is taken */
            if (!reached)
                break;
        } else {
            assert_file("a.txt", "old a");
            assert_file("b.txt", "old b");
            assert_int_equal(access("c.txt", F_OK), -1);
            assert_entries(".", 2);
            failures++;
        }
    }
    assert_true(failures > 20);
    assert_int_equal(survived, 2);
}

/* Without hard links and with a rename that fails later on: still rolled back. */
static int broken_link(const char *from, const char *to)
{
    (void)from;
    (void)to;
    errno = EPERM;
    return -1;
}

static void renames_are_rolled_back_without_hard_links(void **state)
{
    static const recede_file_calls calls = {failing_open, write, fsync, close, broken_link,
                                            failing_rename};
    int failures = 0;
    (void)state;
    for (int at = 0;; at++) {
        recede_output outputs[] = {text_to("a.txt", "new a"), text_to("c.txt", "new c"),
                                   text_to("b.txt", "new b")};
        put_file("a.txt", "old a");
        put_file("b.txt", "old b");
        unlink("c.txt");
        calls_left = at;
        if (recede_file_write_by(&calls, outputs, 3, &problem) == 0)
            break;
        assert_file("a.txt", "old a");
        assert_file("b.txt", "old b");
        assert_entries(".", 2);
        failures++;
    }
    assert_true(failures >= 3 + 2 + 5); /* temporaries, names for the old files, renames */
}

/* ---- signals */

static void end_by_signal(int file)
{
    (void)file;
    raise(SIGTERM);
}

static int ending_sync(int file)
{
    end_by_signal(file);
    return 0;
}

static void a_signal_leaves_no_temporary_file(void **state)
{
    static const recede_file_calls calls = {failing_open, write, ending_sync, close, link, rename};
    int status;
    (void)state;
    put_file("a.txt", "old");
    pid_t child = fork();
    if (child == 0) {
        recede_output output = text_to("a.txt", "new");
        calls_left = -1;
        recede_cleanup_install();
        recede_file_write_by(&calls, &output, 1, &problem);
        _exit(0);
    }
    waitpid(child, &status, 0);
    assert_true(WIFSIGNALED(status) && WTERMSIG(status) == SIGTERM);
    assert_file("a.txt", "old");
    assert_entries(".", 1);
}

static int ending_rename(const char *from, const char *to)
{
    raise(SIGINT);
    return rename(from, to);
}

/* Once replacing has begun it is carried through before the signal counts. */
static void a_signal_waits_until_all_files_are_replaced(void **state)
{
    static const recede_file_calls calls = {failing_open, write, fsync, close, link,
                                            ending_rename};
    int status;
    (void)state;
    put_file("a.txt", "old");
    put_file("b.txt", "old");
    pid_t child = fork();
    if (child == 0) {
        recede_output outputs[] = {text_to("a.txt", "new"), text_to("b.txt", "new")};
        calls_left = -1;
        signal(SIGINT, SIG_DFL); /* a job in the background inherits it ignored */
        recede_cleanup_install();
        recede_file_write_by(&calls, outputs, 2, &problem);
        _exit(0);
    }
    waitpid(child, &status, 0);
    assert_true(WIFSIGNALED(status) && WTERMSIG(status) == SIGINT);
    assert_file("a.txt", "new");
    assert_file("b.txt", "new");
    assert_entries(".", 2);
}

#define IN_FOLDER(test) cmocka_unit_test_setup_teardown(test, enter_folder, leave_folder)

int main(void)
{
    const struct CMUnitTest tests[] = {
        IN_FOLDER(files_are_made_and_replaced),
        IN_FOLDER(links_stay_links),
        IN_FOLDER(a_file_is_replaced_not_overwritten),
        IN_FOLDER(what_cannot_be_written_is_refused),
        IN_FOLDER(two_outputs_to_one_place_are_refused),
        IN_FOLDER(a_failing_device_leaves_files_alone),
        IN_FOLDER(pipes_are_written_to),
        IN_FOLDER(a_limit_on_file_sizes_leaves_the_old_file),
        IN_FOLDER(private_files_stay_private),
        IN_FOLDER(any_call_may_fail),
        IN_FOLDER(renames_are_rolled_back_without_hard_links),
        IN_FOLDER(a_signal_leaves_no_temporary_file),
        IN_FOLDER(a_signal_waits_until_all_files_are_replaced),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

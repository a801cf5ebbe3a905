/* The C library's printf drags in a standard error that nothing here writes to.
 * A page has no system to write through: these take the place of the calls the
 * library would import, so that the module imports nothing of the kind. */
#ifdef __wasm__
#include <stdint.h>

enum { NOT_SUPPORTED = 58 }; /* WASI preview 1, errno notsup */

int32_t __imported_wasi_snapshot_preview1_fd_close(int32_t file);
int32_t __imported_wasi_snapshot_preview1_fd_seek(int32_t file, int64_t by, int32_t from,
                                                  int32_t at);
int32_t __imported_wasi_snapshot_preview1_fd_write(int32_t file, int32_t parts, int32_t count,
                                                   int32_t written);

int32_t __imported_wasi_snapshot_preview1_fd_close(int32_t file)
{
    (void)file;
    return NOT_SUPPORTED;
}

int32_t __imported_wasi_snapshot_preview1_fd_seek(int32_t file, int64_t by, int32_t from,
                                                  int32_t at)
{
    (void)file;
    (void)by;
    (void)from;
    (void)at;
    return NOT_SUPPORTED;
}

int32_t __imported_wasi_snapshot_preview1_fd_write(int32_t file, int32_t parts, int32_t count,
                                                   int32_t written)
{
    (void)file;
    (void)parts;
    (void)count;
    (void)written;
    return NOT_SUPPORTED;
}
#else
typedef int recede_page_has_a_system;
#endif

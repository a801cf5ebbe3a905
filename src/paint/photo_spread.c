#include "paint/photo_patch.h"

#include <math.h>

/* Mirrored light and edges lie far off in a part of the patch; noise and the grain of
 * paint spread it all. Of normal deviations in three channels not one in ten
 * thousand lies beyond three medians. */
static const double far_medians = 3.0, far_more = 3.0; /* CIEDE2000 */
static const double far_share = 0.03, wide_spread = 6.0;

recede_xyz recede_photo_xyz(const recede_photo_scale *scale, recede_photo_mean light)
{
    static const recede_srgb primary[RECEDE_PHOTO_CHANNELS] = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
    recede_xyz sum = {0, 0, 0};
    for (int k = 0; k < RECEDE_PHOTO_CHANNELS; k++) {
        double share = (light.at[k] - scale->offset[k]) / scale->white[k];
        recede_xyz full = recede_xyz_of_srgb(primary[k]);
        sum.x += share * full.x;
        sum.y += share * full.y;
        sum.z += share * full.z;
    }
    return sum;
}

double recede_photo_clipped(const recede_photo *photo, const recede_patch *patch)
{
    enum { MOST = RECEDE_PHOTO_LEVELS - 1 };
    size_t clipped = 0;
    for (size_t y = patch->top; y < patch->top + patch->height; y++) {
        const unsigned short *p = photo->rgb + (y * photo->width + patch->left) * 3;
        for (size_t x = 0; x < patch->width; x++, p += 3)
            clipped += p[0] == 0 || p[1] == 0 || p[2] == 0 || p[0] == MOST || p[1] == MOST ||
                       p[2] == MOST;
    }
    return (double)clipped / ((double)patch->width * (double)patch->height);
}

/* The value that would stand at place `wanted` in order (C. A. R. Hoare, Algorithm 65,
 * Communications of the ACM 4 (1961) 321). Moves values about. */
static double select_value(double *values, size_t count, size_t wanted)
{
    size_t first = 0, last = count - 1;
    while (first < last) {
        double pivot = values[first + (last - first) / 2];
        size_t i = first, j = last;
        for (;;) {
            while (values[i] < pivot)
                i++;
            while (values[j] > pivot)
                j--;
            if (i >= j)
                break;
            double kept = values[i];
            values[i++] = values[j];
            values[j--] = kept;
        }
        if (wanted <= j)
            last = j;
        else
            first = j + 1;
    }
    return values[wanted];
}

static double difference_at(const recede_photo *photo, size_t x, size_t y,
                            const recede_photo_scale *scale, const recede_photo_room *room,
                            recede_lab reading)
{
    const unsigned short *p = photo->rgb + (y * photo->width + x) * 3;
    recede_photo_mean light = {{room->linear[p[0]], room->linear[p[1]], room->linear[p[2]]}};
    recede_xyz xyz = recede_photo_xyz(scale, light);
    return recede_delta_e(recede_lab_of_xyz(xyz, recede_white()), reading);
}

static size_t least(size_t a, size_t b)
{
    return a < b ? a : b;
}

void recede_photo_spread(const recede_photo *photo, const recede_patch *patch,
                         const recede_photo_scale *scale, recede_photo_room *room,
                         recede_patch_reading *reading)
{
    size_t across = least(patch->width, RECEDE_PHOTO_SAMPLES);
    size_t down = least(patch->height, RECEDE_PHOTO_SAMPLES), count = 0, far = 0;
    for (size_t j = 0; j < down; j++)
        for (size_t i = 0; i < across; i++)
            room->differences[count++] = difference_at(
                photo, patch->left + i * patch->width / across,
                patch->top + j * patch->height / down, scale, room, reading->lab);
    reading->spread = select_value(room->differences, count, (count - 1) / 2);
    double limit = far_medians * reading->spread + far_more;
    for (size_t i = 0; i < count; i++)
        far += room->differences[i] > limit;
    reading->glare = (double)far > far_share * (double)count || reading->spread > wide_spread;
}

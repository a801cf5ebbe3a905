/*
 * The mean light of a patch, robust: of the pixels of one channel, in linear light,
 * Tukey's biweight (Beaton and Tukey, Technometrics 16 (1974) 147) with the usual
 * constant 4.685, from the median, the scale being the median absolute deviation
 * (Hampel, Journal of the American Statistical Association 69 (1974) 383). Pixels
 * beyond 4.685 scales - mirrored light, dust, an edge - do not count at all, which a
 * trimmed mean or Huber's does not achieve.
 *
 * Pixels are counted by level, so nothing is sorted.
 */
#include "paint/photo_patch.h"

#include <math.h>
#include <string.h>

static const double tuning = 4.685;
static const double scale_of_mad = 1.4826; /* of normal deviations */
static const double one_step = 1.0 / 255;  /* of an 8-bit picture */

void recede_photo_start(recede_photo_room *room)
{
    for (int i = 0; i < RECEDE_PHOTO_LEVELS; i++) {
        double v = i / (RECEDE_PHOTO_LEVELS - 1.0);
        room->linear[i] = recede_xyz_of_srgb((recede_srgb){v, v, v}).y;
    }
}

static void count_levels(const recede_photo *photo, const recede_patch *patch, int channel,
                         size_t *counts)
{
    memset(counts, 0, RECEDE_PHOTO_LEVELS * sizeof *counts);
    for (size_t y = patch->top; y < patch->top + patch->height; y++) {
        const unsigned short *row = photo->rgb + (y * photo->width + patch->left) * 3;
        for (size_t x = 0; x < patch->width; x++)
            counts[row[3 * x + (size_t)channel]]++;
    }
}

static int median_level(const size_t *counts, size_t total)
{
    size_t below = 0;
    int level = 0;
    while ((below += counts[level]) * 2 < total)
        level++;
    return level;
}

/* The median of the distances from one level's light: levels join from both sides,
 * nearest first. */
static double median_deviation(const recede_photo_room *room, int middle, size_t total)
{
    const double *linear = room->linear;
    size_t inside = room->counts[middle];
    int low = middle, high = middle;
    double distance = 0.0;
    while (inside * 2 < total) {
        double down = low > 0 ? linear[middle] - linear[low - 1] : INFINITY;
        double up = high < RECEDE_PHOTO_LEVELS - 1 ? linear[high + 1] - linear[middle] : INFINITY;
        inside += room->counts[down < up ? --low : ++high];
        distance = down < up ? down : up;
    }
    return distance;
}

/* The change of light that one step of an 8-bit picture makes there: below it no
 * spread can be told. */
static double step_at(const recede_photo_room *room, int level)
{
    int step = (int)(one_step * (RECEDE_PHOTO_LEVELS - 1) + 0.5);
    int low = level < step ? 0 : level - step;
    return room->linear[low + step] - room->linear[low];
}

static double weighted_mean(const recede_photo_room *room, int low, int high, double centre,
                            double reach)
{
    double sum = 0.0, weights = 0.0;
    for (int i = low; i <= high; i++) {
        double u = (room->linear[i] - centre) / reach;
        if (!room->counts[i] || fabs(u) >= 1)
            continue;
        double weight = (1 - u * u) * (1 - u * u) * (double)room->counts[i];
        sum += weight * room->linear[i];
        weights += weight;
    }
    return weights > 0 ? sum / weights : centre;
}

static double biweight(const recede_photo_room *room, size_t total)
{
    enum { MOST_ROUNDS = 50 };
    int middle = median_level(room->counts, total);
    double scale = fmax(scale_of_mad * median_deviation(room, middle, total),
                        step_at(room, middle));
    double centre = room->linear[middle];
    int low = 0, high = RECEDE_PHOTO_LEVELS - 1;
    while (!room->counts[low])
        low++;
    while (!room->counts[high])
        high--;
    for (int i = 0; i < MOST_ROUNDS; i++) {
        double next = weighted_mean(room, low, high, centre, tuning * scale);
        int settled = fabs(next - centre) <= 1e-6 * scale;
        centre = next;
        if (settled)
            break;
    }
    return centre;
}

recede_photo_mean recede_photo_mean_of(const recede_photo *photo, const recede_patch *patch,
                                       recede_photo_room *room)
{
    recede_photo_mean mean;
    for (int k = 0; k < RECEDE_PHOTO_CHANNELS; k++) {
        count_levels(photo, patch, k, room->counts);
        mean.at[k] = biweight(room, patch->width * patch->height);
    }
    return mean;
}

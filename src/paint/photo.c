/* A photograph as the meter: docs/photograph.md. */
#include "recede.h"

#include <math.h>

#include "colour/error.h"
#include "colour/memory.h"
#include "paint/photo_light.h"

static const double card_disagrees = 2.0; /* CIEDE2000 */
static const double darkest_card = 0.02;
static const double spoilt_card = 0.05; /* share of clipped pixels */

enum { LEAST_PIXELS = 16 };

static recede_code check_patch(const recede_photo *photo, const recede_patch *patch, size_t index,
                               recede_error *error)
{
    const struct {
        const char *field;
        size_t start, length, most;
    } sides[] = {
        {"left", patch->left, patch->width, photo->width},
        {"top", patch->top, patch->height, photo->height},
    };
    char path[96];
    for (int i = 0; i < 2; i++)
        if (sides[i].start > sides[i].most ||
            sides[i].length > sides[i].most - sides[i].start) {
            double end = (double)sides[i].start + (double)sides[i].length;
            recede_path_index(path, sizeof path, "patches", index, sides[i].field);
            return recede_fail_range(error, path, end, 0, (double)sides[i].most);
        }
    if (patch->width * patch->height < LEAST_PIXELS) {
        double pixels = (double)(patch->width * patch->height);
        recede_path_index(path, sizeof path, "patches", index, NULL);
        return recede_fail_range(error, path, pixels, LEAST_PIXELS,
                                 (double)photo->width * (double)photo->height);
    }
    if (patch->reflectance == 0.0)
        return RECEDE_OK;
    recede_path_index(path, sizeof path, "patches", index, "reflectance");
    return recede_check_range(error, path, patch->reflectance, darkest_card, 1);
}

static recede_code check_patches(const recede_photo *photo, const recede_patch *patches,
                                 size_t count, recede_error *error)
{
    if (count > RECEDE_MOST_PATCHES)
        return recede_fail_count(error, RECEDE_TOO_MANY, "patches", count, 1, RECEDE_MOST_PATCHES);
    for (size_t i = 0; i < count; i++) {
        recede_code code = check_patch(photo, patches + i, i, error);
        if (code)
            return code;
    }
    return RECEDE_OK;
}

static recede_lab lab_of_card(double reflectance)
{
    recede_xyz white = recede_white();
    recede_xyz grey = {reflectance * white.x, reflectance * white.y, reflectance * white.z};
    return recede_lab_of_xyz(grey, white);
}

static recede_patch_reading read_patch(const recede_photo *photo, const recede_patch *patch,
                                       const recede_photo_light *light, recede_photo_mean mean,
                                       recede_photo_room *room)
{
    recede_patch_reading out = {.glare = 0};
    recede_photo_scale scale = recede_photo_scale_at(light, patch);
    out.xyz = recede_photo_xyz(&scale, mean);
    out.lab = recede_lab_of_xyz(out.xyz, recede_white());
    out.clipped = recede_photo_clipped(photo, patch);
    recede_photo_spread(photo, patch, &scale, room, &out);
    if (patch->reflectance > 0)
        out.card_off = recede_delta_e(lab_of_card(patch->reflectance), out.lab);
    return out;
}

/* A card patch is off, or two of one reflectance are apart. */
static int cards_disagree(const recede_patch *patches, const recede_patch_reading *readings,
                          size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if (readings[i].card_off > card_disagrees)
            return 1;
        for (size_t j = 0; j < i; j++)
            if (patches[i].reflectance > 0 &&
                patches[i].reflectance == patches[j].reflectance &&
                recede_delta_e(readings[i].lab, readings[j].lab) > card_disagrees)
                return 1;
    }
    return 0;
}

/* A clipped card says nothing about the light: it counts for no card, if another is
 * left. */
static void leave_out_spoilt(const recede_photo *photo, const recede_patch *patches, size_t count,
                             recede_patch *used)
{
    size_t good = 0;
    for (size_t i = 0; i < count; i++) {
        used[i] = patches[i];
        if (patches[i].reflectance <= 0)
            continue;
        if (recede_photo_clipped(photo, patches + i) > spoilt_card)
            used[i].reflectance = 0;
        else
            good++;
    }
    for (size_t i = 0; !good && i < count; i++)
        used[i].reflectance = patches[i].reflectance;
}

static recede_code read_all(const recede_photo *photo, const recede_patch *patches, size_t count,
                            recede_photo_room *room, recede_patch_reading *out,
                            recede_error *error)
{
    recede_photo_mean means[RECEDE_MOST_PATCHES];
    recede_patch used[RECEDE_MOST_PATCHES];
    recede_photo_light light;
    recede_photo_start(room);
    for (size_t i = 0; i < count; i++)
        means[i] = recede_photo_mean_of(photo, patches + i, room);
    leave_out_spoilt(photo, patches, count, used);
    recede_code code = recede_photo_light_of(photo, used, means, count, &light, error);
    for (size_t i = 0; !code && i < count; i++)
        out[i] = read_patch(photo, patches + i, &light, means[i], room);
    return code;
}

recede_code recede_photo_read(const recede_photo *photo, const recede_patch *patches, size_t count,
                              const recede_allocator *allocator, recede_patch_reading *out,
                              int *uneven, recede_error *error)
{
    recede_code code = check_patches(photo, patches, count, error);
    if (code)
        return code;
    recede_photo_room *room = recede_allocate_array(allocator, 1, sizeof *room);
    if (!room)
        return recede_fail(error, RECEDE_NO_MEMORY, "");
    code = read_all(photo, patches, count, room, out, error);
    recede_release(allocator, room);
    if (!code)
        *uneven = cards_disagree(patches, out, count);
    return code;
}

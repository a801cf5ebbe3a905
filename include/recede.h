/*
 * recede: the colours of a painted landscape, planned by distance.
 *
 * This header is the library's manual. The library computes; it does no input
 * or output, keeps no state between calls and needs only libm and the memory
 * functions. Read the parts in order, for each uses only those above it:
 *
 *   1  conventions     memory, progress, errors
 *   2  colour          spectra, colorimetry, value, differences
 *   3  own colours     the built-in foliage and surfaces
 *   4  air and light   extinction, sun, sky, airlight
 *   5  paint           pigments, tubes, palettes, films, recipes
 *   6  scene and plan  the whole computation
 *   7  picture         the planned planes as pixels
 *   8  ladder, skies   one colour at many distances; one scene in many lights
 *   9  order of work   which wash from which well, and what to add to it
 *
 * Units stand in the names: _nm, _km, _m, _deg. Spectra have 36 bands, 380 to
 * 730 nm by 10, each value standing for its whole band. Tristimulus values
 * take Y = 1 for a perfect reflector under D65 as sampled on those bands.
 */
#ifndef RECEDE_H
#define RECEDE_H

#include <stddef.h>

#ifdef __cplusplus
extern "C" {
#endif

#define RECEDE_VERSION "1.0.0"

/* ------------------------------------------------------ 1  conventions -- */

#define RECEDE_BANDS 36
#define RECEDE_FIRST_NM 380
#define RECEDE_STEP_NM 10
#define RECEDE_NAME_SIZE 201     /* bytes of a name, UTF-8, with its final NUL */
#define RECEDE_MOST_PLANES 64
#define RECEDE_MOST_PAINTS 24    /* in a palette */
#define RECEDE_MOST_IN_MIX 4     /* pigments in one mix */
#define RECEDE_MOST_PARTS 12     /* parts in one mix, all pigments together */

/* Memory comes from the caller. allocate returns NULL when there is none and
 * the call then ends with RECEDE_NO_MEMORY, everything released. A NULL
 * allocator pointer in any call means malloc and free. */
typedef struct recede_allocator {
    void *(*allocate)(void *context, size_t size);
    void (*release)(void *context, void *block); /* block may be NULL */
    void *context;
} recede_allocator;

/* Called now and then by long calls with the share done, 0 to 1. A return
 * other than 0 stops the call, which then ends with RECEDE_CANCELLED. A NULL
 * progress pointer means no calls. */
typedef struct recede_progress {
    int (*report)(void *context, double share_done);
    void *context;
} recede_progress;

typedef enum recede_code {
    RECEDE_OK = 0,
    RECEDE_NO_MEMORY,
    RECEDE_CANCELLED,
    RECEDE_OUT_OF_RANGE,  /* number found lies outside least to most */
    RECEDE_NOT_FINITE,    /* number found is NaN or infinite */
    RECEDE_UNKNOWN_NAME,  /* text found names nothing known */
    RECEDE_DUPLICATE,     /* text found stands twice */
    RECEDE_TOO_MANY,      /* number found exceeds most */
    RECEDE_TOO_FEW,       /* number found is below least */
    RECEDE_NO_WHITE,      /* an opaque medium without a white in its palette */
    RECEDE_CONFLICT       /* two fields contradict each other */
} recede_code;

/* What went wrong, as data: the front end words it. path names the field as in
 * a scene file ("planes[2].distance"); fields that do not apply are 0 or "". */
typedef struct recede_error {
    recede_code code;
    char path[96];
    char found[RECEDE_NAME_SIZE];
    double number, least, most;
} recede_error;

/* ----------------------------------------------------------- 2  colour -- */

typedef struct recede_spectrum { double at[RECEDE_BANDS]; } recede_spectrum;
typedef struct recede_xyz { double x, y, z; } recede_xyz;
typedef struct recede_lab { double l, a, b; } recede_lab;
typedef struct recede_lch { double l, c, h_deg; } recede_lch; /* h 0 to 360 */
typedef struct recede_srgb { double r, g, b; } recede_srgb;   /* encoded, 0 to 1 */

/* One colour in the forms that plans and sheets show. */
typedef struct recede_colour {
    recede_xyz xyz;
    recede_lab lab;
    recede_lch lch;
    recede_srgb srgb;   /* clipped into 0 to 1 */
    double value;       /* Munsell value, 0 to 10 */
} recede_colour;

/* The white of the paper's world: D65 on the library's bands, Y = 1 exactly. */
recede_xyz recede_white(void);

/* Illuminants carried by the library, relative power, CIE 015:2018. */
typedef enum recede_illuminant {
    RECEDE_D65, RECEDE_A, RECEDE_C
} recede_illuminant;
recede_spectrum recede_illuminant_power(recede_illuminant which);

/* Tristimulus values of a reflectance (0 to 1 per band) under an illuminant,
 * CIE 1931 2 degree observer, Y = 1 for the perfect reflector. CIE 015:2018. */
recede_xyz recede_xyz_of_reflectance(const recede_spectrum *reflectance);
recede_xyz recede_xyz_under(const recede_spectrum *reflectance, recede_illuminant light);

/* Tristimulus values of any power spectrum: sum of power times the colour
 * matching functions times the band width in nm, no further scale. */
recede_xyz recede_xyz_of_power(const recede_spectrum *power);

/* CIE 1976 L*a*b* for a given white (ISO/CIE 11664-4) and back; Y of white is
 * usually 1. Any finite input; results may lie outside 0 to 100. */
recede_lab recede_lab_of_xyz(recede_xyz colour, recede_xyz white);
recede_xyz recede_xyz_of_lab(recede_lab lab, recede_xyz white);
recede_lch recede_lch_of_lab(recede_lab lab);

/* sRGB, IEC 61966-2-1. XYZ is scaled from recede_white() to the standard's
 * white before the matrix, so the perfect reflector is exactly 1, 1, 1. Not
 * clipped: components below 0 or above 1 lie outside sRGB's range. */
recede_srgb recede_srgb_of_xyz(recede_xyz colour);
recede_xyz recede_xyz_of_srgb(recede_srgb srgb);

/* All forms of one colour relative to recede_white(). */
recede_colour recede_colour_of_xyz(recede_xyz colour);

/* Munsell value from luminance factor Y (1 = perfect reflector) and back:
 * ASTM D1535, the quintic and its inverse. Y below 0 gives value 0; value is
 * 0 to 10 and above 10 extrapolated linearly. */
double recede_value_of_y(double y);
double recede_y_of_value(double value);

/* CIEDE2000 with kL = kC = kH = 1: Sharma, Wu and Dalal 2005. Symmetric. */
double recede_delta_e(recede_lab one, recede_lab other);

/* CAT16 from one white to another, degree 0 (none) to 1 (full): Li and others,
 * Color Research and Application 42 (2017). Y of both whites is 1. */
recede_xyz recede_cat16(recede_xyz colour, recede_xyz from, recede_xyz to, double degree);

/* CIE 1976 u', v'. X + Y + Z must be above 0. */
void recede_uv_of_xyz(recede_xyz colour, double *u, double *v);

/* Dominant wavelength (nm, 380 to 730) and excitation purity (0 to 1) of a
 * colour against a white, CIE 015. Where the line meets the purples the
 * complementary wavelength is given, complementary is 1 and purity is taken
 * to the purple line. An achromatic colour has purity 0 and wavelength 0. */
typedef struct recede_dominant {
    double wavelength_nm, purity;
    int complementary;
} recede_dominant;
recede_dominant recede_dominant_of_xyz(recede_xyz colour, recede_xyz white);

/* The smoothest reflectance, 0 to 1 in every band, that has a given colour
 * under D65. reached is 1 when it reproduces the colour within 0.1 CIEDE2000;
 * where no reflectance can (the colour lies outside the object colour solid)
 * reached is 0 and the nearest found is given with its difference. */
typedef struct recede_smooth {
    recede_spectrum reflectance;
    double delta_e;
    int reached;
} recede_smooth;
recede_smooth recede_smooth_of_xyz(recede_xyz colour);

/* ------------------------------------------------------ 3  own colours -- */

/* A plane's colour seen close to, built in. basis says how far to trust it. */
typedef struct recede_own_entry {
    const char *name;
    const char *basis;
    recede_spectrum reflectance;
} recede_own_entry;

size_t recede_foliage_count(void);
const recede_own_entry *recede_foliage_at(size_t index);
size_t recede_surface_count(void);
const recede_own_entry *recede_surface_at(size_t index);

/* By exact name; NULL when there is none. */
const recede_own_entry *recede_foliage_named(const char *name);
const recede_own_entry *recede_surface_named(const char *name);

/* ---------------------------------------------------- 4  air and light -- */

/* The air as a painter describes it. Heights are above the scene's own zero. */
typedef struct recede_air {
    double visibility_km;      /* 0.02 to 250, at the eye's height */
    double angstrom;           /* 0 to 2.5; fine 1.3, ordinary 1.0, dust 0.5, mist 0 */
    double eye_m;              /* -500 to 9000 */
    double mist_visibility_km; /* inside the mist; 0 = no mist layer */
    double mist_top_m;         /* the mist fills all below this height */
} recede_air;

/* The same per band, at the eye's height. */
typedef struct recede_atmosphere {
    recede_spectrum rayleigh_per_km, haze_per_km, mist_per_km;
    recede_spectrum albedo;    /* of haze and mist, single scattering */
    double rayleigh_scale_km, haze_scale_km;
    double eye_m, mist_top_m;
    int has_mist;
} recede_atmosphere;

/* Extinction by band: Koschmieder 1924 with the design's Rayleigh and haze
 * terms. Errors: RECEDE_OUT_OF_RANGE, RECEDE_NOT_FINITE (paths air.*). */
recede_code recede_atmosphere_of(const recede_air *air, recede_atmosphere *out,
                                 recede_error *error);

/* A line of sight from the eye, nearest segment first. A mist layer cuts it
 * in two; otherwise there is one segment. Mist counts as haze. */
typedef struct recede_segment {
    recede_spectrum tau_rayleigh, tau_haze;
} recede_segment;
typedef struct recede_path {
    int segments; /* 1 or 2 */
    recede_segment segment[2];
} recede_path;

/* The straight line from the eye to a point at height_m, length distance_m
 * (0 or more; a height farther off than the line is long is taken as straight
 * up or down). Closed form for air that thins exponentially with height. */
recede_path recede_path_to(const recede_atmosphere *air, double height_m, double distance_m);

/* Transmission exp(-tau) of the whole path, 0 to 1 per band. */
recede_spectrum recede_path_transmission(const recede_path *path);

typedef enum recede_sky_kind {
    RECEDE_SKY_CLEAR,    /* sun and blue sky, from sun_height and sun_side */
    RECEDE_SKY_OVERCAST, /* CIE overcast sky */
    RECEDE_SKY_PAINTED   /* horizon and light given as colours */
} recede_sky_kind;

typedef struct recede_sky {
    recede_sky_kind kind;
    double sun_height_deg;         /* clear: 0.5 to 90 */
    double sun_side_deg;           /* clear: between view and sun, 0 into, 180 behind */
    recede_spectrum horizon_colour; /* painted: reflectance whose colour the horizon has, 0 to 1 */
    recede_spectrum light_colour;   /* painted: the colour of a white in full light, 0 to 1 */
} recede_sky;

/* The light on the scene, per band. Irradiances in W m-2 nm-1 (painted and
 * overcast: relative). A surface of reflectance R on a crown's lit side has
 * radiance R lit / pi. Airlight of a segment is the mean of the two sources
 * weighed by its tau_rayleigh and tau_haze. */
typedef struct recede_light {
    recede_sky_kind kind;
    double sun_height_deg, sun_side_deg;
    recede_spectrum sun, sky, global; /* direct normal; diffuse, global horizontal */
    recede_spectrum lit, shadow;      /* on the two sides of a crown */
    recede_spectrum sphere;           /* on a sphere: the adapting white */
    recede_spectrum rayleigh_source, haze_source; /* radiance */
} recede_light;

/* Light from sky and air. Clear: the simple solar spectral model of Bird and
 * Riordan 1984 with the haze of the air given, and the design's airlight.
 * Overcast: Moon and Spencer 1942. Errors: RECEDE_OUT_OF_RANGE,
 * RECEDE_NOT_FINITE (paths light.*). */
recede_code recede_light_of(const recede_atmosphere *air, const recede_sky *sky,
                            recede_light *out, recede_error *error);

/* What reaches the eye from a surface of the given radiance at the path's far
 * end, L0 T + J (1 - T) segment by segment, and its own part L0 T alone. */
typedef struct recede_view { recede_spectrum seen, own; } recede_view;
recede_view recede_look_through(const recede_light *light, const recede_path *path,
                                const recede_spectrum *radiance);

/* The airlight of an endless level line of sight at the eye: the horizon. */
recede_spectrum recede_horizon_radiance(const recede_atmosphere *air, const recede_light *light);

/* Radiance of the sky at an elevation of 0 to 90 degrees above the horizon, on
 * the side the painter looks to. Clear: the same scattering integrated along
 * the slant line through the exponential atmosphere of a round earth.
 * Overcast: 1 + 2 sin, a third of the zenith at the horizon. Painted: from
 * the horizon's colour to the light's. */
recede_spectrum recede_sky_radiance(const recede_atmosphere *air, const recede_light *light,
                                    double elevation_deg);

/* ------------------------------------------------------------ 5  paint -- */

typedef enum recede_medium {
    RECEDE_WATERCOLOUR, RECEDE_GOUACHE, RECEDE_ACRYLIC, RECEDE_OIL
} recede_medium;

/* A pigment of the library. k and s: absorption and scattering relative to
 * titanium white's scattering. Words stand where common knowledge has them,
 * "" elsewhere. */
typedef struct recede_pigment {
    const char *name, *colour_index;
    const char *transparency, *permanence, *staining, *granulation;
    const char *measured; /* what was measured and what is assumed */
    const char *source;
    const char *caution;  /* health, "" when the usual care will do */
    recede_spectrum k, s;
} recede_pigment;

size_t recede_pigment_count(void);
const recede_pigment *recede_pigment_at(size_t index);
const recede_pigment *recede_pigment_named(const char *name); /* exact; NULL if none */

/* What stands in a tube: a pigment, or several in parts. */
typedef struct recede_ingredient {
    const recede_pigment *pigment;
    int parts;
} recede_ingredient;
typedef struct recede_paint {
    char name[RECEDE_NAME_SIZE];
    char colour_index[RECEDE_NAME_SIZE]; /* "PB29" or "PB29 + PBk7" */
    recede_spectrum k, s;
    int ingredients;                     /* 0: a paint of the painter's own */
    recede_ingredient of[RECEDE_MOST_IN_MIX];
    int is_white;
    int let_down;                   /* 1: no tube, but prepared by the painter beforehand
                                     * from its ingredients: a strong paint in much white */
    char file[RECEDE_NAME_SIZE];    /* of one's own: its pigment file; "" without one */
    char caution[RECEDE_NAME_SIZE]; /* of one's own: as its file has it; else "" */
} recede_paint;

/* Generic tube names, hues and convenience mixtures, and what each stands for. */
size_t recede_tube_count(void);
const char *recede_tube_name_at(size_t index);

/* A paint by pigment name, tube name or Colour Index name with or without its
 * suffix ("PB15:3"), without regard to case. Error: RECEDE_UNKNOWN_NAME. */
recede_code recede_paint_named(const char *name, recede_paint *out, recede_error *error);

/* The built-in palettes: names of paints, and the medium they are meant for. */
typedef struct recede_palette_entry {
    const char *name;
    const char *purpose;
    int opaque;               /* has a white, for opaque media */
    const char *paints;       /* names, separated by '|' */
} recede_palette_entry;
size_t recede_palette_entry_count(void);
const recede_palette_entry *recede_palette_entry_at(size_t index);

/* The built-in paper: white cotton paper, reflectance per band. */
recede_spectrum recede_paper_white(void);

/* A palette ready to mix: opaque, on the caller's allocator, which must
 * outlive it. paints are copied. paper is the ground's reflectance as seen.
 * Errors: RECEDE_TOO_FEW (0 paints), RECEDE_TOO_MANY (over 24),
 * RECEDE_DUPLICATE, RECEDE_NO_WHITE, RECEDE_NO_MEMORY (path paint.palette). */
typedef struct recede_palette recede_palette;
recede_code recede_palette_new(const recede_paint *paints, size_t count, recede_medium medium,
                               const recede_spectrum *paper, const recede_allocator *allocator,
                               recede_palette **out, recede_error *error);
void recede_palette_free(recede_palette *palette); /* NULL is allowed */
size_t recede_palette_count(const recede_palette *palette);
const recede_paint *recede_palette_paint(const recede_palette *palette, size_t index);
recede_medium recede_palette_medium(const recede_palette *palette);
const recede_spectrum *recede_palette_paper(const recede_palette *palette);

/* A mix: paints by index into the palette, ascending, whole parts, water to
 * one of paint (watercolour only, else 0). count 0 is the bare ground. */
typedef struct recede_mix {
    int count;
    int paint[RECEDE_MOST_IN_MIX];
    int parts[RECEDE_MOST_IN_MIX];
    double water;
} recede_mix;

/* Water levels of a watercolour wash: 0, then the R20 series of ISO 3 from 0.1
 * to 1000: 82 in all, ascending. */
size_t recede_water_count(void);
double recede_water_at(size_t index);

/* Thickness of the film a mix leaves, in units of the pigments' S: masstone is
 * 8, with w water to 1 paint 8 / (1 + w). */
double recede_film_of_water(double water);

/* Reflectance of a film of K and S, thickness x, over a ground, all as seen
 * (with the surface's own reflection): Kubelka 1948 and Saunderson 1942, k1 =
 * 0.03, k2 = 0.65. x = 0 gives the ground; x = INFINITY an opaque layer. */
recede_spectrum recede_film(const recede_spectrum *k, const recede_spectrum *s, double x,
                            const recede_spectrum *ground);

/* Reflectance of a mix: K and S are the parts' weighted means (Duncan 1940).
 * ground NULL means the palette's paper. */
recede_spectrum recede_mix_reflectance(const recede_palette *palette, const recede_mix *mix,
                                       const recede_spectrum *ground);

/* How a watercolour wash looks before it dries, over a ground as seen dry (NULL: the
 * palette's paper): the same film with k1 = 0.015 at the surface. That figure is
 * fitted to a mean shift of 2.3 in L* of 75 masstones (B. MacEvoy, 'Drying shifts',
 * handprint.com): guidance, no more. Opaque media and the bare ground: as dry. */
recede_spectrum recede_wet_reflectance(const recede_palette *palette, const recede_mix *mix,
                                       const recede_spectrum *ground);

/* A paint of the painter's own is learnt from swatches: what was painted, and how it
 * came out. Watercolour swatches lie on one paper, thinned with water; those of an
 * opaque medium hide their ground and are let down with a white. */
#define RECEDE_MOST_SWATCHES 24
typedef struct recede_swatch {
    double water;                /* to 1 of paint, 0 to 1000; 0 is masstone */
    double white;                /* opaque media: to 1 of paint, 0 to 100 */
    int has_reflectance;         /* else only the colour is known */
    recede_spectrum reflectance; /* 0 to 1 per band */
    recede_lab lab;              /* under D65 */
} recede_swatch;

typedef struct recede_swatches {
    recede_medium medium;
    recede_spectrum paper;       /* of watercolour: bare, read like the swatches */
    const recede_paint *white;   /* of an opaque medium */
    int surface_excluded;        /* 1: spectra read without the surface's own reflection */
    size_t count;                /* masstone and at least one other, of colours two */
    recede_swatch of[RECEDE_MOST_SWATCHES];
} recede_swatches;

/* A colour alone stands for its smooth reflectance where a spectrum is asked for: the
 * paper of swatches read as Lab is recede_smooth_of_xyz of it (part 2). What was learnt
 * becomes a paint by a name, K and S in a recede_paint that is otherwise 0: ingredients
 * 0 says that it is the painter's own.
 *
 * K and S that reproduce the swatches, by least squares with bounds and a penalty on
 * what is not smooth (docs/paint.md). delta_e: of each swatch, fitted against read. */
typedef struct recede_paint_fit {
    recede_spectrum k, s;
    double delta_e[RECEDE_MOST_SWATCHES];
    double worst, rms;
} recede_paint_fit;

/* Errors: RECEDE_TOO_FEW (swatches: how many there are, or swatches.masstone: none),
 * RECEDE_TOO_MANY, RECEDE_OUT_OF_RANGE and RECEDE_NOT_FINITE (swatches[2].water ...),
 * RECEDE_DUPLICATE (two of the same strength: swatches[2]), RECEDE_CONFLICT
 * (swatches[2]: a wash darker than the masstone, number and most being their L*;
 * swatches.paper: darker than any paper; swatches.white: no white given),
 * RECEDE_NO_MEMORY, RECEDE_CANCELLED. */
recede_code recede_paint_learn(const recede_swatches *swatches, const recede_allocator *allocator,
                               const recede_progress *progress, recede_paint_fit *out,
                               recede_error *error);

/* ---- a photograph as the meter */

/* An sRGB-encoded picture, 16 bits a channel, 3 a pixel, rows from the top. */
typedef struct recede_photo {
    size_t width, height;
    const unsigned short *rgb;
} recede_photo;

/* A rectangle of it, in pixels; where it shows the card, the card's reflectance. */
typedef struct recede_patch {
    size_t left, top, width, height;
    double reflectance;  /* of the card, 0.02 to 1; 0: a swatch or the paper */
} recede_patch;

typedef struct recede_patch_reading {
    recede_xyz xyz;      /* scaled by the card: Y = 1 for a perfect reflector */
    recede_lab lab;
    double spread;       /* CIEDE2000 from it within which half the pixels lie */
    double clipped;      /* share of the pixels with a channel at the end of its scale */
    int glare;           /* 1: over 3 % of it far off, or a spread over 6: light was mirrored,
                            or edges got in */
    double card_off;     /* card patches: CIEDE2000 between what it is and what was read */
} recede_patch_reading;

#define RECEDE_MOST_PATCHES 128

/* Reads patches off a photograph that shows a grey or white card: sRGB undone, per
 * channel a gain (and an offset, where one card reflects twice what another does)
 * fitted to the card's patches, means that leave out what lies far off. Where card
 * patches of one reflectance lie all about, a slope of the light is taken out too
 * (docs/photograph.md). uneven: 1 where the card's patches then still disagree by
 * more than 2 CIEDE2000: uneven light. out has count places. Errors: RECEDE_TOO_FEW
 * (patches.card: none), RECEDE_TOO_MANY (patches), RECEDE_OUT_OF_RANGE
 * (patches[2].left, patches[2].top: not inside the photograph, number being its far
 * edge; patches[2]: under 16 pixels; patches[2].reflectance), RECEDE_NOT_FINITE,
 * RECEDE_CONFLICT (patches.card: a darker card that reads lighter, number and most
 * being the two reflectances; no light, both 0), RECEDE_NO_MEMORY. */
recede_code recede_photo_read(const recede_photo *photo, const recede_patch *patches, size_t count,
                              const recede_allocator *allocator, recede_patch_reading *out,
                              int *uneven, recede_error *error);

typedef struct recede_rules {
    int most_pigments; /* 1 to 4 */
    int most_parts;    /* 1 to 12 */
    double tie;        /* CIEDE2000, 0 to 10; default 1.0 */
} recede_rules;

typedef enum recede_reach {
    RECEDE_REACHABLE, RECEDE_TOO_DARK, RECEDE_TOO_PALE, RECEDE_TOO_VIVID
} recede_reach;

/* A mix with what it gives. slip: the larger difference from the target with a
 * quarter more or less water (opaque: of the white); where the mix has none to
 * slip, delta_e; for the bare ground 0. reach: whether the closest mix that the
 * wash could take comes within 3; else, by the larger term of this recipe's
 * difference, whether the target is too dark, too pale or too vivid. */
typedef struct recede_recipe {
    recede_mix mix;
    recede_colour colour;
    double delta_e;
    double slip;
    recede_reach reach;
} recede_recipe;

/* What a wash must become. A flat wash has one target, `from`. A graded wash
 * goes from one colour to the other. In opaque media each end takes its mix as a
 * flat wash does. In watercolour both ends take the same paints, every one of them
 * in both. A set of paints (the bare ground is the empty set) scores
 * the larger of its ends' closest differences; among sets whose score, rounded
 * to 1e-6, is within tie of the smallest: fewest paints, smallest score,
 * palette order. Within that set each end takes its mix by the rule below. The
 * half-and-half mix, equal volumes of the two puddles, is held against `half`:
 * two_washes when it is over 3 farther off than the worse end. */
typedef struct recede_wash_target {
    recede_lab from, to, half;
    int graded;
} recede_wash_target;
typedef struct recede_wash_recipe {
    recede_recipe from, to;  /* to is meaningful only for graded washes */
    double half_delta_e;     /* graded: half-and-half mix against half */
    int two_washes;          /* graded: half-and-half fails; dry between */
} recede_wash_recipe;

/* The luminance factor Y of the darkest and of the palest (in watercolour the
 * paper's) colour that mixes under these rules can have. */
void recede_palette_range(const recede_palette *palette, const recede_rules *rules,
                          double *darkest_y, double *palest_y);

/* Recipes for many washes in one pass over every mix: the simple, exhaustive
 * reference. The rule: among mixes whose difference, rounded to 1e-6, is
 * within tie of the closest: fewest pigments, fewest parts, smallest slip,
 * most water, palette order. In watercolour the bare ground is a mix; in opaque
 * media every passage is painted. Errors: RECEDE_OUT_OF_RANGE (rules),
 * RECEDE_NOT_FINITE, RECEDE_NO_MEMORY, RECEDE_CANCELLED. out has count places. */
recede_code recede_search_all(const recede_palette *palette, const recede_rules *rules,
                              const recede_wash_target *targets, size_t count,
                              recede_wash_recipe *out, const recede_allocator *allocator,
                              const recede_progress *progress, recede_error *error);

/* The same answers at once: an index of every mix of a palette under given
 * rules, built once, for any number of targets. It borrows the palette, which
 * must outlive it, and is one block of memory. most_bytes caps that block, 0
 * means 256 MiB: where it would be larger, the mixes of the most pigments are not
 * kept, and a search walks them where they may matter. Errors: as
 * recede_search_all; nothing is left on failure. */
typedef struct recede_index recede_index;
recede_code recede_index_new(const recede_palette *palette, const recede_rules *rules,
                             size_t most_bytes, const recede_allocator *allocator,
                             const recede_progress *progress, recede_index **out,
                             recede_error *error);
void recede_index_free(recede_index *index); /* NULL is allowed */
size_t recede_index_bytes(const recede_index *index);

/* As recede_search_all with the index's palette and rules, to the same recipes. */
recede_code recede_search(const recede_index *index, const recede_wash_target *targets,
                          size_t count, recede_wash_recipe *out,
                          const recede_allocator *allocator, const recede_progress *progress,
                          recede_error *error);

/* Equal volumes of two puddles of the same palette run together, over a ground
 * (NULL: the palette's paper): the middle of a wash graded from one to the other. */
recede_spectrum recede_half_and_half(const recede_palette *palette, const recede_mix *one,
                                     const recede_mix *other, const recede_spectrum *ground);

#define RECEDE_MOST_LAID_OVER 2 /* paints in a wash laid over another */

/* A wash to be laid over a dried one, and what it lies on: the reflectance of the
 * dried wash as seen, 0.03 (the surface's own) to 1 per band. A graded wash has a
 * ground under either end and one halfway; a flat one has from_ground alone. A guess,
 * such as the mix chosen for a wash much like it, may save a flat one time, no more; it
 * is passed over where it has no paints or is no mix by the rules. */
typedef struct recede_over_target {
    recede_wash_target wash;
    recede_spectrum from_ground, to_ground, half_ground;
    recede_mix guess;
} recede_over_target;

/* The reference search by the same rules, for washes laid over dried ones, in
 * mixes of at most two paints (fewer where the rules say so), differences, slip
 * and reach taken over the ground. The mix of no paints leaves the dried wash as
 * it is. Watercolour only, else RECEDE_CONFLICT (path paint.shadows); other
 * errors as recede_search_all, and the grounds' RECEDE_OUT_OF_RANGE. */
recede_code recede_search_over_all(const recede_palette *palette, const recede_rules *rules,
                                   const recede_over_target *targets, size_t count,
                                   recede_wash_recipe *out, const recede_allocator *allocator,
                                   const recede_progress *progress, recede_error *error);

/* The same recipes at once. */
recede_code recede_search_over(const recede_palette *palette, const recede_rules *rules,
                               const recede_over_target *targets, size_t count,
                               recede_wash_recipe *out, const recede_allocator *allocator,
                               const recede_progress *progress, recede_error *error);

/* Recipes for one colour, by what one may want of it. All are mixes whose
 * difference, rounded to 1e-6, is within tie of the closest; where two do
 * equally well (rounded likewise), the rule above decides. */
typedef enum recede_match_kind {
    RECEDE_MATCH_CLOSEST,   /* least difference */
    RECEDE_MATCH_SIMPLEST,  /* the rule's own choice, the recipe of recede_search_all */
    RECEDE_MATCH_FORGIVING, /* least slip */
    RECEDE_MATCH_LAMP,      /* least difference in lamp light */
    RECEDE_MATCH_KINDS
} recede_match_kind;

/* by_lamp: the colour under CIE illuminant A, carried to the white of this
 * header by CAT16 with full adaptation. lamp_delta_e: from the target's. */
typedef struct recede_match_recipe {
    recede_recipe recipe;
    recede_colour by_lamp;
    double lamp_delta_e;
} recede_match_recipe;

/* A colour alone does not say how it looks by lamp light: its smooth
 * reflectance (recede_smooth_of_xyz) stands for it. */
typedef struct recede_matches {
    recede_smooth target;
    recede_colour by_lamp;  /* of that reflectance */
    size_t within_tie;      /* mixes that were chosen among */
    recede_match_recipe of[RECEDE_MATCH_KINDS];
} recede_matches;

/* By index; and by the exhaustive walk that serves as its reference, to the
 * same bytes. Errors: as recede_search and recede_search_all. */
recede_code recede_match(const recede_index *index, recede_lab target, recede_matches *out,
                         const recede_allocator *allocator, const recede_progress *progress,
                         recede_error *error);
recede_code recede_match_all(const recede_palette *palette, const recede_rules *rules,
                             recede_lab target, recede_matches *out,
                             const recede_progress *progress, recede_error *error);

/* What one more pigment would do for a colour. Every pigment of the library is
 * tried that is not in the palette by itself (in watercolour not the white):
 * the closest of all mixes under the rules that contain it. The least
 * difference, rounded to 1e-6, wins; then the library's order. Its caution and
 * permanence are the pigment's own: say them with its name. In opaque media
 * likewise every paint of the palette that is no white and not let down, let
 * down: 1 part of it with RECEDE_LET_DOWN_WHITE of the palette's first white,
 * as a paint of its own; then the palette's order decides. */
#define RECEDE_LET_DOWN_WHITE 11
typedef struct recede_addition {
    const recede_pigment *pigment; /* NULL: none brings the closest mix nearer */
    double delta_e;                /* of the closest mix with it */
    double without;                /* of the closest mix of the palette as it is */
    const recede_paint *let_down;  /* of the palette: letting it down helps most; NULL: none */
    double let_down_delta_e;       /* of the closest mix with that */
} recede_addition;

/* For count targets in one pass, on ground (NULL: the palette's paper). out has
 * count places. Errors: as recede_search_all. */
recede_code recede_best_additions(const recede_palette *palette, const recede_rules *rules,
                                  const recede_spectrum *ground, const recede_lab *targets,
                                  size_t count, recede_addition *out,
                                  const recede_allocator *allocator,
                                  const recede_progress *progress, recede_error *error);

/* What a paint counts as on a mixing chart: by CIE hue angle and chroma of that
 * wash of it, on the palette's paper, whose L* comes nearest to 60. */
typedef enum recede_paint_family {
    RECEDE_FAMILY_YELLOW, /* hue 60 to 115, chroma 50 or more */
    RECEDE_FAMILY_EARTH,  /* hue 25 to 115, chroma 4 to 50 */
    RECEDE_FAMILY_GREEN,  /* hue 115 to 225, chroma 8 or more */
    RECEDE_FAMILY_BLUE,   /* hue 225 to 300, chroma 12 or more */
    RECEDE_FAMILY_OTHER
} recede_paint_family;
recede_paint_family recede_paint_family_of(const recede_palette *palette, int paint);

/* A mixing chart: paints by index into the palette, rows by columns, and a
 * third in every mix. */
typedef struct recede_chart {
    int rows, columns;
    int row[RECEDE_MOST_PAINTS], column[RECEDE_MOST_PAINTS];
    int third; /* -1: none */
} recede_chart;

/* Rows: the palette's yellows, then its earths; columns: its blues, then its
 * greens; each in palette order, those let down left out: the chart lightens by
 * itself. No third. A palette may have none of them. */
recede_chart recede_chart_of(const recede_palette *palette);

/* Three proportions of row to column, 3:1, 1:1 and 1:3, by three strengths: 1,
 * 4 and 16 water to 1 paint; opaque media none, 1 and 4 of the palette's first
 * white to 1 of the rest. The third is 1 part in 5 of the coloured paint. */
enum { RECEDE_CHART_STEPS = 3 };

/* A patch of the chart: parts in lowest terms, and there may be more of them
 * than RECEDE_MOST_PARTS. column -1: the row's paint alone, row -1: the
 * column's, each without the third. */
typedef struct recede_chart_patch {
    recede_mix mix;
    recede_colour colour;
} recede_chart_patch;
recede_chart_patch recede_chart_patch_at(const recede_palette *palette,
                                         const recede_chart *chart, int row, int column,
                                         int proportion, int strength);

/* Where a palette reaches at one lightness: how many films, of all mixes that
 * the rules allow with all their water, and in watercolour the bare ground, have
 * an L* within RECEDE_GAMUT_BAND of it, on a grid of a* and b*. films[j][i] counts
 * a* from i - RECEDE_GAMUT_MOST - 0.5 on, and b* likewise from j, one unit each. In
 * single precision: good to 0.01, for drawing. Big: keep it off small stacks. */
#define RECEDE_GAMUT_BAND 2.5
enum { RECEDE_GAMUT_MOST = 120, RECEDE_GAMUT_SIDE = 2 * RECEDE_GAMUT_MOST + 1 };
typedef struct recede_gamut {
    double lightness;
    unsigned films[RECEDE_GAMUT_SIDE][RECEDE_GAMUT_SIDE];
} recede_gamut;

/* Fills count slices, whose lightness is given. Errors: RECEDE_OUT_OF_RANGE
 * (rules), RECEDE_CANCELLED. */
recede_code recede_gamut_fill(const recede_palette *palette, const recede_rules *rules,
                              recede_gamut *slices, size_t count,
                              const recede_progress *progress, recede_error *error);

/* --------------------------------------------------- 6  scene and plan -- */

typedef enum recede_own_kind {
    RECEDE_OWN_FOLIAGE, RECEDE_OWN_SURFACE, RECEDE_OWN_COLOUR, RECEDE_OWN_LAB,
    RECEDE_OWN_REFLECTANCE,
    RECEDE_OWN_MIX /* of the scene's paints, painted on its paper */
} recede_own_kind;

/* A plane's own colour: how it was given, and always its reflectance. */
typedef struct recede_own {
    recede_own_kind kind;
    char name[RECEDE_NAME_SIZE]; /* of foliage or surface: recede_scene_check fills in
                                  * the reflectance, and refuses a name it does not know */
    recede_srgb srgb;            /* of RECEDE_OWN_COLOUR */
    recede_lab lab;              /* of RECEDE_OWN_LAB */
    recede_mix mix;              /* of RECEDE_OWN_MIX, paints by index into the scene's;
                                  * recede_scene_check works out its reflectance */
    recede_spectrum reflectance;
} recede_own;

typedef struct recede_plane {
    char name[RECEDE_NAME_SIZE];
    double distance_m;       /* 0.1 to 300000 */
    double base_m, crest_m;  /* heights, crest at or above base; NaN: level with the eye */
    double share;            /* of the sheet, 0 to 1; 0 = what is drawn */
    recede_own own;
} recede_plane;

/* A scene with every default filled in. Planes are sorted by distance, nearest
 * first. Big: keep it off small stacks. */
typedef struct recede_scene {
    char title[RECEDE_NAME_SIZE];
    recede_air air;
    recede_sky sky;
    recede_own sky_horizon, sky_light; /* painted sky: as given */
    recede_medium medium;
    char palette[RECEDE_NAME_SIZE];    /* a name or a file, or "" for a list */
    size_t paint_count;
    recede_paint paints[RECEDE_MOST_PAINTS];
    recede_rules rules;
    int shadows_over;                  /* 1: over the dried lit wash; 0: beside it, on bare
                                        * paper; -1: over in watercolour, else beside */
    int most_tubes;                    /* to squeeze from in the whole order of work, 1 to
                                        * 24; 0: as many as there are */
    recede_spectrum paper;
    double paper_width_m, paper_height_m;
    double sky_value;                  /* 1 to 10; NaN: 8.5, painted: the horizon's own */
    double adaptation;                 /* 0 to 1 */
    int darks_fitted;                  /* 0: "as seen" */
    size_t plane_count;
    recede_plane planes[RECEDE_MOST_PLANES];
} recede_scene;

/* Every default except planes: 20 km of ordinary air, clear sky, the twelve
 * landscape watercolours. */
void recede_scene_default(recede_scene *scene);

/* The most parts a mix has by default: 8, opaque media RECEDE_MOST_PARTS, for there
 * the white is among the parts. */
int recede_usual_parts(recede_medium medium);

/* Fills scene->paints from a built-in palette. Error: RECEDE_UNKNOWN_NAME. */
recede_code recede_scene_use_palette(recede_scene *scene, const char *name, recede_error *error);

/* Checks every field, fills in what was left open (NaN, -1) and sorts the planes by
 * distance, then name; recede_plan_new does so too. An error's path counts
 * planes in the order given. */
recede_code recede_scene_check(recede_scene *scene, recede_error *error);

typedef enum recede_ground { RECEDE_ON_PAPER, RECEDE_ON_LIT } recede_ground;
typedef enum recede_edge { RECEDE_EDGE_HARD, RECEDE_EDGE_SOFT, RECEDE_EDGE_LOST } recede_edge;

typedef struct recede_wash {
    recede_colour target;
    double value_as_seen;   /* before the darks were fitted to the paint */
    double own_share;       /* of the light, Y, that comes from the plane itself */
    recede_ground ground;
    recede_recipe recipe;
} recede_wash;

/* One side of a plane, or the sky. A flat wash has crest alone. A graded one
 * runs from crest (the sky: overhead) to base (the sky: the horizon). */
typedef struct recede_side {
    int graded;
    int two_washes;
    double half_delta_e;
    recede_wash crest, base;
} recede_side;

/* Whether a side can be told from what lies behind it: by value where they are
 * half a step apart or more, else by hue and chroma, else not at all. */
typedef enum recede_apart {
    RECEDE_APART_BY_VALUE, RECEDE_APART_BY_COLOUR, RECEDE_NOT_APART
} recede_apart;

/* From what lies behind a side (the farthest plane: the horizon) to its crest. */
typedef struct recede_planned {
    size_t plane;            /* index into the plan's scene */
    recede_side lit, shadow;
    recede_edge edge;        /* of its crest against what lies behind */
    double value_step;       /* lit side: value behind less its own; last: to the sky */
    double value_step_shadow;
    double colour_step;      /* CIEDE2000, lit side to what lies behind */
    double colour_step_shadow;
    double hue_step;         /* of that, hue and chroma alone: the lightness left out */
    double hue_step_shadow;
    recede_apart apart;      /* lit sides */
    recede_apart apart_shadow;
} recede_planned;

typedef enum recede_warning_kind {
    RECEDE_WARN_LOW_SUN,       /* numbers: sun height; toward a sun below 5 degrees */
    RECEDE_WARN_INTO_SUN,      /* the painter looks near the sun: eyes */
    RECEDE_WARN_MERGE,         /* planes one and other, lit sides; numbers: value step,
                                  hue step, 1 if their shadow sides read apart */
    RECEDE_WARN_NOT_REACHED,   /* plane one, side; numbers: difference, with a pigment that
                                  of the closest mix with it, with a paint let down
                                  likewise (recede_plan_advise) */
    RECEDE_WARN_DARKS_FITTED,  /* numbers: gamma, darkest value seen, darkest painted */
    RECEDE_WARN_TWO_WASHES,    /* plane one or sky, side */
    RECEDE_WARN_GONE,          /* plane one: under 2 % of its light gets through */
    RECEDE_WARN_OWN_COLOUR     /* plane one: no reflectance has that colour; numbers: difference */
} recede_warning_kind;

typedef struct recede_warning {
    recede_warning_kind kind;
    int plane, other;   /* indices into the plan's scene; -1: the sky or none */
    int shadow;         /* 1: the shadow side */
    int graded;         /* 1: a graded side */
    int base;           /* 1: its base */
    recede_reach reach;
    const recede_pigment *pigment; /* the addition that helps most; NULL: none sought or found */
    const recede_paint *let_down;  /* the paint of the plan's palette that helps most let down;
                                    * NULL likewise */
    double number[3];
} recede_warning;

typedef struct recede_plan recede_plan;

/* The whole computation. The scene is copied, checked and sorted. Errors: all
 * of the above. Progress is reported while recipes are sought. */
recede_code recede_plan_new(const recede_scene *scene, const recede_allocator *allocator,
                            const recede_progress *progress, recede_plan **out,
                            recede_error *error);

/* The same at once, for a front end that plans again and again: with an index made
 * for the scene's paints, medium, paper and rules, else RECEDE_CONFLICT (path paint).
 * The index is needed during the call alone. */
recede_code recede_plan_with_index(const recede_scene *scene, const recede_index *index,
                                   const recede_allocator *allocator,
                                   const recede_progress *progress, recede_plan **out,
                                   recede_error *error);
void recede_plan_free(recede_plan *plan); /* NULL is allowed */

const recede_scene *recede_plan_scene(const recede_plan *plan);
const recede_palette *recede_plan_palette(const recede_plan *plan);
const recede_atmosphere *recede_plan_atmosphere(const recede_plan *plan);
const recede_light *recede_plan_light(const recede_plan *plan);

/* Planes far to near: index 0 is the farthest. */
size_t recede_plan_count(const recede_plan *plan);
const recede_planned *recede_plan_at(const recede_plan *plan, size_t index);

/* The sky: crest is overhead (30 degrees, the picture's top), base the horizon. */
const recede_side *recede_plan_sky(const recede_plan *plan);

size_t recede_plan_warning_count(const recede_plan *plan);
const recede_warning *recede_plan_warning(const recede_plan *plan, size_t index);

/* All washes in one row: the sky, then planes far to near, lit side then shadow,
 * crest then base. out has room for RECEDE_MOST_WASH_PLACES; returns how many. */
typedef struct recede_wash_place {
    int plane;  /* index into the plan's scene; -1: the sky */
    int shadow; /* 1: the shadow side */
    int graded; /* 1: one end of a graded side */
    int base;   /* 1: its base */
    const recede_wash *wash;
    const recede_wash *under; /* the dried wash it lies on; NULL: the paper */
} recede_wash_place;
#define RECEDE_MOST_WASH_PLACES (2 * (2 * RECEDE_MOST_PLANES + 1))
size_t recede_plan_washes(const recede_plan *plan, recede_wash_place *out);

/* Seeks for every wash that is not reached the pigment whose addition would help
 * most (recede_best_additions, each wash by itself and on its own ground) and
 * names it in the warning. Apart from recede_plan_new because it takes far
 * longer than a plan. Errors: RECEDE_NO_MEMORY, RECEDE_CANCELLED; the warnings
 * are then as before. */
recede_code recede_plan_advise(recede_plan *plan, const recede_progress *progress,
                               recede_error *error);

/* The value plan alone, without recipes and so at once: values are those of the
 * targets as painted, steps and judgement as in recede_planned but between
 * targets. Planes far to near. */
typedef struct recede_plane_values {
    size_t plane;            /* index into the scene, sorted by distance */
    double lit, shadow;      /* Munsell value of the crest */
    double own_share;        /* of the lit crest */
    double value_step, value_step_shadow;
    double hue_step, hue_step_shadow;
    recede_apart apart, apart_shadow;
} recede_plane_values;
typedef struct recede_values {
    double horizon;
    size_t count;
    recede_plane_values at[RECEDE_MOST_PLANES];
} recede_values;
recede_code recede_plan_values(const recede_scene *scene, const recede_allocator *allocator,
                               recede_values *out, recede_error *error);

/* A wish for the value plan, and the visibility (with move_sun also the sun's
 * height) that grants it with the least change from the scene as given. */
typedef enum recede_wish_kind {
    RECEDE_WISH_STEPS, /* every plane at least so far from what lies behind it */
    RECEDE_WISH_VALUE  /* one plane's lit side (its crest) at a value */
} recede_wish_kind;
typedef struct recede_wish {
    recede_wish_kind kind;
    double value;                 /* steps: 0.1 to 9; value: 0 to 10 */
    int shadows;                  /* steps: the shadow sides as well */
    int without_sky;              /* steps: not the farthest plane against the horizon */
    char plane[RECEDE_NAME_SIZE]; /* value: its name */
    int move_sun;                 /* clear skies only */
} recede_wish;

/* How a wish stands in one air and light. */
typedef struct recede_wish_state {
    double visibility_km, sun_height_deg;
    double reached; /* steps: the least of them; value: the plane's */
    size_t at;      /* index into values: where that is */
    int shadow;     /* 1: on the shadow side */
    recede_values values;
} recede_wish_state;

typedef enum recede_wish_outcome {
    RECEDE_WISH_HOLDS,   /* in the scene as given, within 0.01: nothing is changed */
    RECEDE_WISH_GRANTED, /* found grants it */
    RECEDE_WISH_DENIED   /* none does; found comes nearest */
} recede_wish_outcome;

typedef struct recede_wish_answer {
    recede_wish_outcome outcome;
    double change; /* |ln(found / given visibility)| + degrees of the sun / 10 */
    recede_wish_state given, found;
} recede_wish_answer;

/* Visibilities from 0.2 to 250 km are tried (from the scene's own where that is
 * lower; none that the scene's mist forbids), and with move_sun sun heights in
 * whole degrees from 1 to 90 and the scene's own. Values are those of
 * recede_plan_values. Errors: as there; RECEDE_OUT_OF_RANGE and RECEDE_NOT_FINITE
 * (wish.value), RECEDE_UNKNOWN_NAME (wish.plane), RECEDE_TOO_FEW (planes: no two
 * to compare), RECEDE_CONFLICT (wish.sun: the sky has none), RECEDE_CANCELLED. */
recede_code recede_wish_grant(const recede_scene *scene, const recede_wish *wish,
                              const recede_allocator *allocator,
                              const recede_progress *progress, recede_wish_answer *out,
                              recede_error *error);

/* Values drawn together into a few. */
#define RECEDE_LEAST_GROUPS 3
#define RECEDE_MOST_GROUPS 5
typedef struct recede_groups {
    int count;                         /* fewer than asked for where there are fewer values */
    double value[RECEDE_MOST_GROUPS];  /* the weighted mean of each group, dark to light */
    double share[RECEDE_MOST_GROUPS];  /* of all weight */
    double error;                      /* root mean square difference from the group's value */
} recede_groups;

/* The grouping of least squared error: exact, by dynamic programming. weights
 * are 0 or more, NULL: all alike; values without weight join the nearest group,
 * and where nothing weighs, all count alike. wanted is 3 to 5, or 0: the fewest
 * of these whose error is 0.5 at most, else 5. group_of has count places: the
 * group of each value. Errors: RECEDE_TOO_FEW (no values), RECEDE_OUT_OF_RANGE,
 * RECEDE_NOT_FINITE, RECEDE_NO_MEMORY (paths groups, values, weights). */
recede_code recede_group_values(const double *values, const double *weights, size_t count,
                                int wanted, int *group_of, recede_groups *out,
                                const recede_allocator *allocator, recede_error *error);

/* ---------------------------------------------------------- 7  picture -- */

typedef struct recede_picture_options {
    size_t width, height;  /* pixels, 1 to 8192 each */
    int greys;             /* 1: values only */
    int targets;           /* 1: the colours wanted instead of those the mixes give */
    const recede_groups *groups; /* not NULL: greys of these values alone, edges hard */
} recede_picture_options;

/* Paints the plan into rgb, 3 bytes a pixel, rows from the top, row_bytes
 * apart: the graded sky and the planes as overlapping bands, lit and shadow
 * sides both, edges softer with distance. Same plan, same bytes. Errors:
 * RECEDE_OUT_OF_RANGE, RECEDE_NO_MEMORY. */
recede_code recede_picture_paint(const recede_plan *plan, const recede_picture_options *options,
                                 unsigned char *rgb, size_t row_bytes,
                                 const recede_allocator *allocator, recede_error *error);

/* For a front end that paints the same planes again and again: a sketch keeps the
 * shapes of the last picture and draws anew only what has changed, so that air,
 * light and paint change at once. The same bytes as recede_picture_paint. Memory
 * comes from the sketch's allocator; one that runs out costs time, or ends the
 * call with RECEDE_NO_MEMORY, and leaves the sketch fit for use. */
typedef struct recede_sketch recede_sketch;
recede_code recede_sketch_new(const recede_allocator *allocator, recede_sketch **out,
                              recede_error *error);
void recede_sketch_free(recede_sketch *sketch); /* NULL is allowed */
recede_code recede_picture_repaint(recede_sketch *sketch, const recede_plan *plan,
                                   const recede_picture_options *options, unsigned char *rgb,
                                   size_t row_bytes, recede_error *error);

/* Where each plane meets what lies behind it in a picture of that size: y from
 * the top at every column, which may lie outside the picture. y has width places
 * for each plane, as in recede_plan_at; a plane hides all below its own line.
 * Errors: as recede_picture_repaint. */
recede_code recede_picture_skylines(recede_sketch *sketch, const recede_plan *plan, size_t width,
                                    size_t height, float *y, recede_error *error);

/* The share of the picture's area that each plane (as in recede_plan_at) and
 * the sky take as drawn; shares has recede_plan_count(plan) + 1 places, the
 * sky last; they sum to 1. */
recede_code recede_picture_shares(const recede_plan *plan, double *shares,
                                  const recede_allocator *allocator, recede_error *error);

/* ---------------------------------------------------- 8  ladder, skies -- */

#define RECEDE_MOST_RUNGS 12
#define RECEDE_MOST_LADDER_AIRS 2

typedef enum recede_ladder_row {
    RECEDE_ROW_LIT, RECEDE_ROW_SHADOW, /* of the own colour */
    RECEDE_ROW_WHITE,                  /* a white in the light of the lit side */
    RECEDE_LADDER_ROWS
} recede_ladder_row;

/* What to put on a ladder: a colour, a white beside it, and how far. */
typedef struct recede_ladder_wish {
    recede_own own, white;
    size_t air_count;                               /* 1 or 2 */
    double visibility_km[RECEDE_MOST_LADDER_AIRS];
    size_t rung_count;                              /* 2 to RECEDE_MOST_RUNGS */
    double distance_m[RECEDE_MOST_RUNGS];           /* in any order, no two alike */
} recede_ladder_wish;

/* One distance. own and air are the radiance at the eye that comes from the
 * surface and from the air before it. */
typedef struct recede_rung {
    double distance_m;
    recede_wash row[RECEDE_LADDER_ROWS];
    recede_spectrum own[RECEDE_LADDER_ROWS], air[RECEDE_LADDER_ROWS];
} recede_rung;

typedef struct recede_ladder_air {
    double visibility_km;
    recede_colour horizon;               /* endless air, painted in the same tone */
    recede_rung rung[RECEDE_MOST_RUNGS]; /* near to far */
} recede_ladder_air;

/* The eye adapts to the light of each air; the scale of values and the fitting
 * of the darks are one for all, so that rungs compare. With one air all numbers
 * are those of the plan of `scene`, which has the own colour ("rung 1", ...)
 * and the white ("white 1", ...) as planes, level with the eye. */
typedef struct recede_ladder {
    recede_ladder_wish wish;       /* distances sorted */
    const recede_scene *scene;
    const recede_palette *palette;
    recede_ladder_air air[RECEDE_MOST_LADDER_AIRS];
    recede_plan *plan;             /* holds scene and palette */
    recede_allocator allocator;
} recede_ladder;

/* scene gives light, eye, mist, paint, paper and picture; its planes and its
 * visibility are left aside. Errors: as recede_plan_new; RECEDE_TOO_FEW,
 * RECEDE_TOO_MANY (paths rungs, airs), RECEDE_DUPLICATE (path rungs). */
recede_code recede_ladder_new(const recede_scene *scene, const recede_ladder_wish *wish,
                              const recede_allocator *allocator, const recede_progress *progress,
                              recede_ladder **out, recede_error *error);
void recede_ladder_free(recede_ladder *ladder); /* NULL is allowed */

/* A light to see the scene in. */
typedef struct recede_sky_light {
    char name[RECEDE_NAME_SIZE];
    recede_air air;
    recede_sky sky;
} recede_sky_light;

#define RECEDE_MOST_LIGHTS 8
#define RECEDE_USUAL_LIGHTS 5

/* Morning haze, clear noon, overcast, evening into the sun, evening with the
 * sun behind; eye and mist as in the scene. */
void recede_usual_lights(const recede_scene *scene, recede_sky_light lights[RECEDE_USUAL_LIGHTS]);

/* How one wash's recipe differs from another's of the same palette. */
typedef struct recede_change {
    int same;                      /* ground, paints, parts and water all alike */
    int other_ground;              /* one lies on the paper, one on the dried lit wash */
    int coming_count, going_count;
    int coming[RECEDE_MOST_IN_MIX], going[RECEDE_MOST_IN_MIX]; /* paints of the palette */
    int more;                      /* paint of both whose part of the mix grows most, or -1 */
    double more_by;                /* by how much, 0 to 1 */
    double water_ratio;            /* new to old, of water to one of paint; 0: not both have any */
    double value_step;             /* Munsell value of the mix, new less old */
    double delta_e;                /* CIEDE2000 between the mixes */
} recede_change;
recede_change recede_change_of_wash(const recede_wash *from, const recede_wash *to);

/* A side of a plane, or the sky, and what a light changes in it. */
typedef struct recede_side_change {
    int graded;                    /* in either light: base is worth telling */
    recede_change crest, base;
} recede_side_change;
recede_side_change recede_change_of_side(const recede_side *from, const recede_side *to);

/* plan[0] is the scene as given, plan[1 + i] the same in light[i]. */
typedef struct recede_skies {
    size_t count;                  /* lights */
    recede_sky_light light[RECEDE_MOST_LIGHTS];
    recede_plan *plan[1 + RECEDE_MOST_LIGHTS];
    recede_allocator allocator;
} recede_skies;

/* Errors: as recede_plan_new, RECEDE_TOO_FEW and RECEDE_TOO_MANY (path lights).
 * at, if not NULL, tells which plan an error belongs to. */
recede_code recede_skies_new(const recede_scene *scene, const recede_sky_light *lights,
                             size_t count, const recede_allocator *allocator,
                             const recede_progress *progress, recede_skies **out, size_t *at,
                             recede_error *error);
void recede_skies_free(recede_skies *skies); /* NULL is allowed */

/* The values of all mixes drawn together as recede_group_values does it, each
 * weighed by the area it is drawn on: a plane's share is divided between its
 * sides as the picture's light divides it, a graded side's between its ends.
 * The groups go into recede_picture_options for the reduced study. Planes as
 * in recede_plan_at. */
typedef struct recede_side_groups {
    int crest, base; /* a flat side has both alike; index into groups */
} recede_side_groups;
typedef struct recede_grouping {
    recede_groups groups;
    recede_side_groups sky, lit[RECEDE_MOST_PLANES], shadow[RECEDE_MOST_PLANES];
} recede_grouping;
recede_code recede_picture_group(const recede_plan *plan, int wanted, recede_grouping *out,
                                 const recede_allocator *allocator, recede_error *error);

/* ---------------------------------------------- 9  the order of work -- */

/*
 * Watercolour goes from pale to dark, and to a puddle one can only add: paint or
 * water in, some of it used up, nothing taken out. The washes of a plan are painted
 * far to near, the sky first, the lit side of a plane before its shadow (opaque media:
 * after it, dark to light), the paler
 * end of a graded wash before the other. Each is mixed in one of a few wells: to
 * what is left there of an earlier wash, or anew, the well washed out first where
 * it is not clean. Sought is the order whose sum is least:
 *
 *   the differences (CIEDE2000) of all washes, and for each
 *   RECEDE_ADDITION_COST    for every paint, and for the water, poured in
 *   RECEDE_WASHING_COST     for a well washed out
 *   RECEDE_EXCESS_COST      for as much again as half as much again as it needs,
 *                           where what was left in the well is so much
 *
 * exactly, over what is offered for each wash: the plan's recipe, and the closest
 * mixes of those sets of paints that come nearest, 8 in all from the whole palette,
 * 6 from half of its tubes, 3 from a quarter, 2 and 1 from what is left then.
 */
#define RECEDE_ADDITION_COST 0.1
#define RECEDE_WASHING_COST 1.0
#define RECEDE_EXCESS_COST 0.5
#define RECEDE_WORK_OFFERS 20
#define RECEDE_WET_FILM_MM 0.15 /* watercolour; common practice, no source */
#define RECEDE_COAT_MM 0.2      /* opaque media, brushed to cover; likewise */
#define RECEDE_MOST_WELLS 3
#define RECEDE_MOST_STEPS (2 + 4 * RECEDE_MOST_PLANES)

typedef struct recede_work_wish {
    int wells;      /* 1 to 3 */
    int most_tubes; /* to squeeze from in the whole picture, also for what is let down
                     * beforehand, 1 to 24; 0: as the scene has it */
} recede_work_wish;

typedef enum recede_step_kind {
    RECEDE_STEP_BARE,   /* nothing is painted: what is there stands */
    RECEDE_STEP_START,  /* mixed in a clean well */
    RECEDE_STEP_WASHED, /* mixed anew, the well washed out first */
    RECEDE_STEP_ADDED   /* added to what is left in the well */
} recede_step_kind;

/* What a wash is laid on: hard edges want what they meet dry, soft ones damp, lost
 * ones wet; a shadow over its lit side wants that dry. */
typedef enum recede_paper_state {
    RECEDE_PAPER_DRY, RECEDE_PAPER_DAMP, RECEDE_PAPER_WET
} recede_paper_state;

/* One wash, or one end of a graded one. A mix fills its well with mixed_ml, of which
 * need_ml goes onto the paper: what is in the well before, left_ml, is part of it
 * (RECEDE_STEP_ADDED) or is poured away (RECEDE_STEP_WASHED). mixed_ml is at least
 * half as much again as need_ml, and more where other washes are made from it. */
typedef struct recede_work_step {
    int plane;                /* index into the plan's scene; -1: the sky */
    int shadow;               /* 1: the shadow side */
    int graded, base;         /* 1: an end of a graded wash; 1: its base */
    int second;               /* 1: the end painted after the other */
    recede_ground ground;
    recede_step_kind kind;
    int well;                 /* from 0; -1: none */
    int before;               /* the step whose puddle was in the well; -1: none */
    recede_mix mix;
    recede_colour colour;     /* that it gives */
    double delta_e;           /* from the target */
    double planned_delta_e;   /* of the plan's own recipe */
    double left_ml, mixed_ml, need_ml;
    double paint_ml[RECEDE_MOST_IN_MIX]; /* poured in now, of each paint of the mix */
    double water_ml;                     /* likewise */
    int additions;            /* how many of these there are */
    recede_edge edge;         /* of the plane against what lies behind it */
    recede_paper_state paper;
    int after;                /* the step that must have come to that state; -1: none */
} recede_work_step;

/* Big: keep it off small stacks. */
typedef struct recede_work {
    int wells, most_tubes;    /* that one may use */
    int tubes;                /* that are squeezed from, also for what is let down */
    int exact;                /* 0: memory set a limit, a better order may be missed */
    double sum;               /* see above */
    double difference;        /* of that, the washes' own */
    double planned_difference; /* the same when each is mixed by the plan's recipe */
    int additions, washings;
    size_t count;
    recede_work_step steps[RECEDE_MOST_STEPS];
} recede_work;

/* How thick a film or coat the amounts are worked out for. */
double recede_work_film_mm(recede_medium medium);

/* shares: as recede_picture_shares gives them. Such a film is laid; a lit
 * side that its shadow is laid over is the whole plane, any other side half of it,
 * an end of a graded wash half of that. index: of the plan's paints and rules, or
 * NULL, and one is made for the call. Where the best order uses more tubes than
 * one may, tubes are left out one at a time, what is let down from them with them,
 * each time the one without which separate mixes stay nearest, and the order is
 * sought from those that remain until it uses no more: so fewer wells or tubes never
 * give a smaller sum. Errors: RECEDE_OUT_OF_RANGE (paths wells, most_tubes),
 * RECEDE_CONFLICT (index), RECEDE_NO_MEMORY, RECEDE_CANCELLED. */
recede_code recede_work_of(const recede_plan *plan, const double *shares,
                           const recede_work_wish *wish, const recede_index *index,
                           const recede_allocator *allocator, const recede_progress *progress,
                           recede_work *out, recede_error *error);

/* What other wells and fewer tubes would cost: first 1 to 3 wells with the tubes of
 * the wish, then, with its wells, ever fewer tubes down to 1, a row for each number
 * in use; where the wish is for fewer than all, what all give comes first. out
 * has RECEDE_MOST_WORK_CHOICES places. Errors: as recede_work_of. */
typedef struct recede_work_choice {
    int wells;
    int tubes;             /* to squeeze from, also for what is let down */
    double sum, difference;
    int additions, washings;
    unsigned long paints;  /* bit i: mixes name paint i of the palette */
} recede_work_choice;
#define RECEDE_MOST_WORK_CHOICES (RECEDE_MOST_WELLS + RECEDE_MOST_PAINTS)
recede_code recede_work_choices(const recede_plan *plan, const double *shares,
                                const recede_work_wish *wish, const recede_index *index,
                                const recede_allocator *allocator,
                                const recede_progress *progress, recede_work_choice *out,
                                size_t *count, recede_error *error);

#ifdef __cplusplus
}
#endif
#endif

/* The clear sky by elevation against exact scattering on a round earth: single
 * photons followed backward from the eye by chance (Monte Carlo), all orders,
 * with the design's constants. Nothing is shared with the library but the solar
 * table. The random numbers are the same in every run. */
#include "air/views.h"

#include "data/tables.h"

enum { PHOTONS = 10000, MOST_ORDERS = 60 };

#define EARTH_KM 6371.0
#define TOP_KM 60.0
#define RAYLEIGH_SCALE_KM 8.43
#define GROUND 0.12
#define ASYMMETRY 0.75

typedef struct vector { double x, y, z; } vector;

typedef struct world {
    double rayleigh, haze, haze_scale_km, albedo;
    vector sun;
    uint64_t chance;
} world;

/* G. Marsaglia, "Xorshift RNGs", Journal of Statistical Software 8 (2003). */
static double chance(world *w)
{
    w->chance ^= w->chance << 13;
    w->chance ^= w->chance >> 7;
    w->chance ^= w->chance << 17;
    return ((double)(w->chance >> 11) + 0.5) / 9007199254740992.0;
}

static double dot(vector a, vector b)
{
    return a.x * b.x + a.y * b.y + a.z * b.z;
}

static vector along(vector from, vector way, double length)
{
    return (vector){from.x + length * way.x, from.y + length * way.y, from.z + length * way.z};
}

static double height_of(vector at)
{
    return sqrt(dot(at, at)) - EARTH_KM;
}

static double rayleigh_at(const world *w, double z)
{
    return w->rayleigh * exp(-z / RAYLEIGH_SCALE_KM);
}

static double haze_at(const world *w, double z)
{
    return w->haze * exp(-z / w->haze_scale_km);
}

/* Means of 1 over all directions. */
static double rayleigh_phase(double c)
{
    return 0.75 * (1.0 + c * c);
}

static double haze_phase(double c)
{
    return (1.0 - ASYMMETRY * ASYMMETRY)
           / pow(1.0 + ASYMMETRY * ASYMMETRY - 2.0 * ASYMMETRY * c, 1.5);
}

/* exp(-optical depth) to the sun, 0 behind the earth; cubed steps, fine near. */
static double sunlight(const world *w, vector at)
{
    enum { STEPS = 60 };
    double r = sqrt(dot(at, at)), inward = dot(at, w->sun), depth = 0.0;
    if (inward < 0.0 && r * r - inward * inward < EARTH_KM * EARTH_KM)
        return 0.0;
    double top = EARTH_KM + TOP_KM;
    double length = sqrt(fmax(0.0, inward * inward - r * r + top * top)) - inward;
    for (int k = 0; k < STEPS; k++) {
        double share = (k + 0.5) / STEPS, s = length * share * share * share;
        double z = sqrt(r * r + s * s + 2.0 * s * inward) - EARTH_KM;
        depth += 3.0 * length * share * share / STEPS * (rayleigh_at(w, z) + haze_at(w, z));
    }
    return exp(-depth);
}

/* A way that makes an angle of the given cosine with another, turned by chance. */
static vector turned(world *w, vector way, double cosine)
{
    vector helper = fabs(way.x) < 0.9 ? (vector){1.0, 0.0, 0.0} : (vector){0.0, 1.0, 0.0};
    vector a = {way.y * helper.z - way.z * helper.y, way.z * helper.x - way.x * helper.z,
                way.x * helper.y - way.y * helper.x};
    double length = sqrt(dot(a, a)), turn = 2.0 * VIEW_PI * chance(w);
    a = (vector){a.x / length, a.y / length, a.z / length};
    vector b = {way.y * a.z - way.z * a.y, way.z * a.x - way.x * a.z, way.x * a.y - way.y * a.x};
    double sine = sqrt(fmax(0.0, 1.0 - cosine * cosine));
    vector out = {way.x * cosine, way.y * cosine, way.z * cosine};
    return along(along(out, a, sine * cos(turn)), b, sine * sin(turn));
}

/* How far a photon may go before it is lower than it is by one layer. */
static double layer_limit(vector at, vector way, double floor_km)
{
    double inward = dot(at, way), low = EARTH_KM + floor_km;
    double root = inward * inward - dot(at, at) + low * low;
    if (inward >= 0.0 || root <= 0.0)
        return 1e9;
    return fmax(1e-6, -inward - sqrt(root));
}

typedef enum { ESCAPED, SCATTERED, ON_GROUND } fate;

/* Moves the photon to where it next meets something: steps as if the air were as
 * dense all along as at the layer's floor, each accepted by the density there. */
static fate fly(world *w, vector *at, vector way)
{
    for (;;) {
        double z = height_of(*at);
        if (z > TOP_KM)
            return ESCAPED;
        double floor_km = fmax(0.0, 0.8 * z - 0.3 * w->haze_scale_km);
        double densest = rayleigh_at(w, floor_km) + haze_at(w, floor_km);
        double limit = layer_limit(*at, way, floor_km), step = -log(chance(w)) / densest;
        *at = along(*at, way, fmin(step, limit));
        z = height_of(*at);
        if (z < 1e-5 && floor_km <= 0.0 && dot(*at, way) < 0.0)
            return ON_GROUND;
        if (step <= limit && chance(w) * densest < rayleigh_at(w, z) + haze_at(w, z))
            return SCATTERED;
    }
}

/* Scatters, or absorbs part of the weight; returns the sun's light sent back. */
static double scatter(world *w, vector at, vector *way, double *weight)
{
    double z = height_of(at), rayleigh = rayleigh_at(w, z), haze = haze_at(w, z);
    double to_sun = dot(*way, w->sun);
    double phase = (rayleigh * rayleigh_phase(to_sun) + w->albedo * haze * haze_phase(to_sun))
                   / (rayleigh + haze);
    double back = *weight * phase * sunlight(w, at) / (4.0 * VIEW_PI);
    double cosine;
    if (chance(w) * (rayleigh + haze) < rayleigh) {
        do
            cosine = 2.0 * chance(w) - 1.0;
        while (chance(w) * 1.5 > rayleigh_phase(cosine));
    } else {
        double q = (1.0 - ASYMMETRY * ASYMMETRY)
                   / (1.0 - ASYMMETRY + 2.0 * ASYMMETRY * chance(w));
        cosine = (1.0 + ASYMMETRY * ASYMMETRY - q * q) / (2.0 * ASYMMETRY);
        *weight *= w->albedo;
    }
    *way = turned(w, *way, cosine);
    return back;
}

/* The ground is matt. */
static double bounce(world *w, vector *at, vector *way, double *weight)
{
    double r = sqrt(dot(*at, *at));
    vector up = {at->x / r, at->y / r, at->z / r};
    *at = (vector){up.x * (EARTH_KM + 1e-4), up.y * (EARTH_KM + 1e-4), up.z * (EARTH_KM + 1e-4)};
    *weight *= GROUND;
    *way = turned(w, up, sqrt(chance(w)));
    return *weight / VIEW_PI * fmax(0.0, dot(up, w->sun)) * sunlight(w, *at);
}

/* Radiance for a sun of irradiance 1 outside the air. */
static double one_photon(world *w, vector at, vector way)
{
    double weight = 1.0, radiance = 0.0;
    for (int order = 0; order < MOST_ORDERS; order++) {
        fate next = fly(w, &at, way);
        if (next == ESCAPED)
            break;
        radiance += next == SCATTERED ? scatter(w, at, &way, &weight)
                                      : bounce(w, &at, &way, &weight);
        if (weight < 0.1) { /* ends most weak ones, and makes up for it */
            if (chance(w) < 0.5)
                break;
            weight *= 2.0;
        }
    }
    return radiance;
}

/* Ozone is above all else: 0.344 atm-cm, its air mass as in the solar model. */
static double above_the_air(double nm, double sun_sine)
{
    for (size_t i = 0; i < recede_table_solar_count; i++) {
        const recede_solar_band *band = &recede_table_solar[i];
        double mass = (1.0 + 22.0 / 6370.0) / sqrt(sun_sine * sun_sine + 44.0 / 6370.0);
        if (band->wavelength_nm == nm)
            return band->extraterrestrial_w_m2_nm * exp(-band->ozone_per_atm_cm * 0.344 * mass);
    }
    fail_msg("no such band");
    return 0.0;
}

static double exact_sky(double visibility_km, double sun_height_deg, double side_deg,
                        double elevation_deg, double nm)
{
    double degree = VIEW_PI / 180.0, ratio = 550.0 / nm, from_400 = log(nm / 400.0);
    double haze_550 = log(20.0) / visibility_km - 0.01149, h = sun_height_deg * degree;
    world w = {0.01149 * pow(ratio, 4.08), haze_550 * ratio, fmin(1.25, 0.8 / haze_550),
               0.945 * exp(-0.095 * from_400 * from_400), {cos(h), 0.0, sin(h)},
               88172645463325252u};
    double e = elevation_deg * degree, side = side_deg * degree, sum = 0.0;
    vector way = {cos(e) * cos(side), cos(e) * sin(side), sin(e)};
    for (int k = 0; k < PHOTONS; k++)
        sum += one_photon(&w, (vector){0.0, 0.0, EARTH_KM + 1e-4}, way);
    return sum / PHOTONS * above_the_air(nm, sin(h));
}

/* No outside bound exists; 0.30 of the log ratio is what was measured, and a
 * little room for chance. */
static void sky_is_near_exact_scattering(void **state)
{
    (void)state;
    const struct { double visibility, height, side; } skies[] = {
        {80.0, 40.0, 120.0}, {20.0, 40.0, 60.0}, {20.0, 10.0, 120.0},
        {80.0, 10.0, 180.0}, {40.0, 3.0, 120.0}, {60.0, 1.0, 60.0},
    };
    const double elevations_deg[] = {0.5, 2.0, 10.0, 30.0, 90.0};
    const int bands[] = {4, 17, 25}; /* 420, 550 and 630 nm */
    print_message("sky over exact sky at 420, 550, 630 nm; elevations 0.5, 2, 10, 30, 90 deg\n");
    for (int k = 0; k < 6; k++) {
        view_scene scene = view_clear(skies[k].visibility, 1.0, skies[k].height, skies[k].side);
        print_message("%2.0f km, sun %2.0f, side %3.0f:", skies[k].visibility, skies[k].height,
                      skies[k].side);
        for (int e = 0; e < 5; e++) {
            recede_spectrum sky = recede_sky_radiance(&scene.air, &scene.light, elevations_deg[e]);
            for (int b = 0; b < 3; b++) {
                double exact = exact_sky(skies[k].visibility, skies[k].height, skies[k].side,
                                         elevations_deg[e], 380.0 + 10.0 * bands[b]);
                print_message(b ? " %.2f" : "   %.2f", sky.at[bands[b]] / exact);
                assert_near(log(sky.at[bands[b]] / exact), 0.0, 0.30);
            }
        }
        print_message("\n");
    }
}

/* Ratio of the airlight to exact airlight at 420, 550 and 630 nm: printed, and
 * held between two limits. */
static void assert_airlight(double visibility_km, double sun_height_deg, double side_deg,
                            double least, double most)
{
    const int bands[] = {4, 17, 25};
    view_scene scene = view_clear(visibility_km, 1.0, sun_height_deg, side_deg);
    recede_spectrum j = recede_horizon_radiance(&scene.air, &scene.light);
    print_message("%4.1f km, sun %2.0f, side %3.0f:", visibility_km, sun_height_deg, side_deg);
    for (int b = 0; b < 3; b++) {
        double exact = exact_sky(visibility_km, sun_height_deg, side_deg, 0.02,
                                 380.0 + 10.0 * bands[b]);
        double ratio = j.at[bands[b]] / exact;
        print_message(" %.2f", ratio);
        assert_true(ratio >= least && ratio <= most);
    }
    print_message("\n");
}

/* Straight into a low sun the airlight is overstated, up to 3 times in the green
 * and 5 in the red: what the plan's warning is for. The limits are what was
 * measured. */
static void airlight_into_a_low_sun_is_overstated(void **state)
{
    (void)state;
    const double heights_deg[] = {1.0, 2.0, 4.0, 10.0};
    for (int k = 0; k < 4; k++)
        assert_airlight(20.0, heights_deg[k], 0.0, 0.7, 6.0);
}

/* The limits are what was measured. */
static void airlight_in_thick_haze_is_near(void **state)
{
    (void)state;
    const double visibilities_km[] = {0.2, 1.0, 5.0}, heights_deg[] = {10.0, 40.0};
    for (int k = 0; k < 6; k++) {
        for (double side = 60.0; side <= 180.0; side += 60.0)
            assert_airlight(visibilities_km[k / 2], heights_deg[k % 2], side, 0.7, 1.6);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(sky_is_near_exact_scattering),
        cmocka_unit_test(airlight_into_a_low_sun_is_overstated),
        cmocka_unit_test(airlight_in_thick_haze_is_near),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

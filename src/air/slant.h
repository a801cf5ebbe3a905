/* A straight line of sight through air in level layers on a round earth. */
#ifndef RECEDE_AIR_SLANT_H
#define RECEDE_AIR_SLANT_H

/* Length of eye-level air that holds as much of a constituent, thinning by its
 * scale height, as the line does between two rises above the eye (0 <= low_km <=
 * high_km). sine: of the line's elevation, 0 to 1. The layers that sky.c takes
 * add up to the whole line within 1e-5. */
double recede_slant_length_km(double low_km, double high_km, double sine, double scale_km);

/* The same without thinning: the line's own length between the rises. */
double recede_slant_distance_km(double low_km, double high_km, double sine);

#endif

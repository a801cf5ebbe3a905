/* Repeatable chance and soft noise: the same seed and place give the same
 * number everywhere. */
#ifndef RECEDE_PICTURE_NOISE_H
#define RECEDE_PICTURE_NOISE_H

#include <stdint.h>

/* A seed from a text, and a new seed from a seed and a number. */
uint32_t recede_seed_of_text(const char *text);
uint32_t recede_seed_with(uint32_t seed, uint32_t number);

/* A number from least to most, even odds. */
double recede_chance(uint32_t seed, uint32_t number, double least, double most);

/* Gradient noise (K. Perlin, SIGGRAPH 1985) with the fade of 2002; about -1 to
 * 1, mean 0, smooth, features about 1 apart. */
double recede_noise(uint32_t seed, double x);
double recede_noise_at(uint32_t seed, double x, double y);

/* Octaves of the same, each twice as fine and `gain` times as strong. */
double recede_noise_octaves(uint32_t seed, double x, int octaves, double gain);
double recede_noise_octaves_at(uint32_t seed, double x, double y, int octaves, double gain);

#endif

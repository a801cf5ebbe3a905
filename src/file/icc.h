/* A look into an ICC profile (ISO 15076-1). */
#ifndef RECEDE_FILE_ICC_H
#define RECEDE_FILE_ICC_H

#include <stddef.h>

/* 1 where the profile is of three colorants and three curves and these are sRGB's,
 * whatever it is called. Any bytes will do. */
int recede_icc_is_srgb(const unsigned char *profile, size_t size);

#endif

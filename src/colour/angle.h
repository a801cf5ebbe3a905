/* Angles in degrees. */
#ifndef RECEDE_COLOUR_ANGLE_H
#define RECEDE_COLOUR_ANGLE_H

/* The direction of (x, y), 0 to below 360; 0 for the origin. */
double recede_direction_deg(double x, double y);

double recede_sin_deg(double angle_deg);
double recede_cos_deg(double angle_deg);

#endif

/*
 * CAT16: C. Li and others, Color Research and Application 42 (2017) 703-718.
 * In its cone-like space each component is scaled by D to/from + 1 - D.
 */
#include "recede.h"

typedef struct matrix { double at[3][3]; } matrix;

static const matrix to_cones = {{
    {0.401288, 0.650173, -0.051461},
    {-0.250268, 1.204414, 0.045854},
    {-0.002079, 0.048952, 0.953127},
}};
static const matrix from_cones = {{ /* its inverse */
    {1.8620678550872327, -1.0112546305316843, 0.14918677544445172},
    {0.38752654323613717, 0.62144744193147539, -0.0089739851676125179},
    {-0.015841498849333856, -0.034122938028515563, 1.0499644368778493},
}};

static recede_xyz apply(const matrix *m, recede_xyz v)
{
    const double(*at)[3] = m->at;
    return (recede_xyz){at[0][0] * v.x + at[0][1] * v.y + at[0][2] * v.z,
                        at[1][0] * v.x + at[1][1] * v.y + at[1][2] * v.z,
                        at[2][0] * v.x + at[2][1] * v.y + at[2][2] * v.z};
}

recede_xyz recede_cat16(recede_xyz colour, recede_xyz from, recede_xyz to, double degree)
{
    recede_xyz cones = apply(&to_cones, colour);
    recede_xyz old_white = apply(&to_cones, from), new_white = apply(&to_cones, to);
    /* only the change goes through the matrices, so degree 0 changes nothing */
    recede_xyz change = {degree * (new_white.x / old_white.x - 1) * cones.x,
                         degree * (new_white.y / old_white.y - 1) * cones.y,
                         degree * (new_white.z / old_white.z - 1) * cones.z};
    recede_xyz moved = apply(&from_cones, change);
    return (recede_xyz){colour.x + moved.x, colour.y + moved.y, colour.z + moved.z};
}

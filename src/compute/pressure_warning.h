/* When a warning of pressure loss must have come on. Pressures in Pa, cold, gauge. */
#ifndef TYRESUM_COMPUTE_PRESSURE_WARNING_H
#define TYRESUM_COMPUTE_PRESSURE_WARNING_H

#include "tables/tables_data.h"

/* 49 CFR 571.138 S4.2: 25 % below the recommended cold pressure, or the least pressure of its
 * Table 1 for the class and load range (from memory), whichever is higher. A class that Table 1
 * does not name has no least pressure. The rule binds the vehicle's maker: a least pressure that
 * tyre and wheel may not be inflated above (`ceiling_Pa`, INFINITY: none) is nobody's to set. */
#define WARNING_SHARE 0.75
double warning_threshold_Pa(double recommended_Pa, double ceiling_Pa, enum inflation_key class,
                            char load_range);

/* The least pressure alone; UNKNOWN where the table is silent. */
double warning_minimum_Pa(enum inflation_key class, char load_range);

#endif

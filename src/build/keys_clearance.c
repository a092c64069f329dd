/* Keys of the suspension, of what was measured on the vehicle, and of the points that added parts
 * bring. */
#include "build/key_rows.h"
#include "build/specification.h"

static const struct key axle_suspension[] = {
    {"lift", QUANTITY(KIND_LENGTH), FIELD(struct axle_suspension, lift_m), RANGE(-0.3, 0.6),
     .use = USE_CLEARANCE, .doc = "extra height at the unladen weight"},
    {"wheel_rate", QUANTITY(KIND_STIFFNESS), FIELD(struct axle_suspension, wheel_rate_N_m),
     RANGE(1e3, 1e7), .use = USE_CLEARANCE, .doc = "of the springs now fitted, at the wheel"},
    {"wheel_rate_steps", .kind = KEY_PAIR_LIST, .unit = KIND_LENGTH, .second_unit = KIND_STIFFNESS,
     FIELD(struct axle_suspension, wheel_rate_steps), .use = USE_CLEARANCE,
     .doc = "instead, of stepped springs: [[travel from the unladen ride height, rate from there], "
            "...]"},
    {"wheel_rate_curve", .kind = KEY_PAIR_LIST, .unit = KIND_LENGTH, .second_unit = KIND_STIFFNESS,
     FIELD(struct axle_suspension, wheel_rate_curve), .use = USE_CLEARANCE,
     .doc = "instead, of progressive springs: [[travel from the unladen ride height, rate], ...]"},
    {"spring_rate", QUANTITY(KIND_STIFFNESS), FIELD(struct axle_suspension, spring_rate_N_m),
     RANGE(1e3, 1e8), .use = USE_CLEARANCE,
     .doc = "instead, of the spring itself; needs motion_ratio"},
    {"motion_ratio", QUANTITY(KIND_BARE), FIELD(struct axle_suspension, motion_ratio),
     RANGE(0.1, 2), .use = USE_CLEARANCE, .doc = "spring travel / wheel travel, a bare number"},
    {"helper_rate", QUANTITY(KIND_STIFFNESS), FIELD(struct axle_suspension, helper_rate_N_m),
     RANGE(1e3, 1e7), .use = USE_CLEARANCE,
     .doc = "of a helper in series with the spring, at the wheel"},
    {"helper_closes_at", QUANTITY(KIND_LENGTH), FIELD(struct axle_suspension, helper_closes_at_m),
     RANGE(-0.5, 0.5), .use = USE_CLEARANCE,
     .doc = "travel from the unladen ride height at which the helper is closed"},
    {"free_height_change", QUANTITY(KIND_LENGTH),
     FIELD(struct axle_suspension, free_height_change_m), RANGE(-0.3, 0.6), .use = USE_CLEARANCE,
     .doc = "instead of lift: how much longer the new spring stands unloaded, at the wheel"},
    {"wheel_rate_before", QUANTITY(KIND_STIFFNESS),
     FIELD(struct axle_suspension, wheel_rate_before_N_m), RANGE(1e3, 1e7), .use = USE_CLEARANCE,
     .doc = "of the spring that it replaces"},
    {"unsprung_mass", QUANTITY(KIND_MASS), FIELD(struct axle_suspension, unsprung_kg),
     RANGE(0, 5000), .use = USE_CLEARANCE,
     .doc = "of the axle with its wheels: what does not ride on the springs"},
    {"travel_to_bump", QUANTITY(KIND_LENGTH), FIELD(struct axle_suspension, travel_to_bump_m),
     RANGE(0, 0.8), .use = USE_CLEARANCE, .doc = "from unladen ride height to full bump"},
    {"travel_to_droop", QUANTITY(KIND_LENGTH), FIELD(struct axle_suspension, travel_to_droop_m),
     RANGE(0, 0.8), .use = USE_CLEARANCE, .doc = "from unladen ride height to full droop"},
    {"bump_stop_change", QUANTITY(KIND_LENGTH), FIELD(struct axle_suspension, bump_stop_change_m),
     RANGE(-0.3, 0.3), .use = USE_CLEARANCE, .doc = "longer bump stops are positive"},
};
KEY_SET(axle_suspension, struct axle_suspension);

static const struct key suspension[] = {
    {"front", MAPPING(axle_suspension_set), FIELD(struct suspension, front), .use = USE_CLEARANCE,
     .doc = "front axle"},
    {"rear", MAPPING(axle_suspension_set), FIELD(struct suspension, rear), .use = USE_CLEARANCE,
     .doc = "rear axle"},
};
SHARED_KEY_SET(suspension, struct suspension);

static const struct key arch[] = {
    {"above", QUANTITY(KIND_LENGTH), FIELD(struct arch, above_m), RANGE(0, 1), .use = USE_CLEARANCE,
     .doc = "room above the fitted tyre at unladen ride height"},
    {"inner", QUANTITY(KIND_LENGTH), FIELD(struct arch, inner_m), RANGE(0, 1), .use = USE_CLEARANCE,
     .doc = "room inside, to strut or arm"},
    {"outer", QUANTITY(KIND_LENGTH), FIELD(struct arch, outer_m), RANGE(-0.3, 1),
     .use = USE_CLEARANCE, .doc = "room outside, to the arch lip"},
    {"at_lock", QUANTITY(KIND_LENGTH), FIELD(struct arch, at_lock_m), RANGE(0, 1),
     .use = USE_CLEARANCE, .doc = "least room at full lock"},
};
KEY_SET(arch, struct arch);

static const struct key arches[] = {
    {"front", MAPPING(arch_set), FIELD(struct arches, front), .use = USE_CLEARANCE,
     .doc = "front wheel arch, measured with the fitted tyre"},
    {"rear", MAPPING(arch_set), FIELD(struct arches, rear), .use = USE_CLEARANCE,
     .doc = "rear wheel arch"},
};
KEY_SET(arches, struct arches);

static const struct key steering[] = {
    {"axis_to_centre", QUANTITY(KIND_LENGTH), FIELD(struct steering, axis_to_centre_m),
     RANGE(-0.5, 0.5), .use = USE_CLEARANCE,
     .doc = "steering axis to the tyre's centre plane at axle height"},
    {"lock", QUANTITY(KIND_ANGLE), FIELD(struct steering, lock_rad), RANGE(0.05, 1.3),
     .use = USE_CLEARANCE, .doc = "steering angle of the wheel at full lock"},
    {"kingpin_inclination", QUANTITY(KIND_ANGLE), FIELD(struct steering, kingpin_inclination_rad),
     RANGE(-0.2, 0.6), .use = USE_CLEARANCE,
     .doc = "of the steering axis, leaning inward at the top"},
};
KEY_SET(steering, struct steering);

#define POINT_KEYS                                                                                 \
    {"item", TEXT, FIELD(struct body_point, item), .use = USE_CLEARANCE,                           \
     .doc = "which part it is"},                                                                   \
    {                                                                                              \
        "height", QUANTITY(KIND_LENGTH), FIELD(struct body_point, height_m), RANGE(0.01, 3),       \
            .use = USE_CLEARANCE, .doc = "above the ground at the fitted state"                    \
    }

static const struct key ahead_point[] = {
    POINT_KEYS,
    {"ahead", QUANTITY(KIND_LENGTH), FIELD(struct body_point, ahead_m), RANGE(0.05, 5),
     .use = USE_CLEARANCE, .doc = "ahead of the front axle's centre"},
};
KEY_SET_ALSO(ahead_point, struct body_point, &added_point_keys);

static const struct key behind_point[] = {
    POINT_KEYS,
    {"behind", QUANTITY(KIND_LENGTH), FIELD(struct body_point, behind_m), RANGE(0.05, 8),
     .use = USE_CLEARANCE, .doc = "behind the rear axle's centre"},
};
KEY_SET_ALSO(behind_point, struct body_point, &added_point_keys);

static const struct key belly_point[] = {
    POINT_KEYS,
    {"at", QUANTITY(KIND_LENGTH), FIELD(struct body_point, at_m), RANGE(0, 15),
     .use = USE_CLEARANCE, .doc = "rearward from the front axle"},
};
KEY_SET_ALSO(belly_point, struct body_point, &added_point_keys);

/* The point of an added part: with one of its three places. */
static const struct key added_point[] = {
    POINT_KEYS,
    {"ahead", QUANTITY(KIND_LENGTH), FIELD(struct body_point, ahead_m), RANGE(0.05, 5),
     .use = USE_CLEARANCE, .doc = "ahead of the front axle's centre, or"},
    {"behind", QUANTITY(KIND_LENGTH), FIELD(struct body_point, behind_m), RANGE(0.05, 8),
     .use = USE_CLEARANCE, .doc = "behind the rear axle's centre, or"},
    {"at", QUANTITY(KIND_LENGTH), FIELD(struct body_point, at_m), RANGE(0, 15),
     .use = USE_CLEARANCE, .doc = "between the axles, rearward from the front one"},
};
SHARED_KEY_SET(added_point, struct body_point);

static const struct key spare_space[] = {
    {"diameter", QUANTITY(KIND_LENGTH), FIELD(struct spare_space, diameter_m), RANGE(0.2, 3),
     .use = USE_CLEARANCE, .doc = "the largest tyre diameter that goes in"},
    {"width", QUANTITY(KIND_LENGTH), FIELD(struct spare_space, width_m), RANGE(0.05, 1.5),
     .use = USE_CLEARANCE, .doc = "the largest section width that goes in"},
    {"at", QUANTITY(KIND_LENGTH), FIELD(struct spare_space, at_m), RANGE(-5, 20),
     .use = USE_CLEARANCE | USE_LOAD,
     .doc = "rearward from the front axle: a heavier spare loads the axles by it"},
};
KEY_SET(spare_space, struct spare_space);

static const struct key deflated[] = {
    {"diameter", QUANTITY(KIND_LENGTH), FIELD(struct deflated, diameter_m), RANGE(0.2, 3),
     .use = USE_CLEARANCE, .doc = "of the spare without air"},
    {"width", QUANTITY(KIND_LENGTH), FIELD(struct deflated, width_m), RANGE(0.05, 1.5),
     .use = USE_CLEARANCE, .doc = "of the spare without air"},
};
SHARED_KEY_SET(deflated, struct deflated);

static const struct key headlamp[] = {
    {"height", QUANTITY(KIND_LENGTH), FIELD(struct headlamp, height_m), RANGE(0.2, 2),
     .use = USE_CLEARANCE, .doc = "lower edge of the dipped beam's lens above the ground"},
    {"dip", QUANTITY(KIND_FRACTION), FIELD(struct headlamp, dip), RANGE(-0.05, 0.1),
     .use = USE_CLEARANCE, .doc = "how far the beam is set down, as on the lamp's plate: 1.2 %"},
};
KEY_SET(headlamp, struct headlamp);

static const struct key clearance[] = {
    {"ground", QUANTITY(KIND_LENGTH), FIELD(struct clearance_measured, ground_m), RANGE(0.01, 2),
     .use = USE_CLEARANCE, .doc = "under the lowest part that rides on the springs"},
    {"ground_at", QUANTITY(KIND_LENGTH), FIELD(struct clearance_measured, ground_at_m),
     RANGE(-3, 20), .use = USE_CLEARANCE,
     .doc = "where that part is, rearward from the front axle"},
    {"under_axle", PAIR(KIND_LENGTH), FIELD(struct clearance_measured, under_axle_m),
     RANGE(0.01, 2), .use = USE_CLEARANCE,
     .doc = "under the lowest part that does not ride on the springs"},
    {"arch", MAPPING(arches_set), FIELD(struct clearance_measured, arch), .use = USE_CLEARANCE,
     .doc = "room in the wheel arches with the fitted tyre"},
    {"steering", MAPPING(steering_set), FIELD(struct clearance_measured, steering),
     .use = USE_CLEARANCE, .doc = "sharpens the room at lock"},
    {"front_overhang", MAPPINGS(ahead_point_set), FIELD(struct clearance_measured, front_overhang),
     .use = USE_CLEARANCE, .doc = "lowest points ahead of the front axle"},
    {"rear_overhang", MAPPINGS(behind_point_set), FIELD(struct clearance_measured, rear_overhang),
     .use = USE_CLEARANCE, .doc = "lowest points behind the rear axle"},
    {"belly", MAPPINGS(belly_point_set), FIELD(struct clearance_measured, belly),
     .use = USE_CLEARANCE, .doc = "lowest points between the axles"},
    {"roof_height", QUANTITY(KIND_LENGTH), FIELD(struct clearance_measured, roof_height_m),
     RANGE(0.5, 5), .use = USE_CLEARANCE, .doc = "highest point above the ground"},
    {"garage_entrance", QUANTITY(KIND_LENGTH), FIELD(struct clearance_measured, garage_entrance_m),
     RANGE(0.5, 10), .use = USE_CLEARANCE, .doc = "height of the lowest door that it must pass"},
    {"wading_depth", QUANTITY(KIND_LENGTH), FIELD(struct clearance_measured, wading_depth_m),
     RANGE(0.05, 3), .use = USE_CLEARANCE, .doc = "the vehicle maker's, at the fitted state"},
    {"step_height", QUANTITY(KIND_LENGTH), FIELD(struct clearance_measured, step_height_m),
     RANGE(0.1, 2), .use = USE_CLEARANCE, .doc = "of the door sill or step above the ground"},
    {"headlamp", MAPPING(headlamp_set), FIELD(struct clearance_measured, headlamp),
     .use = USE_CLEARANCE, .doc = "the dipped beam as it is set at the fitted state"},
    {"spare_space", MAPPING(spare_space_set), FIELD(struct clearance_measured, spare_space),
     .use = USE_CLEARANCE, .doc = "room where the spare is carried"},
};
SHARED_KEY_SET(clearance, struct clearance_measured);

/* Keys of the suspension, of what was measured on the vehicle, and of the points that added parts
 * bring. */
#include "build/key_rows.h"

static const struct key spring_choice[] = {
    {"name", TEXT, FIELD(struct spring_choice, name), .use = USE_CLEARANCE,
     .doc = "what it is called here", .example = "S2"},
    {"wheel_rate", QUANTITY(KIND_STIFFNESS), FIELD(struct spring_choice, wheel_rate_N_m),
     RANGE(1e3, 1e7), .use = USE_CLEARANCE, .doc = "its rate at the wheel", .example = "88 N/mm"},
    {"lift", QUANTITY(KIND_LENGTH), FIELD(struct spring_choice, lift_m), RANGE(-0.3, 0.6),
     .use = USE_CLEARANCE, .doc = "how high it raises the axle at the unladen weight",
     .example = "40 mm"},
    {"free_height_change", QUANTITY(KIND_LENGTH), FIELD(struct spring_choice, free_height_change_m),
     RANGE(-0.3, 0.6), .use = USE_CLEARANCE,
     .doc = "instead of lift: how much longer it stands unloaded, at the wheel", .example = "30 mm",
     .instead = true},
    {"constant_load_from", QUANTITY(KIND_MASS), FIELD(struct spring_choice, load_from_kg),
     RANGE(0, 10000), .use = USE_CLEARANCE,
     .doc = "the least load on the axle above unladen that it is made for", .example = "150 kg"},
    {"constant_load_to", QUANTITY(KIND_MASS), FIELD(struct spring_choice, load_to_kg),
     RANGE(0, 10000), .use = USE_CLEARANCE, .doc = "the largest, which no state may pass",
     .example = "350 kg"},
};
KEY_SET(spring_choice, struct spring_choice);

static const struct key axle_suspension[] = {
    {"lift", QUANTITY(KIND_LENGTH), FIELD(struct axle_suspension, lift_m), RANGE(-0.3, 0.6),
     .use = USE_CLEARANCE, .doc = "extra height at the unladen weight", .example = "40 mm"},
    {"wheel_rate", QUANTITY(KIND_STIFFNESS), FIELD(struct axle_suspension, wheel_rate_N_m),
     RANGE(1e3, 1e7), .use = USE_CLEARANCE, .doc = "of the springs now fitted, at the wheel",
     .example = "62 N/mm"},
    {"wheel_rate_steps", .kind = KEY_PAIR_LIST, .unit = KIND_LENGTH, .second_unit = KIND_STIFFNESS,
     FIELD(struct axle_suspension, wheel_rate_steps), .use = USE_CLEARANCE,
     .doc = "instead, of stepped springs: [[travel from the unladen ride height, rate from there], "
            "...]",
     .example = "[[0 mm, 45 N/mm], [60 mm, 70 N/mm]]", .instead = true},
    {"wheel_rate_curve", .kind = KEY_PAIR_LIST, .unit = KIND_LENGTH, .second_unit = KIND_STIFFNESS,
     FIELD(struct axle_suspension, wheel_rate_curve), .use = USE_CLEARANCE,
     .doc = "instead, of progressive springs: [[travel from the unladen ride height, rate], ...]",
     .example = "[[0 mm, 45 N/mm], [100 mm, 80 N/mm]]", .instead = true},
    {"spring_rate", QUANTITY(KIND_STIFFNESS), FIELD(struct axle_suspension, spring_rate_N_m),
     RANGE(1e3, 1e8), .use = USE_CLEARANCE,
     .doc = "instead, of the spring itself; needs motion_ratio", .example = "147 N/mm",
     .instead = true},
    {"motion_ratio", QUANTITY(KIND_BARE), FIELD(struct axle_suspension, motion_ratio),
     RANGE(0.1, 2), .use = USE_CLEARANCE, .doc = "spring travel / wheel travel, a bare number",
     .example = "0.65", .instead = true},
    {"helper_rate", QUANTITY(KIND_STIFFNESS), FIELD(struct axle_suspension, helper_rate_N_m),
     RANGE(1e3, 1e7), .use = USE_CLEARANCE,
     .doc = "of a helper in series with the spring, at the wheel", .example = "40 N/mm"},
    {"helper_closes_at", QUANTITY(KIND_LENGTH), FIELD(struct axle_suspension, helper_closes_at_m),
     RANGE(-0.5, 0.5), .use = USE_CLEARANCE,
     .doc = "travel from the unladen ride height at which the helper is closed",
     .example = "20 mm"},
    {"free_height_change", QUANTITY(KIND_LENGTH),
     FIELD(struct axle_suspension, free_height_change_m), RANGE(-0.3, 0.6), .use = USE_CLEARANCE,
     .doc = "instead of lift: how much longer the new spring stands unloaded, at the wheel",
     .example = "30 mm", .instead = true},
    {"wheel_rate_before", QUANTITY(KIND_STIFFNESS),
     FIELD(struct axle_suspension, wheel_rate_before_N_m), RANGE(1e3, 1e7), .use = USE_CLEARANCE,
     .doc = "of the spring that it replaces", .example = "50 N/mm"},
    {"unsprung_mass", QUANTITY(KIND_MASS), FIELD(struct axle_suspension, unsprung_kg),
     RANGE(0, 5000), .use = USE_CLEARANCE,
     .doc = "of the axle with its wheels: what does not ride on the springs", .example = "160 kg"},
    {"travel_to_bump", QUANTITY(KIND_LENGTH), FIELD(struct axle_suspension, travel_to_bump_m),
     RANGE(0, 0.8), .use = USE_CLEARANCE, .doc = "from unladen ride height to full bump",
     .example = "80 mm"},
    {"travel_to_droop", QUANTITY(KIND_LENGTH), FIELD(struct axle_suspension, travel_to_droop_m),
     RANGE(0, 0.8), .use = USE_CLEARANCE, .doc = "from unladen ride height to full droop",
     .example = "95 mm"},
    {"bump_stop_change", QUANTITY(KIND_LENGTH), FIELD(struct axle_suspension, bump_stop_change_m),
     RANGE(-0.3, 0.3), .use = USE_CLEARANCE, .doc = "longer bump stops are positive",
     .example = "10 mm"},
    {"spring_choices", MAPPINGS(spring_choice_set), FIELD(struct axle_suspension, spring_choices),
     .use = USE_CLEARANCE | USE_SHORTLIST, .doc = "springs that may be fitted instead"},
    {"lift_choices", .kind = KEY_NUMBER_LIST, .unit = KIND_LENGTH,
     FIELD(struct axle_suspension, lift_choices), RANGE(-0.3, 0.6), .use = USE_SHORTLIST,
     .doc = "heights that a search may add to what the springs give", .example = "[0 mm, 40 mm]"},
};
KEY_SET(axle_suspension, struct axle_suspension);

static const struct key suspension[] = {
    {"front", MAPPING(axle_suspension_set), FIELD(struct suspension, front),
     .use = USE_CLEARANCE | USE_SHORTLIST, .doc = "front axle"},
    {"rear", MAPPING(axle_suspension_set), FIELD(struct suspension, rear),
     .use = USE_CLEARANCE | USE_SHORTLIST, .doc = "rear axle",
     .example = "{lift: 50 mm, wheel_rate: 74 N/mm, travel_to_bump: 85 mm}"},
};
SHARED_KEY_SET(suspension, struct suspension);

static const struct key arch[] = {
    {"above", QUANTITY(KIND_LENGTH), FIELD(struct arch, above_m), RANGE(0, 1), .use = USE_CLEARANCE,
     .doc = "room above the fitted tyre at unladen ride height", .example = "110 mm"},
    {"inner", QUANTITY(KIND_LENGTH), FIELD(struct arch, inner_m), RANGE(0, 1), .use = USE_CLEARANCE,
     .doc = "room inside, to strut or arm", .example = "28 mm"},
    {"outer", QUANTITY(KIND_LENGTH), FIELD(struct arch, outer_m), RANGE(-0.3, 1),
     .use = USE_CLEARANCE, .doc = "room outside, to the arch lip", .example = "22 mm"},
    {"at_lock", QUANTITY(KIND_LENGTH), FIELD(struct arch, at_lock_m), RANGE(0, 1),
     .use = USE_CLEARANCE, .doc = "least room at full lock", .example = "14 mm"},
};
KEY_SET(arch, struct arch);

static const struct key arches[] = {
    {"front", MAPPING(arch_set), FIELD(struct arches, front), .use = USE_CLEARANCE,
     .doc = "front wheel arch, measured with the fitted tyre"},
    {"rear", MAPPING(arch_set), FIELD(struct arches, rear), .use = USE_CLEARANCE,
     .doc = "rear wheel arch", .example = "{above: 115 mm, inner: 30 mm, outer: 25 mm}"},
};
KEY_SET(arches, struct arches);

static const char *const choices_touches[] = {"tread", "sidewall", NULL};
static const char *const choices_meets[] = {"arch", "frame", "unknown", NULL};

#define DEGREES(angle) (PI / 180 * (angle))

static const struct key steering[] = {
    {"axis_to_centre", QUANTITY(KIND_LENGTH), FIELD(struct steering, axis_to_centre_m),
     RANGE(-0.5, 0.5), .use = USE_CLEARANCE,
     .doc = "steering axis to the tyre's centre plane at axle height", .example = "40 mm"},
    {"lock", QUANTITY(KIND_ANGLE), FIELD(struct steering, lock_rad), RANGE(DEGREES(2), DEGREES(75)),
     .use = USE_CLEARANCE, .doc = "steering angle of the wheel at full lock", .example = "34 deg"},
    {"kingpin_inclination", QUANTITY(KIND_ANGLE), FIELD(struct steering, kingpin_inclination_rad),
     RANGE(DEGREES(-12), DEGREES(35)), .use = USE_CLEARANCE,
     .doc = "of the steering axis, leaning inward at the top", .example = "12 deg"},
    {"touches", CHOICE(choices_touches), FIELD(struct steering, touches), .use = USE_CLEARANCE,
     .doc = "part of the tyre that comes nearest at lock: geometry sharpens only then",
     .example = "tread"},
    {"meets", CHOICE(choices_meets), FIELD(struct steering, meets), .use = USE_CLEARANCE,
     .doc = "what stands in the way there: trimming helps at the arch alone", .example = "arch"},
};
KEY_SET(steering, struct steering);

#define POINT_KEYS(item_, height_)                                                                 \
    {"item",                                                                                       \
     TEXT,                                                                                         \
     FIELD(struct body_point, item),                                                               \
     .use = USE_CLEARANCE,                                                                         \
     .doc = "which part it is",                                                                    \
     .example = item_},                                                                            \
    {                                                                                              \
        "height", QUANTITY(KIND_LENGTH), FIELD(struct body_point, height_m), RANGE(0.01, 3),       \
            .use = USE_CLEARANCE, .doc = "above the ground at the fitted state",                   \
            .example = height_                                                                     \
    }

static const struct key ahead_point[] = {
    POINT_KEYS("bumper", "420 mm"),
    {"ahead", QUANTITY(KIND_LENGTH), FIELD(struct body_point, ahead_m), RANGE(0.05, 5),
     .use = USE_CLEARANCE, .doc = "ahead of the front axle's centre", .example = "880 mm"},
};
KEY_SET_ALSO(ahead_point, struct body_point, &added_point_keys);

static const struct key behind_point[] = {
    POINT_KEYS("tow bar", "430 mm"),
    {"behind", QUANTITY(KIND_LENGTH), FIELD(struct body_point, behind_m), RANGE(0.05, 8),
     .use = USE_CLEARANCE, .doc = "behind the rear axle's centre", .example = "1050 mm"},
};
KEY_SET_ALSO(behind_point, struct body_point, &added_point_keys);

static const struct key belly_point[] = {
    POINT_KEYS("transfer case", "235 mm"),
    {"at", QUANTITY(KIND_LENGTH), FIELD(struct body_point, at_m), RANGE(0, 15),
     .use = USE_CLEARANCE, .doc = "rearward from the front axle", .example = "1500 mm"},
};
KEY_SET_ALSO(belly_point, struct body_point, &added_point_keys);

/* The point of an added part: with one of its three places. */
static const struct key added_point[] = {
    POINT_KEYS("winch mount", "400 mm"),
    {"ahead", QUANTITY(KIND_LENGTH), FIELD(struct body_point, ahead_m), RANGE(0.05, 5),
     .use = USE_CLEARANCE, .doc = "ahead of the front axle's centre, or", .example = "760 mm"},
    {"behind", QUANTITY(KIND_LENGTH), FIELD(struct body_point, behind_m), RANGE(0.05, 8),
     .use = USE_CLEARANCE, .doc = "behind the rear axle's centre, or", .example = "900 mm",
     .instead = true},
    {"at", QUANTITY(KIND_LENGTH), FIELD(struct body_point, at_m), RANGE(0, 15),
     .use = USE_CLEARANCE, .doc = "between the axles, rearward from the front one",
     .example = "1600 mm", .instead = true},
};
SHARED_KEY_SET(added_point, struct body_point);

static const struct key spare_space[] = {
    {"diameter", QUANTITY(KIND_LENGTH), FIELD(struct spare_space, diameter_m), RANGE(0.2, 3),
     .use = USE_CLEARANCE, .doc = "the largest tyre diameter that goes in", .example = "800 mm"},
    {"width", QUANTITY(KIND_LENGTH), FIELD(struct spare_space, width_m), RANGE(0.05, 1.5),
     .use = USE_CLEARANCE, .doc = "the largest section width that goes in", .example = "260 mm"},
    {"at", QUANTITY(KIND_LENGTH), FIELD(struct spare_space, at_m), RANGE(-5, 20),
     .use = USE_CLEARANCE | USE_LOAD,
     .doc = "rearward from the front axle: a heavier spare loads the axles by it",
     .example = "3700 mm"},
};
KEY_SET(spare_space, struct spare_space);

static const struct key deflated[] = {
    {"diameter", QUANTITY(KIND_LENGTH), FIELD(struct deflated, diameter_m), RANGE(0.2, 3),
     .use = USE_CLEARANCE, .doc = "of the spare without air", .example = "590 mm"},
    {"width", QUANTITY(KIND_LENGTH), FIELD(struct deflated, width_m), RANGE(0.05, 1.5),
     .use = USE_CLEARANCE, .doc = "of the spare without air", .example = "190 mm"},
};
SHARED_KEY_SET(deflated, struct deflated);

static const struct key headlamp[] = {
    {"height", QUANTITY(KIND_LENGTH), FIELD(struct headlamp, height_m), RANGE(0.2, 2),
     .use = USE_CLEARANCE, .doc = "lower edge of the dipped beam's lens above the ground",
     .example = "820 mm"},
    {"dip", QUANTITY(KIND_FRACTION), FIELD(struct headlamp, dip), RANGE(-0.05, 0.1),
     .use = USE_CLEARANCE, .doc = "how far the beam is set down, as on the lamp's plate: 1.2 %",
     .example = "1.2 %"},
};
KEY_SET(headlamp, struct headlamp);

static const struct key clearance[] = {
    {"ground", QUANTITY(KIND_LENGTH), FIELD(struct clearance_measured, ground_m), RANGE(0.01, 2),
     .use = USE_CLEARANCE, .doc = "under the lowest part that rides on the springs",
     .example = "220 mm"},
    {"ground_at", QUANTITY(KIND_LENGTH), FIELD(struct clearance_measured, ground_at_m),
     RANGE(-3, 20), .use = USE_CLEARANCE, .doc = "where that part is, rearward from the front axle",
     .example = "1500 mm"},
    {"under_axle", PAIR(KIND_LENGTH), FIELD(struct clearance_measured, under_axle_m),
     RANGE(0.01, 2), .use = USE_CLEARANCE,
     .doc = "under the lowest part that does not ride on the springs",
     .example = "{front: 205 mm, rear: 205 mm}"},
    {"arch", MAPPING(arches_set), FIELD(struct clearance_measured, arch), .use = USE_CLEARANCE,
     .doc = "room in the wheel arches with the fitted tyre"},
    {"steering", MAPPING(steering_set), FIELD(struct clearance_measured, steering),
     .use = USE_CLEARANCE, .doc = "how the front wheels turn, and what they come near"},
    {"front_overhang", MAPPINGS(ahead_point_set), FIELD(struct clearance_measured, front_overhang),
     .use = USE_CLEARANCE, .doc = "lowest points ahead of the front axle"},
    {"rear_overhang", MAPPINGS(behind_point_set), FIELD(struct clearance_measured, rear_overhang),
     .use = USE_CLEARANCE, .doc = "lowest points behind the rear axle"},
    {"belly", MAPPINGS(belly_point_set), FIELD(struct clearance_measured, belly),
     .use = USE_CLEARANCE, .doc = "lowest points between the axles"},
    {"roof_height", QUANTITY(KIND_LENGTH), FIELD(struct clearance_measured, roof_height_m),
     RANGE(0.5, 5), .use = USE_CLEARANCE, .doc = "highest point above the ground",
     .example = "1890 mm"},
    {"garage_entrance", QUANTITY(KIND_LENGTH), FIELD(struct clearance_measured, garage_entrance_m),
     RANGE(0.5, 10), .use = USE_CLEARANCE, .doc = "height of the lowest door that it must pass",
     .example = "2000 mm"},
    {"wading_depth", QUANTITY(KIND_LENGTH), FIELD(struct clearance_measured, wading_depth_m),
     RANGE(0.05, 3), .use = USE_CLEARANCE, .doc = "the vehicle maker's, at the fitted state",
     .example = "500 mm"},
    {"step_height", QUANTITY(KIND_LENGTH), FIELD(struct clearance_measured, step_height_m),
     RANGE(0.1, 2), .use = USE_CLEARANCE, .doc = "of the door sill or step above the ground",
     .example = "480 mm"},
    {"headlamp", MAPPING(headlamp_set), FIELD(struct clearance_measured, headlamp),
     .use = USE_CLEARANCE, .doc = "the dipped beam as it is set at the fitted state"},
    {"spare_space", MAPPING(spare_space_set), FIELD(struct clearance_measured, spare_space),
     .use = USE_CLEARANCE, .doc = "room where the spare is carried"},
};
SHARED_KEY_SET(clearance, struct clearance_measured);

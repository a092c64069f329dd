#include "no_go_job.h"

#include "base/known.h"
#include "support.h"

struct axle_suspension *axle_suspension_of(struct specification *specification, int axle)
{
    return axle == AXLE_FRONT ? &specification->suspension.front : &specification->suspension.rear;
}

void offer_changes(struct run *run, struct offered *out, struct specification *specification)
{
    uint64_t state = run->seed;
    const struct fitment *option = &specification->tyres.options.items[0];
    *out = (struct offered){.ratio = random_between(&state, 3.3, 4.8)};
    for (int i = 0; i < RIMS; i++) {
        const struct tyre *tyre = i > 0 && option->rear.size_given ? &option->rear : &option->tyre;
        out->rims[i] = (struct search_rim){
            .given = run->specification->given,
            .diameter_code = tyre->size.rim_code_tenths / 10.0,
            .width_m = known_or(tyre->wheel.width_m, 0.19) + random_whole(&state, -1, 1) * 0.0127,
            .inset_m = known_or(tyre->wheel.inset_m, 0.03) + random_whole(&state, -6, 6) * 0.005,
            .max_load_kg = 1600,
            .max_pressure_Pa = 6.5e5};
    }
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        struct axle_suspension *suspension = axle_suspension_of(specification, axle);
        out->springs[axle] = (struct spring_choice){
            .name = axle == AXLE_FRONT ? "SF" : "SR",
            .wheel_rate_N_m = random_between(&state, 5e4, 2e5),
            .lift_m = random_whole(&state, -1, 6) * 0.01,
            .free_height_change_m = UNKNOWN,
            .load_from_kg = UNKNOWN,
            .load_to_kg = random_whole(&state, 0, 1) ? random_between(&state, 20, 600) : UNKNOWN};
        out->lifts[axle] = random_whole(&state, 1, 5) * 0.01;
        suspension->spring_choices.items = &out->springs[axle];
        suspension->spring_choices.count = (size_t)(random_whole(&state, 0, 3) > 0);
        suspension->lift_choices.items = &out->lifts[axle];
        suspension->lift_choices.count = (size_t)random_whole(&state, 0, 1);
    }
    specification->search.rims.items = out->rims;
    specification->search.rims.count = (size_t)random_whole(&state, 0, RIMS);
    specification->drivetrain.axle_choices = (struct number_list){&out->ratio, 1};
    specification->allowed.wheel = random_whole(&state, 0, 3) > 0;
    specification->allowed.axle_ratio = random_whole(&state, 0, 2) == 0;
}

/* A wider tyre behind, at times on the next rim, on a wheel of its own or on the front one's. */
static void give_rear_size(struct fitment *option, uint64_t *state)
{
    struct designation *size = &option->rear.size;
    if (option->tyre.size.form != FORM_METRIC || random_whole(state, 0, 3) > 0)
        return;
    option->rear = option->tyre;
    size->section_width += 10;
    if (random_whole(state, 0, 1)) {
        size->rim_code_tenths += 10;
        size->aspect_percent -= 5;
    }
    if (random_whole(state, 0, 2) == 0)
        option->rear.wheel = tyre_unknown().wheel;
}

void make_no_go(struct run *run, struct specification *specification)
{
    static struct judged_build build;
    uint64_t state = run->seed;
    struct arch *arches[] = {&specification->clearance.arch.front,
                             &specification->clearance.arch.rear};
    copy_specification(&run->arena, specification, &build.specification);
    specification->tyres.options = build.specification.tyres.options;
    judge_build(run, &build);
    struct fitment *options = specification->tyres.options.items;
    for (size_t i = specification->tyres.options.count; i > 0; i--)
        if (build.outcomes[i].outcome == OUTCOME_GO || build.outcomes[i].outcome == OUTCOME_WORK)
            options[0] = options[i - 1];
    specification->tyres.options.count = 1;
    give_rear_size(&options[0], &state);
    if (random_whole(&state, 0, 1) == 0) {
        specification->limits.ride_height_change.given = specification->given;
        specification->limits.ride_height_change.max =
            (struct bound){random_whole(&state, 2, 4) * 0.01, KIND_LENGTH};
        return;
    }
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        arches[axle]->outer_m -= random_whole(&state, 0, 2) * 0.005;
        arches[axle]->inner_m -= random_whole(&state, 0, 1) * 0.005;
        arches[axle]->above_m -= random_whole(&state, 0, 1) * 0.005;
    }
}

/* The clearance drawing: each option's wheels in their arches, and the vehicle from the side with
 * the ramps that it clears. */
#include <math.h>

#include "base/known.h"
#include "reading/picture.h"
#include "reading/picture_arch.h"
#include "compute/clearance.h"
#include "compute/load.h"
#include "report/clearance/stance.h"

enum {
    MARGIN = DRAWING_TEXT,
    SIZE = DRAWING_TEXT,
    TITLE = 24,
    ROW = 170,
    GAP = 10,
    VEHICLE = 290,
    PANEL = TITLE + 3 * (ROW + GAP) + VEHICLE + 2 * GAP
};

static const struct pen before_pen = {.width = 0.9, .dash = DASH_DOT};
static const struct pen after_pen = {.width = 1.4};

/* The vehicle in metres, from the front axle's contact with the ground, rearward and up. */
struct side_view {
    const struct picture *picture;
    size_t setup;
    int state;
    struct point origin;
    double pixels_per_m, size, wheelbase;
};

static struct point at_place(const struct side_view *view, double x_m, double y_m)
{
    return (struct point){view->origin.x + x_m * view->pixels_per_m,
                          view->origin.y - y_m * view->pixels_per_m};
}

/* The state that the sheet shows: the one in which the body stands lowest. */
static int shown_state(const struct picture *picture)
{
    const struct figure *body = figure_first(
        picture->layout, 0,
        (struct figure_query){
            .quantity = QUANTITY_BODY, .axle = AXLE_NONE, .state = STATE_NONE, .headline = true});
    return body == NULL ? 0 : body->state;
}

static const struct figure *angle_of(const struct side_view *view, size_t setup,
                                     enum quantity_id quantity)
{
    return figure_first(
        view->picture->layout, setup,
        (struct figure_query){.quantity = quantity, .axle = AXLE_NONE, .state = view->state});
}

static double farthest(const struct point_list *points, bool ahead)
{
    double most = 0.6;
    for (size_t i = 0; i < points->count; i++)
        most = higher_of(most, ahead ? points->items[i].ahead_m : points->items[i].behind_m);
    return most;
}

static double radius_of(const struct side_view *view, size_t setup, int axle)
{
    return stance_radius_m(view->picture->layout->plan, setup, view->state, axle);
}

/* The point that governs an angle, where it is one of the measured ones. */
static const struct body_point *governing(const struct figure *angle,
                                          const struct point_list *points)
{
    return angle == NULL || angle->governed_by.kind != GOVERNED_BY_POINT
               ? NULL
               : &points->items[angle->governed_by.number];
}

/* How high a point stands that gives the breakover angle: the angle rises with it. */
static double ridge_height(const struct side_view *view, size_t setup, double at_m, double angle)
{
    double low = 0, high = 2;
    for (int step = 0; step < 50; step++) {
        double middle = (low + high) / 2;
        double here =
            breakover_angle_rad(at_m, middle, view->wheelbase, radius_of(view, setup, AXLE_FRONT),
                                radius_of(view, setup, AXLE_REAR));
        if (here < angle)
            low = middle;
        else /* a point within a tyre, for which there is no angle, is too high as well */
            high = middle;
    }
    return (low + high) / 2;
}

static void draw_point(const struct side_view *view, const struct body_point *point,
                       struct point at)
{
    drawing_group(view->picture->drawing, point->item == NULL ? "measured point" : point->item);
    drawing_circle(view->picture->drawing, at, 3, (struct pen){.fill = "black"});
    drawing_group_end(view->picture->drawing);
}

/* A ramp that touches the tyre: from the ground, R tan(a/2) beside its contact, upwards; and on it
 * the point that it touches. */
static void draw_ramp(const struct side_view *view, size_t setup, int axle, double to_m,
                      struct pen pen)
{
    bool front = axle == AXLE_FRONT;
    const struct clearance_measured *measured =
        &view->picture->layout->plan->specification->clearance;
    const struct figure *angle =
        angle_of(view, setup, front ? QUANTITY_APPROACH : QUANTITY_DEPARTURE);
    double radius = radius_of(view, setup, axle);
    if (angle == NULL || !known(angle->value) || !known(radius))
        return;
    double outward = front ? -1 : 1, x = front ? 0 : view->wheelbase;
    double foot = radius * tan(angle->value / 2), run = to_m + 0.15 - foot;
    drawing_line(view->picture->drawing, at_place(view, x + outward * foot, 0),
                 at_place(view, x + outward * (foot + run), run * tan(angle->value)), pen);
    const struct body_point *point =
        governing(angle, front ? &measured->front_overhang : &measured->rear_overhang);
    if (point == NULL || setup != view->setup)
        return;
    double beside = front ? point->ahead_m : point->behind_m;
    draw_point(view, point,
               at_place(view, x + outward * beside, (beside - foot) * tan(angle->value)));
}

/* Both sides of the ridge that the belly clears; not drawn where no measured point governs. */
static void draw_ridge(const struct side_view *view, size_t setup, struct pen pen)
{
    const struct figure *angle = angle_of(view, setup, QUANTITY_BREAKOVER);
    const struct body_point *point =
        governing(angle, &view->picture->layout->plan->specification->clearance.belly);
    if (point == NULL)
        return;
    double front_radius = radius_of(view, setup, AXLE_FRONT);
    double rear_radius = radius_of(view, setup, AXLE_REAR);
    double height = ridge_height(view, setup, point->at_m, angle->value);
    double front = ramp_angle_rad(point->at_m, height, front_radius);
    double rear = ramp_angle_rad(view->wheelbase - point->at_m, height, rear_radius);
    if (!known(front) || !known(rear))
        return;
    const struct point ridge[] = {at_place(view, front_radius * tan(front / 2), 0),
                                  at_place(view, point->at_m, height),
                                  at_place(view, view->wheelbase - rear_radius * tan(rear / 2), 0)};
    drawing_lines(view->picture->drawing, ridge, 3, false, pen);
    if (setup == view->setup)
        draw_point(view, point, ridge[1]);
}

/* No more than a hint of a body: only the points and the roof are measured. */
static void draw_body(const struct side_view *view, double ahead, double behind)
{
    const struct figure *roof = angle_of(view, view->setup, QUANTITY_ROOF_HEIGHT);
    bool measured = roof != NULL && known(roof->value);
    double top = measured ? roof->value : 1.45, rear = view->wheelbase + behind;
    const struct point body[] = {at_place(view, -ahead, 0.5),
                                 at_place(view, -ahead, 0.55 * top),
                                 at_place(view, 0.2 * view->wheelbase, 0.62 * top),
                                 at_place(view, 0.36 * view->wheelbase, top),
                                 at_place(view, rear - 0.12, top),
                                 at_place(view, rear, 0.6 * top),
                                 at_place(view, rear, 0.5)};
    drawing_lines(
        view->picture->drawing, body, sizeof body / sizeof body[0], false,
        (struct pen){.width = 0.8, .stroke = "#777", .dash = measured ? DASH_NONE : DASH_SHORT});
}

static void draw_wheels(const struct side_view *view)
{
    const struct beside *beside = &view->picture->layout->plan->beside[view->setup];
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        double x = axle == AXLE_FRONT ? 0 : view->wheelbase;
        double radius = radius_of(view, view->setup, axle), was = radius_of(view, 0, axle);
        if (known(radius)) {
            drawing_circle(view->picture->drawing, at_place(view, x, radius),
                           radius * view->pixels_per_m, (struct pen){.width = 1.4, .fill = "#eee"});
            drawing_circle(view->picture->drawing, at_place(view, x, radius),
                           beside->after[axle].rim_diameter_m / 2 * view->pixels_per_m,
                           (struct pen){.width = 0.8, .fill = "white"});
        }
        if (known(was) && view->setup != 0)
            drawing_circle(view->picture->drawing, at_place(view, x, was), was * view->pixels_per_m,
                           before_pen);
    }
}

static void angle_text(const struct side_view *view, enum quantity_id quantity, const char *name,
                       struct point at, enum anchor anchor)
{
    const struct picture *picture = view->picture;
    const struct figure *now = angle_of(view, view->setup, quantity);
    struct text_style style = {.size = view->size, .anchor = anchor};
    drawing_text(picture->drawing, at, style, name);
    at.y += 1.3 * view->size;
    style.bold = true;
    picture_figure(picture, now, at, style);
    if (view->setup == 0)
        return;
    at.y += 1.3 * view->size;
    style.bold = false;
    drawing_text(picture->drawing, at, style,
                 arena_format(picture->layout->arena, "fitted %s",
                              figure_value_text(picture->layout, angle_of(view, 0, quantity))));
}

static void draw_angles(const struct side_view *view, size_t setup, double ahead, double behind,
                        struct pen pen)
{
    draw_ramp(view, setup, AXLE_FRONT, ahead, pen);
    draw_ramp(view, setup, AXLE_REAR, behind, pen);
    draw_ridge(view, setup, pen);
}

static void draw_vehicle(const struct picture *picture, size_t setup, struct box box, double size)
{
    const struct plan *plan = picture->layout->plan;
    const struct clearance_measured *measured = &plan->specification->clearance;
    int state = shown_state(picture);
    struct side_view view = {.picture = picture,
                             .setup = setup,
                             .size = size,
                             .state = state,
                             .wheelbase = plan->specification->vehicle.wheelbase_m};
    drawing_text(picture->drawing, (struct point){box.x, box.y + size},
                 (struct text_style){.size = size, .bold = true},
                 drawing_fit(picture->drawing,
                             arena_format(picture->layout->arena,
                                          "the vehicle from the side, %s (dotted: the fitted tyre)",
                                          plan_state_name(plan, view.state)),
                             1.13 * size, box.width));
    if (!known(view.wheelbase)) {
        drawing_text(picture->drawing, (struct point){box.x, box.y + 3 * size},
                     (struct text_style){.size = size}, "wheelbase unknown");
        return;
    }
    double ahead = farthest(&measured->front_overhang, true);
    double behind = farthest(&measured->rear_overhang, false);
    double long_m = view.wheelbase + ahead + behind + 0.4;
    double texts = size + drawing_text_width("fitted unknown", size);
    const struct figure *roof = angle_of(&view, setup, QUANTITY_ROOF_HEIGHT);
    double tall_m = fmax(2.1, 0.1 + (roof == NULL ? 0 : known_or(roof->value, 0)));
    view.pixels_per_m = fmin((box.width - 2 * texts) / long_m, (box.height - 7.5 * size) / tall_m);
    view.origin =
        (struct point){box.x + box.width / 2 - (long_m / 2 - ahead - 0.2) * view.pixels_per_m,
                       box.y + box.height - 5 * size};
    draw_body(&view, ahead, behind);
    draw_wheels(&view);
    drawing_line(picture->drawing, (struct point){box.x, view.origin.y},
                 (struct point){box.x + box.width, view.origin.y}, (struct pen){.width = 1});
    if (setup != 0)
        draw_angles(&view, 0, ahead, behind, before_pen);
    draw_angles(&view, setup, ahead, behind, after_pen);
    angle_text(&view, QUANTITY_APPROACH, "approach",
               (struct point){box.x, view.origin.y - 8 * size}, ANCHOR_START);
    angle_text(&view, QUANTITY_DEPARTURE, "departure",
               (struct point){box.x + box.width, view.origin.y - 8 * size}, ANCHOR_END);
    angle_text(&view, QUANTITY_BREAKOVER, "ramp breakover",
               (struct point){box.x + box.width / 2, view.origin.y + 1.5 * size}, ANCHOR_MIDDLE);
}

/* One option: the front wheel, the rear one, the front one at lock, and the vehicle. */
static void draw_panel(const struct picture *picture, const void *context, size_t index, double top)
{
    (void)context;
    size_t setup = picture->layout->plan->count > 1 ? index + 1 : 0;
    const double left = MARGIN, right = DRAWING_WIDTH / 2.0 + MARGIN;
    const double half = DRAWING_WIDTH / 2.0 - 2 * MARGIN, first = top + TITLE;
    struct arch_shape front, rear;
    arch_shape_make(picture, setup, AXLE_FRONT, &front);
    arch_shape_make(picture, setup, AXLE_REAR, &rear);
    drawing_text(picture->drawing, (struct point){left, top + SIZE},
                 (struct text_style){.size = SIZE, .bold = true},
                 picture_setup_title(picture, setup, 1.13 * SIZE, DRAWING_WIDTH - 2 * MARGIN));
    picture_arch_side(picture, &front, (struct box){left, first, half, ROW}, SIZE);
    picture_arch_section(picture, &front, (struct box){right, first, half, ROW}, SIZE);
    picture_arch_side(picture, &rear, (struct box){left, first + ROW + GAP, half, ROW}, SIZE);
    picture_arch_section(picture, &rear, (struct box){right, first + ROW + GAP, half, ROW}, SIZE);
    picture_arch_lock(picture, &front, (struct box){left, first + 2 * (ROW + GAP), half, ROW},
                      SIZE);
    if (index == 0)
        picture_arch_legend(picture, (struct box){right, first + 2 * (ROW + GAP), half, ROW}, SIZE);
    draw_vehicle(picture, setup,
                 (struct box){left, first + 3 * (ROW + GAP), DRAWING_WIDTH - 2 * MARGIN, VEHICLE},
                 SIZE);
}

void picture_clearance(const struct picture *picture)
{
    const struct panels panels = {
        .title = "Wheels in their arches and the vehicle's ramp angles",
        .description =
            "To scale. The front and the rear wheel in their arches from the side and cut through "
            "the axle, the front wheel at lock from above, and the vehicle from the side with the "
            "steepest ramps that it clears, before and after. What is unknown is dashed.",
        .count = picture->layout->plan->count > 1 ? picture->layout->plan->count - 1 : 1,
        .height = PANEL,
        .draw = draw_panel,
    };
    picture_panels(picture, &panels);
}

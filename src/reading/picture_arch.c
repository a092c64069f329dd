#include "reading/picture_arch.h"

#include <math.h>

#include "base/known.h"
#include "base/units.h"
#include "compute/clearance.h"

static const struct pen fitted_pen = {.width = 0.9, .dash = DASH_DOT};
static const struct pen nominal_pen = {.width = 1.4, .fill = "#eee"};
static const struct pen largest_pen = {.width = 1, .dash = DASH_LONG};
static const struct pen wall_pen = {.width = 2.2};
static const struct pen bump_pen = {.width = 1.6, .dash = DASH_LONG_DOT};
static const struct pen unknown_pen = {.width = 1, .dash = DASH_SHORT};
static const struct pen thin_pen = {.width = 0.4, .stroke = "#666"};

static const double dimension_at = 0.15;        /* of a side wall's height, the dimension across */
static const double room_when_unknown_m = 0.06; /* where a wall is drawn that was not measured */

/* From metres about the hub, y up, to the page. */
struct frame {
    struct point origin;
    double pixels_per_m;
};

static struct point place(const struct frame *frame, double x_m, double y_m)
{
    return (struct point){frame->origin.x + x_m * frame->pixels_per_m,
                          frame->origin.y - y_m * frame->pixels_per_m};
}

static double length(const struct frame *frame, double m)
{
    return m * frame->pixels_per_m;
}

static void heading(const struct picture *picture, const struct arch_shape *shape, struct box box,
                    double size, const char *view)
{
    drawing_text(picture->drawing, (struct point){box.x, box.y + size},
                 (struct text_style){.size = size, .bold = true},
                 arena_format(picture->layout->arena, "%s, %s", axle_name(shape->axle), view));
}

static const char *was_text(const struct picture *picture, const struct figure *room,
                            const struct figure *was)
{
    return was == NULL || room == was || !known(was->value)
               ? ""
               : arena_format(picture->layout->arena, "fitted %s",
                              figure_value_text(picture->layout, was));
}

/* Room that the texts of room_text take beside what they belong to. */
static double room_width(const struct picture *picture, const struct figure *room,
                         const struct figure *was, const char *name, double size)
{
    const char *value = figure_value_text(picture->layout, room);
    double wide = fmax(drawing_text_width(name, size), drawing_text_width(value, 1.13 * size));
    return fmax(wide, drawing_text_width(was_text(picture, room, was), size)) + 1.2 * size;
}

/* "bump 8 mm", and under it "fitted 40 mm"; a room that is gone in bold. */
static void room_text(const struct picture *picture, const struct figure *room,
                      const struct figure *was, const char *name, struct point at, double size,
                      enum anchor anchor)
{
    struct text_style style = {.size = size, .anchor = anchor};
    drawing_text(picture->drawing, at, style, name);
    style.bold = room != NULL && room->verdict == VERDICT_FAIL;
    at.y += 1.2 * size;
    picture_figure(picture, room, at, style);
    const char *before = was_text(picture, room, was);
    at.y += 1.2 * size;
    if (*before != '\0')
        drawing_text(picture->drawing, at, (struct text_style){.size = size, .anchor = anchor},
                     before);
}

static void draw_wheel(const struct picture *picture, const struct arch_shape *shape,
                       const struct frame *frame)
{
    struct drawing *drawing = picture->drawing;
    drawing_circle(drawing, frame->origin, length(frame, shape->radius), nominal_pen);
    drawing_circle(drawing, frame->origin, length(frame, shape->rim_radius),
                   (struct pen){.width = 1, .fill = "white"});
    drawing_circle(drawing, frame->origin, length(frame, 0.03), (struct pen){.width = 1});
    drawing_circle(drawing, frame->origin, length(frame, shape->largest_radius), largest_pen);
    if (shape->setup != 0)
        drawing_circle(drawing, frame->origin, length(frame, shape->fitted_radius), fitted_pen);
}

/* The arch comes down towards the wheel on bump: the same curve, lower. */
static void draw_arches(const struct picture *picture, const struct arch_shape *shape,
                        const struct frame *frame)
{
    double ride = known_or(shape->wall_ride, shape->largest_radius + 2 * room_when_unknown_m);
    drawing_arc(picture->drawing, frame->origin, length(frame, ride), 20, 160,
                known(shape->wall_ride) ? wall_pen : unknown_pen);
    double bump = known_or(shape->wall_bump, shape->largest_radius + room_when_unknown_m);
    struct point lower = place(frame, 0, bump - ride);
    drawing_arc(picture->drawing, lower, length(frame, ride), 30, 150,
                known(shape->wall_bump) ? bump_pen : unknown_pen);
}

static void dimension_above(const struct picture *picture, const struct arch_shape *shape,
                            const struct frame *frame, double x_m, double wall_m)
{
    struct point tyre = place(frame, x_m, shape->largest_radius), wall = place(frame, x_m, wall_m);
    drawing_line(picture->drawing, place(frame, 0, shape->largest_radius), tyre, thin_pen);
    drawing_line(picture->drawing, place(frame, 0, wall_m), wall, thin_pen);
    dimension_line(picture->drawing, tyre, wall, 5);
}

void picture_arch_side(const struct picture *picture, const struct arch_shape *shape,
                       struct box box, double size)
{
    heading(picture, shape, box, size, "from the side");
    if (!known(shape->radius)) {
        drawing_text(picture->drawing, (struct point){box.x, box.y + 3 * size},
                     (struct text_style){.size = size}, "tyre's diameter unknown");
        return;
    }
    double above = known_or(shape->wall_ride, shape->largest_radius + 2 * room_when_unknown_m);
    double margin = fmax(room_width(picture, shape->ride, shape->was_ride, "ride height", size),
                         room_width(picture, shape->bump, shape->was_bump, "bump", size));
    double top = box.y + 2 * size;
    struct frame frame = {
        .pixels_per_m = fmin((box.height - 3 * size) / (above + shape->largest_radius),
                             (box.width - 2 * margin) / (2 * above)),
    };
    frame.origin = (struct point){box.x + box.width / 2, top + length(&frame, above)};
    draw_arches(picture, shape, &frame);
    draw_wheel(picture, shape, &frame);
    double out = above + 0.02;
    if (known(shape->wall_ride))
        dimension_above(picture, shape, &frame, -out, shape->wall_ride);
    if (known(shape->wall_bump))
        dimension_above(picture, shape, &frame, out, shape->wall_bump);
    struct point left = place(&frame, -out, shape->largest_radius);
    struct point right = place(&frame, out, shape->largest_radius);
    room_text(picture, shape->ride, shape->was_ride, "ride height",
              (struct point){left.x - 0.8 * size, left.y + 2.2 * size}, size, ANCHOR_END);
    room_text(picture, shape->bump, shape->was_bump, "bump",
              (struct point){right.x + 0.8 * size, right.y + 2.2 * size}, size, ANCHOR_START);
}

/* --- the section */

static void draw_tyre(const struct picture *picture, const struct frame *frame, double inner,
                      double outer, double radius, double bead, struct pen pen)
{
    struct point corner = place(frame, inner, radius);
    drawing_rectangle(picture->drawing,
                      (struct box){corner.x, corner.y, length(frame, outer - inner),
                                   length(frame, radius - bead)},
                      length(frame, 0.035), pen);
}

static void draw_rim(const struct picture *picture, const struct arch_shape *shape,
                     const struct frame *frame)
{
    double middle = (shape->inner + shape->outer) / 2, half = shape->rim_width / 2;
    if (!known(half))
        return;
    double r = shape->rim_radius;
    const struct point rim[] = {place(frame, middle - half, r + 0.015),
                                place(frame, middle - half, r), place(frame, middle + half, r),
                                place(frame, middle + half, r + 0.015)};
    drawing_lines(picture->drawing, rim, 4, false, (struct pen){.width = 2.4});
}

static void draw_side_wall(const struct picture *picture, const struct frame *frame, double wall,
                           double edge, double low, double high)
{
    bool measured = known(wall);
    double outward = edge < 0 ? -1 : 1, x = known_or(wall, edge + outward * room_when_unknown_m);
    drawing_line(picture->drawing, place(frame, x, low), place(frame, x, high),
                 measured ? wall_pen : unknown_pen);
    if (!measured)
        return;
    double y = low + dimension_at * (high - low);
    drawing_line(picture->drawing, place(frame, edge, y - 0.02), place(frame, edge, y + 0.02),
                 thin_pen);
    dimension_line(picture->drawing, place(frame, edge, y), place(frame, x, y), 4);
}

struct section {
    double wall_inner, wall_outer, top, bump, low;
};

static struct section section_of(const struct arch_shape *shape)
{
    struct section section = {
        .wall_inner = known_or(shape->wall_inner, shape->largest_inner - room_when_unknown_m),
        .wall_outer = known_or(shape->wall_outer, shape->largest_outer + room_when_unknown_m),
        .bump = known_or(shape->wall_bump, shape->largest_radius + room_when_unknown_m),
        .low = shape->rim_radius - 0.02,
    };
    section.top = fmax(shape->largest_radius, section.bump) + 0.02;
    return section;
}

static void section_texts(const struct picture *picture, const struct arch_shape *shape,
                          const struct frame *frame, const struct section *section, double size)
{
    double y = section->low + dimension_at * (section->bump - section->low), rise = 4.2 * size;
    struct point left = place(frame, section->wall_inner, y);
    struct point right = place(frame, section->wall_outer, y);
    /* Above the dimension's arrows, and below the words over the section. */
    double words = fmax(left.y - rise, place(frame, 0, section->top).y + 1.2 * size);
    room_text(picture, shape->inside, shape->was_inside, "inside",
              (struct point){left.x - 0.7 * size, words}, size, ANCHOR_END);
    room_text(picture, shape->outside, shape->was_outside, "outside",
              (struct point){right.x + 0.7 * size, words}, size, ANCHOR_START);
    struct point above = place(frame, (shape->inner + shape->outer) / 2, section->top);
    struct text_style style = {.size = size, .anchor = ANCHOR_END};
    drawing_text(picture->drawing, (struct point){above.x - 0.8 * size, above.y - 0.5 * size},
                 style, "above, bump");
    style.anchor = ANCHOR_START;
    style.bold = shape->bump != NULL && shape->bump->verdict == VERDICT_FAIL;
    above = (struct point){above.x + 0.8 * size, above.y - 0.5 * size};
    picture_figure(picture, shape->bump, above, style);
}

void picture_arch_section(const struct picture *picture, const struct arch_shape *shape,
                          struct box box, double size)
{
    heading(picture, shape, box, size, "cut through the axle");
    if (!known(shape->radius) || !known(shape->largest_inner) || !known(shape->largest_outer)) {
        drawing_text(picture->drawing, (struct point){box.x, box.y + 3 * size},
                     (struct text_style){.size = size}, "tyre's size unknown");
        return;
    }
    struct section section = section_of(shape);
    double margin = fmax(room_width(picture, shape->inside, shape->was_inside, "inside", size),
                         room_width(picture, shape->outside, shape->was_outside, "outside", size));
    double wide = section.wall_outer - section.wall_inner;
    struct frame frame = {.pixels_per_m =
                              fmin((box.height - 4.5 * size) / (section.top - section.low),
                                   (box.width - 2 * margin) / wide)};
    double middle = (section.wall_inner + section.wall_outer) / 2;
    frame.origin = (struct point){box.x + box.width / 2 - length(&frame, middle),
                                  box.y + 3.3 * size + length(&frame, section.top)};
    draw_tyre(picture, &frame, shape->inner, shape->outer, shape->radius, shape->rim_radius,
              nominal_pen);
    draw_tyre(picture, &frame, shape->largest_inner, shape->largest_outer, shape->largest_radius,
              shape->rim_radius, largest_pen);
    if (shape->setup != 0 && known(shape->fitted_inner) && known(shape->fitted_radius))
        draw_tyre(picture, &frame, shape->fitted_inner, shape->fitted_outer, shape->fitted_radius,
                  shape->rim_radius, fitted_pen);
    draw_rim(picture, shape, &frame);
    drawing_line(picture->drawing, place(&frame, section.wall_inner, section.bump),
                 place(&frame, section.wall_outer, section.bump),
                 known(shape->wall_bump) ? bump_pen : unknown_pen);
    double centre = (shape->inner + shape->outer) / 2;
    if (known(shape->wall_bump))
        dimension_line(picture->drawing, place(&frame, centre, shape->largest_radius),
                       place(&frame, centre, shape->wall_bump), 4);
    draw_side_wall(picture, &frame, shape->wall_inner, shape->largest_inner, section.low,
                   section.bump);
    draw_side_wall(picture, &frame, shape->wall_outer, shape->largest_outer, section.low,
                   section.bump);
    section_texts(picture, shape, &frame, &section, size);
}

/* --- at lock, from above */

static void draw_turned(const struct picture *picture, const struct frame *frame, double diameter,
                        double width, double centre, double lock, struct pen pen)
{
    const double across[] = {-1, 1, 1, -1}, along[] = {1, 1, -1, -1};
    struct point corners[4];
    for (size_t i = 0; i < 4; i++) {
        double x = centre + across[i] * width / 2, y = along[i] * diameter / 2;
        corners[i] = place(frame, x * cos(lock) + y * sin(lock), y * cos(lock) - x * sin(lock));
    }
    drawing_lines(picture->drawing, corners, 4, true, pen);
}

struct lock_view {
    double lock, centre, wall, largest;
    double corner_degrees; /* of the farther corner, turned */
};

static struct lock_view lock_view_of(const struct picture *picture, const struct arch_shape *shape)
{
    const struct plan *plan = picture->layout->plan;
    const struct steering *steering = &plan->specification->clearance.steering;
    const struct tyre_dimensions *before = &plan->beside[shape->setup].before[shape->axle];
    struct lock_view view = {.lock = known_or(steering->lock_rad, 0.52),
                             .centre = known_or(steering->axis_to_centre_m, 0)};
    double swept =
        swept_corner_radius_m(before->overall_diameter_m, before->width_on_rim_m, view.centre);
    view.wall = swept + (shape->was_lock == NULL ? UNKNOWN : shape->was_lock->value);
    view.largest = view.wall - (shape->lock == NULL ? UNKNOWN : shape->lock->value);
    double corner = atan2(before->overall_diameter_m / 2, view.centre + before->width_on_rim_m / 2);
    view.corner_degrees = (corner - view.lock) * 180 / PI;
    return view;
}

void picture_arch_lock(const struct picture *picture, const struct arch_shape *shape,
                       struct box box, double size)
{
    const struct plan *plan = picture->layout->plan;
    const struct steering *steering = &plan->specification->clearance.steering;
    const struct tyre_dimensions *after = &plan->beside[shape->setup].after[shape->axle];
    struct lock_view view = lock_view_of(picture, shape);
    heading(picture, shape, box, size, "at lock, from above");
    struct point note = {box.x, box.y + box.height - 0.4 * size};
    const char *assumed = !known(steering->lock_rad) ? "steering not given: lock of 30 deg drawn"
                          : !known(steering->axis_to_centre_m)
                              ? "axis_to_centre not given: turned about its centre"
                              : NULL;
    if (assumed != NULL)
        drawing_text(picture->drawing, note, (struct text_style){.size = size}, assumed);
    double reach = known_or(view.wall, hypot(shape->largest_radius, 0.2) + room_when_unknown_m);
    reach = fmax(reach, known_or(view.largest, 0)) + 0.02;
    double beside = room_width(picture, shape->lock, shape->was_lock, "at lock", size);
    if (!known(shape->radius) || !known(reach))
        return;
    struct frame frame = {.pixels_per_m = fmin((box.height - 4.5 * size) / (2 * reach),
                                               (box.width - beside) / (2 * reach))};
    frame.origin =
        (struct point){box.x + length(&frame, reach), box.y + 2.2 * size + length(&frame, reach)};
    draw_turned(picture, &frame, 2 * shape->radius, after->width_on_rim_m, view.centre, view.lock,
                nominal_pen);
    if (shape->setup != 0)
        draw_turned(picture, &frame, 2 * shape->fitted_radius,
                    shape->fitted_outer - shape->fitted_inner, view.centre, view.lock, fitted_pen);
    drawing_circle(picture->drawing, frame.origin, 2.5, (struct pen){.fill = "black"});
    double from = view.corner_degrees - 35, to = view.corner_degrees + 35;
    drawing_arc(picture->drawing, frame.origin, length(&frame, reach - 0.02), from, to,
                known(view.wall) ? wall_pen : unknown_pen);
    double angle = view.corner_degrees * PI / 180;
    if (known(view.largest)) {
        drawing_arc(picture->drawing, frame.origin, length(&frame, view.largest), from, to,
                    largest_pen);
        dimension_line(picture->drawing,
                       place(&frame, view.largest * cos(angle), view.largest * sin(angle)),
                       place(&frame, view.wall * cos(angle), view.wall * sin(angle)), 5);
    }
    struct point text = place(&frame, reach * cos(angle), reach * sin(angle));
    room_text(picture, shape->lock, shape->was_lock, "at lock",
              (struct point){frame.origin.x + length(&frame, reach) + 0.3 * size, text.y}, size,
              ANCHOR_START);
}

void picture_arch_legend(const struct picture *picture, struct box box, double size)
{
    static const struct {
        const struct pen *pen;
        const char *words;
    } legend[] = {
        {&nominal_pen, "the tyre, nominal"},
        {&largest_pen, "the largest allowed, with chains if given"},
        {&fitted_pen, "the fitted tyre"},
        {&wall_pen, "where the room ends, at ride height"},
        {&bump_pen, "the same at full bump"},
        {&unknown_pen, "not known: drawn anywhere"},
    };
    double y = box.y + 2 * size;
    for (size_t i = 0; i < sizeof legend / sizeof legend[0]; i++, y += 1.7 * size) {
        struct pen pen = *legend[i].pen;
        pen.fill = NULL;
        drawing_line(picture->drawing, (struct point){box.x, y - 0.35 * size},
                     (struct point){box.x + 4 * size, y - 0.35 * size}, pen);
        drawing_text(picture->drawing, (struct point){box.x + 4.6 * size, y},
                     (struct text_style){.size = size}, legend[i].words);
    }
    drawing_text(picture->drawing, (struct point){box.x, y}, (struct text_style){.size = size},
                 "Rooms are those of the largest allowed tyre.");
}

bool picture_arch_known(const struct picture *picture, size_t setup)
{
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        struct arch_shape shape;
        arch_shape_make(picture, setup, axle, &shape);
        if (known(shape.wall_inner) || known(shape.wall_outer) || known(shape.wall_bump))
            return true;
    }
    return false;
}

void picture_arch_small(const struct picture *picture, size_t setup)
{
    enum { HEIGHT = 170, HALF = DRAWING_WIDTH / 2, SIZE = DRAWING_TEXT };
    struct arch_shape front, rear;
    arch_shape_make(picture, setup, AXLE_FRONT, &front);
    arch_shape_make(picture, setup, AXLE_REAR, &rear);
    picture_begin(picture, HEIGHT + 1.6 * SIZE, "Wheels in their arches",
                  "Cut through each axle, to scale: the tyre, the largest that is allowed, the "
                  "fitted tyre dotted, and the room inside, outside and above at full bump.");
    picture_arch_section(picture, &front, (struct box){0, 0, HALF - SIZE, HEIGHT}, SIZE);
    picture_arch_section(picture, &rear, (struct box){HALF + SIZE, 0, HALF - SIZE, HEIGHT}, SIZE);
    struct text_style style = {.size = SIZE, .anchor = ANCHOR_END};
    drawing_text(picture->drawing, (struct point){HALF / 2.0 - SIZE, HEIGHT + SIZE}, style,
                 "at lock");
    style.anchor = ANCHOR_START;
    style.bold = front.lock != NULL && front.lock->verdict == VERDICT_FAIL;
    picture_figure(picture, front.lock, (struct point){HALF / 2.0, HEIGHT + SIZE}, style);
    picture_end(picture, HEIGHT + 1.6 * SIZE);
}

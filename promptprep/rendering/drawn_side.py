"""The side view's geometry: eye, glass, screen, its image behind the glass, lens, distances."""

from __future__ import annotations

import math
from dataclasses import dataclass

from promptprep.model.rig import Rig
from promptprep.model.sightline import Sightline
from promptprep.rendering.wording import ENGLISH, Wording
from promptprep.units import MM_PER_UNIT

WIDTH = 760.0
EDGE = 36.0
HEAD_MM = 115.0  # half the height of a head: an adult's is about 230 mm (from memory)
BEHIND_GLASS_MM = 180.0  # where the lens is drawn if its distance is not given
CAMERA_MM = (260.0, 120.0)

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Span:
    """A measured distance: a line between two points with its text."""

    a: Point
    b: Point
    text: str


@dataclass(frozen=True, slots=True)
class SideView:
    """Points in the drawing's own units, y downwards; `plan` where the drawing is seen from above."""

    width: float
    height: float
    title: str
    plan: bool
    eye: Point
    head: float
    axis: tuple[Point, Point]
    glass: tuple[Point, Point] | None
    glass_at: Point | None
    fold: tuple[Point, Point] | None
    screen: tuple[Point, Point]
    image: tuple[Point, Point]
    lens: Point
    camera: tuple[float, float]
    rays: tuple[tuple[Point, ...], ...]
    screen_text: tuple[str, ...]
    screen_at: Point
    spans: tuple[Span, ...]
    scale_text: str
    scale_bar: tuple[Point, Point]
    cap_text: str


@dataclass(frozen=True, slots=True)
class _Room:
    """Millimetres of the room, the eye at (0, 0), x towards the camera, y up, turned into the drawing's units."""

    scale: float
    top_mm: float
    left_mm: float

    def at(self, x_mm: float, y_mm: float) -> Point:
        return EDGE + (x_mm - self.left_mm) * self.scale, EDGE + 18 + (self.top_mm - y_mm) * self.scale


def side_view(sight: Sightline, say: Wording = ENGLISH) -> SideView:
    """The view from the reader's right; from above where glass or lens is at the side of the picture."""
    rig = sight.rig
    lens_mm = _lens_mm(rig)
    room, bottom = _room(rig, lens_mm)
    up_mm, down_mm = _picture_edges(rig)
    screen = (room.at(*_folded(rig, up_mm)), room.at(*_folded(rig, -down_mm)))
    spans, height = _spans(rig, room, lens_mm, bottom, say)
    glass = _glass(rig, room)
    bar_mm = 500.0 if lens_mm > 1500 else 100.0
    return SideView(
        width=WIDTH,
        height=height + 40,
        title=say("seen from above") if _from_above(rig) else say("seen from the side"),
        plan=_from_above(rig),
        eye=room.at(0, 0),
        head=HEAD_MM * room.scale,
        axis=(room.at(0, 0), room.at(lens_mm, 0)),
        glass=glass,
        glass_at=_glass_at(glass),
        fold=(room.at(rig.eye_to_glass_mm, 0), room.at(*_folded(rig, 0))) if rig.has_glass else None,
        screen=screen,
        image=(room.at(rig.optical_path_mm, up_mm), room.at(rig.optical_path_mm, -down_mm)),
        lens=room.at(lens_mm, 0),
        camera=(CAMERA_MM[0] * room.scale, CAMERA_MM[1] * room.scale),
        rays=_rays(sight, room),
        screen_text=_screen_text(rig, say),
        screen_at=_screen_at(rig, screen, room.at(0, 0)[1], bottom),
        spans=spans,
        scale_text=say.distance(bar_mm),
        scale_bar=((WIDTH - EDGE - bar_mm * room.scale, height + 18), (WIDTH - EDGE, height + 18)),
        cap_text=_cap_text(sight, say),
    )


def _lens_mm(rig: Rig) -> float:
    """Where the lens is drawn: at its distance, else a little behind the glass, else beside the screen."""
    if rig.eye_to_lens_mm is not None:
        return rig.eye_to_lens_mm
    return rig.eye_to_glass_mm + BEHIND_GLASS_MM if rig.has_glass else rig.optical_path_mm


def _room(rig: Rig, lens_mm: float) -> tuple[_Room, float]:
    """The room scaled to the drawing's width, and the drawing's height down to the lowest thing in it."""
    edges = _picture_edges(rig)
    heights = [edges[0], -edges[1], *(_folded(rig, y)[1] for y in (edges[0], -edges[1]))]
    reach_mm = _reach_mm(rig) if rig.has_glass else 0.0
    high_mm = max(HEAD_MM * 1.15, reach_mm, *heights)
    low_mm = max(HEAD_MM * 1.3, reach_mm, *(-height for height in heights))
    left_mm = -HEAD_MM * 1.7
    right_mm = max(lens_mm + CAMERA_MM[0] * 1.15, rig.optical_path_mm)
    room = _Room((WIDTH - 2 * EDGE) / (right_mm - left_mm), high_mm, left_mm)
    return room, room.at(0, -low_mm)[1]


def _reach_mm(rig: Rig) -> float:
    """Half the glass's extent along the axis: what the whole picture needs and a little more."""
    return max(*_picture_edges(rig), 50.0) * 1.12


def _glass(rig: Rig, room: _Room) -> tuple[Point, Point] | None:
    if not rig.has_glass:
        return None
    reach, lean = _reach_mm(rig), _lean(rig)
    one, other = (-reach, lean * reach), (reach, -lean * reach)
    return room.at(rig.eye_to_glass_mm + one[0], one[1]), room.at(rig.eye_to_glass_mm + other[0], other[1])


def _glass_at(glass: tuple[Point, Point] | None) -> Point | None:
    """Where the word "glass" stands: beyond the end of the glass that is nearer to the reader."""
    if glass is None:
        return None
    (x, y), (_, other) = glass
    return x, y - 8 if y < other else y + 16


def _from_above(rig: Rig) -> bool:
    """Whether the rig shows itself from above: glass or lens at the side of the picture."""
    beside = not 0 <= rig.lens_x <= 1 and 0 <= rig.lens_y <= 1
    return rig.lies == "side" or (rig.lies == "direct" and beside)


def _picture_edges(rig: Rig) -> tuple[float, float]:
    """How far the picture reaches to either side of the lens axis: up and down, or right and left from above."""
    if _from_above(rig):
        return rig.lens_x * rig.picture_width_mm, (1 - rig.lens_x) * rig.picture_width_mm
    return rig.lens_y * rig.picture_height_mm, (1 - rig.lens_y) * rig.picture_height_mm


def _lean(rig: Rig) -> int:
    """1 where the glass's upper end leans towards the reader (screen below), -1 where its lower end does."""
    return -1 if rig.lies == "above" else 1


def _folded(rig: Rig, y_mm: float) -> Point:
    """Where a point of the image, `y_mm` above the axis, really is: mirrored in the glass."""
    if not rig.has_glass:
        return rig.eye_to_glass_mm, y_mm
    return rig.eye_to_glass_mm - _lean(rig) * y_mm, -_lean(rig) * rig.glass_to_screen_mm


def _rays(sight: Sightline, room: _Room) -> tuple[tuple[Point, ...], ...]:
    """The eye's sight of the first and last line (of the column's edges from above): by the glass to the screen."""
    rig, path = sight.rig, sight.optical_path_mm
    angles = (sight.first_line_deg, sight.last_line_deg)
    if _from_above(rig):
        angles = (sight.travel_left_deg, -sight.travel_right_deg)
    rays = []
    for angle in angles:
        slope = math.tan(math.radians(angle))
        meets = rig.eye_to_glass_mm / (1 + _lean(rig) * slope)
        points = [(0.0, 0.0), (meets, slope * meets), _folded(rig, slope * path)]
        rays.append(tuple(room.at(*point) for point in (points if rig.has_glass else (points[0], points[2]))))
    return tuple(rays)


def _spans(rig: Rig, room: _Room, lens_mm: float, bottom: float, say: Wording) -> tuple[tuple[Span, ...], float]:
    """Distances below the drawing, one row each, and the height used."""
    near = say.distance(rig.eye_to_glass_mm)
    rows = [
        (
            rig.eye_to_glass_mm,
            say("eye to glass {length}", length=near) if rig.has_glass else say("eye to screen {length}", length=near),
        )
    ]
    if rig.eye_to_lens_mm is not None:
        rows.append((lens_mm, say("eye to lens {length}", length=say.distance(lens_mm))))
    if rig.has_glass:
        path = say.distance(rig.optical_path_mm)
        rows.append((rig.optical_path_mm, say("optical path, eye to image {length}", length=path)))
    spans, y = [], bottom + 40
    for length_mm, text in rows:
        y += 26
        spans.append(Span((room.at(0, 0)[0], y), (room.at(length_mm, 0)[0], y), text))
    return tuple(spans), y + 8


def _screen_text(rig: Rig, say: Wording) -> tuple[str, ...]:
    inches = math.hypot(rig.picture_width_mm, rig.picture_height_mm) / MM_PER_UNIT["in"]
    sides = {"width": f"{rig.picture_width_mm:.0f}", "height": f"{rig.picture_height_mm:.0f}"}
    size = say("picture {width} × {height} mm ({inches} in)", **sides, inches=say.figure(inches, 1))
    lies = [flip_text(rig, say)]
    if rig.lies in ("below", "above"):
        lies.insert(0, say("its top to the camera") if rig.top == "camera" else say("its top to the reader"))
    texts = [size, " · ".join(lies)]
    if rig.has_glass:
        texts.append(say("glass to screen {length}", length=say.distance(rig.glass_to_screen_mm)))
    return tuple(texts)


def flip_text(rig: Rig, say: Wording) -> str:
    """How the screen's picture is flipped, in words."""
    flips = {"horizontal": say("flip horizontal"), "vertical": say("flip vertical"), "both": say("flip both ways")}
    return flips.get(rig.flip, say("no flip"))


def _screen_at(rig: Rig, screen: tuple[Point, Point], axis: float, bottom: float) -> Point:
    """The end of the screen's text: before a screen at a glass and clear of the axis, else below the screen."""
    (x1, y1), (x2, y2) = screen
    if not rig.has_glass:
        return WIDTH - EDGE, bottom + 16
    y = (y1 + y2) / 2 - 4
    return min(x1, x2) - 14, min(y, axis - 54) if y < axis else max(y, axis + 26)


def _cap_text(sight: Sightline, say: Wording) -> str:
    caps = say("capitals {angle}", angle=say.figure(sight.cap_height_arcmin, 1) + "′")
    if _from_above(sight.rig):
        return f"{caps} · {travel_text(sight, say)}"
    first = say("first line {angle}", angle=say.angle(sight.first_line_deg))
    last = say("last line {angle}", angle=say.angle(sight.last_line_deg))
    return f"{caps} · {first} · {last}"


def travel_text(sight: Sightline, say: Wording) -> str:
    """The eye's travel to both sides of the lens."""
    left, right = (say.whole(say.figure(angle) + "°") for angle in (sight.travel_left_deg, sight.travel_right_deg))
    return say("travel {left} left, {right} right", left=left, right=right)

"""The chart of type size and column width: where every bound is kept, what is used, what is best."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from promptprep.model.sightline import Sightline

WIDTH, HEIGHT = 760.0, 380.0
LEFT, TOP, RIGHT, BOTTOM = 76.0, 44.0, 24.0, 78.0

Point = tuple[float, float]
Scale = tuple[tuple[float, str, str], ...]
At = Callable[[float, float], Point]


@dataclass(frozen=True, slots=True)
class Edge:
    """A bound as a line of the chart with its text at the end `at`."""

    a: Point
    b: Point
    text: str
    at: Point
    anchor: str


@dataclass(frozen=True, slots=True)
class RegionView:
    width: float
    height: float
    area: tuple[float, float, float, float]
    polygon: tuple[Point, ...]
    edges: tuple[Edge, ...]
    used: Point
    best: Point
    same: bool
    used_text: str
    best_text: str
    across: tuple[tuple[float, str, str], ...]
    down: tuple[tuple[float, str, str], ...]
    sentence: str


def region_view(sight: Sightline) -> RegionView:
    """Pixels of type across, pixels of column up; both axes also in what they mean to the eye."""
    advice, column = sight.advice, sight.column
    edges, bounds = advice["edges"], advice["bounds"]
    most_font = 1.12 * max(edges["font_least_px"], edges["font_most_px"], column.font_px, advice["font_px"])
    most_column = 1.12 * max(edges["column_most_px"], column.width_px, advice["column_px"])
    area = (LEFT, TOP, WIDTH - LEFT - RIGHT, HEIGHT - TOP - BOTTOM)

    def at(font_px: float, column_px: float) -> Point:
        return area[0] + area[2] * font_px / most_font, area[1] + area[3] * (1 - column_px / most_column)

    region = advice["region"]
    polygon = [at(f, low) for f, low, _ in region] + [at(f, high) for f, _, high in reversed(region)]
    used, best = at(column.font_px, column.width_px), at(advice["font_px"], advice["column_px"])
    same = (column.font_px, column.width_px) == (advice["font_px"], advice["column_px"])
    return RegionView(
        width=WIDTH,
        height=HEIGHT,
        area=area,
        polygon=tuple(polygon),
        edges=_edges(edges, bounds, at, (most_font, most_column), _least_line(sight)),
        used=used,
        best=best,
        same=same,
        used_text=f"used: {column.font_px:.0f} px in {column.width_px:.0f} px",
        best_text=f"best: {advice['font_px']:.0f} px in {advice['column_px']:.0f} px",
        across=_across(sight, at, most_font),
        down=_down(sight, at, most_column),
        sentence=_note(sight),
    )


def _least_line(sight: Sightline) -> str:
    """What the narrowest column is for: characters a line, or the longest word."""
    wanted, figures = sight.advice["bounds"]["characters"], sight.type_figures
    by_word = figures is not None and sight.advice["edges"]["column_least_em"] > wanted * figures.advance_em * 1.001
    return "at least the longest word" if by_word else f"at least {wanted:g} characters a line"


def _edges(
    edges: Mapping[str, float], bounds: Mapping[str, float], at: At, most_of: Point, least_line: str
) -> tuple[Edge, ...]:
    most_font, most_column = most_of
    least, most, widest = edges["font_least_px"], edges["font_most_px"], edges["column_most_px"]
    slope = edges["column_least_em"]
    end = min(most_font, most_column / slope)
    middle = _moved(at(end * 0.55, end * 0.55 * slope), 8, 16)
    cone = f"at most: gaze cone {bounds['travel_deg']:g}° or the picture"
    capitals, in_view = (
        f"at least {bounds['cap_least']:.3g}′ capitals",
        f"at most, for {bounds['lines']:g} lines in view",
    )
    late = most > 0.8 * most_font
    return (
        Edge(at(least, 0), at(least, most_column), capitals, _moved(at(least, 0), -5, -7), "end"),
        Edge(
            at(most, 0),
            at(most, most_column),
            in_view,
            _moved(at(most, 0), -5 if late else 5, -22),
            "end" if late else "start",
        ),
        Edge(at(0, 0), at(end, end * slope), least_line, middle, "start"),
        Edge(at(0, widest), at(most_font, widest), cone, _moved(at(most_font, widest), -6, -6), "end"),
    )


def _moved(point: Point, x: float, y: float) -> Point:
    return point[0] + x, point[1] + y


def _across(sight: Sightline, at: At, most_font: float) -> Scale:
    arcmin = sight.cap_height_arcmin / sight.column.font_px
    step = _step(most_font)
    return tuple((at(px, 0)[0], f"{px} px", f"{px * arcmin:.0f}′") for px in range(0, int(most_font) + 1, step))


def _down(sight: Sightline, at: At, most_column: float) -> Scale:
    degrees = (sight.travel_left_deg + sight.travel_right_deg) / sight.column.width_px
    step = _step(most_column, 6)
    return tuple((at(0, px)[1], f"{px} px", f"{px * degrees:.1f}°") for px in range(0, int(most_column) + 1, step))


def _step(most: float, count: int = 9) -> int:
    return next((s for s in (5, 10, 20, 25, 50, 100, 200, 250, 500, 1000, 2000) if most / s <= count), 5000)


def _note(sight: Sightline) -> str:
    if not sight.advice["region"]:
        return "Nowhere are all bounds kept: the rig has to change."
    return "Hatched: every bound is kept, seconds in view too."

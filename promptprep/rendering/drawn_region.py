"""The chart of type size and column width: where every bound is kept, what is used, what is best."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from promptprep.model.sightline import Sightline
from promptprep.rendering.wording import ENGLISH, Wording

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


def region_view(sight: Sightline, say: Wording = ENGLISH) -> RegionView:
    """Pixels of type across, pixels of column up; both axes also in what they mean to the eye."""
    advice, column = sight.advice, sight.column
    edges = advice["edges"]
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
        edges=_edges(edges, at, (most_font, most_column), _texts(sight, say)),
        used=used,
        best=best,
        same=same,
        used_text=say("used: {font} px in {column} px", **_setting(column.font_px, column.width_px)),
        best_text=say("best: {font} px in {column} px", **_setting(advice["font_px"], advice["column_px"])),
        across=_across(sight, at, most_font),
        down=_down(sight, at, most_column, say),
        sentence=_note(sight, say),
    )


def _setting(font_px: float, column_px: float) -> dict[str, str]:
    return {"font": f"{font_px:.0f}", "column": f"{column_px:.0f}"}


@dataclass(frozen=True, slots=True)
class _Texts:
    """What each bound of the chart is for."""

    capitals: str
    in_view: str
    least_line: str
    cone: str


def _texts(sight: Sightline, say: Wording) -> _Texts:
    bounds, figures = sight.advice["bounds"], sight.type_figures
    wanted = bounds["characters"]
    by_word = figures is not None and sight.advice["edges"]["column_least_em"] > wanted * figures.advance_em * 1.001
    return _Texts(
        capitals=say("at least {n}′ capitals", n=say.decimal(f"{bounds['cap_least']:.3g}")),
        in_view=say("at most, for {n} lines in view", n=f"{bounds['lines']:g}"),
        least_line=say("at least the longest word")
        if by_word
        else say("at least {n} characters a line", n=f"{wanted:g}"),
        cone=say("at most: gaze cone {n}° or the picture", n=say.decimal(f"{bounds['travel_deg']:g}")),
    )


def _edges(edges: Mapping[str, float], at: At, most_of: Point, texts: _Texts) -> tuple[Edge, ...]:
    most_font, most_column = most_of
    least, most, widest = edges["font_least_px"], edges["font_most_px"], edges["column_most_px"]
    slope = edges["column_least_em"]
    end = min(most_font, most_column / slope)
    middle = _moved(at(end * 0.55, end * 0.55 * slope), 8, 16)
    late = most > 0.8 * most_font
    return (
        Edge(at(least, 0), at(least, most_column), texts.capitals, _moved(at(least, 0), -5, -7), "end"),
        Edge(
            at(most, 0),
            at(most, most_column),
            texts.in_view,
            _moved(at(most, 0), -5 if late else 5, -22),
            "end" if late else "start",
        ),
        Edge(at(0, 0), at(end, end * slope), texts.least_line, middle, "start"),
        Edge(at(0, widest), at(most_font, widest), texts.cone, _moved(at(most_font, widest), -6, -6), "end"),
    )


def _moved(point: Point, x: float, y: float) -> Point:
    return point[0] + x, point[1] + y


def _across(sight: Sightline, at: At, most_font: float) -> Scale:
    arcmin = sight.cap_height_arcmin / sight.column.font_px
    step = _step(most_font)
    return tuple((at(px, 0)[0], f"{px} px", f"{px * arcmin:.0f}′") for px in range(0, int(most_font) + 1, step))


def _down(sight: Sightline, at: At, most_column: float, say: Wording) -> Scale:
    degrees = (sight.travel_left_deg + sight.travel_right_deg) / sight.column.width_px
    step = _step(most_column, 6)
    return tuple(
        (at(0, px)[1], f"{px} px", say.figure(px * degrees, 1) + "°") for px in range(0, int(most_column) + 1, step)
    )


def _step(most: float, count: int = 9) -> int:
    return next((s for s in (5, 10, 20, 25, 50, 100, 200, 250, 500, 1000, 2000) if most / s <= count), 5000)


def _note(sight: Sightline, say: Wording) -> str:
    if not sight.advice["region"]:
        return say("Nowhere are all bounds kept: the rig has to change.")
    return say("Hatched: every bound is kept, seconds in view too.")

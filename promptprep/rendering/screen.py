"""The screen copy: one HTML file that moves on the glass, and a PDF with the same screenfuls."""

from __future__ import annotations

import base64
import hashlib
import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from jinja2 import Environment
from markupsafe import Markup

from promptprep.model.language import base_of
from promptprep.model.prepared import PreparedScript
from promptprep.model.rig import Flip
from promptprep.rendering.direction import direction_of
from promptprep.rendering.environment import render, source
from promptprep.rendering.screen_chart import chart
from promptprep.rendering.screen_faces import UNDERLINED, Fonts, copy_faces, panel_faces
from promptprep.rendering.screen_object import plan_object
from promptprep.rendering.screen_plan import ScreenPlan, page_shift_px, screen_plan
from promptprep.rendering.screen_words import IN_ENGLISH, ScreenWords
from promptprep.units import clock_text

SCRIPTS = (
    "plan",
    "travel",
    "clock",
    "store",
    "takes",
    "stage",
    "cards",
    "commands",
    "keys",
    "pointer",
    "link",
    "doings",
    "address",
    "reader",
    "board",
    "operator",
    "start",
)
"""Files of the page's code, in the order in which they are joined."""

STYLES = ("copy", "reader", "panels", "operator")


@dataclass(frozen=True, slots=True)
class Place:
    """Where a script stands in its session: from the session's start, in seconds.

    `slot_s` is when it must be over so that what comes after it holds the session's end; None where no end is set.
    """

    title: str
    number: int
    scripts: int
    start_s: float
    slot_s: float | None = None


def screen_html(
    prepared: PreparedScript,
    env: Environment,
    fonts: Fonts,
    *,
    place: Place | None = None,
    words: ScreenWords = IN_ENGLISH,
) -> str:
    """The page of one script: self-contained, without network, script text escaped, styles and code allowed by hash.

    The address fragment sets its state: `flip=none|horizontal|vertical|both`, `at=SECONDS`, `hold=1`, joined by `&`.
    `place` says where the script stands in its session.
    """
    plan = screen_plan(prepared)
    values = {**_values(prepared, plan, fonts, words), "panel_faces": panel_faces(prepared, plan, fonts, words)}
    styles = _styles(env, STYLES, {**values, "px": _scaled})
    code = "\n".join(source(env, f"screen/{name}.js") for name in SCRIPTS)
    code = f'"use strict";\n(() => {{\n{code}}})();\n'
    data = _data({"words": words.texts, **plan_object(prepared, plan), "place": _place(place)})
    return render(
        env,
        "screen/page.html.j2",
        **values,
        styles=Markup(styles),
        code=Markup(code),
        data=Markup(data),
        policy=_policy(styles, code),
    )


def screen_pdf(
    prepared: PreparedScript,
    env: Environment,
    fonts: Fonts,
    flip: Flip | None = None,
    words: ScreenWords = IN_ENGLISH,
) -> bytes:
    """The screenfuls as pages of the rig's own pixels (96 to the inch), the chart last; flipped as the rig needs.

    `flip` overrides the rig's.
    """
    plan = screen_plan(prepared)
    flip = flip or prepared.rig.flip
    values = _values(prepared, plan, fonts, words)
    styles = _styles(env, ("copy", "pages"), {**values, "px": _fixed, "flip": flip})
    given = {"styles": Markup(styles), "pages": screen_pages(plan), "with_chart": True, "flip": flip}
    html = render(env, "screen/pages.html.j2", **values, **given)
    return _written(html, f"{prepared.script.name}.{prepared.script.language}.{prepared.digest}")


def strip_pdf(prepared: PreparedScript, env: Environment, fonts: Fonts, words: ScreenWords = IN_ENGLISH) -> bytes:
    """The whole strip cut into pages of the picture's height, then a page for each guest card; all upright."""
    plan = screen_plan(prepared)
    values = _values(prepared, plan, fonts, words)
    styles = _styles(env, ("copy", "pages"), {**values, "px": _fixed, "flip": "none"})
    guests = [page for page in screen_pages(plan) if page["kind"] == "guest"]
    given = {"styles": Markup(styles), "pages": [*_slices(plan), *guests], "with_chart": False, "flip": "none"}
    html = render(env, "screen/pages.html.j2", **values, **given)
    return _written(html, f"{prepared.script.name}.{prepared.script.language}.{prepared.digest}.strip")


def _slices(plan: ScreenPlan) -> list[dict[str, Any]]:
    """A line that stands on a cut is on both slices; an even height, so that half-size colour planes meet."""
    height, line = plan.frame.height_px // 2 * 2, plan.frame.line_px
    spill = line // 2
    bottom = plan.lines[-1].top_px + line + spill if plan.lines else 0
    slices: list[dict[str, Any]] = [{"kind": "copy", "lines": []} for _ in range(bottom // height + 1)]
    for placed in plan.lines:
        first, last = max(placed.top_px - spill, 0) // height, (placed.top_px + line + spill) // height
        for number in range(first, last + 1):
            slices[number]["lines"].append((placed, placed.top_px - number * height))
    return slices


def screen_pages(plan: ScreenPlan) -> list[dict[str, Any]]:
    """What each page shows, in the order of time: a screenful's lines with their tops, or a guest card."""
    tops = [placed.top_px for placed in plan.lines]
    pages: list[dict[str, Any]] = [
        {
            "kind": "copy",
            "at_s": page.at_s,
            "lines": [
                (placed, placed.top_px + page_shift_px(plan.frame, page, tops))
                for placed in plan.lines[page.first : page.last + 1]
            ],
        }
        for page in plan.screenfuls
    ]
    pages += [
        {"kind": "guest", "at_s": wait.at_s, "wait": wait, "lasts": clock_text(wait.end_s - wait.at_s)}
        for wait in plan.waits
        if wait.kind == "live"
    ]
    return sorted(pages, key=lambda page: (page["at_s"], page["kind"] == "copy"))


def _values(prepared: PreparedScript, plan: ScreenPlan, fonts: Fonts, words: ScreenWords) -> dict[str, Any]:
    faces = copy_faces(prepared, plan, fonts, words)
    return {
        "prepared": prepared,
        "script": prepared.script,
        "rig": prepared.rig,
        "plan": plan,
        "frame": plan.frame,
        "direction": prepared.broken.direction,
        "language": prepared.script.language,
        "chart": chart(prepared, plan.frame),
        "faces": faces,
        "panel_faces": (),
        "families": ", ".join([*dict.fromkeys(face["family"] for face in faces), "sans-serif"]),
        "underlined": base_of(prepared.script.language) in UNDERLINED,
        "w": words.texts,
        "w_language": words.language,
        "w_direction": direction_of(words.texts["ready"]) or "ltr",
    }


def _styles(env: Environment, names: Sequence[str], values: Mapping[str, Any]) -> str:
    return "\n".join(render(env, f"screen/{name}.css.j2", **values) for name in names)


def _scaled(pixels: float) -> str:
    """A length of the rig's picture as CSS: the page sets how large such a pixel is in its window."""
    return f"calc({pixels} * var(--px))"


def _fixed(pixels: float) -> str:
    return f"{pixels}px"


def _data(value: Mapping[str, Any]) -> str:
    """JSON that no HTML parser can leave: `<`, `>` and `&` as escapes, keys in a fixed order."""
    text = json.dumps(value, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
    for sign in "<>&\u2028\u2029":
        text = text.replace(sign, f"\\u{ord(sign):04x}")
    return text


def _place(place: Place | None) -> dict[str, Any] | None:
    if place is None:
        return None
    return {
        "title": place.title,
        "number": place.number,
        "scripts": place.scripts,
        "start_s": place.start_s,
        "slot_s": place.slot_s,
    }


def _policy(styles: str, code: str) -> str:
    """Content security policy: nothing but this very style and code, and fonts that are in the file."""
    return (
        f"default-src 'none'; style-src '{_hash(styles)}'; script-src '{_hash(code)}'; font-src data:; "
        "img-src data:; base-uri 'none'; form-action 'none'"
    )


def _hash(text: str) -> str:
    return "sha256-" + base64.b64encode(hashlib.sha256(text.encode("utf-8")).digest()).decode("ascii")


def _written(html: str, identity: str) -> bytes:
    """PDF bytes. Only data in the page itself is read: a script's text can fetch nothing."""
    import weasyprint
    from weasyprint.text.fonts import FontConfiguration
    from weasyprint.urls import URLFetcher

    document = weasyprint.HTML(string=html, url_fetcher=URLFetcher(allowed_protocols=("data",)))
    return bytes(document.write_pdf(font_config=FontConfiguration(), pdf_identifier=identity.encode("utf-8")))

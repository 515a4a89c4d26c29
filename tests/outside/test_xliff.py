"""The XLIFF kit against the element tree of the OASIS standard.

XLIFF Version 2.1, OASIS Standard, 13 February 2018, section 4.2 (elements, their attributes and what they may hold)
and 4.3 (values): the tables below state that section's facts for the core elements, in the order it asks for.
`data/xliff_core_2.0.xsd` is OASIS's own schema, whose namespace and elements 2.1 keeps for its core (its notice stands
beside it). What a schema cannot say (unique ids, twins of placeholders, the target's language) is checked by hand.
"""

from __future__ import annotations

import io
import re
from functools import lru_cache
from pathlib import Path
from xml.etree import ElementTree

import pytest
import xmlschema

from promptprep.faces import known_language, read_script, tools
from promptprep.model.kit import Kit, KitSegment, KitUnit
from promptprep.model.language import FIRST_CLASS
from promptprep.model.rig import Studio
from promptprep.pipeline.versions import translators_kit
from promptprep.rendering.versions_xliff import NAMESPACE, kit_xliff

DEMO = Path(__file__).parents[2] / "scripts_demo"
SCHEMA = Path(__file__).parent / "data" / "xliff_core_2.0.xsd"
NMTOKEN = re.compile(r"[\w.:-]+")
# element -> (required attributes, optional ones, children in order as a pattern over their names)
TREE = {
    "xliff": ({"version", "srcLang"}, {"trgLang"}, r"(file )+"),
    "file": (
        {"id"}, {"canResegment", "original", "translate", "srcDir", "trgDir"},
        r"(skeleton )?(notes )?(unit |group )+",
    ),
    "group": ({"id"}, {"name", "canResegment", "translate", "srcDir", "trgDir", "type"}, r"(notes )?(unit |group )*"),
    "unit": (
        {"id"}, {"name", "canResegment", "translate", "srcDir", "trgDir", "type"},
        r"(notes )?(originalData )?(segment |ignorable )+",
    ),
    "segment": (set(), {"id", "canResegment", "state", "subState"}, r"source (target )?"),
    "notes": (set(), set(), r"(note )+"),
    "note": (set(), {"id", "appliesTo", "category", "priority", "ref"}, r""),
    "originalData": (set(), set(), r"(data )+"),
    "data": ({"id"}, {"dir"}, r"(cp )*"),
    "source": (set(), set(), r"(cp |ph |pc |sc |ec |mrk |sm |em )*"),
    "target": (set(), {"order"}, r"(cp |ph |pc |sc |ec |mrk |sm |em )*"),
    "ph": (
        {"id"}, {"canCopy", "canDelete", "canReorder", "copyOf", "disp", "equiv", "dataRef", "subFlows", "type"}, r"",
    ),
}  # fmt: skip


def kit(language: str, made: bool) -> bytes:
    source = read_script(DEMO / "sky.en.md")
    there = read_script(DEMO / f"sky.{language}.md") if made else None
    known_language(language)
    return kit_xliff(translators_kit(source, language, there, Studio(), tools()))


@pytest.mark.parametrize(("language", "made"), [("fr", True), ("ar", False), ("ja", True)])
def test_the_kit_keeps_to_the_standard(language: str, made: bool) -> None:
    root = ElementTree.fromstring(kit(language, made))
    assert (root.get("version"), root.get("srcLang"), root.get("trgLang")) == ("2.1", "en", language)
    for element in root.iter():
        name = element.tag.removeprefix(f"{{{NAMESPACE}}}")
        required, optional, children = TREE[name]
        assert required <= set(element.attrib) <= required | optional, name
        inside = "".join(c.tag.removeprefix(f"{{{NAMESPACE}}}") + " " for c in element)
        assert re.fullmatch(children, inside), (name, inside)
        assert NMTOKEN.fullmatch(element.get("id", "x")), name
    units = [u.get("id") for u in root.iter(f"{{{NAMESPACE}}}unit")]
    assert len(units) == len(set(units))


def test_placeholders_point_to_their_unit_s_data() -> None:
    root = ElementTree.fromstring(kit("fr", True))
    for unit in root.iter(f"{{{NAMESPACE}}}unit"):
        known = {d.get("id") for d in unit.iter(f"{{{NAMESPACE}}}data")}
        assert {p.get("dataRef") for p in unit.iter(f"{{{NAMESPACE}}}ph")} <= known


@lru_cache(maxsize=1)
def schema() -> xmlschema.XMLSchema:
    return xmlschema.XMLSchema(str(SCHEMA))


@pytest.mark.parametrize("made", [True, False])
@pytest.mark.parametrize("language", [tag for tag in FIRST_CLASS if tag != "en"])
def test_every_kit_is_valid_by_the_schema_of_oasis(language: str, made: bool) -> None:
    schema().validate(io.BytesIO(kit(language, made)))


def test_a_kit_of_odd_text_is_valid_by_the_schema() -> None:
    """Characters that XML cannot hold, ids that are no tokens, a cue twice, an empty segment."""
    units = (
        KitUnit(
            "a b:é/1", "passage", "One \x00 [pause 1] two <&> [pause 1] [note \x07]", "Un [note \x07] [pause 1] deux",
            cues=("[pause 1]", "[pause 1]", "[note \x07]"),
        ),
        KitUnit("a b:é/2", "note", "\ufffe\ud800 ]]>"),
    )  # fmt: skip
    segments = (KitSegment("a b:é", "Ä & <b>", units, 12.0, 150, 30, ("pause",)), KitSegment("empty", "", ()))
    made = kit_xliff(Kit("odd\x01", "en", "ar", KitUnit("title", "script title", "T"), segments, "b", "rtl"))
    schema().validate(io.BytesIO(made))
    held_by_the_standard(ElementTree.fromstring(made))


def test_the_schema_is_no_rubber_stamp() -> None:
    good = kit("fr", True)
    for before, after in (
        (b'id="f1"', b'id="f 1"'),
        (b"<segment ", b"<piece "),
        (b'state="translated"', b'state="done"'),
    ):
        bad = good.replace(before, after, 1)
        assert bad != good
        with pytest.raises((xmlschema.XMLSchemaException, ElementTree.ParseError)):
            schema().validate(io.BytesIO(bad))


@pytest.mark.parametrize("language", ["fr", "ar", "zh"])
def test_what_no_schema_says_holds_too(language: str) -> None:
    held_by_the_standard(ElementTree.fromstring(kit(language, True)))


def held_by_the_standard(root: ElementTree.Element) -> None:
    """Section 4.3.1: ids are unique where they must be; a target's placeholder is its source's twin, or new;
    4.2.2.1: a document with targets names their language; 4.2.2.5: a unit has a segment."""
    tag = f"{{{NAMESPACE}}}"
    assert root.get("trgLang") or not list(root.iter(f"{tag}target"))
    for kind in ("unit", "group", "file"):
        ids = [e.get("id") for e in root.iter(tag + kind)]
        assert len(ids) == len(set(ids)), kind
    for unit in root.iter(f"{tag}unit"):
        assert unit.find(f"{tag}segment") is not None
        source, target = (_placed(unit, side) for side in ("source", "target"))
        for placed in (source, target):
            assert len({i for i, _ in placed}) == len(placed), unit.get("name")
        assert all(dict(source).get(i, data) == data for i, data in target), unit.get("name")


def _placed(unit: ElementTree.Element, side: str) -> list[tuple[str | None, str | None]]:
    """(id, dataRef) of the placeholders of a unit's sources or targets."""
    found = unit.iterfind(f".//{{{NAMESPACE}}}{side}/{{{NAMESPACE}}}ph")
    return [(p.get("id"), p.get("dataRef")) for p in found]

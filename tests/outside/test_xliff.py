"""The XLIFF kit against the element tree of the OASIS standard.

XLIFF Version 2.1, OASIS Standard, 13 February 2018, section 4.2 (elements, their attributes and what they may hold)
and 4.3 (values): the tables below state that section's facts for the core elements, in the order it asks for. Where a
copy of OASIS's own `xliff_core_2.0.xsd` (the schema that 2.1 keeps for its core) lies in `tests/outside/data/`, the kit
is checked against it too; it is not shipped here.
"""

from __future__ import annotations

import re
from pathlib import Path
from xml.etree import ElementTree

import pytest

from promptprep.faces import known_language, read_script, tools
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


@pytest.mark.skipif(not SCHEMA.exists(), reason="OASIS's schema is not at hand: put it at tests/outside/data/")
def test_the_kit_is_valid_by_the_schema_of_oasis(tmp_path: Path) -> None:
    import xmlschema

    path = tmp_path / "kit.xlf"
    path.write_bytes(kit("fr", True))
    xmlschema.XMLSchema(str(SCHEMA)).validate(str(path))

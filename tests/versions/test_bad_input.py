"""Versions that are wrong in every way give clear findings, and the rest is compared."""

from __future__ import annotations

from pathlib import Path

import pytest

from promptprep.errors import BadCall
from promptprep.faces import versions
from promptprep.model.versions import Versions

ENGLISH = """# Opening {#opening}

Good evening, and welcome to the ridge.

[clip 0:20 Moonrise]

# Look {#look}

You may see 100 meteors an hour. The Moon sets at 21:40.

Dress warmly tonight, and bring a friend along.
"""
FRENCH = """# Ouverture {#opening}

Bonsoir, et bienvenue sur la crête.

[clip 0:20 Moonrise]

# Regardez {#look}

On peut voir 100 météores par heure. La Lune se couche à 21 h 40.

Habillez-vous chaudement ce soir, et venez avec un ami.
"""


def compared(folder: Path, french: str, english: str = ENGLISH) -> Versions:
    (folder / "ridge.en.md").write_text(english, "utf-8")
    (folder / "ridge.fr.md").write_text(french, "utf-8")
    return versions.compare_versions([folder / "ridge.en.md"])


def names(found: Versions) -> list[str]:
    return [f.name for v in found.others for f in v.findings]


def test_versions_that_match_have_no_findings(tmp_path: Path) -> None:
    assert names(compared(tmp_path, FRENCH)) == []


@pytest.mark.parametrize(
    ("before", "after", "name"),
    [
        (FRENCH[FRENCH.index("# Regardez") :], "", "segment-missing"),
        ("# Regardez", "# Encore {#more}\n\nEncore une chose à dire ce soir.\n\n# Regardez", "segment-added"),
        ("[clip 0:20 Moonrise]\n", "", "cue-missing"),
        ("[clip 0:20", "[clip 0:25", "cue-differs"),
        ("Bonsoir, et bienvenue sur la crête.", "Good evening, and welcome to the ridge.", "segment-untranslated"),
        (
            "Habillez-vous chaudement ce soir, et venez",
            "Dress warmly tonight, and bring along a friend",
            "passage-untranslated",
        ),
        ("Bonsoir, et", "TODO et", "version-unfinished"),
        ("{#look}", "{#opening}", "duplicate-id"),
        ("100 météores", "10 météores", "value-differs"),
    ],
)
def test_each_fault_is_found(before: str, after: str, name: str, tmp_path: Path) -> None:
    assert before in FRENCH
    assert name in names(compared(tmp_path, FRENCH.replace(before, after)))


@pytest.mark.parametrize(
    "digits", ["9" * 5000, "1" + "兆" * 300, "9" * 310 + "½", "二" * 5000], ids=lambda text: text[:4]
)
@pytest.mark.parametrize("language", ["fr", "zh"])
def test_more_digits_than_a_number_has_are_no_value(digits: str, language: str, tmp_path: Path) -> None:
    (tmp_path / "ridge.en.md").write_text(ENGLISH, "utf-8")
    (tmp_path / f"ridge.{language}.md").write_text(f"# A {{#look}}\n\n{digits} km. 21:40.\n", "utf-8")
    (found,) = versions.compare_versions([tmp_path / "ridge.en.md"]).others
    assert "segment-missing" in [f.name for f in found.findings]


def test_segments_without_ids_pair_by_order_and_shape(tmp_path: Path) -> None:
    plain = FRENCH.replace(" {#opening}", "").replace(" {#look}", "")
    found = compared(tmp_path, plain, ENGLISH.replace(" {#opening}", "").replace(" {#look}", ""))
    assert [(p.source, p.target, p.by) for p in found.others[0].pairs] == [(0, 0, "order"), (1, 1, "order")]


@pytest.mark.parametrize("data", [b"", b"\x00\x01\x02", b"\xff\xfeA\x00", "caf\xe9".encode("latin-1")])
def test_a_version_that_cannot_be_read_does_not_stop_the_rest(data: bytes, tmp_path: Path) -> None:
    (tmp_path / "ridge.de.md").write_bytes(data)
    found = compared(tmp_path, FRENCH)
    assert [v.language for v in found.others] == ["fr"]
    assert [Path(u.file).name for u in found.unread] == ["ridge.de.md"]


def test_two_files_of_one_language_are_refused(tmp_path: Path) -> None:
    compared(tmp_path, FRENCH)
    (tmp_path / "ridge.fr.txt").write_text("Bonsoir.", "utf-8")
    with pytest.raises(BadCall, match="are both in 'fr'"):
        versions.compare_versions([tmp_path / "ridge.en.md"])


def test_a_mark_tells_what_changed_in_the_source(tmp_path: Path) -> None:
    compared(tmp_path, FRENCH)
    (tmp_path / "ridge.fr.md").write_text(FRENCH, "utf-8")
    marked = versions.mark_versions([tmp_path / "ridge.en.md"])
    assert [p.name for p in marked] == ["ridge.fr.md"]
    assert (tmp_path / "ridge.fr.md.kept-1").read_text("utf-8") == FRENCH
    assert names(versions.compare_versions([tmp_path / "ridge.en.md"])) == []
    (tmp_path / "ridge.en.md").write_text(ENGLISH.replace("Dress warmly tonight", "Dress very warmly"), "utf-8")
    (found,) = versions.compare_versions([tmp_path / "ridge.en.md"]).others[0].findings
    assert (found.name, found.segment) == ("segment-stale", "look")
    assert found.message.endswith(
        ": “Dress [+very] warmly, and bring a…”; “Dress very warmly [−tonight], and bring a friend…”"
    )
    assert versions.mark_versions([tmp_path / "ridge.en.md"])
    assert names(versions.compare_versions([tmp_path / "ridge.en.md"])) == []
    assert versions.mark_versions([tmp_path / "ridge.en.md"]) == []


def test_a_mark_whose_sentences_are_gone_still_shows_the_new_ones(tmp_path: Path) -> None:
    compared(tmp_path, FRENCH)
    versions.mark_versions([tmp_path / "ridge.en.md"])
    (tmp_path / "ridge.en.md").write_text(ENGLISH.replace("21:40", "22:10"), "utf-8")
    for spoil in (None, "no TOML", '"beef" = 3\n'):
        kept = tmp_path / "ridge.made-from.toml"
        kept.unlink() if spoil is None else kept.write_text(spoil, "utf-8")
        (found,) = (f for f in versions.compare_versions([tmp_path / "ridge.en.md"]).others[0].findings
                    if f.name == "segment-stale")  # fmt: skip
        assert "marked: “The Moon sets at 22:10.”" in found.message
    versions.mark_versions([tmp_path / "ridge.en.md"])
    assert (tmp_path / "ridge.made-from.toml.kept-1").read_text("utf-8") == '"beef" = 3\n'


def test_gone_and_new_segments_and_cues_are_named(tmp_path: Path) -> None:
    compared(tmp_path, FRENCH)
    versions.mark_versions([tmp_path / "ridge.en.md"])
    changed = ENGLISH.replace("clip 0:20", "clip 0:25").replace("# Look {#look}", "# See {#see}")
    (tmp_path / "ridge.en.md").write_text(changed, "utf-8")
    found = versions.compare_versions([tmp_path / "ridge.en.md"]).others[0].findings
    stale = {f.segment: f.message for f in found if f.name == "segment-stale"}
    assert "“[clip Moonrise [20 → 25] s]”" in stale["opening"]
    assert "'see' is new" in stale["see"]
    assert "gone: “You may see 100 meteors an hour.”" in stale["look"]


def test_segments_without_ids_pair_by_the_names_in_them(tmp_path: Path) -> None:
    """Three of one length, the middle one missing: only the names tell which."""
    english = [f"# {n}\n\nThis is what {n} saw in the sky last night.\n" for n in ("Quillhorn", "Marrowby", "Tessaly")]
    french = [f"# Chez {n}\n\nVoici ce que {n} a vu dans le ciel hier.\n" for n in ("Quillhorn", "Tessaly")]
    pairs = compared(tmp_path, "\n".join(french), "\n".join(english)).others[0].pairs
    assert [(p.source, p.target) for p in pairs] == [(0, 0), (1, None), (2, 1)]

"""Pronunciations from TOML and from W3C PLS files, put into scripts."""

from __future__ import annotations

from pathlib import Path

import pytest

from promptprep.errors import UnreadableInput
from promptprep.parsing.lexicon import with_lexicon
from promptprep.parsing.parse import parse_script
from promptprep.store.lexicon import read_lexicons

# After the example in section 1.5 of W3C PLS 1.0, with words of our own.
PLS = """<?xml version="1.0" encoding="UTF-8"?>
<lexicon version="1.0" xmlns="http://www.w3.org/2005/01/pronunciation-lexicon" alphabet="ipa" xml:lang="en-GB">
 <lexeme><grapheme>Enceladus</grapheme><phoneme>ɛnˈsɛlədəs</phoneme></lexeme>
 <lexeme><grapheme>Quillhorn</grapheme><grapheme>Q.H.</grapheme><alias>QUILL-horn</alias></lexeme>
</lexicon>"""


def test_both_formats_are_read(tmp_path: Path) -> None:
    (tmp_path / "lexicon.toml").write_text('[en]\nBetelgeuse = "BEE-tel-jooz"\n[fr]\n"Véga" = "VÉ-ga"\n', "utf-8")
    (tmp_path / "words.pls").write_text(PLS, "utf-8")
    lexicon = read_lexicons(tmp_path)
    assert lexicon["en"]["Betelgeuse"] == "BEE-tel-jooz"
    assert lexicon["en"]["Q.H."] == "QUILL-horn"
    assert lexicon["en"]["Enceladus"] == "ɛnˈsɛlədəs"
    assert lexicon["fr"]["Véga"] == "VÉ-ga"


@pytest.mark.parametrize("text", ["[en\n", "x = 1\n", "[en]\nA = 3\n"])
def test_a_broken_lexicon_is_an_error(tmp_path: Path, text: str) -> None:
    (tmp_path / "lexicon.toml").write_text(text, "utf-8")
    with pytest.raises(UnreadableInput):
        read_lexicons(tmp_path)


def test_whole_words_get_their_pronunciation_and_the_copy_wins() -> None:
    script = parse_script('Betelgeuse, not Betelgeuses; [Betelgeuse]{say="mine"} and *Betelgeuse*.')
    copy = with_lexicon(script, {"Betelgeuse": "BEE"}).segments[0].paragraphs[0]
    assert copy.text == script.segments[0].paragraphs[0].text
    assert [(r.text, r.say, r.stress) for r in copy.runs if r.say] == [
        ("Betelgeuse", "BEE", False),
        ("Betelgeuse", "mine", False),
        ("Betelgeuse", "BEE", True),
    ]
    assert all(r.span.of(script.source) == r.text for r in copy.runs)


def test_words_of_scripts_without_spaces_are_found_inside_a_sentence() -> None:
    copy = with_lexicon(parse_script("阿米娜·奥塞博士来了。"), {"阿米娜·奥塞": "a"}).segments[0].paragraphs[0]
    assert [(r.text, r.say) for r in copy.runs] == [("阿米娜·奥塞", "a"), ("博士来了。", None)]

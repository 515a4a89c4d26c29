"""Cards for guests: who is on, for how long, and all that the live parts are."""

from __future__ import annotations

import pytest

from promptprep.model.rig import Paper
from promptprep.rendering.commas import after_comma
from promptprep.rendering.guest_cards import guest_cards
from promptprep.rendering.sheets import sheet_for
from tests.rendering.paper_factory import prepared, printing

TWO = (
    "# Guest\n\nHow many came up the hill?\n\n[live 0:20 Okoro answers: around 4,200, on the best night 612 of them]\n"
    "\nAnd what should they bring?\n\n[live 0:12 Okoro answers: a blanket and patience]\n"
)


def test_a_card_tells_all_live_parts_whole() -> None:
    (card,) = guest_cards(prepared(TWO, "en"), sheet_for(Paper()), printing("en"))
    said = " ".join(line.strip() for line in card.what)
    assert card.what[0] == "0:32"
    assert said == (
        "0:32 0:20 · Okoro answers: around 4,200, on the best night 612 of them "
        "0:12 · Okoro answers: a blanket and patience"
    )


def test_one_live_part_stands_beside_its_time() -> None:
    (card,) = guest_cards(prepared("# A\n\nGo.\n\n[live 1:15 interview]\n", "en"), sheet_for(Paper()), printing("en"))
    assert card.what == ("1:15 · interview",)


@pytest.mark.parametrize("strap", ["strap, Dr Osei", "شريط، Dr Osei", "テロップ、Dr Osei", "字幕，Dr Osei"])
def test_a_name_stands_behind_the_comma_of_any_script(strap: str) -> None:
    assert after_comma(strap) == "Dr Osei"
    assert after_comma("strap") == ""

"""Copy on another matter, said freely in five languages: no differences may be found in it."""

from __future__ import annotations

from pathlib import Path

import pytest

from promptprep.faces import versions

TALK = {
    "en": "Last year 2.4 million people came, about 12 % more than in 2019. The new wing opens on Monday, 3 May 2027 "
    "at half past ten. It will cost €35 million and take two and a half years. One of the 48 rooms is for children.",
    "de": "Im vergangenen Jahr kamen 2,4 Millionen Menschen, rund zwölf Prozent mehr als 2019. Der neue Flügel öffnet "
    "am Montag, dem 3. Mai 2027, um 10.30 Uhr. Er kostet 35 Millionen Euro und braucht zweieinhalb Jahre. Einer der 48 "
    "Räume ist für Kinder.",
    "ru": "В прошлом году пришли 2,4 миллиона человек, на 12 % больше, чем в 2019 году. Новое крыло откроется в "
    "понедельник, 3 мая 2027 года, в половине одиннадцатого. Оно обойдётся в 35 миллионов евро, строить его будут два "
    "с половиной года. Один из 48 залов — для детей.",
    "zh": "去年有240万人参观，比2019年增加约百分之十二。新馆将于2027年5月3日星期一上午10点半开放。"
    "造价3500万欧元，工期两年半。48个展厅中有一个专为儿童而设。",
    "fr": "L’an dernier, 2,4 millions de personnes sont venues, soit 12 % de plus qu’en 2019. La nouvelle aile ouvre "
    "le lundi 3 mai 2027 à 10 h 30. Elle coûtera 35 millions d’euros et demandera deux ans et demi. L’une des 48 "
    "salles est réservée aux enfants.",
    "hi": "पिछले साल 24 लाख लोग आए, 2019 से लगभग 12 प्रतिशत ज़्यादा। नया भाग सोमवार, 3 मई 2027 को सुबह साढ़े दस बजे "
    "खुलेगा। इस पर 3.5 करोड़ यूरो लगेंगे और ढाई साल लगेंगे। 48 कमरों में से एक बच्चों के लिए है।",
}


@pytest.mark.parametrize("language", [tag for tag in TALK if tag != "en"])
def test_free_translations_that_agree_have_no_findings(language: str, tmp_path: Path) -> None:
    for tag in ("en", language):
        (tmp_path / f"talk.{tag}.md").write_text(f"# Talk {{#talk}}\n\n{TALK[tag]}\n", "utf-8")
    found = versions.compare_versions([tmp_path / "talk.en.md"]).others[0].findings
    assert [f.message for f in found] == []

"""Boundaries: check values are ICU's own as noted by W3C's requirements for each script, and worked by hand."""

from __future__ import annotations

from itertools import accumulate

import pytest

from promptprep.engines.breaks import IcuBreaks

BREAKS = IcuBreaks()


def cut(text: str, ends: list[int]) -> list[str]:
    return [text[a:b] for a, b in zip([0, *ends], ends, strict=False)]


def test_japanese_lines_start_with_no_small_kana_long_mark_or_closing_mark() -> None:
    """JLREQ, characters not starting a line (w3c/jlreq 62bc5db, line-start prohibition)."""
    text = "言った。スーパーの「はい」・々とキャッチ、見る！？"
    for start in BREAKS.lines(text, "ja")[:-1]:
        assert text[start] not in "っー。」・々ャッ、！？", text[start:]
        assert text[start - 1] != "「", "JLREQ: no opening mark at a line's end"


def test_chinese_lines_keep_marks_where_they_belong() -> None:
    """CLREQ, GB-style level (w3c/clreq 7d51569)."""
    text = "他说：“你好！”然后走了……《书》、真的。"
    for start in BREAKS.lines(text, "zh")[:-1]:
        assert text[start] not in "：！”。…》、"
        assert text[start - 1] not in "“《"


def test_korean_breaks_by_word() -> None:
    """KLREQ (w3c/klreq db860d8): by word or by character, one for a paragraph; here by word."""
    text = "그는 “안녕하세요?”라고 말했다."
    assert cut(text, BREAKS.lines(text, "ko")) == ["그는 ", "“안녕하세요?”라고 ", "말했다."]


@pytest.mark.parametrize(
    ("language", "text", "sentences"),
    [
        ("en", "Dr. Osei came. She waited.", ["Dr. Osei came. ", "She waited."]),
        ("de", "Heute ist der 1. Dezember. Es ist kalt.", ["Heute ist der 1. Dezember. ", "Es ist kalt."]),
        ("de", "Auf Platz 3. Dann kam sie.", ["Auf Platz 3. ", "Dann kam sie."]),
        ("fr", "M. Osei est là. Bonsoir !", ["M. Osei est là. ", "Bonsoir !"]),
        ("hi", "यह तारा है। वह चाँद है।", ["यह तारा है। ", "वह चाँद है।"]),
        ("ar", "ما هذا؟ هذا نجم.", ["ما هذا؟ ", "هذا نجم."]),
        ("ja", "星です。月です。", ["星です。", "月です。"]),
    ],
)
def test_sentences(language: str, text: str, sentences: list[str]) -> None:
    assert cut(text, BREAKS.sentences(text, language)) == sentences


def test_offsets_count_characters_beyond_the_basic_plane_once() -> None:
    text = "a🙂 👩‍👩‍👧b c"
    assert cut(text, BREAKS.graphemes(text)) == ["a", "🙂", " ", "👩‍👩‍👧", "b", " ", "c"]
    assert cut(text, BREAKS.lines(text, "en")) == ["a", "🙂 ", "👩‍👩‍👧", "b ", "c"]


def test_phrases_join_back() -> None:
    for language, text in (
        ("ja", "今日は新しい望遠鏡を見ます。"),
        ("zh", "今天我们看新的望远镜。"),
        ("zh-TW", "今天看望遠鏡。"),
    ):
        phrases = cut(text, BREAKS.phrases(text, language))
        assert "".join(phrases) == text
        assert 1 < len(phrases) < len(text)


@pytest.mark.parametrize("text", ["", "\x00", "\ud800 a", " ", "\u200b"])
def test_any_text_has_ends(text: str) -> None:
    for ends in (
        BREAKS.words(text, "en"),
        BREAKS.sentences(text, "en"),
        BREAKS.lines(text, "ko"),
        BREAKS.graphemes(text),
    ):
        assert "".join(cut(text, ends)) == text


def test_chinese_phrases_end_at_ends_of_words() -> None:
    text = "这一天文台的望远镜直径为3.5米。"
    phrases = BREAKS.phrases(text, "zh")
    assert set(phrases) <= set(BREAKS.words(text, "zh"))
    assert not any("天文台" not in part and part.startswith("文台") for part in cut(text, phrases))


def test_japanese_phrases_end_at_words() -> None:
    """明るい is one word: the phrase model alone would end a phrase inside it."""
    text = "明るいオレンジ色の星は木星です。"
    assert cut(text, BREAKS.phrases(text, "ja")) == ["明るい", "オレンジ色の", "星は", "木星です。"]


def test_chinese_characters_choose_the_phrases() -> None:
    for language in ("zh", "zh-Hant"):
        assert BREAKS.phrases("我去了北部大學的畢業展。", language) == BREAKS.phrases(
            "我去了北部大學的畢業展。", "zh-TW"
        )
    assert BREAKS.phrases("我去了北部大学的毕业展。", "zh") == BREAKS.phrases("我去了北部大学的毕业展。", "zh-CN")


@pytest.mark.parametrize(
    ("language", "word", "parts"),
    [
        # Duden's own example of a long compound; joints by the dictionary's word division (from memory).
        ("de", "Donaudampfschifffahrt", ["Donau", "dampf", "schifffahrt"]),
        ("es", "observatorio", ["obser", "va", "torio"]),  # RAE, Ortografía 2010: ob-ser-va-to-rio (from memory)
        ("ar", "المرصد", ["المرصد"]),
    ],
)
def test_syllables(language: str, word: str, parts: list[str]) -> None:
    ends = BREAKS.syllables(word, language)
    assert set(accumulate(map(len, parts[:-1]))) <= set(ends)
    assert all(3 <= end <= len(word) - 3 for end in ends)

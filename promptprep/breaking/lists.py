"""What a line end costs by a language's word lists: which words hold on to their neighbours."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from promptprep.breaking.optimum import HARD
from promptprep.model.language import LanguageData
from promptprep.spans import Span

# Cost of a line end after a word of each list. Order by subtitling practice; the figures are common practice.
AFTER = {
    "adjectives": 7.0, "articles": 10.0, "auxiliaries": 8.0, "clitics": 8.0, "conjunctions": 5.0, "degrees": 8.0,
    "determiners": 9.0, "linkers": 5.0, "negations": 8.0, "numerals": 9.0, "prepositions": 9.0, "pronouns": 5.0,
}  # fmt: skip
# Cost of a line end before a word of each list.
BEFORE = {"followers": 9.0}
_NAMES = 9.0
_ENDING = 8.0  # adjective and noun, noun and adjective, a verb and the auxiliary behind it: by how they end
_OPEN = 8.0  # a noun that no particle closes, and what it leans on
_NAME_NUMBER = 9.0
YEAR = 15.0  # before the year of a date that would else leave a word alone on the line before it
_OPENING = "([{\"'“‘«‹„‚「『（《〈【¿¡"
_CLOSING = ")]}\"'”’»›“‘.,;:!?…。、，；：！？」』）》〉】؟،؛।"
_NUMBER = re.compile(r"[+\-−±~≈<>≤≥]?[$€£¥₹₽]?\d[\d.,:/’'\-–]*[$€£¥₹₽%‰°]?")
_YEAR = re.compile(r"[12]\d{3}")
_CODE = re.compile(r"[A-ZА-Я]{1,5}")
_INITIAL = re.compile(r"[^\W\d_]\.(?:[-\s]?[^\W\d_]\.)*")
_SIGN = re.compile(r"[$€£¥₹₽№§#&=+×÷±−–\-<>≈~%‰°/:;!?»)\]]+")
_CLAUSE_MARKS = frozenset(".!?…,;:—–。、，；：！？؟،؛।")
_HAN_FIGURES = "〇一二三四五六七八九十百千万亿億兆两半"
_FIGURES = rf"(?<![\d.,])\d[\d.,]*|(?<![{_HAN_FIGURES}])[{_HAN_FIGURES}]++"
_CLOSE = re.compile("[\u3041-\u30ff\u3400-\u9fff\uac00-\ud7a3]")  # kana, Han, Hangul
_UNIT_WITH_PARTICLE = re.compile("([a-zµ°%/²³]+)[\uac00-\ud7a3]+")
_DIGIT_UNIT = re.compile(r"\d\S*[년월일年月日时分秒時点點]$")


@dataclass(frozen=True, slots=True)
class Lists:
    """The word lists of one language, ready to ask."""

    after: dict[str, float] = field(default_factory=dict)
    before: dict[str, float] = field(default_factory=dict)
    openers: frozenset[str] = frozenset()
    titles: frozenset[str] = frozenset()
    numbered: frozenset[str] = frozenset()
    units: frozenset[str] = frozenset()
    months: frozenset[str] = frozenset()
    date_joints: frozenset[str] = frozenset()
    negations: frozenset[str] = frozenset()
    joined: frozenset[tuple[str, ...]] = frozenset()
    closers: frozenset[str] = frozenset()
    endings: tuple[str, ...] = ()
    capital_endings: tuple[str, ...] = ()
    behind_endings: tuple[str, ...] = ()
    verb_endings: tuple[str, ...] = ()
    closings: tuple[str, ...] = ()
    definite: re.Pattern[str] | None = None
    auxiliaries: frozenset[str] = frozenset()
    elided: tuple[str, ...] = ()
    measure: re.Pattern[str] | None = None
    names: bool = True
    number_behind: bool = False
    content: float = 0.0
    line_price: float = 1.0
    line_growth: float = 1.0
    share: float = 0.5
    inside_phrase: float = HARD


def lists_of(data: LanguageData) -> Lists:
    """The lists of a language's `phrases` table. A language without one has punctuation and numbers only."""

    def words(key: str) -> frozenset[str]:
        return frozenset(word.replace("’", "'").casefold() for word in data.maybe("phrases", key, ()))

    after: dict[str, float] = {}
    for name, cost in AFTER.items():
        for word in words(name):
            after[word] = max(after.get(word, 0.0), cost)
    return Lists(
        after=after,
        before=dict.fromkeys(words("followers"), BEFORE["followers"]),
        openers=words("openers"),
        titles=words("titles"),
        numbered=words("numbered"),
        units=words("units"),
        months=words("months"),
        date_joints=words("date_joints"),
        negations=words("negations"),
        joined=frozenset(tuple(written.split()) for written in words("joined")),
        closers=words("closers"),
        endings=tuple(data.maybe("phrases", "adjective_endings", ())),
        capital_endings=tuple(data.maybe("phrases", "capital_endings", ())),
        behind_endings=tuple(data.maybe("phrases", "behind_endings", ())),
        verb_endings=tuple(data.maybe("phrases", "verb_endings", ())),
        closings=tuple(data.maybe("phrases", "closings", ())),
        definite=_pattern(data.maybe("phrases", "definite")),
        auxiliaries=words("auxiliaries"),
        elided=tuple(words("elided")),
        measure=_measure(words("units"), words("scales"), words("counts")),
        names=bool(data.maybe("phrases", "names", True)),
        number_behind=bool(data.maybe("phrases", "number_behind", False)),
        content=float(data.maybe("phrases", "content", 0.0)),
        share=float(data.maybe("phrases", "list_share", 0.5)),
        line_price=float(data.maybe("phrases", "line_price", 1.0)),
        line_growth=float(data.maybe("phrases", "line_growth", 1.0)),
        inside_phrase=float(data.maybe("phrases", "inside_phrase", HARD)),
    )


def _pattern(written: str | None) -> re.Pattern[str] | None:
    return re.compile(written) if written else None


def _measure(units: Iterable[str], scales: Iterable[str], counts: Iterable[str]) -> re.Pattern[str] | None:
    """A number with its unit in a script whose units are written close to it, or lean on what follows them."""
    own = [unit for unit in units if _CLOSE.match(unit)]
    if not own:
        return None
    scale = f"(?:\\s?(?:{_any_of(scales)})){{0,4}}" if scales else ""
    count = rf"|(?<!\S)(?:{_any_of(counts)})(?=\s)" if counts else ""
    return re.compile(f"(?:{_FIGURES}{count}){scale}\\s?(?:{_any_of(own)})")


def _any_of(words: Iterable[str]) -> str:
    return "|".join(map(re.escape, sorted(words, key=lambda word: (-len(word), word))))


def measures(text: str, lists: Lists) -> list[Span]:
    """Numbers with their units that no line end may part, in order."""
    return [Span(*found.span()) for found in lists.measure.finditer(text)] if lists.measure else []


@dataclass(frozen=True, slots=True)
class Chunk:
    """What stands between two blanks: as written, its letters alone in lower case, and what it may be."""

    written: str
    word: str
    is_number: bool
    is_name: bool
    ends_clause: bool


def chunk_of(written: str) -> Chunk:
    core = written.lstrip(_OPENING).rstrip(_CLOSING)
    return Chunk(
        written,
        core.replace("’", "'").casefold(),
        is_number=_NUMBER.fullmatch(core) is not None,
        is_name=core[:1].isupper() and any(char.islower() for char in core),
        ends_clause=_ends_clause(written),
    )


def _ends_clause(written: str) -> bool:
    """Whether a mark that ends a clause stands behind the last letter or figure."""
    for char in reversed(written):
        if char in _CLAUSE_MARKS or char.isalnum() or char == "_":
            return char in _CLAUSE_MARKS
    return False


def held_fast(left: Chunk, right: Chunk, before: Chunk | None, lists: Lists) -> bool:
    """Whether nothing may part the two: number and unit, title and name, a date, a sign and what it stands by."""
    if _SIGN.fullmatch(right.written) and not _is_dash(right.written):
        return True
    if left.written and all(char in _OPENING for char in left.written):
        return True
    return (
        _holds_number(left, right, before, lists)
        or _holds_name(left, right, lists)
        or (_SIGN.fullmatch(left.written) is not None and right.is_number and not _is_dash(left.written))
    )


def leans(chunk: Chunk, lists: Lists) -> bool:
    """Whether a word says on to the next one."""
    return lists.after.get(chunk.word, 0.0) > 0 and not chunk.ends_clause


def before_year(left: Chunk, right: Chunk, before: Chunk | None, lists: Lists) -> bool:
    """Whether a year follows the day and month: 3. Oktober | 2025; October 3, | 2025."""
    if before is None or _YEAR.fullmatch(right.word) is None:
        return False
    return (left.word in lists.months and before.is_number) or (left.is_number and before.word in lists.months)


def _is_dash(written: str) -> bool:
    return written in ("-", "–", "—", "−")


def _holds_number(left: Chunk, right: Chunk, before: Chunk | None, lists: Lists) -> bool:
    if _DIGIT_UNIT.search(left.written) and right.word[:1].isdigit():
        return True
    if left.is_number and (right.word in lists.months or _in_date(before, right, lists)):
        return True
    if left.is_number and not left.ends_clause:
        return _UNIT_WITH_PARTICLE.sub(r"\1", right.word) in lists.units or _is_group(left, right)
    if right.is_number:
        in_date = left.word in lists.months
        in_measure = left.word in lists.units and before is not None and before.is_number
        code = _CODE.fullmatch(left.written) is not None and left.word not in lists.after
        return in_date or in_measure or code or left.written.casefold() in lists.numbered
    return False


def _in_date(before: Chunk | None, right: Chunk, lists: Lists) -> bool:
    """March 12, 2026: the place before the year."""
    return right.is_number and before is not None and before.word in lists.months


def dates(chunks: Sequence[Chunk], lists: Lists) -> set[int]:
    """Places inside a date with joints, as indices of the chunk before: "12 de marzo de 2026"."""
    found: set[int] = set()
    for k, chunk in enumerate(chunks):
        if not (chunk.word in lists.months and lists.date_joints):
            continue
        if k >= 2 and chunks[k - 1].word in lists.date_joints and chunks[k - 2].is_number:
            found |= {k - 2, k - 1}
        if k + 2 < len(chunks) and chunks[k + 1].word in lists.date_joints and chunks[k + 2].is_number:
            found |= {k, k + 1}
    return found


def joints(chunks: Sequence[Chunk], lists: Lists) -> set[int]:
    """Places inside a preposition of several words, as indices of the chunk before: "de parte de", "in front of"."""
    longest = max(map(len, lists.joined), default=0)
    elided = tuple(word for word in lists.closers if word.endswith("'"))
    found: set[int] = set()
    for k, chunk in enumerate(chunks):
        if not (chunk.word in lists.closers or (elided and chunk.word.startswith(elided))):
            continue
        for start in range(max(0, k - longest), k):
            if tuple(own.word for own in chunks[start:k]) in lists.joined:
                found |= {i for i in range(start, k) if not chunks[i].ends_clause}
                break
    return found


def _is_group(left: Chunk, right: Chunk) -> bool:
    """Groups of three digits: 10 000."""
    return right.word[:3].isdigit() and right.is_number and len(right.word.split(",")[0]) == 3


def _holds_name(left: Chunk, right: Chunk, lists: Lists) -> bool:
    if _INITIAL.fullmatch(left.written) and _INITIAL.match(right.written):
        return True
    first = right.written.lstrip(_OPENING)[:1]
    titled = left.written.lstrip(_OPENING).casefold() in lists.titles
    if first.isupper():
        return titled or _INITIAL.fullmatch(left.written) is not None
    return titled and first.isalpha() and not first.islower()


def list_cost(left: Chunk, right: Chunk, lists: Lists, starts_sentence: bool) -> float:
    """The cost of a line end between two chunks by the lists alone; 0 where neither holds on to the other."""
    cost = lists.before.get(right.word, 0.0)
    if left.ends_clause:
        return cost
    cost = max(cost, _after(left, lists))
    if left.is_number and not right.is_number:
        cost = max(cost, _NAME_NUMBER)
    if right.is_number and lists.number_behind:
        cost = max(cost, _NAME_NUMBER)
    if left.is_name and lists.names and (right.is_name or right.is_number):
        cost = max(cost, 0.0 if starts_sentence and _may_be_no_name(left, right, lists) else _NAMES)
    return cost or _by_endings(left, right, lists)


def _by_endings(left: Chunk, right: Chunk, lists: Lists) -> float:
    """The cost between two words that no list knows, by how they end."""
    if left.word.endswith(lists.endings):
        return _ENDING
    is_lower = left.written[:1].islower()
    if is_lower and right.word in lists.auxiliaries and left.word.endswith(lists.verb_endings):
        return _ENDING
    if is_lower and left.word.endswith(lists.capital_endings) and _may_be_described(right, lists):
        return _ENDING
    has_closed = left.word in lists.before and left.word not in lists.units
    if has_closed or right.word in lists.after or right.word in lists.openers:
        return 0.0
    if lists.closings and not left.word.endswith(lists.closings):
        return _OPEN
    if right.word.endswith(lists.behind_endings) or _both_definite(left, right, lists):
        return _ENDING
    return lists.content


def _may_be_no_name(left: Chunk, right: Chunk, lists: Lists) -> bool:
    """Whether a sentence's first word need be no name itself: a word of a list, or where every noun has a capital."""
    listed = left.word in lists.after or left.word in lists.openers or left.word in lists.before
    return listed or right.is_number or bool(lists.capital_endings)


def _both_definite(left: Chunk, right: Chunk, lists: Lists) -> bool:
    """Whether both words carry the article, as a noun and its adjective do in Arabic."""
    return lists.definite is not None and all(map(lists.definite.match, (left.word, right.word)))


def _may_be_described(right: Chunk, lists: Lists) -> bool:
    return right.is_name or right.word.endswith(lists.endings)


def _after(left: Chunk, lists: Lists) -> float:
    """The cost after a word of a list, or one whose ending leans on the next one: "l'", "d'une", "the star's"."""
    cost = lists.after.get(left.word, 0.0)
    if lists.elided:
        cost = max(cost, lists.after.get(left.word.rpartition("'")[2], 0.0))
        cost = max(cost, AFTER["articles"] if left.word.endswith(lists.elided) else 0.0)
    return cost


def opens(right: Chunk, lists: Lists) -> bool:
    """Whether a clause or a phrase begins here: a good place to go to a new line."""
    return right.word in lists.openers

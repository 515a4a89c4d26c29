"""Phonemes of single words by the eSpeak NG library, called through ctypes.

The library keeps one state per process, so one handle behind one lock serves every caller. It is used for
text to phonemes only: no sound is made. Phonemes come in IPA, a closed vocabulary for each voice.
"""

from __future__ import annotations

import ctypes
import re
import threading
import unicodedata
from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import ClassVar, TypeVar

from promptprep.errors import UnknownLanguage

T = TypeVar("T")

_RETRIEVAL = 2  # espeak_AUDIO_OUTPUT: no playback, no events
_UTF8 = 1  # espeakCHARS_UTF8
_IPA_SPACED = 0x02 | ord("_") << 8  # IPA names with "_" between phonemes
_LONGEST = 48  # letters given to the engine in one piece; its own buffer holds 160 bytes
_CACHED = 200_000  # words remembered a voice

_VOICES = {"en": "en-us", "no": "nb", "zh": "cmn"}
_STRIP = str.maketrans("", "", "ˈˌ|!%=,'")
_SWITCH = re.compile(r"\([a-z-]+\)")
_VOWELS = frozenset("aeiouyæøœɐɑɒɔəɘɚɛɜɝɞɤɨɪɯɵɶʉʊʌʏᵻᵊᵿ")
_SYLLABIC = "\u0329"
_SAID = {"sw": (("ng'", "ng"),)}  # spellings that a voice reads letter by letter
# First word of a letter's Unicode name -> (ISO 15924 scripts it belongs to, the voice that reads a word in it).
_SCRIPTS: dict[str, tuple[tuple[str, ...], str]] = {
    "ARABIC": (("Arab",), "ar"),
    "ARMENIAN": (("Armn",), "hy"),
    "BENGALI": (("Beng",), "bn"),
    "CJK": (("Hans", "Hant", "Jpan"), "cmn"),
    "CYRILLIC": (("Cyrl",), "ru"),
    "DEVANAGARI": (("Deva",), "hi"),
    "ETHIOPIC": (("Ethi",), "am"),
    "GEORGIAN": (("Geor",), "ka"),
    "GREEK": (("Grek",), "el"),
    "GUJARATI": (("Gujr",), "gu"),
    "GURMUKHI": (("Guru",), "pa"),
    "HANGUL": (("Kore",), "ko"),
    "HEBREW": (("Hebr",), "he"),
    "HIRAGANA": (("Jpan",), "ja"),
    "KANNADA": (("Knda",), "kn"),
    "KATAKANA": (("Jpan",), "ja"),
    "LATIN": (("Latn",), "en"),
    "MALAYALAM": (("Mlym",), "ml"),
    "MYANMAR": (("Mymr",), "my"),
    "ORIYA": (("Orya",), "or"),
    "SINHALA": (("Sinh",), "si"),
    "TAMIL": (("Taml",), "ta"),
    "TELUGU": (("Telu",), "te"),
    "THAI": (("Thai",), "th"),
}
_READ_LATIN_TOO = ("sr", "uz", "az", "kk")  # written in two scripts, and their voices know both


class EspeakPhonemes:
    """Phonemes and syllables of words, remembered by voice. Safe to share between threads.

    The library, its lock and its current voice belong to the process, not to an instance: it must not be started
    twice, and nobody may change the voice behind another's back.
    """

    _lock: ClassVar[threading.Lock] = threading.Lock()
    _library: ClassVar[ctypes.CDLL | None] = None
    _voice: ClassVar[str] = ""

    def __init__(self) -> None:
        self._phones: dict[str, dict[str, tuple[str, ...]]] = {}
        self._counts: dict[str, dict[str, tuple[int, int]]] = {}

    def phones(self, words: Sequence[str], language: str) -> list[tuple[str, ...]]:
        """For each word its phonemes in IPA, without stress marks; () for a word without letters or digits.

        Raises `UnknownLanguage` where the library has no voice for `language`.
        """
        voice = self._voice_of(language)
        known = self._phones.setdefault(voice, {})
        new = {w for w in words if w not in known}
        if new:
            _make_room(known, len(new))
            known.update(self._spoken(new, voice))
        return [known[w] for w in words]

    def counts(self, words: Sequence[str], language: str) -> list[tuple[int, int]]:
        """For each word (phonemes, syllables); syllables as `syllables_of` counts them."""
        voice = self._voice_of(language)
        known = self._counts.setdefault(voice, {})
        new = {w for w in words if w not in known}
        if new:
            _make_room(known, len(new))
            for word, phones in self._spoken(new, voice).items():
                known[word] = len(phones), sum(map(syllables_of, phones))
        return [known[w] for w in words]

    def _spoken(self, words: Iterable[str], voice: str) -> dict[str, tuple[str, ...]]:
        """Phonemes of each word, letters of other scripts by the voice of their script."""
        by_voice: dict[str, list[str]] = {}
        for word in words:
            by_voice.setdefault(_voice_for(word, voice), []).append(word)
        found: dict[str, tuple[str, ...]] = {}
        with self._lock:
            for name, its_words in by_voice.items():
                self._select(name)
                for word in its_words:
                    found[word] = self._say(word, name)
        return found

    def _say(self, word: str, voice: str) -> tuple[str, ...]:
        if not any(map(str.isalnum, word)):
            return ()
        text = word.replace("’", "'")
        for written, said in _SAID.get(voice, ()):
            text = text.replace(written, said)
        phones: list[str] = []
        for piece in _pieces(text):
            phones += self._piece(piece)
        return tuple(phones)

    def _piece(self, text: str) -> list[str]:
        assert self._library is not None
        rest = ctypes.c_char_p(text.encode("utf-8", "replace"))
        said: list[str] = []
        for _ in range(len(text) + 1):
            if rest.value is None:
                break
            answer = self._library.espeak_TextToPhonemes(ctypes.byref(rest), _UTF8, _IPA_SPACED)
            said.append((answer or b"").decode("utf-8", "replace"))
        return _split(" ".join(said))

    def _voice_of(self, language: str) -> str:
        voice = _voice_name(language)
        if voice not in self._counts:
            with self._lock:
                self._select(voice)
            self._counts.setdefault(voice, {})
        return voice

    def _select(self, voice: str) -> None:
        """Makes `voice` the current one. The lock is held by the caller."""
        if voice == self._voice:
            return
        library = self._library or _load()
        EspeakPhonemes._library = library
        for name in dict.fromkeys((voice, voice.split("-")[0])):
            if library.espeak_SetVoiceByName(name.encode()) == 0:
                EspeakPhonemes._voice = voice
                return
        raise UnknownLanguage(
            "unknown-language", f"no voice is known for {voice!r}", "give a language that is in use, such as `en`"
        )


@lru_cache(maxsize=4096)
def syllables_of(phone: str) -> int:
    """Syllables that an IPA phoneme of the engine carries: 0, 1, or 2 where it joins a hiatus ("aɪə", "iə")."""
    vowels = sum(c in _VOWELS for c in phone)
    if vowels >= 3 or phone.startswith("iə"):
        return 2
    return 1 if vowels or _SYLLABIC in phone else 0


@lru_cache(maxsize=256)
def _voice_name(language: str) -> str:
    tag = language.replace("_", "-").lower()
    return _VOICES.get(tag) or _VOICES.get(tag.split("-")[0], tag)


def _voice_for(word: str, voice: str) -> str:
    """The voice that reads `word`: the language's own, unless its first letter is of another script."""
    own = _own_script(voice)
    if own == "Latn" and word.isascii():
        return voice
    first = next(filter(str.isalpha, word), "")
    if not first:
        return voice
    scripts, reader = _SCRIPTS.get(_script_word(first), ((own,), voice))
    if own in scripts or (scripts == ("Latn",) and voice in _READ_LATIN_TOO):
        return voice
    return reader


@lru_cache(maxsize=256)
def _own_script(voice: str) -> str:
    """ISO 15924 code of the script that a voice's language is written in, by the CLDR's likely subtags."""
    from babel.core import get_global

    base = voice.split("-")[0]
    likely = get_global("likely_subtags").get({"cmn": "zh", "nb": "no"}.get(base, base), "")
    return likely.split("_")[1] if likely.count("_") >= 1 else "Latn"


@lru_cache(maxsize=65536)
def _script_word(letter: str) -> str:
    return unicodedata.name(letter, "").split(" ", 1)[0].split("-", 1)[0]


def _pieces(text: str) -> list[str]:
    return [text] if len(text) <= _LONGEST else [text[i : i + _LONGEST] for i in range(0, len(text), _LONGEST)]


def _split(answer: str) -> list[str]:
    plain = _SWITCH.sub("", answer).replace(" ", "_").translate(_STRIP)
    return [p for p in plain.split("_") if _is_phone(p)]


@lru_cache(maxsize=4096)
def _is_phone(name: str) -> bool:
    return any(map(str.isalpha, name))


def _make_room(known: dict[str, T], wanted: int) -> None:
    if len(known) + wanted > _CACHED:
        known.clear()


def _load() -> ctypes.CDLL:
    import espeakng_loader

    library = ctypes.CDLL(str(espeakng_loader.get_library_path()))
    library.espeak_TextToPhonemes.restype = ctypes.c_char_p
    library.espeak_TextToPhonemes.argtypes = [ctypes.POINTER(ctypes.c_char_p), ctypes.c_int, ctypes.c_int]
    if library.espeak_Initialize(_RETRIEVAL, 0, str(espeakng_loader.get_data_path()).encode(), 0) < 0:
        raise UnknownLanguage("no-phoneme-engine", "the phoneme engine did not start", "install promptprep again")
    return library

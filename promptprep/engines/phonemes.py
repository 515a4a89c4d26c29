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
from typing import TypeVar

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
# Unicode script, by the first word of a letter's name -> the voice that reads a word in it.
_SCRIPT_VOICES = {
    "ARABIC": "ar", "ARMENIAN": "hy", "BENGALI": "bn", "CJK": "cmn", "CYRILLIC": "ru", "DEVANAGARI": "hi",
    "ETHIOPIC": "am", "GEORGIAN": "ka", "GREEK": "el", "GUJARATI": "gu", "GURMUKHI": "pa", "HANGUL": "ko",
    "HEBREW": "he", "HIRAGANA": "ja", "KANNADA": "kn", "KATAKANA": "ja", "LATIN": "en", "MALAYALAM": "ml",
    "MYANMAR": "my", "ORIYA": "or", "SINHALA": "si", "TAMIL": "ta", "TELUGU": "te", "THAI": "th",
}  # fmt: skip
_OWN_SCRIPTS = {
    "ar": ("ARABIC",), "cmn": ("CJK",), "el": ("GREEK",), "hi": ("DEVANAGARI",), "ja": ("HIRAGANA", "KATAKANA"),
    "ko": ("HANGUL",), "ru": ("CYRILLIC",),
}  # fmt: skip


class EspeakPhonemes:
    """Phonemes and syllables of words, remembered by voice. Safe to share between threads."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._library: ctypes.CDLL | None = None
        self._voice = ""
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
        if self._library is None:
            self._library = _load()
        for name in dict.fromkeys((voice, voice.split("-")[0])):
            if self._library.espeak_SetVoiceByName(name.encode()) == 0:
                self._voice = voice
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
    base = voice.split("-")[0]
    own = _OWN_SCRIPTS.get(base)
    if own is None and word.isascii():
        return voice
    for letter in word:
        if letter.isalpha():
            script = unicodedata.name(letter, "").split(" ")[0].split("-")[0]
            if own is not None:
                return voice if script in own else _SCRIPT_VOICES.get(script, voice)
            return _SCRIPT_VOICES.get(script, voice) if _is_foreign(script, base) else voice
    return voice


def _is_foreign(script: str, base: str) -> bool:
    """Whether a language whose script is not listed would leave a letter of `script` to another voice."""
    return script in ("ARABIC", "CJK", "CYRILLIC", "DEVANAGARI", "GREEK", "HANGUL", "HIRAGANA", "KATAKANA") and (
        base in ("de", "en", "es", "fr", "it", "pt", "sw", "nl", "pl", "sv", "tr", "vi", "ca", "fi", "hu")
    )


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

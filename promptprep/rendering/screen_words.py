"""All words that the page itself says, in one place, so that they can be put into other languages."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

ENGLISH: Mapping[str, str] = {
    "ready": "Ready",
    "moving": "Moving",
    "held": "Held",
    "rehearsal": "Rehearsal",
    "take": "Take {n}",
    "clap_take": "Take {n}",
    "take_on": "Take {n} is on",
    "clap": "Say this, then clap once",
    "starts_in": "The text starts in {s}",
    "guest": "Guest",
    "left": "{time} left",
    "over": "{time} over",
    "under": "{time} under",
    "said_as": "{text}: said {say}",
    "clip": "Clip",
    "pause": "Pause",
    "keys": "Keys",
    "keys_hint": "Press H to close. A tap or a click holds and releases the text.",
    "clicker": "A presenter's clicker turns pages, or holds and releases; its dark key rests the picture.",
    "pad": "A gamepad or a pedal: first button holds and releases, second goes back, sideways changes the segment, "
    "up and down nudge the pace.",
    "caution": "Cautions",
    "caution_voice": "Rest the voice: read in blocks of 5 to 15 minutes, drink, don't whisper in between "
    "(dukehealth.org, vocal pacing). Stop when it hurts; a clinician's word goes before ours.",
    "caution_flash": "Nothing here flashes more than three times a second (WCAG 2.3.1).",
    "caution_rig": "Glass and screens overhead: rated support, covered edges, taped cables, nobody under a raised rig. "
    "Local codes and licensed practice go first.",
    "rest_now": "{m} minutes of speech so far: plan a rest for the voice",
    "slept": "The window slept for {s} s. The text is held where it was.",
    "interrupted": "Take {n} was interrupted at {t}. Its record is kept. Space goes on, T ends it.",
    "store_full": "The browser's store is full. Take {n} lives in this window only: save it (S) before you close it.",
    "store_none": "This browser keeps no store for the page. Save each take (S) before you close the window.",
    "unsaved": "{n} not saved",
    "saved": "Take {n} saved as {file}",
    "nothing_to_save": "No take to save yet",
    "operator_closed": "The operator's window is closed. Nothing is lost; O opens it again.",
    "operator_blocked": "The browser kept the operator's window from opening. Allow it, or press O again.",
    "reader_gone": "No word from the reader's window. The record so far is here.",
    "reader_again": "Open the reader's page again",
    "keys_elsewhere": "The keys go to another window. Click here to have them back.",
    "view_flip": "Flip: {flip}",
    "flip_none": "none",
    "flip_horizontal": "horizontal",
    "flip_vertical": "vertical",
    "flip_both": "both",
    "view_flowing": "Flowing text",
    "view_pages": "Page by page",
    "view_light": "Light {n} %",
    "view_warm": "Warmth {n} of 3",
    "panels_turn": "Panels turn with the picture",
    "panels_plain": "Panels stand as the crew sees them",
    "pace_is": "Pace {n} %",
    "guest_waits": "Waits at the end of a guest part",
    "guest_goes": "Goes on by itself after a guest part",
    "operator": "Operator",
    "segments": "Segments",
    "gone": "Gone",
    "to_go": "To go",
    "slot": "Slot",
    "session": "Session",
    "next_cue": "Next cue",
    "in": "in {time}",
    "now": "now",
    "no_more_cues": "No more cues",
    "reader_sees": "The reader sees",
    "pace": "Pace",
    "no_slot": "no slot",
    "wording": "wording",
    "takes": "Takes",
    "no_takes": "None yet",
    "likely": "8 in 10 takes: {range}",
    "chart_reads": "must read the right way round for the viewer",
    "chart_word": "Ring 274",
    "chart_top": "top",
    "chart_left": "left",
    "chart_caps": "Capitals by visual angle, arcminutes",
    "chart_here": "this script",
    "noscript": "This page needs its script to move. The copy below is complete.",
    "not_saved": "not saved",
    # kinds of cues, as the crew's sheets name them
    "kind_pause": "pause",
    "kind_clip": "clip",
    "kind_live": "live",
    "kind_vision": "vision",
    "kind_graphic": "graphic",
    "kind_screen": "screen",
    "kind_prompter": "prompter",
    "kind_sound": "sound",
    "kind_lights": "lights",
    "kind_record": "record",
    "kind_note": "note",
    # what stands on keys
    "key_space": "Space",
    "key_enter": "Enter",
    "key_page_up": "Page up",
    "key_page_down": "Page down",
    "key_home": "Home",
    "key_end": "End",
    # words on buttons
    "short_toggle": "Hold / go",
    "short_previous": "Segment ←",
    "short_next": "Segment →",
    "short_faster": "Pace +",
    "short_slower": "Pace −",
    "short_take": "Start / end take",
    "short_save": "Save takes",
    "short_flip": "Flip",
    "short_mode": "Flowing / pages",
    "short_chart": "Chart",
    "short_light": "Light",
    "short_operator": "Operator",
    "short_help": "Keys",
    # what each key does, in the order of the help panel
    "do_toggle": "hold, release",
    "do_forward": "clicker forward: next page; flowing, hold or release",
    "do_back": "clicker back: page before; flowing, start of the segment",
    "do_next": "next segment",
    "do_previous": "segment before",
    "do_line_up": "one line back",
    "do_line_down": "one line on",
    "do_start": "to the start",
    "do_last": "to the last segment",
    "do_faster": "pace 2 % up",
    "do_slower": "pace 2 % down",
    "do_plan": "pace as planned",
    "do_take": "start a take, end it",
    "do_save": "save the takes as files",
    "do_flip": "next flip",
    "do_panels": "panels turn with the picture, or not",
    "do_mode": "flowing or page by page",
    "do_chart": "chart: flip, geometry, focus",
    "do_light": "dimmer, then bright again",
    "do_warm": "warmer, then neutral again",
    "do_rest": "rest the picture (dark), and back",
    "do_wait": "after guest parts: wait, or go on",
    "do_operator": "open the operator's window",
    "do_full": "fill the screen",
    "do_help": "this panel",
    "do_close": "close what is open",
}

READER = ("guest", "left", "said_as", "clip", "pause", "clap", "clap_take", "starts_in")
"""What stands in the reader's picture during a take; all else is the operator's and the crew's."""


@dataclass(frozen=True, slots=True)
class ScreenWords:
    """The page's words by name, and the language of those that the operator reads."""

    texts: Mapping[str, str]
    language: str


IN_ENGLISH = ScreenWords(ENGLISH, "en")


def screen_words(translator: Callable[[str], Callable[[str], str]], reader: str, operator: str) -> ScreenWords:
    """The words in the reader's and the operator's language; `translator` gives a language's texts."""
    to_reader, to_operator = translator(reader), translator(operator)
    said = {name: (to_reader if name in READER else to_operator)(text) for name, text in ENGLISH.items()}
    return ScreenWords(said, operator)

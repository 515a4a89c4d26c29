"""The public faces: values in, values out, with this machine's engines and the shipped data behind them."""

from promptprep.faces.learning import Learned, learn_reader
from promptprep.faces.rigs import sightlines, write_drawings
from promptprep.faces.scripts import (
    Report,
    check_scripts,
    load_scripts,
    prepare,
    read_script,
    studio_for,
    suggestions,
    template_folders,
    time_scripts,
)
from promptprep.faces.texts import break_text, check_text, difficulty, learn_pace, spoken_form, time_text
from promptprep.faces.tools import known_language, tools

__all__ = [
    "Learned",
    "Report",
    "break_text",
    "check_scripts",
    "check_text",
    "difficulty",
    "known_language",
    "learn_pace",
    "learn_reader",
    "load_scripts",
    "prepare",
    "read_script",
    "sightlines",
    "spoken_form",
    "studio_for",
    "suggestions",
    "template_folders",
    "time_scripts",
    "time_text",
    "tools",
    "write_drawings",
]

"""Figures of published studies that drawings and charts show by name, smallest first.

A studio's own limits do not move them. Those that are also limits (`data/limits.toml`) are held against it by
`tests/outside/`.
"""

GAZE_DEG = (1.2, 2.6)
"""Gaze limits about the lens: van Eijk et al. 2010 (1.2 across), Horstmann & Linke 2021 (cone of 5.2)."""
CAPS_ARCMIN = (16.0, 20.0, 22.0, 24.0, 31.0)
"""Least and preferred capital heights (ISO 9241-3 as reported: 16, 20 to 22; NUREG-0700: 24; ASR A6: 22 to 31)."""

"""The numbered cues of a script, as the renderings ask for them."""

from __future__ import annotations

from promptprep.model.session import NumberedCue
from promptprep.session.cue_points import numbered_cues

__all__ = ["NumberedCue", "numbered_cues"]

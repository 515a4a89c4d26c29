"""What can hurt someone at a rig, shown with its report."""

from __future__ import annotations

from collections.abc import Callable

from promptprep.model.rig import Reader, Rig

ALWAYS = (
    (
        "Load stands, heads and brackets only as far as their makers rate them, lock them before you let go, and "
        "weight stands down so that nobody can pull them over."
    ),
    "Lay cables flat and tape or cover them where people walk; keep mains and water apart.",
    "Local codes and licensed riggers and electricians have the last word; this list does not replace them.",
)
GLASS = (
    (
        "Use glass that is tempered or laminated and rated for its frame, cover its edges, carry it with two people "
        "and gloves, and keep everybody from under it while it is raised, lowered or tilted. Check the clamps daily."
    ),
    (
        "Glass and screen before the lens move the weight forward: set the counterweight again after every change, "
        "and hold the camera while you do it."
    ),
)
ABOVE = (
    (
        "This screen hangs over the glass: hang it from points that are rated for it, with a second, independent "
        "safety bond, and let a licensed rigger check it before anyone stands under it."
    ),
)
CLOSE = ("The mark is nearer than a metre to the screen: look away into the distance now and then, and rest the eyes.",)
GLASSES = (
    (
        "{name} wears glasses ({glasses}): check the mark's distance with them on, and look in the camera's picture "
        "for the screen and lamps in their lenses; a small tilt or a higher lamp takes them out. Lenses with several "
        "zones may force the chin up at the screen's distance."
    ),
)
NEAR_MM = 1000.0


def cautions(rig: Rig, reader: Reader | None = None, words: Callable[[str], str] = str) -> tuple[str, ...]:
    """Sentences for this rig: common practice, no source; makers' ratings and local codes go before them.

    `words` puts them into another language.
    """
    return (
        *(words(text) for text in ABOVE if rig.lies == "above"),
        *(words(text) for text in GLASS if rig.has_glass),
        *(words(text) for text in ALWAYS),
        *(words(text) for text in CLOSE if rig.optical_path_mm < NEAR_MM),
        *(
            words(text).format(name=reader.name, glasses=reader.glasses)
            for text in GLASSES
            if reader and reader.glasses
        ),
    )

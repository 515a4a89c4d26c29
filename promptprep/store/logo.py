"""The studio's logo, as the printed pages hold it."""

from __future__ import annotations

import io
from base64 import b64encode
from pathlib import Path

from promptprep.errors import UnreadableInput
from promptprep.model.rig import Studio

MAX_BYTES = 8_000_000
MAX_PIXELS = 50_000_000  # more does not open within sensible memory
KEPT_PX = (710, 142)  # 30 mm by 6 mm in a page's head at 600 dots an inch


def logo_url(studio: Studio) -> str:
    """The logo as a PNG data URL, "" where the studio names none. Raises `UnreadableInput` for a file that is
    missing, too large, or no picture."""
    if not studio.logo:
        return ""
    path = (Path(studio.file).parent if studio.file else Path()) / studio.logo
    return "data:image/png;base64," + b64encode(_png(_data(path), str(path))).decode("ascii")


def _data(path: Path) -> bytes:
    hint = "check the logo's name in studio.toml"
    try:
        if path.stat().st_size > MAX_BYTES:
            size = path.stat().st_size / 1e6
            raise UnreadableInput("logo-too-large", f"the logo has {size:.0f} MB", "save it smaller", str(path))
        return path.read_bytes()
    except FileNotFoundError:
        raise UnreadableInput("logo-missing", "there is no such logo", hint, str(path)) from None
    except OSError as fault:
        raise UnreadableInput("logo-missing", f"the logo cannot be read: {fault.strerror}", hint, str(path)) from None


def _png(data: bytes, file: str) -> bytes:
    """The picture, small enough to print, in a form without dates or names."""
    import warnings

    from PIL import Image

    hint = "save it anew as PNG or JPEG"
    try:
        with warnings.catch_warnings(action="ignore"), Image.open(io.BytesIO(data)) as picture:
            if picture.width * picture.height > MAX_PIXELS:
                message = f"the logo has {picture.width} by {picture.height} pixels"
                raise UnreadableInput("logo-too-large", message, "save it smaller", file)
            picture.load()
            small = picture.convert("RGBA")
    except (OSError, ValueError, SyntaxError, Image.DecompressionBombError):
        raise UnreadableInput("logo-broken", "the logo is no picture that opens here", hint, file) from None
    small.thumbnail(KEPT_PX)
    out = io.BytesIO()
    small.save(out, "PNG")
    return out.getvalue()

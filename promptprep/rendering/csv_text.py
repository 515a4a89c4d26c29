"""Tables as comma-separated values."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence


def csv_text(head: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """A table as RFC 4180 has it; cells that a spreadsheet would run as a formula are defused by an apostrophe."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(head)
    writer.writerows([_defused(cell) for cell in row] for row in rows)
    return out.getvalue()


def csv_file(text: str) -> bytes:
    """The table's bytes, with the mark by which spreadsheets know UTF-8."""
    return text.encode("utf-8-sig")


def _defused(cell: str) -> str:
    return "'" + cell if cell[:1] in ("=", "+", "-", "@", "\t", "\r") else cell

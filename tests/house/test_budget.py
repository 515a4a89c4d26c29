"""The size budget: about 300 lines a module and 40 a function; the median function stays small."""

from __future__ import annotations

import ast
import statistics
from pathlib import Path

import promptprep

ROOT = Path(promptprep.__file__).parent
MODULE_LINES = 320
FUNCTION_LINES = 45


def functions(path: Path) -> list[tuple[str, int]]:
    """(name, lines of body without its docstring) of each function in a file."""
    found = []
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            body = node.body[1:] if ast.get_docstring(node) else node.body
            lines = (body[-1].end_lineno or 0) - body[0].lineno + 1 if body else 0
            found.append((f"{path.relative_to(ROOT)}:{node.lineno} {node.name}", lines))
    return found


ALL = [f for path in sorted(ROOT.rglob("*.py")) for f in functions(path)]


def test_no_module_is_too_long() -> None:
    sizes = {str(p.relative_to(ROOT)): len(p.read_text("utf-8").splitlines()) for p in ROOT.rglob("*.py")}
    assert not {name: lines for name, lines in sizes.items() if lines > MODULE_LINES}


def test_no_function_is_too_long() -> None:
    assert not [f for f in ALL if f[1] > FUNCTION_LINES]


def test_the_median_function_is_small() -> None:
    assert statistics.median(lines for _, lines in ALL) <= 13

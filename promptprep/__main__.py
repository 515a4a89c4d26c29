"""`promptprep` and `python -m promptprep`: the command line, with the desk as one of its commands.

The two edges do not know each other; here alone they meet.
"""

from promptprep.cli.app import add, app, main
from promptprep.desk import command as desk

__all__ = ["app", "main"]

add(desk)

if __name__ == "__main__":
    main()

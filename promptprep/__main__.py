"""`python -m promptprep` is the command `promptprep`."""

from promptprep.cli.app import main

if __name__ == "__main__":
    main()

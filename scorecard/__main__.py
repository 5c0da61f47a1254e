"""Let ``python -m scorecard`` do what the ``scorecard`` command does."""

from scorecard.cli import main

if __name__ == "__main__":
    main()

"""The command line: parse, call, print. Every failure that is expected becomes a sentence and an exit status."""

from scorecard.cli.put_off import put_off_what_is_seldom_needed

__all__ = ["main"]


def main() -> None:
    """Run the command line."""
    put_off_what_is_seldom_needed()
    from scorecard.cli.app import main as run  # only now, since its libraries load what is put off

    run()

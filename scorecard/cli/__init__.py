"""The command line: parse, call, print. Every failure that is expected becomes a sentence and an exit status."""

from scorecard.cli.app import app, main

__all__ = ["app", "main"]

"""Countries of the sheet Makers: read exactly, since duty and holidays hang on them; what cannot be told is named."""

from collections.abc import Iterator

from scorecard.answers import MakerTable
from scorecard.codes import COUNTRIES, country_named, country_offered
from scorecard.errors import Problem
from scorecard.reading.cell_values import UNKNOWN_WORDS
from scorecard.reading.cells import quoted
from scorecard.reading.csv_spans import different

MOST_OFFERED = 50  # texts for which the country that may be meant is sought: each is held against every name


def countries_of(table: MakerTable) -> list[str | None]:
    """Return each maker's country code; None where it is blank or cannot be told: near misses are not guessed."""
    return [country_named(typed) if typed else None for typed in table.details.get("Country", ("",) * len(table))]


def unknown_countries(table: MakerTable) -> Iterator[Problem]:
    """Yield a warning for each country that cannot be told from what is typed, with the one that may be meant."""
    typed = table.details.get("Country", ())
    unknown = {
        text for text in different(typed) if text.strip().casefold() not in UNKNOWN_WORDS and not country_named(text)
    }
    if not unknown:
        return
    wanted = {text: _wanted(text, seek=at < MOST_OFFERED) for at, text in enumerate(sorted(unknown))}
    for at, text in enumerate(typed):
        if text in unknown:
            found = (
                f"{quoted(text)} is no country that the tool knows: goods from there are taken to cross a customs "
                "border, and only weekends count as free"
            )
            yield Problem(code="not-a-country", place=table.place(at, "Country"), found=found, wanted=wanted[text])


def _wanted(text: str, *, seek: bool) -> str:
    offered = country_offered(text) if seek else None
    meant = f"Write {offered} if {COUNTRIES[offered]} is meant" if offered else None
    return meant or "Write its name in English, or its two letters (ISO 3166-1), such as CN"

"""Holidays as sets of days, from the library ``holidays``, which is loaded once a calendar is asked for.

Enters: countries and a time. Leaves: a calendar for each, with what should be known of its data: future years are
thinner until a government has published them, days that hang on the moon are estimates, and parts of a country have
days of their own.
"""

import re
from collections.abc import Iterable, Mapping
from datetime import date
from functools import cache
from typing import Any

from scorecard.codes import COUNTRIES
from scorecard.scheduling.calendars import Calendar, Doubt
from scorecard.words import counted, listed

# Besides its public holidays, the collective leave that most makers take: seen in the library's data for 2026
FURTHER_CATEGORIES: Mapping[str, tuple[str, ...]] = {"ID": ("public", "government")}
YEARS_BEFORE, YEARS_AFTER = 1, 2
DAY_OF_MOON = re.compile(r"^\d+ of (?=Lunar New Year)")  # the last days of the old year, read as a date otherwise
LOOK_BACK = 3  # years before the first in which make-up days are looked for


def calendars_for(
    countries: Iterable[str], as_of: date, need_by: date | None, regions: Mapping[str, str]
) -> dict[str, Calendar]:
    """Return the calendar of each country round today and the day by which the pieces are needed.

    Parameters
    ----------
    countries : ISO 3166-1 alpha-2
    as_of, need_by : the years round both are looked up
    regions : ISO 3166-2 part of a country, without the country's letters, by country
    """
    years = years_of(as_of, need_by)
    return {country: calendar_of(country, years, regions.get(country)) for country in dict.fromkeys(countries)}


def years_of(as_of: date, need_by: date | None) -> tuple[int, ...]:
    """Return the years whose holidays may matter.

    Examples
    --------
    >>> years_of(date(2026, 11, 25), date(2027, 5, 14))
    (2025, 2026, 2027, 2028, 2029)
    """
    round_them = {as_of.year, (need_by or as_of).year}
    wide = {year + step for year in round_them for step in range(-YEARS_BEFORE, YEARS_AFTER + 1)}
    return tuple(sorted(year for year in wide if date.min.year <= year <= date.max.year))


def regions_of(country: str) -> tuple[str, ...]:
    """Return the parts of a country that have holidays of their own."""
    import holidays

    found = holidays.list_supported_countries(include_aliases=False).get(country, [])
    return tuple(str(region) for region in found)


@cache
def calendar_of(country: str, years: tuple[int, ...], region: str | None = None) -> Calendar:
    """Return the working days of one country in some years.

    Parameters
    ----------
    country : ISO 3166-1 alpha-2
    years : in order
    region : a part of it, as ``regions_of`` lists them; None for days of the whole country alone
    """
    looked_at = sorted({*years, *(years[0] - back for back in range(1, LOOK_BACK + 1) if years[0] > back)})
    try:
        found = _looked_up(country, looked_at, region)
    except NotImplementedError:
        text = f"no holidays are known for {COUNTRIES.get(country, country)}: only Saturdays and Sundays count as free"
        return Calendar(country=country, doubts=(Doubt(kind="no data", country=country, text=text),))
    wanted = {day: plain_name(str(name)) for day, name in sorted(found.items()) if day.year in years}
    makeup = frozenset(found.weekend_workdays)
    return Calendar(
        country=country,
        weekend=frozenset(found.weekend),
        holidays=wanted,
        makeup=makeup,
        years=frozenset(years),
        doubts=(*_doubts(country, years, wanted, makeup), *_of_parts(country, region)),
    )


def plain_name(name: str) -> str:
    """Return a holiday's name without what the library adds to say which day stands for which.

    Examples
    --------
    >>> plain_name("Labor Day (observed)"), plain_name("Day off (substituted from 02/14/2026)")
    ('Labor Day', 'day off in exchange')
    >>> plain_name("29 of Lunar New Year")
    'Lunar New Year'
    """
    if "(substituted from" in name:
        return "day off in exchange"
    return DAY_OF_MOON.sub("", name.replace(" (observed)", ""))


def _looked_up(country: str, years: Iterable[int], region: str | None) -> Any:
    """Return the library's holidays of a country, named in English where it can."""
    import holidays

    options: dict[str, Any] = {"years": years, "language": "en_US"}
    if country in FURTHER_CATEGORIES:
        options["categories"] = FURTHER_CATEGORIES[country]
    return holidays.country_holidays(country, subdiv=region, **options)


def _doubts(
    country: str, years: Iterable[int], holidays: Mapping[date, str], makeup: frozenset[date]
) -> Iterable[Doubt]:
    """Yield what should be known of each year."""
    name = COUNTRIES.get(country, country)
    for year in years:
        days = [(day, what) for day, what in holidays.items() if day.year == year]
        if not days:
            text = f"no holidays are known for {name} in {year}: only weekends count as free"
            yield Doubt(kind="no data", country=country, year=year, text=text)
        elif _lacks_makeup_days(year, makeup):
            text = (
                f"the holidays of {name} in {year} may be thin: the years before had working days to make up for long "
                f"holidays, and none is listed for {year}, so the official calendar is probably not in yet"
            )
            yield Doubt(kind="may be thin", country=country, year=year, text=text)
        guessed = tuple(day for day, what in days if "(estimated)" in what)
        if guessed:
            hang = "hangs on the moon and is" if len(guessed) == 1 else "hang on the moon and are"
            text = f"{counted(len(guessed), 'holiday')} of {name} in {year} {hang} estimated"
            yield Doubt(kind="estimated", country=country, year=year, text=text, days=guessed)


def _lacks_makeup_days(year: int, makeup: frozenset[date]) -> bool:
    """Say whether a year has no make-up day although three years in a row before it had some."""
    known = {day.year for day in makeup}
    before = [one for one in known if one < year]
    return year not in known and bool(before) and {max(before) - 1, max(before) - 2} <= known


def _of_parts(country: str, region: str | None) -> Iterable[Doubt]:
    """Yield that parts of a country have holidays that are not counted."""
    parts = () if region else regions_of(country)
    if parts:
        some = listed([*parts[:3], "others"] if len(parts) > 3 else parts)
        text = (
            f"holidays of parts of {COUNTRIES.get(country, country)} are not counted; name the part to count them, "
            f'such as {country} = "{parts[0]}" under [schedule.regions] ({some})'
        )
        yield Doubt(kind="parts of the country", country=country, text=text)

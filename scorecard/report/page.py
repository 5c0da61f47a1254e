"""The report as one HTML page: views make ready strings, the templates set them, one style sheet dresses them.

Enters: an assessment, its result, and when the page is made. Leaves: a page that needs no network and no other file,
and is whole without its script, with which weights are tried. Its content security policy allows the very style sheet
and script that it carries, by their hashes, and nothing else.
"""

import re
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import Any

from markupsafe import Markup

from scorecard.assessment import Assessment
from scorecard.calculation import Calculation
from scorecard.frozen import dataclass
from scorecard.harmless import environment
from scorecard.page_policy import worn
from scorecard.report.arithmetic import rules_of, workings_of
from scorecard.report.asking import contacts_of, questions_of, ruled_out_of
from scorecard.report.chances import chances_of
from scorecard.report.crossings import crossings_of
from scorecard.report.dealings import dealings_of
from scorecard.report.extent import ROOMS, Extent, Room, extent_of, most_bytes, ruled_out_makers
from scorecard.report.firm import firm_of
from scorecard.report.opening import opening_of
from scorecard.report.openness import openness_of
from scorecard.report.ranked import ranked_makers
from scorecard.report.receipts import receipts_of, weightless_sentence
from scorecard.report.sources import sources_of
from scorecard.report.stage import ordering_of
from scorecard.report.strips import strips_of
from scorecard.report.texts import bare, marked, presentable
from scorecard.report.trying import data_of, script
from scorecard.report.weights import consistency_sentence, how_to_change, weights_of
from scorecard.stage import costed_makers, open_makers
from scorecard.words import plain_command

HERE = Path(__file__).parent
OPTIONAL = re.compile(r"\s*</t(?:[dhr]|body|head|foot)>\s*")  # ends that HTML leaves out; a tenth of a page of tables


@dataclass(frozen=True, slots=True)
class Section:
    """A section of the page: its anchor, which also names its template, and its heading."""

    name: str
    heading: str


SECTIONS = (
    Section("verdict", "The verdict"),
    Section("ranking", "The ranking"),
    Section("lost", "Where points were lost"),
    Section("weights", "Weights to try"),
    Section("firm", "How firm the choice is"),
    Section("out", "Ruled out, and why"),
    Section("ask", "What to ask next"),
    Section("costs", "Costs and dates"),
    Section("arithmetic", "All the arithmetic"),
    Section("read", "What was read"),
)


def page(
    assessment: Assessment,
    result: dict[str, Any],
    *,
    made: datetime,
    with_contacts: bool = False,
    command: Callable[[str], str] = plain_command,
) -> str:
    """Return the report as one HTML page; the same assessment and time give the same bytes.

    Parameters
    ----------
    assessment : what ``assess`` returned
    result : its ``as_json()``
    made : when the page is made
    with_contacts : whether contact details and notes go onto the page
    command : from "reweigh rating=5" to what this user types for it
    """
    shown = presentable(assessment)
    reweigh, where = how_to_change(shown.case.criteria, command)
    costs = {"ordering": ordering_of(shown, costed_makers(assessment), open_makers(assessment))}
    ways = costs | {"sources": sources_of(shown, made, command), "reweigh": reweigh, "where_weights": where}
    html = ""
    for room in ROOMS:
        views = views_of(shown, result, extent_of(shown, room.cells), with_contacts=with_contacts)
        html = _set(views | _costs_and_dates(assessment, room) | ways)
        if len(html.encode()) <= most_bytes(len(shown.case.table)):
            break
    return html


def _costs_and_dates(assessment: Assessment, room: Room) -> dict[str, Any]:
    """Return the views of costs, sizes and dates: None, and nothing of them loaded, while there is nothing to say."""
    views: dict[str, Any] = dict.fromkeys(("landed", "quantities", "schedule"))
    if assessment.case.costed is not None:
        from scorecard.report.landed import landed_of
        from scorecard.report.quantities import quantities_of_page

        views |= {"landed": landed_of(assessment, room), "quantities": quantities_of_page(assessment)}
    if assessment.schedule is not None:
        from scorecard.report.schedule import schedule_of_page

        views["schedule"] = schedule_of_page(assessment, room)
    return views


def _remembered(result: dict[str, Any]) -> dict[str, Any]:
    """Return the views of earlier runs and of own orders: None, and nothing of them loaded, while there are none."""
    views: dict[str, Any] = dict.fromkeys(("since", "own"))
    if "since_last_time" in result:
        from scorecard.report.since import since_of

        views["since"] = since_of(result)
    if "own_orders" in result:
        from scorecard.report.remembering import own_of

        views["own"] = own_of(result)
    return views


def _set(views: dict[str, Any]) -> str:
    templates = environment(HERE)
    templates.filters |= {"marked": marked, "bare": bare}
    run = script()
    own = {
        **worn(HERE / "style.css", scripts=(run,)),
        "script": Markup(run),  # noqa: S704 - our own file
        "sections": SECTIONS,
    }
    return OPTIONAL.sub("", templates.get_template("page.html.jinja").render(own | views))


def views_of(
    calculation: Calculation, result: dict[str, Any], extent: Extent, *, with_contacts: bool
) -> dict[str, Any]:
    """Return what the templates set, by name: ready strings, no arithmetic left to do."""
    ranked, out = len(calculation.ranking.order), len(ruled_out_makers(calculation.ranking))
    return _remembered(result) | {
        "opening": opening_of(calculation),
        "ranked": ranked_makers(calculation, extent.ranked),
        "ranked_left": ranked - len(extent.ranked),
        "receipts": receipts_of(calculation, extent.detailed),
        "weightless": weightless_sentence(calculation),
        "receipts_left": ranked - len(extent.detailed),
        "weights": weights_of(calculation),
        "trying": data_of(calculation, extent),
        "consistency": consistency_sentence(calculation.case.criteria),
        "firm": firm_of(calculation),
        "chances": chances_of(calculation),
        "crossings": crossings_of(calculation),
        "strips": strips_of(calculation),
        "openness": openness_of(calculation),
        "ruled_out": ruled_out_of(calculation, result, extent.ruled_out),
        "ruled_out_left": out - len(extent.ruled_out),
        "questions": questions_of(calculation),
        "dealings": dealings_of(calculation),
        "contacts": contacts_of(calculation, extent.detailed) if with_contacts else [],
        "rules": rules_of(calculation),
        "workings": workings_of(calculation, (*extent.detailed, *extent.ruled_out_detailed)),
        "workings_left": ranked + out - len(extent.detailed) - len(extent.ruled_out_detailed),
    }

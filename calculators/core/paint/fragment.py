"""An answer as one piece of HTML: what stands between the result's heading and its end.

The page's worked example and the live answer are made by this one function; template and script add
nothing. The verdict comes first, then lists that are declared to, pictures, other lists, what is folded,
figures, lists that are declared to come last, and further notes.
"""

from calculators.core.declare import Spec
from calculators.core.origin import assumed_words
from calculators.core.paint.answer import downloads
from calculators.core.paint.answered_rows import answered_rows
from calculators.core.paint.cards import lists
from calculators.core.paint.element import NOTHING, Html, element, joined
from calculators.core.paint.figure_table import figure_table
from calculators.core.paint.folds import folds, in_view
from calculators.core.paint.lead_links import LeadLinks
from calculators.core.paint.note_list import after_the_figures, note_list
from calculators.core.paint.notes import lead, rest
from calculators.core.paint.to_log import to_log
from calculators.core.paint.worded_lists import worded_lists
from calculators.core.plot.plot_units import in_units
from calculators.core.plot.series_pictures import pictures
from calculators.core.quantity import RowsPlace
from calculators.core.run import Computed
from calculators.core.shown_units import System

ROOT = "../../"  # from a calculator's page to the site's root


def fragment(
    spec: Spec,
    computed: Computed,
    system: System = "metric",
    root: str = ROOT,
    *,
    leads_on: bool = True,
) -> Html:
    """The answer in the units shown; ``root`` leads from the page to the site's root.

    Without ``leads_on`` no figure is handed on to another calculator: an example's lead nowhere.
    """
    outputs = computed.answer["outputs"]
    leads = LeadLinks(spec, computed, root, filled=leads_on)
    drawn, listed = pictures(in_units(computed.series, system)), lists(spec, outputs, system, root)
    for place, more in worded_lists(spec, computed.answer, root).items():
        listed[place] += more
    return joined(
        [
            note_list("lead", lead(spec, computed), leads),
            to_log(spec, computed),
            assumed(assumed_words(computed.stood_in, system)),
            lists_in("first-lists", listed[RowsPlace.FIRST]),
            element("div", {"id": "plots"}, *in_view(drawn)),
            element("div", {"id": "lists"}, *listed[RowsPlace.AFTER]),
            folds(drawn, listed[RowsPlace.FOLDED]),
            figure_table(answered_rows(spec, computed.answer, system)),
            lists_in("last-lists", [*listed[RowsPlace.NEXT], *listed[RowsPlace.LAST]]),
            after_the_figures(rest(spec, computed), leads),
            files(spec, computed),
            leads.at_the_end(computed.notes),
        ]
    )


def lists_in(name: str, made: list[Html]) -> Html:
    """A place for lists, where there are any."""
    return element("div", {"id": name}, *made) if made else NOTHING


def assumed(words: str) -> Html:
    """What stood in for figures that were left empty, in one line."""
    return element("p", {"class": "assumed", "id": "assumed"}, words) if words else NOTHING


def files(spec: Spec, computed: Computed) -> Html:
    """A button for each output that is a file; it carries the text, and the page's script saves it."""
    buttons = [
        element(
            "button",
            {
                "type": "button",
                "data-file": file["file_name"],
                "data-type": file["media_type"],
                "data-text": file["text"],
            },
            f"Save: {file['label'].lower()}",
        )
        for file in downloads(spec, computed.answer["outputs"])
    ]
    return element("div", {"class": "after", "id": "files"}, *buttons) if buttons else NOTHING

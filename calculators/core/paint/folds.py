"""Pictures and lists behind headings that say the result: what is looked at now and then, not each time."""

from collections.abc import Iterable, Sequence

from calculators.core.paint.element import NOTHING, Html, element, joined
from calculators.core.plot.series_pictures import Picture, draw


def in_view(pictures: Iterable[Picture]) -> list[Html]:
    """The pictures that no series folds."""
    return [draw(one) for one in pictures if not fold_of(one)]


def folds(pictures: Iterable[Picture], lists: Sequence[Html] = ()) -> Html:
    """A fold for each heading, in the order of its first picture; the first one has ``lists`` on top."""
    gathered: dict[str, list[Html]] = {}
    for one in pictures:
        if fold_of(one):
            gathered.setdefault(fold_of(one), []).append(draw(one))
    if not gathered:
        return element("div", {}, *lists) if lists else NOTHING
    made = []
    for number, (heading, drawn) in enumerate(gathered.items(), start=1):
        made.append(fold(number, heading, [*lists, *drawn] if number == 1 else drawn))
    return joined(made)


def fold(number: int, heading: str, parts: Sequence[Html]) -> Html:
    """One fold; the page's script keeps it open by its id."""
    summary = element("summary", {}, heading)
    return element("details", {"class": "fold", "id": f"fold-{number}"}, summary, *parts)


def fold_of(picture: Picture) -> str:
    """The heading under which a picture is folded; empty where it is in view."""
    return next((curve.fold for curve in picture.curves if curve.fold), "")

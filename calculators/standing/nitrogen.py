"""Nitrogen in and out over the last 30 days, as a picture and as a sentence."""

from typing import Annotated

from calculators.core.figures import figure
from calculators.core.numbers import show_number
from calculators.core.quantities import ElementMass
from calculators.core.quantity import Digits
from calculators.core.result import Note, Series
from calculators.science.nitrogen.edges import LESS_GAS, MORE_GAS
from calculators.standing.nitrogen_month import NitrogenMonth

Nitrogen = Annotated[ElementMass, Digits(2)]  # cuttings are known within a factor of two
PICTURE = "Nitrogen in and out, added up"


def nitrogen_series(month: NitrogenMonth | None) -> dict[str, Series]:
    """What had come in, and what had gone out, by each day."""
    if month is None:
        return {}
    return {
        f"nitrogen_{short}": Series(
            label, "mg N", "Day", "today is 0", *month.added_up(into=short == "in"),
            picture=PICTURE, short=short, digits=2, x_digits=2,
        )
        for short, label in (("in", "Come in"), ("out", "Gone out"))
    }  # fmt: skip


def nitrogen_heading(month: NitrogenMonth | None) -> str:
    """What came in and what went out, in one line."""
    if month is None:
        return ""
    (*_, came), (*_, gone) = (month.added_up(into=into)[1] for into in (True, False))
    ends = f"{figure(Nitrogen, came)} mg in, {figure(Nitrogen, gone)} mg out"
    return f"Nitrogen of the last {show_number(month.days, 2)} days: {ends}"


def nitrogen_note(month: NitrogenMonth | None) -> list[Note]:
    """The flows in words, the largest doubt beside them."""
    if month is None:
        return []
    said = {
        "feed": month.fed_day * month.days,
        **{way: month.total(way) for way in ("new water", "plants", "cuttings", "changes")},
    }
    came, went = (
        ", ".join(f"{words} {figure(Nitrogen, said[way])}" for way, words in ways if said[way])
        for ways in (
            (("feed", "feed"), ("new water", "new water"), ("plants", "plants put in")),
            (("cuttings", "plants cut or taken out"), ("changes", "changes of water")),
        )
    )
    gas = month.gas_day * month.days
    low, high = (figure(Nitrogen, times * gas) for times in (LESS_GAS, MORE_GAS))
    soil = f" The soil lost perhaps {figure(Nitrogen, gas)} as gas, {low} to {high}." if gas else ""
    missing = f" Not counted: {'; '.join(month.not_counted)}." if month.not_counted else ""
    text = (
        f"Nitrogen of the last {show_number(month.days, 2)} days, in mg. In: {came or 'none'}. "
        f"Out: {went or 'none'}.{soil} What plants held is right within a factor of two; what did not "
        f"go out is in plants, animals, soil and water.{missing}"
    )
    return [Note("info", text)]

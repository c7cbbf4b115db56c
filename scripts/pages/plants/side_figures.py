"""Rows of the comparison: needs on shared scales, growth, nitrogen, the law."""

from collections.abc import Callable
from typing import Any

from markupsafe import Markup

from calculators.core import quantities as q
from scripts.pages.plants.side_by_side import UNKNOWN, Cell, Desk, Row
from scripts.pages.plants.side_parts import figure, mark, said, size_classes, text
from scripts.pages.ranges import SCALES, Scale, bar
from scripts.records.claim import Range
from scripts.records.law import listings


def need(scale: Scale) -> Row:
    """A need as a bar; the scale is the same for every plant of the book."""

    def cell(desk: Desk) -> Cell:
        place = desk.plant.size if scale.key == "height_cm" else desk.plant.needs
        claim: Range | None = getattr(place, scale.key)
        if claim is None:
            return Cell(UNKNOWN)
        made = bar(scale, claim)
        html = Markup("{}<b>{}</b> {}").format(made.picture, made.words, mark(claim, desk))
        return Cell(html, size_classes(claim.low, claim.high))

    label = "Height" if scale.key == "height_cm" else scale.quantity.__metadata__[0].label
    return Row("What it needs", scale.key, label, cell)


def plain(group: str, key: str, label: str, quantity: Any, place: Callable[[Desk], Any]) -> Row:
    """A range without a bar."""
    return Row(group, key, label, lambda desk: figure(quantity, place(desk), desk))


def weak_light(desk: Desk) -> Cell:
    """What weak light does to it."""
    claim = desk.plant.growth.in_weak_light
    return Cell(UNKNOWN) if claim is None else said(claim, desk)


def role(desk: Desk) -> Cell:
    """Its part in the nitrogen balance."""
    claim = desk.plant.nitrogen.role
    label = text(desk.words["nitrogen_role"][claim.value]["label"])
    html = Markup('<span class="tag">{}</span> {}').format(label, mark(claim, desk))
    return Cell(html, (claim.value,))


def uptake(desk: Desk) -> Cell:
    """Where it takes its nutrients."""
    claim = desk.plant.nitrogen.uptake
    label = text(desk.words["uptake"][claim.value]["label"])
    return Cell(label + " " + mark(claim, desk), (claim.value,))


def law(desk: Desk) -> Cell:
    """The lists that name it, or that we found it on none."""
    found = listings(desk.plant, desk.rules)
    if not found:
        return Cell(
            text("On none of the lists that we read. The authority’s word is final."), ("none",)
        )
    lines = Markup("").join(
        Markup('<li><b class="law-mark">{}</b>: {}</li>').format(
            text(desk.words["place"][one.rule.place]["label"]), text(one.rule.short_effect)
        )
        for one in found
    )
    return Cell(Markup("<ul>{}</ul>").format(lines), tuple(one.slug for one in found))


FIGURES: tuple[Row, ...] = (
    *(need(scale) for scale in SCALES),
    plain("Growth and work", "doubling", "Doubles in", q.DoublingTime,
          lambda desk: desk.plant.growth.doubling_days),
    plain("Growth and work", "trim_every", "Trimmed every", q.Interval,
          lambda desk: desk.plant.growth.trim_every_days),
    plain("Growth and work", "trim_minutes", "Minutes a trim", q.Minutes,
          lambda desk: desk.plant.growth.trim_minutes),
    Row("Growth and work", "weak_light", "In weak light", weak_light),
    Row("Nitrogen", "role", "Part in the balance", role),
    Row("Nitrogen", "uptake", "Takes it up", uptake),
    plain("Nitrogen", "tissue_n", "Tissue nitrogen", q.TissueNitrogen,
          lambda desk: desk.plant.nitrogen.tissue_n_percent),
    plain("Nitrogen", "dry_matter", "Dry matter", q.DryMatter,
          lambda desk: desk.plant.nitrogen.dry_matter_percent),
    Row("The law", "law", "Restricted in", law),
)  # fmt: skip

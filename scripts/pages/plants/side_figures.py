"""Rows of the comparison: needs on shared scales, growth, nitrogen, the law."""

from collections.abc import Callable
from typing import Any

from markupsafe import Markup

from calculators.core import quantities as q
from calculators.core.wording import upper
from calculators.science.law.restricted import place_in_words
from scripts.pages.plants.side_by_side import UNKNOWN, Cell, ComparedPlant, ComparisonRow
from scripts.pages.plants.side_parts import claim_html, figure, mark, size_classes, text
from scripts.pages.ranges import SCALES, BarScale, bar
from scripts.records.claim import Range
from scripts.records.law_matches import Listing, listings, restricted_at


def need(scale: BarScale) -> ComparisonRow:
    """A need as a bar; the scale is the same for every plant of the book."""

    def cell(plant_shown: ComparedPlant) -> Cell:
        place = plant_shown.plant.size if scale.key == "height_cm" else plant_shown.plant.needs
        claim: Range | None = getattr(place, scale.key)
        if claim is None:
            return Cell(UNKNOWN)
        made = bar(scale, claim)
        html = Markup("{}<b>{}</b>&nbsp;{}").format(
            made.picture, made.words, mark(claim, plant_shown)
        )
        return Cell(html, size_classes(claim.low, claim.high))

    label = "Height" if scale.key == "height_cm" else scale.quantity.__metadata__[0].label
    return ComparisonRow("What it needs", scale.key, label, cell)


def plain(
    group: str, key: str, label: str, quantity: Any, place: Callable[[ComparedPlant], Any]
) -> ComparisonRow:
    """A range without a bar."""
    return ComparisonRow(
        group, key, label, lambda plant_shown: figure(quantity, place(plant_shown), plant_shown)
    )


def nitrogen_range(plant_shown: ComparedPlant, key: str) -> Range | None:
    """A figure of the part on nitrogen; a plant that nobody shall grow may have no such part."""
    claim: Range | None = getattr(plant_shown.plant.nitrogen, key, None)
    return claim


def weak_light(plant_shown: ComparedPlant) -> Cell:
    """What weak light does to it."""
    claim = plant_shown.plant.growth.in_weak_light
    return Cell(UNKNOWN) if claim is None else claim_html(claim, plant_shown)


def role(plant_shown: ComparedPlant) -> Cell:
    """Its part in the nitrogen balance."""
    nitrogen = plant_shown.plant.nitrogen
    if nitrogen is None:
        return Cell(UNKNOWN)
    claim = nitrogen.role
    label = text(plant_shown.words["nitrogen_role"][claim.value]["label"])
    html = Markup('<span class="tag">{}</span>&nbsp;{}').format(label, mark(claim, plant_shown))
    return Cell(html, (claim.value,))


def uptake(plant_shown: ComparedPlant) -> Cell:
    """Where it takes its nutrients."""
    nitrogen = plant_shown.plant.nitrogen
    if nitrogen is None:
        return Cell(UNKNOWN)
    claim = nitrogen.uptake
    label = text(plant_shown.words["uptake"][claim.value]["label"])
    return Cell(label + Markup("&nbsp;") + mark(claim, plant_shown), (claim.value,))


def basis(plant_shown: ComparedPlant, listing: Listing) -> Markup:
    """How we know an entry, where it was not read in the law's own text."""
    how = listing.entry.basis
    if how == "read-in-text":
        return Markup("")
    return Markup(" ({})").format(text(plant_shown.words["basis"][how]["label"]))


def law(plant_shown: ComparedPlant) -> Cell:
    """The lists that name it, or that we found it on none."""
    listed = listings(plant_shown.plant, plant_shown.rules)
    if not listed:
        return Cell(
            text("On none of the lists that we read. The authority’s word is final."), ("none",)
        )
    lines = Markup("").join(
        Markup('<li><b class="law-mark">{}</b>: {}{}</li>').format(
            text(upper(place_in_words(restricted_at(listing)))),
            text(listing.rule.short_effect),
            basis(plant_shown, listing),
        )
        for listing in listed
    )
    lists = " ".join(listing.slug for listing in listed)  # one word: more lists are another law
    return Cell(Markup("<ul>{}</ul>").format(lines), (lists,))


FIGURES: tuple[ComparisonRow, ...] = (
    *(need(scale) for scale in SCALES),
    plain("Growth and work", "doubling", "Doubles in", q.DoublingTime,
          lambda plant_shown: plant_shown.plant.growth.doubling_days),
    plain("Growth and work", "trim_every", "Trimmed every", q.Interval,
          lambda plant_shown: plant_shown.plant.growth.trim_every_days),
    plain("Growth and work", "trim_minutes", "Minutes a trim", q.Minutes,
          lambda plant_shown: plant_shown.plant.growth.trim_minutes),
    ComparisonRow("Growth and work", "weak_light", "In weak light", weak_light),
    ComparisonRow("Nitrogen", "role", "Part in the balance", role),
    ComparisonRow("Nitrogen", "uptake", "Takes it up", uptake),
    plain("Nitrogen", "tissue_n", "Tissue nitrogen", q.TissueNitrogen,
          lambda plant_shown: nitrogen_range(plant_shown, "tissue_n_percent")),
    plain("Nitrogen", "dry_matter", "Dry matter", q.DryMatter,
          lambda plant_shown: nitrogen_range(plant_shown, "dry_matter_percent")),
    ComparisonRow("The law", "law", "Restricted in", law),
)  # fmt: skip

"""The drawing to start a diagnosis from: a planted tank in cross-section, each place a link.

1 unit is about 1 px on a phone of 390 px, so that a place of 48 units is wide enough for a thumb.
"""

from collections.abc import Mapping
from html import escape
from typing import NamedTuple

WIDTH, HEIGHT = 360, 400
LEFT, RIGHT, RIM, SURFACE, CAP, SOIL, FLOOR = 8, 352, 26, 58, 318, 334, 392
STEM_X, ROSETTE_X, FOOT = 236, 96, 320


class TapPlace(NamedTuple):
    """Where one taps, and where its name stands: left, top, width, height; middle of the name."""

    area: tuple[int, int, int, int]
    name: tuple[int, int]


# No two areas overlap, and none is less than 48 units wide or high.
PLACES = {
    "surface": TapPlace((10, 28, 174, 60), (58, 40)),
    "new-leaves": TapPlace((186, 60, 100, 84), (236, 74)),
    "water": TapPlace((126, 90, 58, 96), (155, 138)),
    "animals": TapPlace((10, 90, 114, 96), (86, 170)),
    "stem": TapPlace((186, 146, 100, 76), (210, 184)),
    "old-leaves": TapPlace((186, 224, 100, 92), (236, 306)),
    "whole-plant": TapPlace((10, 188, 174, 128), (96, 202)),
    "coating": TapPlace((288, 60, 62, 256), (320, 150)),
    "roots": TapPlace((10, 318, 340, 72), (166, 376)),
}
SHORT = {"coating": "algae"}  # coats of every kind; what keepers call them


def places_drawing(labels: Mapping[str, str], address: str) -> str:
    """The drawing as SVG; ``labels`` by place, ``address`` is what a place's key goes behind."""
    links = "".join(link(where, labels[where], f"{address}{where}") for where in PLACES)
    return (
        f'<svg class="drawing places" viewBox="0 0 {WIDTH} {HEIGHT}" role="group" '
        f'aria-label="A planted tank from the side. Tap where it looks wrong.">'
        f"{tank()}{stem_plant()}{rosette()}{floaters()}{animals()}{stone()}{panes()}{links}</svg>"
    )


def link(where: str, label: str, address: str) -> str:
    """One place to tap, with its name on it."""
    (left, top, width, height), (x, y) = PLACES[where]
    words = SHORT.get(where, label)
    words = words[:1].upper() + words[1:]
    spoken = f"{words}: {label}" if where in SHORT else words
    wide = 7.7 * len(words) + 14
    return (
        f'<a class="place" href="{escape(address)}" data-place="{escape(where)}" '
        f'aria-label="{escape(spoken)}">'
        f'<rect class="reach" x="{left}" y="{top}" width="{width}" height="{height}" rx="8"/>'
        f'<rect class="plate" x="{x - wide / 2:.1f}" y="{y - 11}" width="{wide:.1f}" height="22" rx="11"/>'
        f'<text class="mid" x="{x}" y="{y + 4}">{escape(words)}</text></a>'
    )


def tank() -> str:
    """Water, cap and soil."""
    wide = RIGHT - LEFT
    return (
        f'<rect class="d-water" x="{LEFT}" y="{SURFACE}" width="{wide}" height="{CAP - SURFACE}"/>'
        f'<rect class="d-cap" x="{LEFT}" y="{CAP}" width="{wide}" height="{SOIL - CAP}"/>'
        f'<rect class="d-soil" x="{LEFT}" y="{SOIL}" width="{wide}" height="{FLOOR - SOIL}"/>'
        f'<path class="d-surface" d="M{LEFT} {SURFACE}H{RIGHT}"/>'
    )


def panes() -> str:
    """The panes, with a green coat on the right one."""
    dots = "".join(
        f'<circle class="d-patch" cx="{344 - 5 * (n % 2)}" cy="{84 + 17 * n}" r="{2.2 + n % 3}"/>'
        for n in range(12)
    )
    return (
        f'<g class="leaf-dark-green">{dots}</g>'
        f'<path class="d-glass" d="M{LEFT} {RIM}V{FLOOR}H{RIGHT}V{RIM}"/>'
    )


def leaf(x: float, y: float, turn: float, long: float, wide: float) -> str:
    """One leaf from its foot, turned clockwise from upright."""
    half = wide / 2
    return (
        f'<g transform="translate({x:.1f} {y:.1f}) rotate({turn:.0f})">'
        f'<path class="d-blade" d="M0 0C{half:.1f} {-long * 0.3:.1f} {half:.1f} {-long * 0.75:.1f} '
        f"0 {-long:.1f}C{-half:.1f} {-long * 0.75:.1f} {-half:.1f} {-long * 0.3:.1f} 0 0Z"
        f'"/><path class="d-rib" d="M0 0V{-long * 0.85:.1f}"/></g>'
    )


def stem_plant() -> str:
    """A stem with pairs of leaves: yellowing below, green above, small and pale at the tip."""
    parts = [
        f'<g class="leaf-green"><path class="d-stem" stroke-width="4" d="M{STEM_X} {FOOT}V96"/></g>'
    ]
    for n in range(10):
        y = 302 - 22 * n
        colour = "yellow-green" if n < 3 else "green" if n < 7 else "pale-green"
        long, wide = (44, 17) if n < 7 else (40 - 8 * (n - 6), 15 - 2 * (n - 6))
        droop = 88 if n < 3 else 62 if n < 7 else 44
        pair = leaf(STEM_X, y, droop, long, wide) + leaf(STEM_X, y, -droop, long, wide)
        parts.append(f'<g class="leaf-{colour}">{pair}</g>')
    tip = leaf(STEM_X, 100, 14, 18, 8) + leaf(STEM_X, 100, -14, 18, 8)
    parts.append(f'<g class="leaf-pale-green">{tip}</g>{roots(STEM_X)}')
    return "".join(parts)


def rosette() -> str:
    """A rosette, its outer leaves flat."""
    turns = ((-72, 78), (72, 78), (-48, 92), (48, 92), (-24, 98), (24, 98), (0, 88))
    blades = "".join(leaf(ROSETTE_X, FOOT, turn, long, 22) for turn, long in turns)
    return f'<g class="leaf-dark-green">{blades}</g>{roots(ROSETTE_X)}'


def roots(x: int) -> str:
    """Roots through the cap into the soil."""
    lines = "".join(f"M{x} {FOOT}q{reach * 0.3:.0f} 18 {reach} {deep}" for reach, deep in ROOTS)
    return f'<path class="d-root" d="{lines}"/>'


ROOTS = ((-38, 42), (-20, 54), (-6, 60), (10, 56), (24, 50), (40, 40))


def floaters() -> str:
    """Three floating rosettes with hanging roots."""
    parts = []
    for x in (112, 146, 28):
        hanging = "".join(f"M{x} {SURFACE}q{way} 12 {way * 2} 26" for way in (-4, -1, 2, 5))
        pads = "".join(leaf(x, SURFACE, turn, 19, 11) for turn in (-78, 78, -34, 34))
        parts.append(f'<path class="d-root d-fine" d="{hanging}"/><g class="leaf-green">{pads}</g>')
    return "".join(parts)


def animals() -> str:
    """Two fish and a shrimp."""
    fish = "".join(
        f'<path class="d-blade" d="M{x} {y}c10 -11 28 -11 38 0c-10 11 -28 11 -38 0l-12 -8v16z"/>'
        f'<circle class="d-rib" cx="{x + 29}" cy="{y - 2}" r="1.5"/>'
        for x, y in ((34, 112), (62, 140))
    )
    shrimp = (
        '<path class="d-blade" d="M16 172c1 -9 13 -11 20 -4l5 -3l-3 6c-3 4 -6 5 -8 5l-3 3v-3l-4 2v-3'
        'l-4 2v-3z"/><path class="d-rib" d="M40 166q6 -6 9 -3M40 167q7 -1 10 3"/>'
    )
    return f'<g class="leaf-bronze">{fish}</g><g class="leaf-red">{shrimp}</g>'


def stone() -> str:
    """A stone with tufts on it."""
    tufts = "".join(
        f"M{x} {y}l-4 -9M{x} {y}v-11M{x} {y}l4 -9" for x, y in ((304, 290), (318, 284), (332, 290))
    )
    return (
        '<path class="d-stone" d="M292 320c-2 -24 14 -37 28 -36c18 0 30 16 28 36z"/>'
        f'<g class="leaf-dark-green"><path class="d-stem" stroke-width="2" d="{tufts}"/></g>'
    )

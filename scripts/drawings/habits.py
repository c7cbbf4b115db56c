"""Which routine draws which kind of plant, and what it stands on."""

from collections.abc import Callable
from typing import NamedTuple, get_args

from scripts.drawings import epiphytes, floating, low, marginals, mosses, rosettes, stems
from scripts.drawings.scene import Item, Shape, Symbols
from scripts.drawings.size import Subject, TankFrame
from scripts.records.traits import Draw

Routine = Callable[[Subject, TankFrame, Symbols], list[Item]]

ROUTINES: dict[Draw, Routine] = {
    "stem": stems.stem,
    "creeping-stem": low.creeping,
    "rootless-stem": stems.rootless,
    "rosette": rosettes.rosette,
    "grass": rosettes.grass,
    "carpet": low.carpet,
    "epiphyte": epiphytes.epiphyte,
    "moss": mosses.moss,
    "thallus": mosses.thallus,
    "floating-rosette": floating.floating_rosette,
    "floating-stem": floating.floating_stem,
    "floating-frond": floating.floating_frond,
    "marginal": marginals.marginal,
}
FLOATING = tuple(kind for kind in get_args(Draw) if kind.startswith("floating"))


class Ground(NamedTuple):
    """Height of a plant's base above the cap, mm, and what it holds on to."""

    height: float = 0.0
    supports: tuple[Shape, ...] = ()


def ground(s: Subject, f: TankFrame) -> Ground:
    """Where the plant stands, hangs or floats."""
    kind = s.traits.draw
    on_stone = kind == "moss" or (kind == "thallus" and s.plant.habit != "floater")
    if on_stone:
        half = mosses.moss_half(s)
        high = max(mosses.STONE_MM, half * 0.3)
        return Ground(high, (Shape("stone", (mosses.stone(half, high),)),))
    if kind == "epiphyte":
        half = min(max(s.spread * 0.32, 45.0), 130.0)
        return Ground(
            epiphytes.WOOD_MM, (Shape("wood", (epiphytes.wood(half, epiphytes.WOOD_MM),)),)
        )
    if kind in FLOATING or kind == "thallus":
        return Ground(f.surface)
    if kind == "marginal" and s.plant.roots != "in-soil":
        return Ground(f.surface)
    return Ground()


def drawn(s: Subject, f: TankFrame, symbols: Symbols) -> tuple[list[Item], Ground]:
    """The plant with its base at the origin, and the ground under it."""
    base = ground(s, f)
    afloat = base.height == f.surface
    room = f if afloat else f._replace(soil=f.soil + base.height)
    return ROUTINES[s.traits.draw](s, room, symbols), base

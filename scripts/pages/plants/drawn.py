"""The drawings of plants: each is made once, however many pages and builds show it.

What draws is imported only where something has to be drawn, which is seldom: it takes longer than a page.
"""

from pkgutil import resolve_name

from scripts.records.plant import Plant
from scripts.setup.kept import kept

# All that a drawing, or what is said of it, reads of a record.
DRAWN_OF = ("name", "habit", "roots", "size", "traits")


def in_tank(slug: str, plant: Plant) -> str | None:
    """The plant from the side in a tank. None without traits."""
    return drawn_once("draw:drawing", slug, plant)


def from_above(slug: str, plant: Plant) -> str | None:
    """The plant on the water. None for one that does not float, or has no traits."""
    return drawn_once("above:above", slug, plant)


def close_up(slug: str, plant: Plant) -> str | None:
    """The part that tells it from its look-alikes. None without traits."""
    return drawn_once("closeup:closeup", slug, plant)


def close_up_words(slug: str, plant: Plant) -> str | None:
    """What the close-up shows, in words. None without traits."""
    return drawn_once("closeup:shown", slug, plant)


def drawn_once(maker: str, slug: str, plant: Plant) -> str | None:
    """What ``maker``, as ``module:function`` of the drawings, makes of a plant: one ``<svg>``, or words.
    None where it makes nothing.
    """
    read = (repr(getattr(plant, field)) for field in DRAWN_OF)
    return kept(maker, "\0".join([slug, *read]), lambda: drawn(maker, slug, plant)) or None


def drawn(maker: str, slug: str, plant: Plant) -> str:
    """The same, made now; empty where it makes nothing."""
    return resolve_name(f"scripts.drawings.{maker}")(slug, plant) or ""

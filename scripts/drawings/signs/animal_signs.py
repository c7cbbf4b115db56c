"""Signs of animals: how they breathe and lie, and which small ones there are."""

from scripts.drawings.signs.sign_parts import bubbles, dots, grown, leaf, path, tank

FISH = "M0 0c7 -8 19 -8 26 0c-7 8 -19 8 -26 0l-8 -6v12z"
SHRIMP = "M0 6c1 -9 13 -11 20 -4l5 -3l-3 6c-3 4 -6 5 -8 5l-3 3v-3l-4 2v-3l-4 2v-3z"
FEELERS = "M24 1q5 -7 9 -5M24 2q7 -3 10 1"


def fish(x: float, y: float, turn: float = 0, *, gill: str = "") -> str:
    """A fish that looks to the right; ``gill`` colours its gill cover."""
    eye = dots(((20, -2),), 1.3, fill="ink")
    cover = path("M14 -5q5 5 0 10", fill=gill, stroke=gill or "soft", width=2 if gill else 1)
    return f'<g transform="translate({x:g} {y:g}) rotate({turn:g})">{grown(FISH, "bronze")}{cover}{eye}</g>'


def shrimp(x: float, y: float, turn: float = 0, colour: str = "red") -> str:
    """A shrimp that looks to the right."""
    made = grown(SHRIMP, colour) + path(FEELERS, stroke=f"{colour}-edge")
    return f'<g transform="translate({x:g} {y:g}) rotate({turn:g})">{made}</g>'


def snail(x: float, y: float, *, pits: bool = False) -> str:
    """A snail on its foot."""
    shell = dots(((9, -7),), 7, fill="pale-green" if pits else "bark", stroke="brown-edge")
    turns = path("M9 -7a3 3 0 1 1 4 3a5 5 0 1 1 -9 -5", stroke="brown-edge")
    foot = path("M0 0q10 3 20 0q3 -3 1 -7l-3 4h-18z", fill="root", stroke="brown-edge")
    holes = (
        dots(((5, -10), (12, -4), (13, -11)), 1.8, fill="card", stroke="brown-edge") if pits else ""
    )
    return f'<g transform="translate({x:g} {y:g})">{foot}{shell}{turns}{holes}</g>'


def breath() -> dict[str, str]:
    """Breathing and bearing."""
    up = fish(17, 37, -52)
    darts = path("M4 22h6M3 29h8M4 36h6", stroke="soft", width=1.6)
    fallen = f'<g transform="translate(36 44) rotate(180)">{grown(SHRIMP, "red")}</g>'
    moon = path("M40 3a6 6 0 1 0 5 8a5 5 0 0 1 -5 -8z", fill="soft")
    sun = dots(((40, 8),), 3.4, fill="yellow-green") + path(
        "M40 1v2M40 13v2M33 8h2M45 8h2", stroke="soft"
    )
    return {
        "fish-gasping": tank("water", up, bubbles((38, 12), (42, 8))),
        "gasp-before-dawn-only": tank("water", up, moon),
        "gasp-all-day": tank("water", up, sun),
        "fish-dart-or-clamp": tank("water", darts, fish(18, 32, -12)),
        "fish-listless": tank("water", fish(14, 38, 10)),
        "gills-red": tank("water", fish(12, 31, gill="red")),
        "gills-brown": tank("water", fish(12, 31, gill="brown")),
        "animals-dying": tank("water", fish(37, 40, 180), fish(39, 25, 168)),
        "shrimp-in-distress": tank(
            "water", shrimp(24, 40, -62), path("M8 20v20M5 24l3 -4l3 4", stroke="soft", width=1.6)
        ),
        "only-invertebrates-die": tank("water", fish(14, 24), fallen),
        "animal-missing": tank(
            "water",
            path("M14 31c7 -8 19 -8 26 0c-7 8 -19 8 -26 0l-8 -6v12z", stroke="soft", dashes="3 2"),
        ),
        "moult-trouble": tank(
            "water", shrimp(8, 36, 0, "pink"), path("M22 33v12", stroke="ink", width=1.6)
        ),
    }


def small_ones() -> dict[str, str]:
    """Snails, worms, polyps, and who eats plants."""
    worm = "M6 40q8 -8 14 -4t16 -20l-5 0l9 -8l3 11l-3 -2q-4 20 -14 23t-20 0z"
    arms = "M24 24q-8 -2 -12 -14M24 24q-4 -6 -4 -18M24 24q4 -6 5 -18M24 24q8 -2 13 -13"
    hop = dots(((10, 34), (20, 40), (30, 32), (39, 38), (24, 26)), 1.6, fill="ink")
    return {
        "snail-shells-pitted": f'<g transform="translate(4 42) scale(2)">{snail(0, 0, pits=True)}</g>',
        "snails-many": snail(3, 16) + snail(24, 22) + snail(5, 44) + snail(26, 45),
        "plant-eater-kept": grown(leaf(38, 46, -6, 34, 0.4), "green")
        + dots(((30, 26), (33, 20)), 4, fill="card")
        + fish(9, 30, -14),
        "flat-worms-arrow-head": path(worm, fill="root", stroke="brown-edge")
        + dots(((38, 13), (41, 14)), 0.9, fill="ink"),
        "polyps-with-arms": path("M10 46H38", stroke="soft", width=1.6)
        + path("M24 46V24", stroke="pale-green-edge", width=4)
        + path(arms, stroke="pale-green-edge", width=1.6),
        "thin-worms-wriggle": path(
            "M8 40q4 -10 8 -4t8 -4t8 -4M20 16q4 -8 8 -2t8 -4M6 20q4 6 8 0", stroke="soft", width=1.4
        ),
        "specks-that-hop": hop
        + path("M10 32q5 -10 10 6M30 30q5 -10 9 6", stroke="soft", dashes="1 2"),
    }

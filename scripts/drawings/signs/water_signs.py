"""Signs of the water and its surface, and coats on leaf, glass and wood."""

from scripts.drawings.signs.sign_parts import dots, grown, leaf, path, stem, tank
from scripts.drawings.thumbnail import disc

SPECKS = tuple((6.0 + 4.1 * i, 15.0 - 2 * (i % 2)) for i in range(10))
CLOUD = tuple(
    (9.0 + 6 * (i % 6) - 2 * (i // 6 % 2), 22.0 + 7.5 * (i // 6) + 3 * (i % 2)) for i in range(18)
)
PANE = "M5 3H43V45H5z"


def floaters(colour: str, count: int = 3, *, long: float = 9, hang: float = 8) -> str:
    """Rosettes on the water with hanging roots."""
    places = [8 + 32 * i / max(count - 1, 1) for i in range(count)]
    hanging = "".join(
        f"M{x:g} 17q-1 {hang / 2:g} 1 {hang:g}M{x + 2:g} 17q1 {hang / 2:g} 0 {hang:g}"
        for x in places
    )
    pads = "".join(leaf(x, 17, turn, long, 0.5) for x in places for turn in (-70, 0, 70))
    return path(hanging, stroke="root") + grown(pads, colour)


def surface() -> dict[str, str]:
    """On top of the water."""
    still = path("M8 11H40", stroke="soft", opacity=0.6)
    return {
        "floaters-small-pale": tank("water", floaters("pale-green", 4, long=5)),
        "floaters-long-roots": tank("water", floaters("green", 2, hang=25)),
        "floaters-lush": tank("water", floaters("dark-green", 4, long=10)),
        "floaters-brown-wet-centre": tank(
            "water", floaters("green"), dots(((8, 16), (24, 16), (40, 16)), 3, fill="brown")
        ),
        "lid-drips": tank(
            "water",
            path("M4 5H44", stroke="soft", width=2),
            path(
                "M12 8q-3 5 0 6q3 -1 0 -6zM24 9q-3 5 0 6q3 -1 0 -6zM36 8q-3 5 0 6q3 -1 0 -6z",
                fill="water-line",
            ),
            top=24,
        ),
        "floaters-pushed-about": tank(
            "water",
            grown("".join(leaf(x, 18, t, 8, 0.5) for x in (32, 39) for t in (-60, 0, 60)), "green"),
            path("M6 24h18M19 20l6 4l-6 4", stroke="soft", width=1.6),
        ),
        "insects-on-floaters": grown(disc((24, 34), 20, 9), "green")
        + dots(((15, 32), (24, 30), (33, 33), (28, 37)), 2.4, fill="ink")
        + path(
            "M13 30l-3 -4M17 30l2 -4M22 28l-2 -5M26 28l2 -5M31 31l-2 -5M35 31l3 -4", stroke="ink"
        ),
        "duckweed-specks": tank("water", dots(SPECKS, 2.2, fill="green", stroke="green-edge")),
        "film-on-surface": tank(
            "water",
            path("M3 17q5 -4 10 0t10 0t10 0t12 0v3H3z", fill="soft", opacity=0.7),
            dots(((12, 17), (30, 17)), 3, stroke="soft"),
        ),
        "surface-still": tank("water", still),
        "flow-strong": tank(
            "water",
            path(
                "M6 14q5 -8 9 0t9 0t9 0t9 0M8 24h26M28 20l6 4l-6 4", stroke="water-line", width=1.8
            ),
        ),
        "cover-above-60": tank("water", floaters("green", 5, long=9)),
    }


def water() -> dict[str, str]:
    """Colour, cloud and smell."""
    crumbs = ((9, 40), (16, 30), (23, 38), (30, 26), (37, 36), (20, 23), (33, 41), (12, 24))
    return {
        "water-white-cloud": tank(
            "water", dots(CLOUD, 4.6, fill="card"), dots(CLOUD[::4], 3, stroke="soft")
        ),
        "water-green": tank("green", dots(CLOUD, 0.9, fill="dark-green-edge")),
        "water-tea": path("M3 17H45V45H3z", fill="bark", opacity=0.65)
        + stem("green", "green", heights=(38, 31), long=10)
        + path("M3 5V45H45V5M3 17H45", stroke="soft", width=1.4),
        "water-brown-crumbs": tank(
            "water", dots(crumbs, 1.8, fill="earth"), path("M5 45q18 -9 38 0z", fill="earth")
        ),
        "water-smells-foul": tank(
            "water",
            path(
                "M15 13q-4 -3 0 -6t0 -6M24 13q-4 -3 0 -6t0 -6M33 13q-4 -3 0 -6t0 -6",
                stroke="soft",
                width=1.6,
            ),
        ),
    }


def coats() -> dict[str, str]:
    """What grows on things: on a leaf's edge, on glass, over the soil."""
    edge = grown(leaf(24, 46, 0, 40, 0.5), "green")
    tufts = "".join(
        f"M{x} {y}l{turn} -6M{x} {y}l{turn * 2} -3M{x} {y}l{turn / 3:g} -7"
        for x, y, turn in ((15, 22, -4), (16, 32, -4), (33, 22, 4), (32, 32, 4), (24, 7, 2))
    )
    wisps = "M15 22l-7 -4l-4 2M8 18l-1 -6M33 22l7 -4l4 2M40 18l1 -6M16 34l-8 1l-3 4M8 35l-4 -3M32 34l8 1l3 4"
    return {
        "coat-green-dust": path(PANE, fill="water", stroke="soft")
        + dots(CLOUD, 2.6, fill="pale-green")
        + path("M12 8L34 30", stroke="water", width=5),
        "coat-hard-green-dots": path(PANE, fill="water", stroke="soft")
        + dots(
            ((12, 12), (24, 9), (35, 15), (15, 25), (28, 23), (37, 32), (12, 37), (25, 36)),
            2.6,
            fill="dark-green",
            stroke="dark-green-edge",
        ),
        "coat-green-threads": edge
        + path(
            "M8 8q10 10 2 20t8 16M18 4q10 12 2 22t8 18M30 4q-8 12 2 22t-4 18M42 8q-10 10 -2 20t-6 16",
            stroke="yellow-green-edge",
            width=1.3,
        ),
        "coat-black-tufts": edge + path(tufts, stroke="ink", width=1.6),
        "coat-grey-branched": edge + path(wisps, stroke="soft", width=1.6),
        "coat-brown-dust": edge
        + dots(tuple((x, y) for x, y in CLOUD if 16 < x < 32), 2.2, fill="brown")
        + path("M19 18L30 32", stroke="green", width=4),
        "coat-slimy-sheet": path("M1 36H47V47H1z", fill="sand")
        + path(
            "M1 35q6 -8 12 -3t12 -4t12 5t10 -2v8q-8 4 -14 0t-14 2t-12 0t-6 -2z",
            fill="dark-green",
            stroke="dark-green-edge",
        )
        + dots(((14, 30), (30, 31)), 2, fill="water", stroke="water-line"),
        "coat-wiry-musty": path("M6 46q0 -13 18 -13t18 13z", fill="rock")
        + path(
            "".join(
                f"M24 35l{t} -{22 - abs(t)}M24 27l{t * 0.7:g} -12"
                for t in (-16, -10, -4, 4, 10, 16)
            ),
            stroke="dark-green",
            width=1.6,
        ),
    }

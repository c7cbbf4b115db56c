"""Signs on leaves: their colour, holes, edges, tips, and what lies on them."""

from scripts.drawings.signs.sign_parts import blade, dots, grown, leaf, path, stem

SPOTS = ((19.0, 16.0), (29.0, 20.0), (18.0, 27.0), (31.0, 30.0), (23.0, 37.0), (26.0, 11.0))
BITE = "M35 12q-11 1 -9 9q7 3 10 -2zM12 29q8 -2 9 6q-2 6 -6 4z"
TWISTED = (
    "M24 27C14 27 6 20 9 12C11 7 18 8 17 13C16 16 12 15 13 13C12 19 18 23 24 27z"
    "M24 27C34 27 42 20 39 12C37 7 30 8 31 13C32 16 36 15 35 13C36 19 30 23 24 27z"
    "M24 27C20 18 22 10 28 8C32 7 32 3 28 4C20 6 16 16 24 27z"
)
PALE_TOP = ("green", "green", "pale-green")


def old_leaves() -> dict[str, str]:
    """The lowest leaves of a stem, or one of them."""
    return {
        "old-leaves-pale-evenly": stem("yellow-green", "pale-green", "green", "green"),
        "old-leaves-yellow-between-veins": blade("yellow-green", veins="green-edge"),
        "old-leaves-pinholes": blade(
            "green", dots(SPOTS, 2.4, fill="card", stroke="brown", width=1.6)
        ),
        "old-leaves-brown-drop": stem("", "brown", "green", "green")
        + grown(leaf(5, 45, 80, 13), "brown"),
        "old-leaves-dark-dull": stem("dark-green", "dark-green", "dark-green", long=8)
        + path("M8 45H40", stroke="soft"),
        "old-leaves-glassy": stem("", "green", "green", "green")
        + path(leaf(24, 38, -62, 14) + leaf(24, 38, 62, 14), stroke="soft", opacity=0.7)
        + path("M13 38q-3 5 -7 6M35 38q3 5 7 6", stroke="soft"),
        "few-old-leaves-only": stem("", "green", "green", "green")
        + grown(leaf(24, 38, -62, 13), "brown")
        + grown(leaf(24, 38, 62, 13), "green"),
        "lower-leaves-drop-green": stem("", "", "green", "green")
        + grown(leaf(5, 44, 80, 12) + leaf(43, 45, -82, 12), "green"),
        "holes-bitten": blade("green", path(BITE, fill="card", stroke="green-edge")),
        "white-crust": blade(
            "green", dots((*SPOTS, (21, 22), (28, 27), (22, 31)), 1.7, fill="card", stroke="rock")
        ),
    }


def new_leaves() -> dict[str, str]:
    """The growing tip."""
    tip = leaf(24, 10, 0, 9)
    return {
        "new-leaves-healthy": stem("brown", "green", "green", "green"),
        "new-leaves-pale": stem(*PALE_TOP, "yellow-green", tip="yellow-green"),
        "new-leaves-pale-green-veins": blade("pale-green", veins="dark-green-edge"),
        "new-leaves-twisted": stem("green", "green", tip="", heights=(42, 35))
        + grown(TWISTED, "green"),
        "growing-tip-dies": stem("green", "green", "green", "green", tip="") + grown(tip, "brown"),
        "new-leaves-small": "".join(
            (
                path("M24 45V9", stroke="green-edge", width=1.6),
                *(
                    grown(leaf(24, y, -62, long) + leaf(24, y, 62, long), "green")
                    for y, long in ((38, 19), (29, 13), (21, 8), (14, 5), (9, 3))
                ),
            )
        ),
        "new-leaves-other-shape": stem("green", "green", tip="", heights=(40, 31))
        + path(
            "M24 29V4M24 20L14 14M24 20L34 14M24 13L16 7M24 13L32 7M24 26L12 22M24 26L36 22",
            stroke="green-edge",
            width=1.6,
        ),
        "no-new-leaf-for-weeks": stem("green", "green", tip="", heights=(38, 29))
        + path("M15 18L33 4M15 4L33 18", stroke="soft", width=1.6),
    }

"""Signs of whole plants, stems, roots and soil."""

from scripts.drawings.signs.sign_parts import bubbles, dots, grown, leaf, path, soil, stem

ROOTED = "M24 33q-6 5 -9 12M24 33q-2 6 -3 13M24 33q2 6 4 12M24 33q6 4 10 11"
CROWN = "".join(
    leaf(24, 33, turn, 27 - abs(turn) / 8, 0.22) for turn in (-66, -36, -12, 12, 36, 66)
)


def rosette(colour: str = "green", *, lift: float = 0) -> str:
    """Leaves from one crown, at the top of the cap or lifted above it."""
    made = grown(CROWN, colour)
    return f'<g transform="translate(0 {-lift:g})">{made}</g>' if lift else made


def plants() -> dict[str, str]:
    """The plant as a whole."""
    small = stem("green", heights=(38,), tip="green", long=8)
    waste = "".join(
        leaf(x, 45, turn, 15, 0.2) for x, turn in ((8, 70), (22, -78), (26, 76), (40, -64))
    )
    return {
        "rosettes-pale-too": rosette("yellow-green") + soil(),
        "only-under-cover": stem(
            "", "", "yellow-green", heights=(40, 34, 28), tip="yellow-green", long=10
        )
        + grown("M3 8h14v5h-14zM18 8h14v5h-14zM33 8h12v5h-12z", "green")
        + path("M1 13H47", stroke="water-line"),
        "growth-slow-all": small
        + path("M38 45V6M34 10l4 -4l4 4", stroke="soft", opacity=0.6)
        + path("M30 20h16M30 30h16", stroke="soft", opacity=0.6),
        "melt-within-days": grown(leaf(24, 33, 0, 24, 0.22), "green")
        + path(
            leaf(24, 33, -70, 22, 0.2) + leaf(24, 33, 70, 22, 0.2) + leaf(24, 33, -40, 24, 0.2),
            stroke="soft",
            opacity=0.8,
        )
        + soil(),
        "many-kinds-at-once": "".join(
            grown(leaf(x, 45, turn, 24, 0.2), "brown")
            for x, turn in ((8, -14), (8, 14), (40, -14), (40, 14))
        )
        + stem("brown", "brown", "pale-green", tip="pale-green", heights=(38, 29, 20), long=9),
        "bleached-or-black-mush": grown(waste, "brown")
        + path("M24 44V12M24 34L15 26M24 34L33 26M24 24L16 16M24 24L32 16", stroke="soft"),
        "redder-than-before": stem("green", "red-brown", "red", "red", tip="red"),
        "uprooted": rosette(lift=9)
        + path(ROOTED, stroke="root").replace("M24 33", "M24 24")
        + soil(),
        "threads-with-bladders": path(
            "M4 40Q20 30 24 24T44 6M12 36l-2 -8M20 29l-4 -8M30 18l8 4M36 12l-6 -5",
            stroke="green-edge",
            width=1.4,
        )
        + dots(
            ((9, 26), (15, 19), (40, 23), (29, 6), (26, 34), (18, 40)),
            2.6,
            fill="pale-green",
            stroke="green-edge",
        ),
        "bubbles-on-leaves": grown(leaf(24, 46, 0, 40, 0.6), "green")
        + bubbles((18, 22), (26, 16), (30, 27), (20, 33), (25, 7)),
        "fast-stems-suffer-first": stem(
            "", "brown", "yellow-green", tip="yellow-green", heights=(40, 33, 24), long=9
        )
        + grown("".join(leaf(40, 45, turn, 17, 0.3) for turn in (-38, -12, 14)), "dark-green"),
    }


def stems() -> dict[str, str]:
    """Between and below the leaves."""
    crowd = "".join(
        path(f"M{x} 46V8", stroke="green-edge")
        + grown("".join(leaf(x, y, turn, 8) for y in (14, 22) for turn in (-62, 62)), "green")
        for x in (10, 17, 24, 31, 38)
    )
    return {
        "gaps-between-leaves-long": path("M14 46Q22 26 38 4", stroke="green-edge", width=1.4)
        + grown(
            "".join(
                leaf(x, y, turn, 10) for x, y in ((19, 36), (26, 21), (35, 8)) for turn in (-50, 80)
            ),
            "pale-green",
        ),
        "stem-bare-below": stem("", "", "green", "green"),
        "stem-bases-soft": stem("", "", "green", "green")
        + path("M24 46q-3 -6 0 -12", stroke="brown", width=4),
        "stems-crowded": crowd + path("M6 46H42", stroke="brown", width=3),
        "stems-short-thin": "".join(
            path(f"M{x} 45V30", stroke="green-edge")
            + grown(leaf(x, 38, -60, 5) + leaf(x, 35, 60, 5) + leaf(x, 31, 0, 5), "pale-green")
            for x in (12, 24, 36)
        )
        + path("M4 45H44", stroke="soft"),
        "roots-from-stem-joints": stem("green", "green", "green", "green")
        + path("M24 38q4 4 5 8M24 29q8 4 9 14M24 29q-8 4 -9 14", stroke="root", width=1.4),
    }


def roots() -> dict[str, str]:
    """In and just above the soil."""
    rising = bubbles((14, 27), (17, 19), (13, 11), (32, 26), (35, 16), (31, 8))
    smell = path("M20 26q-4 -4 0 -8t0 -8M28 26q-4 -4 0 -8t0 -8", stroke="soft", width=1.6)
    patch = path("M6 47q2 -10 10 -8t10 -2t10 4t5 6z", fill="ink")
    whole = rosette() + soil()
    return {
        "rotten-egg-smell": soil() + bubbles((9, 28), (39, 25), (12, 15)) + smell,
        "soil-bubbles-no-smell": soil() + rising,
        "black-soil-at-glass": soil() + patch,
        "roots-black-soft": rosette("pale-green") + soil() + path(ROOTED, stroke="ink", width=1.8),
        "rhizome-buried": f'<g transform="translate(0 8)">{rosette()}</g>' + soil(),
        "crown-or-rhizome-soft": rosette("yellow-green")
        + soil()
        + path("M18 34q6 -6 12 0t-6 5t-6 -5z", fill="brown"),
        "crown-and-roots-firm": grown(leaf(24, 33, 0, 12, 0.3), "green")
        + soil()
        + path(ROOTED, stroke="card", width=1.4),
        "soil-through-cap": whole + path("M4 33q4 -6 9 0t9 -2v5H4z", fill="earth"),
    }

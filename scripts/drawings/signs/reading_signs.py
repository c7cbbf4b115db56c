"""Signs that a test, a watch or a memory gives: a vial, a thermometer, a lamp, a bottle, a bucket."""

from scripts.drawings.signs.sign_parts import dots, grown, leaf, path, stem

GLASS = "M17 3H31M19 3V39a5 5 0 0 0 10 0V3"
MARKS = "M33 12h5M33 20h5M33 28h5M33 36h5"
BOTTLE = "M17 46V20q0 -5 4 -7V5h6v8q4 2 4 7v26z"


def vial(level: float, colour: str) -> str:
    """A test's vial beside its scale; ``level`` is how high it reads, 0 to 1."""
    top = 40 - 30 * level
    fill = path(f"M20 {top:g}V39a4 4 0 0 0 8 0V{top:g}z", fill=colour)
    return fill + path(GLASS, stroke="soft", width=1.6) + path(MARKS, stroke="soft")


def thermometer(level: float) -> str:
    """``level`` is how high it reads, 0 to 1."""
    tube = path("M20 30V7a4 4 0 0 1 8 0V30", stroke="soft", width=1.6)
    column = path(f"M24 38V{32 - 24 * level:g}", stroke="red", width=3)
    return (
        tube
        + dots(((24, 38),), 7, fill="red", stroke="soft", width=1.6)
        + column
        + path(MARKS, stroke="soft")
    )


def lamp(*, lit: str) -> str:
    """A lamp over the water; ``lit`` is the path of its rays."""
    return path("M6 4H42V10H6z", fill="rock", stroke="soft") + path(lit, stroke="soft", width=1.6)


def readings() -> dict[str, str]:
    """Tests, warmth and hours of light."""
    return {
        **{
            key: vial(0.85, "brown")
            for key in (
                "ammonia-shows",
                "nitrite-shows",
                "nitrate-high",
                "copper-test-shows",
                "kh-high",
            )
        },
        **{
            key: vial(0.12, "brown")
            for key in (
                "nitrate-near-zero",
                "phosphate-near-zero",
                "kh-near-zero",
                "gh-very-low",
                "ph-low",
                "oxygen-low",
            )
        },
        **{key: vial(0.3, "brown") for key in ("ammonia-trace", "nitrite-trace", "oxygen-short")},
        "ph-rises-by-afternoon": vial(0.45, "brown")
        + path("M10 34V12M6 17l4 -5l4 5", stroke="soft", width=1.6),
        "water-hot": thermometer(0.95),
        "water-cold": thermometer(0.15),
        "light-short": lamp(lit="M16 14v5M24 14v5M32 14v5")
        + stem("pale-green", heights=(38,), long=9),
        "light-long": lamp(lit="M10 14l-3 14M19 14l-1 16M29 14l1 16M38 14l3 14")
        + stem("green", heights=(38,), long=9),
    }


def events() -> dict[str, str]:
    """What went before."""
    bucket = path("M8 20H40L36 46H12z", fill="water", stroke="soft", width=1.6) + path(
        "M8 20q16 -26 32 0", stroke="soft", width=1.6
    )
    drop = path("M40 22q-5 8 0 10q5 -2 0 -10z", fill="water-line")
    return {
        "water-change-just-before": bucket,
        "medicine-or-remedy-used": path(BOTTLE, fill="card", stroke="soft", width=1.6)
        + path("M24 24v14M17 31h14", stroke="ink", width=3),
        "fertiliser-just-dosed": path(BOTTLE, fill="card", stroke="soft", width=1.6)
        + grown(leaf(24, 42, 0, 18, 0.5), "green")
        + drop,
        "light-or-power-off-for-days": lamp(lit="")
        + path("M10 18L38 44M38 18L10 44", stroke="soft", width=1.6),
        "moved-or-divided": stem("green", "green", heights=(38, 28), long=10)
        + path("M30 10q10 0 12 12M38 18l4 5l4 -6", stroke="soft", width=1.6),
        "sun-on-glass": dots(((12, 12),), 6, fill="yellow-green", stroke="soft")
        + path("M18 17l12 9M20 12h14M13 20l5 14", stroke="soft", width=1.6)
        + path("M38 6V46", stroke="water-line", width=3),
        "filter-stopped": path("M12 8H36V44H12z", fill="water", stroke="soft", width=1.6)
        + path("M17 18h14M17 26h14M17 34h14", stroke="soft")
        + path("M10 6L38 46", stroke="ink", width=2),
    }

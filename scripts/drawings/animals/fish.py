"""Outlines of fish."""

from scripts.drawings.animals.outline import BodyOutline, closed, line, pointed
from scripts.drawings.geometry import Path

FORK = pointed((0.78, 0.1), (1, 0.5), (0.91, 0), (1, -0.5), (0.78, -0.1))
FAN = closed((0.76, 0.14), (0.9, 0.4), (1, 0.2), (1, -0.2), (0.9, -0.4), (0.76, -0.14))
BODY = closed(
    (0, 0), (0.1, 0.26), (0.25, 0.45), (0.42, 0.5), (0.62, 0.3), (0.8, 0.11),
    (0.8, -0.11), (0.62, -0.3), (0.42, -0.5), (0.25, -0.45), (0.1, -0.24),
)  # fmt: skip
BACK_FIN = pointed((0.4, 0.48), (0.47, 0.92), (0.57, 0.36))
BELLY_FINS = (
    pointed((0.34, -0.48), (0.42, -0.8), (0.44, -0.48)),
    pointed((0.53, -0.4), (0.6, -0.8), (0.72, -0.18)),
)
FLAT_BELLY = closed(
    (0, -0.3), (0.05, -0.05), (0.16, 0.35), (0.3, 0.5), (0.5, 0.38), (0.68, 0.12), (0.8, -0.05),
    (0.8, -0.28), (0.6, -0.42), (0.35, -0.5), (0.12, -0.48),
)  # fmt: skip
LOW_TAIL = pointed((0.78, -0.04), (1, 0.3), (0.92, -0.15), (1, -0.6), (0.78, -0.28))
SAIL = pointed((0.3, 0.48), (0.33, 1), (0.5, 0.7), (0.5, 0.36))


def spindle() -> BodyOutline:
    """A tetra, rasbora or danio."""
    return BodyOutline(BODY, (FORK, BACK_FIN, *BELLY_FINS), eye=(0.09, 0.06))


def round_tailed() -> BodyOutline:
    """A livebearer or killifish."""
    fin = closed((0.46, 0.45), (0.55, 0.85), (0.66, 0.6), (0.62, 0.3))
    return BodyOutline(BODY, (FAN, fin, *BELLY_FINS), eye=(0.08, 0.1))


def gourami() -> BodyOutline:
    """A flat-sided oval with a long fin below and feelers like threads."""
    below = closed((0.3, -0.4), (0.45, -0.72), (0.7, -0.72), (0.8, -0.2), (0.6, -0.2))
    above = closed((0.45, 0.4), (0.55, 0.75), (0.75, 0.6), (0.74, 0.2))
    feeler = line((0.27, -0.42), (0.35, -0.85), (0.6, -1.05))
    return BodyOutline(BODY, (FAN, above, below), (feeler,), eye=(0.08, 0.06))


def tall() -> BodyOutline:
    """A disc with fins that make it higher than long."""
    body = closed(
        (0, 0), (0.12, 0.22), (0.3, 0.46), (0.45, 0.5), (0.62, 0.34), (0.76, 0.1),
        (0.76, -0.1), (0.62, -0.34), (0.45, -0.5), (0.3, -0.46), (0.12, -0.22),
    )  # fmt: skip
    above = pointed((0.36, 0.46), (0.6, 0.7), (0.86, 1.05), (0.7, 0.55), (0.68, 0.24))
    below = pointed((0.4, -0.46), (0.6, -0.7), (0.88, -1.05), (0.7, -0.55), (0.68, -0.24))
    feeler = line((0.3, -0.45), (0.4, -0.85), (0.58, -1.1))
    tail = pointed((0.74, 0.09), (1, 0.26), (0.95, 0), (1, -0.26), (0.74, -0.09))
    return BodyOutline(body, (above, below, tail), (feeler,), eye=(0.13, 0.06))


def cichlid() -> BodyOutline:
    """One long fin along the back."""
    above = closed((0.22, 0.42), (0.35, 0.85), (0.6, 0.75), (0.82, 0.5), (0.74, 0.16))
    below = closed((0.5, -0.42), (0.62, -0.7), (0.8, -0.5), (0.74, -0.16))
    return BodyOutline(BODY, (FAN, above, below, BELLY_FINS[0]), eye=(0.1, 0.12))


def armoured() -> BodyOutline:
    """A flat belly, an arched back, and feelers at the mouth."""
    feelers = tuple(line((0.02, -0.36), (-0.02, -0.5), (0.02, -0.62)) for _ in range(1))
    belly = pointed((0.4, -0.48), (0.48, -0.68), (0.52, -0.44))
    return BodyOutline(FLAT_BELLY, (LOW_TAIL, SAIL, belly), feelers, eye=(0.11, 0.05))


def sucker() -> BodyOutline:
    """Low and long, flat below, a sail of a fin on the back."""
    body = closed(
        (0, -0.3), (0.06, 0.12), (0.2, 0.45), (0.34, 0.5), (0.6, 0.2), (0.82, -0.02),
        (0.82, -0.24), (0.5, -0.44), (0.2, -0.5), (0.04, -0.48),
    )  # fmt: skip
    paired = closed((0.2, -0.4), (0.34, -0.66), (0.44, -0.6), (0.36, -0.42))
    return BodyOutline(body, (LOW_TAIL, SAIL, paired), eye=(0.14, 0.2))


def eel() -> BodyOutline:
    """A ribbon that bends, as thick behind as before."""
    upper = [
        (0.0, 0.0),
        (0.06, 0.45),
        (0.25, 0.5),
        (0.45, 0.5),
        (0.65, 0.5),
        (0.85, 0.45),
        (0.95, 0.3),
    ]
    body = closed(*upper, (1, 0), *[(x, -y) for x, y in reversed(upper[1:])])
    fins = (
        pointed((0.62, 0.46), (0.68, 1), (0.72, 0.46)),
        pointed((0.7, -0.46), (0.76, -1), (0.8, -0.46)),
    )
    feelers = (line((0.01, -0.1), (-0.02, -0.6), (0.01, -1)),)
    return BodyOutline(body, fins, feelers, eye=(0.05, 0.1))


def globe() -> BodyOutline:
    """A ball with small fins far back."""
    body = closed(
        (0, 0.05), (0.12, 0.3), (0.35, 0.48), (0.55, 0.4), (0.7, 0.15), (0.84, 0.08),
        (0.84, -0.08), (0.7, -0.2), (0.5, -0.48), (0.3, -0.5), (0.1, -0.2),
    )  # fmt: skip
    fins = (
        closed((0.62, 0.25), (0.7, 0.52), (0.76, 0.4), (0.72, 0.14)),
        closed((0.64, -0.28), (0.7, -0.5), (0.76, -0.4), (0.74, -0.14)),
        closed((0.83, 0.08), (0.94, 0.18), (1, 0.1), (1, -0.1), (0.94, -0.18), (0.83, -0.08)),
    )
    side: Path = closed((0.36, 0), (0.44, 0.14), (0.48, 0), (0.44, -0.12))
    return BodyOutline(body, fins, (side,), eye=(0.17, 0.2))

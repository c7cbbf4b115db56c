"""Pictures of a water surface with a known cover, drawn with numpy: leaves, light, noise, slant.

Leaves lie on a surface of 80 by 35 cm. The known cover is counted on the surface itself, on a fine grid,
and never in the picture. The camera is a projective map found by solving the eight equations.
"""

import base64
from typing import NamedTuple

import numpy as np

LENGTH, WIDTH = 80.0, 35.0  # cm
FINE = (1440, 1080)  # drawn so, then averaged two by two as a camera's sensor does
SAMPLED = 4  # every fourth point of the averaged picture is counted
AS_PAGE, PAGE_STEP = (2560, 1920), 6  # nearer to what the page takes: points of 1,600 pixels across
GRID = 0.05  # cm, of the grid on which the cover is known

GREEN = [(108, 174, 76), (165, 207, 110), (120, 160, 70), (88, 140, 66)]
YELLOW = [(195, 209, 80), (170, 190, 70)]
RED = [(156, 60, 50), (180, 70, 60)]
WATERS = {
    "dark": (30, 38, 36), "tea": (70, 52, 30), "sand": (184, 168, 132), "grey": (96, 102, 104),
    "black": (10, 12, 12),
}  # fmt: skip
BESIDE = (128, 120, 112)
STRAIGHT = [(0.08, 0.2), (0.92, 0.2), (0.92, 0.8), (0.08, 0.8)]
SLANTED = [(0.30, 0.12), (0.74, 0.12), (0.97, 0.9), (0.04, 0.86)]
TURNED = [(0.45, 0.04), (0.93, 0.38), (0.6, 0.96), (0.06, 0.52)]


class Leaves(NamedTuple):
    """Discs on the surface in cm: middle and radius, and a colour each."""

    x: np.ndarray
    y: np.ndarray
    radius: np.ndarray
    colour: np.ndarray

    def cover(self, x, y):
        """For places in cm, which leaf lies there; -1 for none."""
        found = np.full(x.shape, -1)
        for number, (middle, down, radius) in enumerate(
            zip(self.x, self.y, self.radius, strict=True)
        ):
            found[(x - middle) ** 2 + (y - down) ** 2 < radius**2] = number
        return found


def strewn(dice, wanted, radius, colours, *, within=lambda x, y: np.ones(x.shape, bool)):
    """Leaves of about a radius, strewn until they cover a share, 0 to 1; with the share they do cover."""
    x, y = np.meshgrid(
        np.arange(GRID / 2, LENGTH, GRID), np.arange(GRID / 2, WIDTH, GRID), indexing="xy"
    )
    room, covered, leaves = within(x, y), np.zeros(x.shape, bool), []
    points, count = room.sum(), 0  # kept leaf by leaf: the whole grid each time is slow
    while count / points < wanted:
        size = radius * dice.uniform(0.7, 1.3)
        middle, down = dice.uniform(0, LENGTH), dice.uniform(0, WIDTH)
        if not within(np.array(middle), np.array(down)):
            continue
        rows = slice(max(0, int((down - size) / GRID)), int((down + size) / GRID) + 2)
        columns = slice(max(0, int((middle - size) / GRID)), int((middle + size) / GRID) + 2)
        here = (rows, columns)
        fresh = (x[here] - middle) ** 2 + (y[here] - down) ** 2 < size**2
        count += (fresh & room[here] & ~covered[here]).sum()
        covered[here] |= fresh
        leaves.append((middle, down, size, dice.integers(len(colours))))
    parts = np.array(leaves).reshape(-1, 4).T
    drawn = Leaves(parts[0], parts[1], parts[2], np.array(colours)[parts[3].astype(int)])
    return drawn, 100 * count / points


def map_between(before, after):
    """The projective map that takes four points to four others, by solving its eight equations."""
    rows, right = [], []
    for (x, y), (u, v) in zip(before, after, strict=True):
        rows += [[x, y, 1, 0, 0, 0, -u * x, -u * y], [0, 0, 0, x, y, 1, -v * x, -v * y]]
        right += [u, v]
    return np.append(np.linalg.solve(np.array(rows), np.array(right)), 1).reshape(3, 3)


def photo(
    dice, leaves, water, corners=STRAIGHT, *, light=None, noise=6.0, glare=(), under=None, fine=FINE
):
    """The picture as an array of height by width by 3 octets.

    ``light`` gives brightness for places on the surface; ``glare`` are white ellipses in the picture
    (x, y, radius as shares of its width); ``under`` are dimmer leaves below the surface.
    """
    wide, high = fine
    to_surface = map_between(
        [(x * wide, y * high) for x, y in corners],
        [(0, 0), (LENGTH, 0), (LENGTH, WIDTH), (0, WIDTH)],
    )
    across, down = np.arange(wide)[None, :] + 0.5, np.arange(high)[:, None] + 0.5
    u, v, w = (a * across + b * down + c for a, b, c in to_surface)
    x, y = u / w, v / w
    inside = (x >= 0) & (x < LENGTH) & (y >= 0) & (y < WIDTH)
    colour = np.full((high, wide, 3), WATERS[water], float)
    for layer in (under, leaves):
        if layer is not None and len(layer.x):
            which = splat(layer, x, y, inside)
            colour[which >= 0] = layer.colour[which[which >= 0]]
    if light is not None:
        colour *= light(x, y)[..., None]
    colour[~inside] = BESIDE
    for middle, row, radius in glare:
        off = np.hypot(across / wide - middle, (down - row * high) / wide)
        colour += 255 * np.clip(1.6 - 1.2 * off / radius, 0, 1)[..., None]
    averaged = by_fours(colour)
    noisy = like_jpeg(np.clip(averaged + dice.normal(0, noise, averaged.shape), 0, 255), dice)
    return np.clip(noisy, 0, 255).astype(np.uint8)


def by_fours(picture):
    """Every two by two points averaged; numpy's own mean over two axes takes five times as long."""
    rows = picture[::2] + picture[1::2]
    return (rows[:, ::2] + rows[:, 1::2]) / 4


def sampled(picture, step=SAMPLED):
    """Every fourth point, or every so many, as the page takes them."""
    return np.ascontiguousarray(picture[step // 2 :: step, step // 2 :: step])


def splat(leaves, x, y, inside):
    """Which leaf each place shows, -1 for none; each leaf is looked for near its middle alone."""
    found = np.full(x.shape, -1)
    places = np.flatnonzero(inside)
    px, py = x.ravel()[places], y.ravel()[places]
    order = np.argsort(px)
    px, py, places = px[order], py[order], places[order]
    flat = found.ravel()
    for number in range(len(leaves.x)):
        middle, down, radius = leaves.x[number], leaves.y[number], leaves.radius[number]
        first, last = np.searchsorted(px, [middle - radius, middle + radius])
        here = (px[first:last] - middle) ** 2 + (py[first:last] - down) ** 2 < radius**2
        flat[places[first:last][here]] = number
    return flat.reshape(x.shape)


def like_jpeg(picture, dice):
    """Colour at half the sharpness, and a slight offset for each block of eight: what JPEG does worst."""
    light = picture.mean(2, keepdims=True)
    tint = picture - light
    high, wide, _ = tint.shape
    halved = by_fours(tint)
    blocks = dice.normal(0, 1.5, (-(-high // 8), -(-wide // 8), 1))
    offset = np.kron(blocks, np.ones((8, 8, 1)))[:high, :wide]
    return np.round(light + offset) + halved.repeat(2, 0).repeat(2, 1)


def given(picture, corners=STRAIGHT, **more):
    """The inputs of the calculator for a picture."""
    return {
        "pixels": base64.b64encode(picture.tobytes()).decode(),
        "width_px": picture.shape[1],
        "height_px": picture.shape[0],
        "corners": [{"x_percent": 100 * x, "y_percent": 100 * y} for x, y in corners],
        "length_cm": LENGTH,
        "width_cm": WIDTH,
        **more,
    }

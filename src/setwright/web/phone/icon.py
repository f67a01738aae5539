"""The icon of the installed page: a loaded bar, drawn here."""

from __future__ import annotations

import struct
import zlib
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

SIZES = (180, 192, 512)
GROUND, METAL, PLATE = (20, 80, 127), (222, 228, 233), (255, 255, 255)
# Left, top, right, bottom as shares of the edge, all within the middle 80 % that a mask leaves.
SHAPES = (
    ((0.12, 0.475, 0.88, 0.525), METAL),
    ((0.27, 0.26, 0.34, 0.74), PLATE),
    ((0.19, 0.34, 0.245, 0.66), PLATE),
    ((0.66, 0.26, 0.73, 0.74), PLATE),
    ((0.755, 0.34, 0.81, 0.66), PLATE),
)


@lru_cache
def icon(size: int) -> bytes:
    """A PNG of so many pixels a side."""
    picture = np.empty((size, size, 3), dtype=np.uint8)
    picture[:] = GROUND
    for (left, top, right, bottom), colour in SHAPES:
        rows = slice(round(top * size), round(bottom * size))
        picture[rows, round(left * size) : round(right * size)] = colour
    return _png(picture)


def _png(picture: NDArray[np.uint8]) -> bytes:
    height, width, _ = picture.shape
    # Every row begins with its filter, 0 for none.
    rows = np.hstack([np.zeros((height, 1), np.uint8), picture.reshape(height, width * 3)])
    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    chunks = (
        (b"IHDR", head),
        (b"IDAT", zlib.compress(rows.tobytes(), 9)),
        (b"IEND", b""),
    )
    body = b"".join(
        struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))
        for name, data in chunks
    )
    return b"\x89PNG\r\n\x1a\n" + body

"""Garbage: random bytes, valid data with something wrong, and what looks like a front."""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence


def garbage(dice: random.Random, valid: Callable[[], bytes], words: Sequence[bytes]) -> bytes:
    """Give one stretch of it, some 1 to 6000 bytes."""
    kind = dice.randrange(10)
    if kind < 3:
        return dice.randbytes(dice.randrange(1, 400))
    if kind == 3:
        return bytes(dice.choices(b"0123456789+-.,eE#; \t\r\nOLnaif", k=dice.randrange(1, 400)))
    if kind == 4:
        return dice.randbytes(1) * dice.randrange(1, 3_000)
    if kind == 5 and words:
        return b"".join(dice.choice(words) for _ in range(dice.randrange(1, 12)))
    frames = [valid() for _ in range(dice.choice((1, 2, 3, 8, 200)))]
    return b"".join(_mutated(dice, frame, words) for frame in frames)


def _mutated(dice: random.Random, frame: bytes, words: Sequence[bytes]) -> bytes:
    data = bytearray(frame)
    for _ in range(dice.choice((0, 1, 1, 2, 5))):
        if not data:
            break
        place = dice.randrange(len(data))
        kind = dice.randrange(6)
        if kind == 0:
            data[place] ^= 1 << dice.randrange(8)
        elif kind == 1:
            del data[place]
        elif kind == 2:
            data.insert(place, dice.randrange(256))
        elif kind == 3:
            del data[place:]
        elif kind == 4:
            data[place:place] = data[: dice.randrange(len(data))]
        elif words:
            data[place:place] = dice.choice(words)
    return bytes(data)


def cuts(dice: random.Random, data: bytes) -> list[bytes]:
    """Cut data into pieces: now and then byte by byte, mostly as a port would."""
    if dice.random() < 0.1:
        return [data[place : place + 1] for place in range(len(data))]
    pieces, place = [], 0
    while place < len(data):
        step = dice.choice((1, 3, 14, 62, 256, 4_095))
        pieces.append(data[place : place + step])
        place += step
    return pieces

"""The meters of the soak: they send over real ports, and by what they send the time goes on.

Started by ``soak.py``. The virtual time lies in memory that both share: it moves on with each
reading, never faster than asked for, and never while a reading before has not been fetched. So a
busy machine makes the soak take longer, but no reading late.
"""

from __future__ import annotations

import mmap
import os
import sys
import time
from dataclasses import dataclass
from pathlib import Path

SECOND = 1_000_000_000
NOW, GO, HOLD, DONE, SENT, FETCHED = 0, 1, 2, 3, 4, 8
"""Places of the shared numbers; from SENT and FETCHED on one a meter, in readings."""
PLACES = 12
_LOT = 10_000
_NAP_S = 0.000_05
_DEAD_EVERY_S, _DEAD_AFTER_S, _DEAD_S = 7_200.0, 3_000.0, 3.0

_RISE_V = 0.5
"""What the supply gains when the motor's current goes."""


@dataclass(frozen=True)
class Pace:
    """How the meters send.

    Attributes
    ----------
    meters : int
    interval_s : float, virtual seconds
    hours : float, virtual
    speed : float
        At most so many virtual seconds in one of ours.
    """

    meters: int
    interval_s: float
    hours: float
    speed: float

    @property
    def readings(self) -> int:
        """Of each meter."""
        return round(self.hours * 3600.0 / self.interval_s)

    def at_ns(self, meter: int, number: int) -> int:
        """When a reading is sent: meters take turns."""
        turn = number + 1 + meter / self.meters
        return round(turn * self.interval_s * SECOND)


def is_dead(pace: Pace, number: int) -> bool:
    """Tell whether the motor of the first meter stands still at a reading."""
    since_s = (number * pace.interval_s - _DEAD_AFTER_S) % _DEAD_EVERY_S
    return number * pace.interval_s >= _DEAD_AFTER_S and since_s < _DEAD_S


def dead_stretches(pace: Pace) -> int:
    """Count the times at which it stands still from begin to end."""
    last_s = pace.hours * 3600.0 - _DEAD_AFTER_S - _DEAD_S
    return int(last_s // _DEAD_EVERY_S) + 1 if last_s >= 0.0 else 0


def line_of(pace: Pace, meter: int, number: int) -> bytes:
    """Give a reading: feed and return tell its number, the current scatters."""
    lot, place = divmod(number, _LOT)
    dead = meter == 0 and is_dead(pace, number)
    amps = 0.0 if dead else 5.0 + (number * 7919 % 101) / 2000.0
    rise = _RISE_V if dead else 0.0
    return f"{12.0 + rise + place / _LOT:.4f},{lot / _LOT:.4f},{amps:.4f}\n".encode()


def shared(handle: int) -> memoryview:
    """Give the numbers that both processes see."""
    return memoryview(mmap.mmap(handle, PLACES * 8)).cast("q")


def send_all(pace: Pace, board: memoryview, ports: list[int]) -> None:
    """Send every reading of every meter, and move the time on."""
    while not board[GO]:
        time.sleep(0.001)
    began_s = time.monotonic()
    for number in range(pace.readings):
        for meter, far in enumerate(ports):
            at_ns = pace.at_ns(meter, number)
            ahead_s = at_ns / SECOND / pace.speed - (time.monotonic() - began_s)
            if ahead_s > 0.0005:
                time.sleep(ahead_s)
            while board[HOLD]:
                time.sleep(0.001)
            line = line_of(pace, meter, number)
            while board[FETCHED + meter] < number:
                time.sleep(_NAP_S)
            board[NOW] = at_ns
            while line:
                line = line[os.write(far, line) :]
            board[SENT + meter] = number + 1
    board[DONE] = 1


def main() -> int:
    """Send; the words are those that ``soak.py`` gives."""
    board_path, hours, interval_s, speed, *handles = sys.argv[1:]
    ports = [int(one) for one in handles]
    pace = Pace(len(ports), float(interval_s), float(hours), float(speed))
    with Path(board_path).open("r+b") as file:
        send_all(pace, shared(file.fileno()), ports)
    return 0


if __name__ == "__main__":
    sys.exit(main())

"""ServedMeter: one meter of the bench at its port, with the troubles it is in."""

from __future__ import annotations

import math
from collections import deque
from collections.abc import Mapping

from numpy.random import Generator

from meterlog.instruments.virtual.meter import MeterModel
from meterlog.instruments.virtual.outlet import Outlet
from meterlog.instruments.virtual.trouble import Trouble
from meterlog.instruments.virtual.voice import Key, Voice
from meterlog.model.errors import LinkError, UsageError

_TRY_AGAIN_S = 0.25
_MOST_HELD = 100_000


class ServedMeter:
    """Lets a voice speak at an outlet, or keeps it from doing so.

    Parameters
    ----------
    model : MeterModel
    voice : Voice
    outlet : Outlet
    rng : numpy Generator
        For garbage.

    Attributes
    ----------
    key : str
        Its name on the bench.
    outlet : Outlet
    """

    def __init__(self, model: MeterModel, voice: Voice, outlet: Outlet, rng: Generator) -> None:
        self.key = model.key
        self.outlet = outlet
        self._model = model
        self._voice = voice
        self._rng = rng
        self._served = self._had_client = False
        self._now_s = 0.0
        self._powered = True
        self._back_s: float | None = None
        self._away = False
        self._stalled_until_s = -math.inf
        self._held: deque[bytes] = deque()
        self._catching_up = False
        self._news: list[Trouble] = []
        self._keys: Mapping[str, Key] = {
            "unplug": self._unplug,
            "plug": lambda _, now_s: self._plug(now_s),
            "off": lambda _, now_s: self._power(now_s, on=False),
            "on": lambda _, now_s: self._power(now_s, on=True),
            "hold": lambda words, _: model.hold(on=words == "on"),
            "clamp-dead": lambda words, _: model.kill_clamp(on=words == "on"),
            "garble": self._garble,
            "stall": self._stall,
            **voice.keys,
        }

    @property
    def reach_s(self) -> float:
        """How far back its voice looks, seconds."""
        return self._voice.reach_s

    def card(self) -> dict[str, object]:
        """Give what there is to know about it, for the truth file."""
        profile = self._model.profile
        points = zip(profile.channels, self._model.points, strict=True)
        return {
            "meter": self.key,
            "profile": profile.name,
            "dialect": profile.dialect,
            "points": {channel.name: point for channel, point in points},
            **self._voice.card,
        }

    def check(self, trouble: Trouble) -> None:
        """Raise UsageError if a meter of this dialect can't have that trouble."""
        if trouble.kind not in self._keys:
            raise UsageError(
                f"{trouble.kind} is nothing that a meter with dialect"
                f" {self._model.profile.dialect} can show.",
                subject=self.key,
                remedy=f"It can have: {', '.join(self._keys)}.",
            )

    def suffer(self, trouble: Trouble) -> None:
        """Do to it what is ordered.

        Raises
        ------
        UsageError
            If a meter of this dialect can't have that.
        """
        self.check(trouble)
        self._keys[trouble.kind](trouble.value, trouble.elapsed_s)

    def news(self) -> list[Trouble]:
        """Give what it did by itself since the last call."""
        own = [Trouble(at_s, self.key, kind, value) for at_s, kind, value in self._voice.news()]
        news, self._news = [*self._news, *own], []
        return news

    def due_s(self) -> float | None:
        """Give the time at which there will be something to do; None for not by itself."""
        if self._back_s is not None:
            return self._back_s
        if not self._served:
            return None
        due = [self._voice.due_s()]
        if self._held and self._stalled_until_s > self._now_s:
            due.append(self._stalled_until_s)
        return min((at_s for at_s in due if at_s is not None), default=None)

    def serve(self, now_s: float) -> None:
        """Take what has come in and send what is due; never waits."""
        self._now_s = now_s
        if self._back_s is not None and now_s >= self._back_s:
            self._plug(now_s)
        is_open = self.outlet.is_open()
        had_client, self._had_client = self._had_client, is_open
        if not (is_open and self._powered):
            # What a client left behind when it closed is not meant for the next one.
            if had_client and not is_open:
                self.outlet.forget()
            self.outlet.read()
            self.outlet.outbox.clear()
            self._held.clear()
            self._catching_up = False
            self._served = False
            return
        if not self._served:
            self._voice.greet(now_s)
            self._served = True
        data = self.outlet.read()
        if data:
            self._voice.hear(data, now_s)
        said = self._voice.say(now_s)
        if now_s < self._stalled_until_s or self._behind():
            self._hold(said)
        else:
            for message in said:
                self.outlet.outbox.put(message)
        if now_s >= self._stalled_until_s:
            # What was held goes first, as fast as the line takes it, and none of it is dropped.
            while self._held and self.outlet.outbox.offer(self._held[0]):
                self._held.popleft()
        self.outlet.outbox.flush()

    def _behind(self) -> bool:
        """Tell whether a stall is over but not yet made up for."""
        self._catching_up = self._catching_up and bool(self._held or self.outlet.outbox.stuck)
        return self._catching_up

    def _hold(self, said: list[bytes]) -> None:
        self._catching_up = True
        for message in said:
            if len(self._held) < _MOST_HELD:
                self._held.append(message)
            else:
                self.outlet.outbox.dropped += 1

    def _unplug(self, words: str, now_s: float) -> None:
        self.outlet.unplug()
        self._away = True
        self._back_s = now_s + float(words) if words else None

    def _plug(self, now_s: float) -> None:
        if not self._away:
            return
        try:
            self.outlet.plug()
        except LinkError:
            # Another program has its place: it comes back when that has gone.
            self._back_s = now_s + _TRY_AGAIN_S
            return
        self._away = False
        self._back_s = None
        self._news.append(Trouble(now_s, self.key, "plugged", self.outlet.address))

    def _power(self, now_s: float, *, on: bool) -> None:
        self._powered = on
        if not on:
            self._stalled_until_s = now_s

    def _garble(self, words: str, _now_s: float) -> None:
        if self.outlet.is_open():
            self.outlet.outbox.put(self._rng.bytes(int(words)))

    def _stall(self, words: str, now_s: float) -> None:
        self._stalled_until_s = now_s + float(words)

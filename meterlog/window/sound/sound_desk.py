"""SoundDesk: which reading the tone follows, which cue sounds when, and how loud."""

from __future__ import annotations

import math
import time
from collections.abc import Callable
from enum import StrEnum
from pathlib import Path

from PySide6.QtCore import QObject

from meterlog.model import Block, Role, SpanKind
from meterlog.profile import settings_folder
from meterlog.window.kept_file import keep, read_kept
from meterlog.window.session import Phase, Session
from meterlog.window.sound.cues import Cue
from meterlog.window.sound.loudspeaker import NoSound, Samples, Speaker, open_loudspeaker
from meterlog.window.sound.tone import Tone
from meterlog.window.words import say

_FILE = "sound.json"
_LOUDER = 0.1
_DEAD = {
    SpanKind.DEAD, SpanKind.FEED_LOST, SpanKind.GROUND_LOST, SpanKind.COMMAND_LOST,
    SpanKind.NO_CURRENT,
}  # fmt: skip
_OVER = {SpanKind.OVER, SpanKind.LOCKED}
_FULL_A = 20.0
"""Current of the highest pitch where the limits name none."""


class Followed(StrEnum):
    """What the tone follows."""

    CURRENT = "current"
    VOLTAGE = "voltage"


class SoundDesk:
    """Off until it is switched on; then it is on again the next time.

    Parameters
    ----------
    session : Session
    parent : QObject
        In whose thread the sound is made.
    speaker : callable
        Opens the way to the loudspeaker; :func:`open_loudspeaker` but in tests.
    settings : Path or None
        Where volume and choice are kept; None: the user's settings folder.
    """

    def __init__(
        self,
        session: Session,
        parent: QObject,
        speaker: Callable[[Samples, QObject], Speaker] = open_loudspeaker,
        settings: Path | None = None,
    ) -> None:
        self._session, self._parent, self._open = session, parent, speaker
        self._path = (settings_folder() if settings is None else settings) / _FILE
        self.tone = Tone()
        self.follows = Followed.CURRENT
        self.volume = 0.6
        self.trouble = ""
        self._speaker: Speaker | None = None
        self._kind: SpanKind | None = None
        self._heard_s = -math.inf
        self._silent = False
        self._patience_s = 0.5
        session.listeners.append(self._on_block)
        if self._load():
            self.turn()

    @property
    def on(self) -> bool:
        """True while there is sound."""
        return self._speaker is not None

    @property
    def words(self) -> str:
        """How it stands, for the status line."""
        if self.trouble:
            return say("no sound")
        if not self.on:
            return say("sound off")
        return say(
            "sound: {follows}, {volume} %",
            follows=say(self.follows.value),
            volume=round(self.volume * 100),
        )

    def turn(self) -> None:
        """Switch the sound on or off."""
        self.trouble = ""
        if self._speaker is not None:
            self._speaker.close()
            self._speaker = None
        else:
            self.tone.set_volume(self.volume)
            try:
                self._speaker = self._open(self.tone.samples, self._parent)
            except NoSound as error:
                self.trouble = self._session.trouble = str(error)
        self._keep()

    def louder(self, steps: int) -> None:
        """Make it louder, or softer when negative."""
        self.volume = round(min(max(self.volume + steps * _LOUDER, _LOUDER), 1.0), 2)
        self.tone.set_volume(self.volume)
        self._keep()

    def turn_followed(self) -> None:
        """Follow the voltage instead of the current, or the other way round."""
        current = self.follows is Followed.CURRENT
        self.follows = Followed.VOLTAGE if current else Followed.CURRENT
        self.tone.follow(math.nan)
        self._keep()

    def _on_block(self, block: Block) -> None:
        """Follow the newest reading at once: a dropout must not wait for the next look."""
        if self._speaker is None:
            return
        shown = self._session.shown
        role = Role.MOTOR_CURRENT if self.follows is Followed.CURRENT else Role.MOTOR_FEED
        homes = shown.about.instruments if shown is not None else ()
        column = next((one.column(role) for one in homes if one.key == block.source), None)
        if shown is None or column is None or not len(block):
            return
        label, value = shown.amperes() if role is Role.MOTOR_CURRENT else shown.volts()
        del label
        self.tone.follow(value)
        self._heard_s = time.monotonic()
        interval_s = next(
            (o.channels[column].interval_s for o in homes if o.key == block.source), 0.1
        )
        self._patience_s = max(3.5 * interval_s, 0.5)

    def tick(self) -> None:
        """Play the cue of what has changed; fall silent where readings have ceased."""
        session = self._session
        shown = session.shown
        if self._speaker is None:
            return
        if session.phase is not Phase.RECORDING or shown is None:
            self.tone.follow(math.nan)
            self._kind, self._silent = None, False
            return
        limits = shown.about.limits
        if self.follows is Followed.CURRENT:
            tops = [one.max_a for one in limits.speeds.values() if one.max_a]
            self.tone.scale(max(tops, default=_FULL_A), limits.open_current_a)
        else:
            self.tone.scale(limits.nominal_v * 1.25, 0.05 * limits.nominal_v)
        self._tell_lost()
        span = shown.newest_span()
        kind = span.kind if span is not None else None
        if kind is not self._kind:
            cue = cue_for(self._kind, kind)
            if cue is not None:
                self.tone.play(cue)
            self._kind = kind

    def _tell_lost(self) -> None:
        """Say once that no readings come any more; a tone that goes on would say the opposite."""
        silent = time.monotonic() - self._heard_s > self._patience_s
        if silent and not self._silent and math.isfinite(self._heard_s):
            self.tone.play(Cue.LOST)
        if silent:
            self.tone.follow(math.nan)
        self._silent = silent

    def close(self) -> None:
        """Fall silent for good."""
        if self._speaker is not None:
            self._speaker.close()
            self._speaker = None

    def _load(self) -> bool:
        """Take what was kept; True where the sound was on."""
        try:
            found = read_kept(self._path)
            self.volume = min(max(float(found["volume"]), _LOUDER), 1.0)
            self.follows = Followed(found["follows"])
            return found["on"] is True
        except (OSError, ValueError, TypeError, KeyError):
            return False

    def _keep(self) -> None:
        """Keep it for the next time; where that fails, only the convenience is lost."""
        values = {"on": self.on, "volume": self.volume, "follows": self.follows.value}
        keep(self._path, values)


def cue_for(before: SpanKind | None, now: SpanKind | None) -> Cue | None:
    """Give the cue of a change of what the motor does; None where it needs none."""
    if now is None or now is before:
        return None
    if now in _OVER:
        return None if before in _OVER else Cue.OVER
    if now in _DEAD:
        return None if before in _DEAD else Cue.DEAD
    if now in {SpanKind.RUNNING, SpanKind.UNDER} and before in _DEAD | _OVER:
        return Cue.RETURNED
    return None

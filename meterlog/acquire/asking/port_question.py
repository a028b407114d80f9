"""PortQuestion: finds out what is at one port: listens first, then asks, politely."""

from __future__ import annotations

import threading
import time
from collections.abc import Callable, Sequence
from dataclasses import replace

from meterlog.acquire.asking.listening import FREE_RUNNING, Listening, listen_s
from meterlog.acquire.asking.polite_modbus import modbus_answer
from meterlog.acquire.asking.polite_scpi import introduction, may_be, names_it, scpi_fits
from meterlog.acquire.asking.port_answer import Fit, Outcome, PortAnswer
from meterlog.acquire.asking.port_line import Opener, PortLine, suited
from meterlog.acquire.asking.port_words import (
    garbled,
    no_profile,
    no_registers,
    nothing_heard,
    unknown,
)
from meterlog.acquire.talk import VirtualSign
from meterlog.instruments import PortInfo, open_link
from meterlog.model import Identity
from meterlog.model.errors import MeterlogError
from meterlog.profile import LinkSettings, MeterProfile

_SCPI = ("scpi", "scpi-blocks")
_USUAL_BAUDS = (9600, 115_200, 19_200, 38_400, 57_600, 4800, 2400, 1200)
_OTHER_SPEED_S = 0.5
_SLOW_S = 0.45
_SLOW_INTERVALS, _SLOWEST_S = 3.0, 5.0
_ENOUGH_TO_JUDGE = 16

Found = list[tuple[MeterProfile, Fit]]
Settings = list[tuple[LinkSettings, list[MeterProfile]]]


class PortQuestion:
    """One port, asked once.

    In this order, until a profile fits: listens without sending at the line settings of every
    profile that talks by itself; where a stream comes that none of them understands, listens at
    the usual line speeds; asks ``*IDN?``, and then for one reading by ``READ?`` or ``FETCh?``;
    reads Modbus registers; listens longer for slow meters. No setup line is sent. The control
    lines DTR and RTS stand as each profile says.

    Parameters
    ----------
    port : PortInfo
        One that is not usable is not opened.
    profiles : sequence of MeterProfile
        In the order in which equals are given.
    stop : threading.Event
        Set it to end early.
    tell : callable
        Told what is being done, in a few words; called on the thread that asks.
    opener : callable
        As :func:`meterlog.instruments.open_link`.
    """

    def __init__(
        self,
        port: PortInfo,
        profiles: Sequence[MeterProfile],
        stop: threading.Event,
        tell: Callable[[str], None] = lambda _: None,
        opener: Opener = open_link,
    ) -> None:
        usb = f"{port.vendor}:{port.product}"
        here = suited(profiles, port.device)
        self._port = port
        self._usb = usb
        self._profiles = sorted(here, key=lambda p: usb not in p.recognition.usb)
        self._stop = stop
        self._tell = tell
        self._line = PortLine(port.device, opener)
        self._sign = VirtualSign()
        self._identity = Identity()
        self._heard = b""
        self._talks = False
        self._reason = ""

    def ask(self) -> PortAnswer:
        """Ask and give the answer. Closes the port whatever happens; raises no LinkError."""
        start_s = time.monotonic()
        try:
            answer = self._refused() or self._answer()
        except MeterlogError as error:
            reason = f"{error.message} {error.remedy}".strip()
            answer = PortAnswer(self._port.device, Outcome.CLOSED, reason=reason)
        finally:
            self._line.close()
        return replace(
            answer, tried=tuple(self._line.tried), took_s=round(time.monotonic() - start_s, 3)
        )

    def _refused(self) -> PortAnswer | None:
        if self._stop.is_set():
            return self._nothing()
        if not self._port.usable:
            return PortAnswer(self._port.device, Outcome.CLOSED, reason=self._port.reason)
        if not self._profiles:
            reason = "no profile is for this kind of port. `meterlog ports` lists the profiles."
            return PortAnswer(self._port.device, Outcome.UNKNOWN, reason=reason)
        return None

    def _answer(self) -> PortAnswer:
        self._tell("opening")
        self._line.at(self._profiles[0].link)
        for step in (self._listen, self._try_speeds, self._ask, self._listen_long):
            found = step()
            if found:
                return self._found(found)
            if self._stop.is_set():
                break
        return self._nothing()

    def _groups(self, dialects: Sequence[str] | None = None) -> Settings:
        wanted = [p for p in self._profiles if dialects is None or p.dialect in dialects]
        return self._line.groups(wanted) if wanted else []

    def _listen(self) -> Found:
        for settings, profiles in self._groups(FREE_RUNNING):
            found = self._hear(settings, profiles, listen_s(profiles))
            if found or self._stop.is_set():
                return found
        return []

    def _hear(
        self, settings: LinkSettings, profiles: Sequence[MeterProfile], seconds: float
    ) -> Found:
        self._tell(f"listening at {settings.short}" if self._line.wired else "listening")
        hearing = Listening(profiles, self._sign)
        hearing.listen(self._line.at(settings), seconds, self._stop)
        self._talks = self._talks or hearing.talks
        self._heard = hearing.heard or self._heard
        return hearing.fits()

    def _try_speeds(self) -> Found:
        """Listen to a talker that nobody understands at the other usual line speeds."""
        if len(self._heard) < _ENOUGH_TO_JUDGE or not self._line.wired:
            return []
        done = {(settings.short, settings.dtr, settings.rts) for settings, _ in self._groups()}
        for profile in self._profiles:
            for baud in _USUAL_BAUDS:
                settings = replace(profile.link, baud=baud)
                key = (settings.short, settings.dtr, settings.rts)
                if key in done or profile.dialect not in FREE_RUNNING or self._stop.is_set():
                    continue
                done.add(key)
                found = self._hear(settings, self._profiles, _OTHER_SPEED_S)
                if found:
                    return [(p, _at_other_speed(p, fit, settings)) for p, fit in found]
        return []

    def _ask(self) -> Found:
        if self._talks:
            return []  # it sends without being asked, so it would not listen either
        for settings, profiles in self._groups((*_SCPI, "modbus-rtu")):
            found = self._ask_scpi(settings, [p for p in profiles if p.dialect in _SCPI])
            if not found and self._identity == Identity() and not self._stop.is_set():
                found = self._ask_modbus(settings, [p for p in profiles if p.dialect not in _SCPI])
            if found or self._identity != Identity() or self._stop.is_set():
                return found
        return []

    def _ask_scpi(self, settings: LinkSettings, profiles: list[MeterProfile]) -> Found:
        if not profiles:
            return []
        self._tell(f"asking *IDN?{self._at(settings)}")
        link = self._line.at(settings)
        said = introduction(link)
        self._heard = said.heard or self._heard
        self._sign.hear(said.heard)
        if said.identity is None:
            return []
        self._identity = said.identity
        self._sign.meet(said.identity)
        self._tell("asking for one reading")
        found = scpi_fits(link, profiles, said.identity)
        self._reason = "" if found else no_profile(said.identity)
        return found

    def _ask_modbus(self, settings: LinkSettings, profiles: list[MeterProfile]) -> Found:
        if not profiles:
            return []
        self._tell(f"reading Modbus registers{self._at(settings)}")
        answer = modbus_answer(self._line.at(settings), profiles)
        if answer.fits:
            self._identity = answer.identity
            self._sign.meet(answer.identity)
        elif answer.refusals:
            self._reason = no_registers(answer.refusals)
        return answer.fits

    def _at(self, settings: LinkSettings) -> str:
        return f" at {settings.short}" if self._line.wired else ""

    def _listen_long(self) -> Found:
        """Give meters of less than about two readings a second the time they need."""
        if self._identity != Identity() or self._talks:
            return []
        for settings, profiles in self._groups(FREE_RUNNING):
            slowest_s = max(profile.interval_s for profile in profiles)
            if slowest_s < _SLOW_S or self._stop.is_set():
                continue
            seconds = min(_SLOW_INTERVALS * slowest_s, _SLOWEST_S)
            found = self._hear(settings, profiles, seconds)
            if found:
                return found
        return []

    def _found(self, found: Found) -> PortAnswer:
        ranked = sorted(found, key=lambda pair: self._rank(pair[0]))
        return PortAnswer(
            self._port.device,
            Outcome.FITS,
            tuple(fit for _, fit in ranked),
            self._identity,
            simulated=self._sign.seen,
        )

    def _rank(self, profile: MeterProfile) -> int:
        """Give 0 for a profile that names this instrument, 1 for a generic one, 2 for others'."""
        named = names_it(profile) and self._identity != Identity()
        if self._usb in profile.recognition.usb or (named and may_be(profile, self._identity)):
            return 0
        return 2 if profile.recognition.usb or names_it(profile) else 1

    def _nothing(self) -> PortAnswer:
        tried = tuple(self._line.tried)
        outcome, reason = Outcome.SILENT, nothing_heard(tried)
        if self._reason:
            outcome, reason = Outcome.UNKNOWN, self._reason
        elif self._stop.is_set():
            outcome, reason = Outcome.STOPPED, "stopped before it was known."
        elif self._heard and garbled(self._heard):
            outcome, reason = Outcome.GARBLED, unknown(self._heard, tried)
        elif self._heard:
            outcome, reason = Outcome.UNKNOWN, unknown(self._heard, tried)
        return PortAnswer(
            self._port.device,
            outcome,
            (),
            self._identity,
            simulated=self._sign.seen,
            reason=reason,
        )


def _at_other_speed(profile: MeterProfile, fit: Fit, settings: LinkSettings) -> Fit:
    if settings.short == profile.link.short:
        return fit
    note = (
        f"it talks at {settings.short}, the profile says {profile.link.short}: set the meter so, "
        f"or put baud = {settings.baud} under [link] in a copy of the profile"
    )
    return replace(fit, note="; ".join(words for words in (note, fit.note) if words))

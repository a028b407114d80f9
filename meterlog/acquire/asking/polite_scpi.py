"""What a SCPI instrument is asked that changes nothing in it: who it is, and for one reading."""

from __future__ import annotations

import re
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from meterlog.acquire.asking.port_answer import Fit, live_values
from meterlog.instruments import (
    BlockDecoder,
    Link,
    Readings,
    ScpiAnswerDecoder,
    parse_identity,
)
from meterlog.instruments.ieee_block import BlockState, block_header
from meterlog.model import Channel, Identity
from meterlog.profile import MeterProfile

ANSWER_S = 0.9
_FLOWING_S = 3.0
"""A long block on a slow line: patience lasts as long as bytes keep coming, up to this."""
_PAUSE_S = 0.2
_MOST_BYTES = 262_144
_ABSURD, _NOTHING = 1e6, 1e-4
_ROWS_TO_JUDGE = 8
_SMOOTH = 0.05
_HARMLESS = re.compile(r":?(READ|FETC|FETCH)(:[A-Z0-9:]+)?\?.*", re.IGNORECASE)
_IDENTITY = re.compile(rb"[\x20-\x7e]*,[\x20-\x7e]*")
_IDN = b"*IDN?"


@dataclass(frozen=True, slots=True)
class Introduction:
    """What came of ``*IDN?``.

    Attributes
    ----------
    identity : Identity or None
        None when nothing, or nothing that could be one, was said.
    heard : bytes
        All that came.
    """

    identity: Identity | None
    heard: bytes


def introduction(link: Link) -> Introduction:
    """Ask ``*IDN?``, and nothing else.

    Raises
    ------
    LinkLost
        If the port went away.

    Source
    ------
    IEEE 488.2-1992, 10.14: four fields separated by commas (clause from memory). An answer of one
    field only is not taken for an identity: modems and consoles answer anything with one word.
    """
    heard = bytearray()

    def take(data: bytes) -> bool:
        heard.extend(data)
        return _first_answer(bytes(heard)) is not None

    exchange(link, _IDN, take)
    answer = _first_answer(bytes(heard))
    if answer is None or not _IDENTITY.fullmatch(answer):
        return Introduction(None, bytes(heard))
    return Introduction(parse_identity(answer.decode("latin-1")), bytes(heard))


def _first_answer(heard: bytes) -> bytes | None:
    """Give the first whole line that is not the question come back."""
    lines = [line.strip() for line in re.split(rb"[\r\n]", heard)[:-1]]
    return next((line for line in lines if line and line.upper() != _IDN), None)


def exchange(link: Link, question: bytes, take: Callable[[bytes], bool]) -> None:
    """Send a question and hand over what comes, until ``take`` says that it is enough.

    Waits under a second for the beginning of an answer, and up to 3 s while it keeps coming.

    Raises
    ------
    LinkLost
        If the port went away.
    """
    link.drop_input()
    link.write(question + b"\n")
    start_s = heard_s = time.monotonic()
    begun, size = False, 0
    while size < _MOST_BYTES:
        now_s = time.monotonic()
        end_s = start_s + ANSWER_S
        if begun:
            end_s = min(max(end_s, heard_s + _PAUSE_S), start_s + _FLOWING_S)
        if now_s >= end_s:
            return
        data = link.read(end_s - now_s)
        if data:
            begun, heard_s, size = True, time.monotonic(), size + len(data)
            if take(data):
                return


def may_be(profile: MeterProfile, identity: Identity) -> bool:
    """Tell whether what a profile says of maker and model allows this instrument."""
    known = profile.recognition
    return bool(
        re.search(known.maker, identity.maker, re.IGNORECASE)
        and re.search(known.model, identity.model, re.IGNORECASE)
    )


def names_it(profile: MeterProfile) -> bool:
    """Tell whether a profile says which maker or model it is for; else it is a generic one."""
    return bool(profile.recognition.maker or profile.recognition.model)


def scpi_fits(
    link: Link, profiles: Sequence[MeterProfile], identity: Identity
) -> list[tuple[MeterProfile, Fit]]:
    """Find the profiles whose query is answered by one value for each of their channels.

    Only ``READ?`` and ``FETCh?`` are sent, each once, and no setup: what the instrument is set to
    measure stays as it is. A profile with another query is given without a reading where it is
    the one that names this instrument.

    Parameters
    ----------
    link : Link
    profiles : sequence of MeterProfile
        Of the dialects ``scpi`` and ``scpi-blocks``.
    identity : Identity

    Returns
    -------
    list of (MeterProfile, Fit)
        In the order of the profiles; those with a reading only, where there is any such.

    Raises
    ------
    LinkLost
        If the port went away.
    """
    here = [profile for profile in profiles if may_be(profile, identity)]
    here.sort(key=lambda profile: not names_it(profile))
    found: list[tuple[MeterProfile, Fit]] = []
    for query in dict.fromkeys(profile.scpi.query.strip() for profile in here):
        same = [profile for profile in here if profile.scpi.query.strip() == query]
        if not _HARMLESS.fullmatch(query):
            found += [(p, _untried(p, f"not asked for a reading: {query}")) for p in same]
        else:
            found += _answered(link, query, same)
        if any(fit.values for _, fit in found):
            break
    read = [(profile, fit) for profile, fit in found if fit.values]
    return read or [(profile, fit) for profile, fit in found if names_it(profile)] or found


def _answered(
    link: Link, query: str, profiles: Sequence[MeterProfile]
) -> list[tuple[MeterProfile, Fit]]:
    ears = [(profile, _decoder(profile)) for profile in profiles]
    got: dict[str, Readings] = {}
    heard = bytearray()

    def take(data: bytes) -> bool:
        heard.extend(data)
        for profile, decoder in ears:
            # Read in another form than it was written in, a number may be a signalling NaN.
            with np.errstate(all="ignore"):
                readings = decoder.feed(data)
            if len(readings):
                got[profile.name] = readings
        return bool(got) or (not heard.lstrip().startswith(b"#") and heard.endswith(b"\n"))

    exchange(link, query.encode("ascii", "replace"), take)
    for profile, decoder in ears:
        if profile.name not in got and isinstance(decoder, BlockDecoder):
            got[profile.name] = decoder.message_end()
    likely = [p for p in profiles if p.name in got and is_plausible(p.channels, got[p.name])]
    fits = [(p, _fit(p, got.get(p.name), bytes(heard))) for p in likely or profiles]
    return [(profile, fit) for profile, fit in fits if fit is not None]


def is_plausible(channels: Sequence[Channel], readings: Readings) -> bool:
    """Tell whether samples look like volts and amperes, not like other numbers read amiss.

    A block does not say of which form its numbers are. Read in another form than they were
    written in, some become absurdly large, or all next to nothing, or each channel jumps from row
    to row by much of what it measures. Two byte orders of quiet whole numbers can't be told apart.
    False also when there is nothing to judge by, as with all inputs open.

    Source
    ------
    Common practice, no source; checked with all forms against each other by
    ``tests/unit/acquire/test_polite_scpi.py``.
    """
    with np.errstate(all="ignore"):
        values = np.array([channel.scale for channel in channels]) * readings.values
    values = values[np.isfinite(values).all(axis=1)]
    if not len(values) or not _NOTHING < float(np.abs(values).max()) < _ABSURD:
        return False
    if len(values) < _ROWS_TO_JUDGE:
        return True
    jumps = np.median(np.abs(np.diff(values, axis=0)), axis=0)
    return bool((jumps < _SMOOTH * np.median(np.abs(values), axis=0)).any())


def _fit(profile: MeterProfile, readings: Readings | None, heard: bytes) -> Fit | None:
    """Give how a profile fits the answer to its query; None when it does not."""
    query = profile.scpi.query
    if readings is not None and len(readings):
        why = f"answers *IDN? and {query}"
        return Fit(profile.name, profile.title, why, live_values(profile.channels, readings))
    if not heard:
        return _untried(profile, f"does not answer {query} as it is set now")
    if profile.dialect == "scpi-blocks" and _is_empty_block(heard):
        return _untried(profile, f"gives no samples to {query} now")
    return None


def _decoder(profile: MeterProfile) -> ScpiAnswerDecoder | BlockDecoder:
    if profile.dialect == "scpi-blocks":
        return BlockDecoder(profile.blocks, profile.channels)
    return ScpiAnswerDecoder(profile.channels)


def _is_empty_block(heard: bytes) -> bool:
    header = block_header(heard.lstrip())
    return header.state is BlockState.COMPLETE and header.size == 0


def _untried(profile: MeterProfile, note: str) -> Fit:
    return Fit(profile.name, profile.title, "answers *IDN?", (), note)

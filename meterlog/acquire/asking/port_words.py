"""Why nothing was found at a port, and what to do, in sentences."""

from __future__ import annotations

from collections.abc import Sequence

from meterlog.instruments.line_speed import FOREIGN_SHARE, foreign_share
from meterlog.model import Identity

_SHOWN = 40


def garbled(heard: bytes) -> bool:
    """Tell whether bytes are no text, as text becomes at a wrong line speed."""
    return foreign_share(heard) >= FOREIGN_SHARE


def unknown(heard: bytes, tried: Sequence[str]) -> str:
    """Say that what came is not understood.

    Parameters
    ----------
    heard : bytes
        What came, not empty.
    tried : sequence of str
        Line settings at which was listened; empty where there is no serial wire.
    """
    if b"*IDN?" in heard:
        return (
            "what is sent comes back: an echo, or a plug with two pins bridged. Check what is "
            "connected there."
        )
    if not garbled(heard):
        lines = [line for line in heard.decode("ascii", "replace").splitlines() if line.strip()]
        # The first line may have been joined in its middle, the last may still be going on.
        line = (lines[1:-1] or lines[:1] or [""])[0].strip()
        shown = line if len(line) <= _SHOWN else f"{line[:_SHOWN]}…"
        return (
            f"text comes, but no profile reads it: {shown!r}. Copy the nearest profile and change "
            "[lines] to fit; `meterlog check-profile` checks it."
        )
    if not tried:
        return (
            f"bytes come that no profile understands: {heard[-12:].hex(' ')}. Check what is "
            "connected there."
        )
    return (
        f"bytes come, none is understood at {', '.join(tried)}: the line speed is probably another "
        "one. Look for it in the meter's menu or manual, and set baud under [link] in a copy of "
        "the profile."
    )


def nothing_heard(tried: Sequence[str]) -> str:
    """Say that nothing came at all."""
    at = f" at {', '.join(tried)}" if tried else ""
    return (
        f"nothing was heard{at}, and nothing answered. Check that the meter is on and set to send "
        "(many have a key for it), its cable, and that its line speed is one of a profile."
    )


def no_profile(identity: Identity) -> str:
    """Say that an instrument answers ``*IDN?`` but no profile fits it."""
    who = " ".join(word for word in (identity.maker, identity.model) if word)
    return (
        f"answers *IDN? as {who or 'nobody'}, but no profile fits its readings. Copy the nearest "
        "SCPI profile, and put in its query and channels; `meterlog check-profile` checks it."
    )


def no_registers(refusals: Sequence[str]) -> str:
    """Say that a Modbus device answers, but not with the registers of any profile."""
    return (
        f"a Modbus device answers, but not with the registers of a profile ({'; '.join(refusals)})."
        " Copy the nearest profile and put in the register map of its manual."
    )

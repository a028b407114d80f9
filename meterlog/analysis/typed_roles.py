"""TypedRoles: says of every statement that rests on readings typed by hand that it does."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from meterlog.model import Finding, FindingKind, Instrument, Role

_BY_VOLTAGE = (FindingKind.DEAD, FindingKind.FEED_LOST, FindingKind.GROUND_LOST)
_JUDGED = (Role.MOTOR_CURRENT, Role.MOTOR_FEED, Role.MOTOR_RETURN)


def _words(role: Role) -> str:
    return role.value.replace("-", " ")


class TypedRoles:
    """Knows which of the judged channels are typed by hand.

    Parameters
    ----------
    instruments : sequence of Instrument
    """

    def __init__(self, instruments: Sequence[Instrument]) -> None:
        self._keys: dict[Role, str] = {}
        played: set[Role] = set()
        for instrument in instruments:
            for channel in instrument.channels:
                if instrument.typed and channel.role not in played and channel.role in _JUDGED:
                    self._keys[channel.role] = instrument.key
                played.add(channel.role)

    def __contains__(self, role: Role) -> bool:
        """Tell whether the channel that plays ``role`` is typed by hand."""
        return role in self._keys

    def marked(self, finding: Finding) -> Finding:
        """Give a finding whose sentence says which of its channels were typed by hand."""
        if finding.kind is FindingKind.NO_DATA:
            return finding
        decided = _JUDGED if finding.kind in _BY_VOLTAGE else _JUDGED[:1]
        typed = ", ".join(_words(role) for role in decided if role in self._keys)
        if not typed:
            return finding
        statement = f"{finding.statement.removesuffix('.')} (typed by hand: {typed})."
        return replace(finding, statement=statement)

    def cause(self) -> str:
        """Give why there may be no reading of the motor current; empty where it is not typed."""
        key = self._keys.get(Role.MOTOR_CURRENT)
        return f"{key}: no reading was typed for this time" if key else ""

    def notes(self) -> list[str]:
        """Give what the reader of a review must know about them; empty when none is typed."""
        if not self._keys:
            return []
        named = ", ".join(f"{_words(role)} ({key})" for role, key in self._keys.items())
        told = [
            f"Typed by hand: {named}. Such a reading is what somebody saw on a meter at that"
            " moment; no program has seen it."
        ]
        if Role.MOTOR_CURRENT in self._keys:
            told.append(
                "The motor current is typed by hand: what it did from one reading to the next, a"
                " dropout above all, is not known."
            )
        return told

"""EventChain: each line of ``events.jsonl`` holds a hash of all lines before it.

The chain makes a line that was changed, moved, put in or taken out tell itself before anybody has
sealed the recording. It can't stop somebody who writes all lines anew: that is what the seal and
the signature of a pack are for, and what should be written down elsewhere.

Canonical bytes
---------------
A line is a JSON object whose last two members are ``chain`` and ``crc32``. Its *body* is every
byte of it, as it stands in the file, before the ``, "chain": "``. Nothing is parsed and written
again, so there is one way only to read it::

    link 0 = SHA-256(all bytes of data/about.json)
    link n = SHA-256(link n-1 (32 bytes), body of line n)         written as 64 lower-case digits

The checksum ``crc32`` covers the link too. Recordings from before have neither links nor this
protection; they open as ever.

Source
------
SHA-256: FIPS 180-4. Chains of hashes for logs: B. Schneier and J. Kelsey, "Secure Audit Logs to
Support Computer Forensics", ACM TISSEC 2 (1999), without its keys.
"""

from __future__ import annotations

import hashlib
import re
from dataclasses import dataclass

from meterlog.model import Event
from meterlog.recording import layout
from meterlog.recording.checked_text import crc_holds, with_crc
from meterlog.recording.event_lines import event_text

_LINKED = re.compile(rb'(.*), "chain": "([0-9a-f]{64})", "crc32": "[0-9a-f]{8}"\}', re.DOTALL)
_STATED = re.compile(rb"(?<![0-9a-f])[0-9a-f]{64}(?![0-9a-f])")
_NEAR = 50
"""How many lines off the one is looked for that a line follows from."""


class EventChain:
    """Writes the lines of one ``events.jsonl``.

    Parameters
    ----------
    about : bytes
        The whole of ``about.json``.
    """

    def __init__(self, about: bytes) -> None:
        self._link = hashlib.sha256(about).digest()

    @classmethod
    def behind(cls, content: bytes, about: bytes) -> EventChain:
        """Go on behind the last whole line of ``content``; a torn or damaged one is passed over."""
        chain = cls(about)
        for number, line in enumerate(content.split(b"\n"), 1):
            found = _read(number, line)
            if found.holds and found.link:
                chain._link = found.link
        return chain

    def line(self, event: Event) -> bytes:
        """Give one event as the next line.

        Parameters
        ----------
        event : Event

        Returns
        -------
        bytes
            As :func:`~meterlog.recording.event_lines.event_text`, with ``chain`` and ``crc32``
            added, and a line feed.
        """
        return self.object_line(event_text(event))

    def object_line(self, text: str) -> bytes:
        """Give any JSON object, on one line and with at least one member, as the next line."""
        return self.body_line(text.encode("utf-8", "backslashreplace")[:-1])

    def body_line(self, body: bytes) -> bytes:
        """Give the next line by its body."""
        self._link = _next_link(self._link, body)
        return with_crc(f'{body.decode()}, "chain": "{self._link.hex()}"}}')


def chained_anew(content: bytes, about: bytes) -> bytes:
    """Give the lines of a whole, chained ``events.jsonl`` on top of another ``about.json``.

    For who completes ``about.json`` before a recording is sealed, such as an import.

    Parameters
    ----------
    content : bytes
    about : bytes

    Raises
    ------
    ValueError
        If a line is not whole.
    """
    chain = EventChain(about)
    found = [_LINKED.fullmatch(line) for line in content.splitlines()]
    if None in found:
        raise ValueError("a line of the events is not whole")
    return b"".join(chain.body_line(line[1]) for line in found if line)


@dataclass(frozen=True, slots=True)
class ChainCheck:
    """What the chain says.

    Attributes
    ----------
    chained : bool
        False when no line holds a link: a recording from before.
    breaks : tuple of str
        One text for each line that does not follow from the one before it.
    """

    chained: bool
    breaks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Line:
    """A whole line of the file: what it states, and whether its own checksum holds."""

    number: int
    body: bytes
    link: bytes
    holds: bool


def check_chain(content: bytes, about: bytes, name: str = layout.EVENTS) -> ChainCheck:
    """Check that every line follows from the one before it, and the first from ``about.json``.

    Parameters
    ----------
    content : bytes
        The whole of ``events.jsonl``; may be cut anywhere. A torn last line is passed over, as are
        lines that do not match their own checksum: whoever parses the lines tells those.
    about : bytes
        The whole of ``about.json``.
    name : str
        The file, for messages.

    Returns
    -------
    ChainCheck
    """
    lines = [_read(number, line) for number, line in enumerate(content.split(b"\n")[:-1], 1)]
    if not any(line.link and line.holds for line in lines):
        return ChainCheck(chained=False, breaks=())
    start = _Line(0, b"", hashlib.sha256(about).digest(), holds=True)
    breaks: list[str] = []
    before = start
    possible = {start.link}
    for line in lines:
        if not line.holds:
            possible = _past_damage(possible, line)
            before = line
            continue
        if not line.link:
            breaks.append(f"{name}: line {line.number} holds no link of the chain: it was put in.")
            continue
        if possible and line.link not in _onward(possible, line.body):
            breaks.append(f"{name}: line {line.number} {_why(line, before, [start, *lines])}")
        before, possible = line, {line.link}
    return ChainCheck(chained=True, breaks=tuple(breaks))


def _read(number: int, line: bytes) -> _Line:
    found = _LINKED.fullmatch(line)
    if found:
        return _Line(number, found[1], bytes.fromhex(found[2].decode()), crc_holds(line))
    if crc_holds(line):
        return _Line(number, b"", b"", holds=True)
    stated = _STATED.findall(line)
    body, _, _ = line.rpartition(b', "chain": "')
    return _Line(number, body, bytes.fromhex(stated[-1].decode()) if stated else b"", holds=False)


def _past_damage(possible: set[bytes], line: _Line) -> set[bytes]:
    """Give what the line behind a damaged one may rest on; nothing if that can't be known.

    Its body or its link was hit: one of the two still leads on. Or it is a torn line that never
    was in the chain: then what was before it does.
    """
    if not line.body:
        return {line.link, *possible} if line.link else set()
    onward = _onward(possible, line.body) if len(possible) < _NEAR else set()
    return {line.link, *onward, *possible} - {b""}


def _onward(links: set[bytes], body: bytes) -> set[bytes]:
    return {_next_link(link, body) for link in links}


def _next_link(link: bytes, body: bytes) -> bytes:
    return hashlib.sha256(link + body).digest()


def _why(line: _Line, before: _Line, lines: list[_Line]) -> str:
    """Say what may have happened: what it does follow from, if that is near, tells more."""
    near = lines[max(0, line.number - _NEAR) : line.number + _NEAR]
    for other in (lines[0], *near):
        if other.link and other is not line and _next_link(other.link, line.body) == line.link:
            return (
                f"follows from {_called(other)}, not from {_called(before)}: lines were put in, "
                "taken out or moved."
            )
    return (
        f"does not follow from {_called(before)}: it was changed, or lines before it were taken "
        "out or moved."
        if before.number
        else f"does not follow from {_called(before)}: one of the two was changed, or lines before "
        "it were taken out."
    )


def _called(line: _Line) -> str:
    return f"line {line.number}" if line.number else layout.ABOUT

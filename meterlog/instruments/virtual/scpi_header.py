"""ScpiHeader: matches a header against a command of the tree, short or long, any case."""

from __future__ import annotations

import re

_NODE = re.compile(r"(\[?):?([*A-Z]+)([a-z]*)(\]?)")


def header_pattern(command: str) -> re.Pattern[str]:
    """Give the pattern that matches all spellings of a command.

    Parameters
    ----------
    command : str
        As a manual writes it: capitals are the short form, brackets mean optional, such as
        ``SYSTem:ERRor[:NEXT]?``.

    Returns
    -------
    re.Pattern
        Matches a whole header without its leading colon; nodes may carry a numeric suffix.

    Source
    ------
    SCPI-1999, volume 1, 6.2 (headers) and 5.1 (notation); clauses from memory.
    """
    query = command.endswith("?")
    text = command.removesuffix("?").replace("[SENSe:]", "[:SENSe]:")
    parts = []
    for opening, short, rest, _ in _NODE.findall(text):
        node = f"{re.escape(short)}(?:{rest.upper()})?[0-9]*" if rest else re.escape(short)
        # Every node is led by a colon; the header gets one in front before it is matched.
        parts.append(f"(?::{node})?" if opening else f":{node}")
    return re.compile("".join(parts) + (r"\?" if query else ""), re.IGNORECASE)


def fits(pattern: re.Pattern[str], header: str) -> bool:
    """Tell whether ``header``, with or without leading colon, is this command."""
    return pattern.fullmatch(":" + header.removeprefix(":")) is not None


def units(message: str) -> list[str]:
    """Split a program message at its semicolons, except those within quotes."""
    parts = re.findall(r"""(?:[^;"']|"[^"]*"|'[^']*'|["'])+""", message)
    return [part.strip() for part in parts if part.strip()]

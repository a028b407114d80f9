"""Whether a port that was chosen is there, and in words if it is not."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from meterlog.instruments import PortInfo
from meterlog.window.words import say


def absent_words(url: str, ports: Sequence[PortInfo]) -> str:
    """Say that a port is not there, and what to do.

    Parameters
    ----------
    url : str
    ports : sequence of PortInfo
        Those that are there.

    Returns
    -------
    str
        Empty when it is there, when nothing is chosen, or for an address, of which nobody can
        tell before it is opened.
    """
    is_address = ":" in url and not url.startswith("/")
    if not url or is_address or any(port.device == url for port in ports) or _exists(url):
        return ""
    return say(
        "{url} is not there now. Plug the lead in, then press Look for ports again.", url=url
    )


def _exists(url: str) -> bool:
    try:
        return Path(url).exists()
    except (OSError, ValueError):
        return False

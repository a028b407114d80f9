"""PortLine: one port while it is asked, opened anew whenever its line settings change."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from meterlog.instruments import Link
from meterlog.profile import HidBridge, LinkSettings, MeterProfile

Opener = Callable[[str, LinkSettings], Link]
HID = "hid://"
_MESSAGES = ("usbtmc://", "visa://")
_ASKED_BY_TEXT = ("scpi", "scpi-blocks")


def suited(profiles: Sequence[MeterProfile], url: str) -> tuple[MeterProfile, ...]:
    """Give the profiles that an instrument at ``url`` could have at all, in their order.

    What is typed has no port; what hangs on a bridge chip is found at such an address only; on a
    port that carries whole messages SCPI is spoken.
    """
    here = [profile for profile in profiles if not profile.typed]
    if url.startswith(_MESSAGES):
        return tuple(profile for profile in here if profile.dialect in _ASKED_BY_TEXT)
    bridged = url.startswith(HID)
    return tuple(p for p in here if (p.link.hid != HidBridge()) == bridged)


class PortLine:
    """The link to one port.

    Parameters
    ----------
    url : str
    opener : callable
        As :func:`meterlog.instruments.open_link`.

    Attributes
    ----------
    wired : bool
        Line settings matter here; False for a network port or a pseudo terminal. Known once it
        has been opened.
    tried : list of str
        The settings it was opened with, where they matter.
    """

    def __init__(self, url: str, opener: Opener) -> None:
        self.wired = True
        self.tried: list[str] = []
        self._url = url
        self._opener = opener
        self._link: Link | None = None
        self._settings: LinkSettings | None = None

    def groups(
        self, profiles: Sequence[MeterProfile]
    ) -> list[tuple[LinkSettings, list[MeterProfile]]]:
        """Put together the profiles that can be tried at one opening, in their order."""
        groups: dict[LinkSettings, list[MeterProfile]] = {}
        for profile in profiles:
            settings = profile.link if self.wired else profiles[0].link
            groups.setdefault(settings, []).append(profile)
        return list(groups.items())

    def at(self, settings: LinkSettings) -> Link:
        """Give the link with these settings; the open one where it has them or needs none.

        Raises
        ------
        LinkError
            If the port can't be opened.
        """
        if self._link is not None and (settings == self._settings or not self.wired):
            return self._link
        self.close()
        link = self._link = self._opener(self._url, settings)
        self._settings = settings
        self.wired = link.byte_s > 0.0 or self._url.startswith(HID)
        if link.byte_s > 0.0 and settings.short not in self.tried:
            self.tried.append(settings.short)
        return link

    def close(self) -> None:
        """Close the port. Never raises."""
        if self._link is not None:
            self._link.close()
            self._link = None

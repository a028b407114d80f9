"""What is asked of a bench of several meters: where they connect, and what happens to them."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from meterlog.instruments.virtual.script import Happening, order
from meterlog.instruments.virtual.trouble import Trouble, trouble
from meterlog.model.errors import UsageError
from meterlog.profile import MeterProfile


def read_probes(
    texts: Sequence[str], keys: Sequence[str], profiles: Sequence[MeterProfile]
) -> dict[str, dict[str, str]]:
    """Give what is connected to each meter's channels.

    Parameters
    ----------
    texts : sequence of str
        ``CHANNEL=POINT`` or ``METER.CHANNEL=POINT``; the meter may be left out where only one has
        such a channel.
    keys : sequence of str
    profiles : sequence of MeterProfile

    Returns
    -------
    dict of key to dict of channel to point

    Raises
    ------
    UsageError
        If a text is not of this form, or it is not clear which meter is meant.
    """
    probes: dict[str, dict[str, str]] = {key: {} for key in keys}
    for text in texts:
        place, equals, point = text.partition("=")
        if not equals:
            raise UsageError(
                f"{text!r} has no '='.",
                subject="--probe",
                remedy="Expected CHANNEL=POINT or METER.CHANNEL=POINT.",
            )
        meter, _, channel = place.rpartition(".")
        probes[_meant(meter, channel, keys, profiles)][channel] = point
    return probes


def _meant(meter: str, channel: str, keys: Sequence[str], profiles: Sequence[MeterProfile]) -> str:
    if meter in keys:
        return meter
    pairs = zip(keys, profiles, strict=True)
    having = [key for key, profile in pairs if channel in {c.name for c in profile.channels}]
    if meter:
        raise UsageError(
            f"there is no meter {meter!r}.", subject="--probe", remedy=f"There are: {_list(keys)}."
        )
    if len(keys) == 1 or len(having) == 1:
        return having[0] if having else keys[0]
    raise UsageError(
        f"{channel!r} may be a channel of {_list(having)}."
        if having
        else f"no meter has a channel {channel!r}.",
        subject="--probe",
        remedy=f"Name the meter too: METER.CHANNEL=POINT, with METER {_list(keys)}.",
    )


def read_links(texts: Sequence[str], keys: Sequence[str]) -> dict[str, Path]:
    """Give where a link to each meter's pseudo terminal is kept.

    Parameters
    ----------
    texts : sequence of str
        ``PATH``, with ``METER=`` before it where there are several meters.
    keys : sequence of str

    Raises
    ------
    UsageError
        If it is not clear which meter is meant, or one is named twice.
    """
    links: dict[str, Path] = {}
    for text in texts:
        meter, equals, path = text.partition("=")
        if not equals or meter not in keys:
            meter, path = (keys[0], text) if len(keys) == 1 else ("", text)
        if not meter or not path:
            raise UsageError(
                f"{text!r} does not say which meter's.",
                subject="--link",
                remedy=f"Expected METER=PATH, with METER {_list(keys)}.",
            )
        if meter in links:
            raise UsageError(f"names {meter} twice.", subject="--link", remedy="Leave one out.")
        links[meter] = Path(path)
    return links


def _list(words: Sequence[str]) -> str:
    return " or ".join(words)


def read_plan(
    pairs: Sequence[tuple[str, str]], speeds: int, keys: Sequence[str]
) -> tuple[list[Happening], list[Trouble]]:
    """Give what is planned for the fan, and for the meters.

    Parameters
    ----------
    pairs : sequence of (str, str)
        Seconds of the scenario, and an order as it would be typed.
    speeds : int
        The highest speed there is.
    keys : sequence of str
        Names of the meters.

    Raises
    ------
    UsageError
        If a time is no number of 0 or more, or a line is no order.
    """
    happenings: list[Happening] = []
    troubles: list[Trouble] = []
    for seconds, line in pairs:
        try:
            elapsed_s = float(seconds)
        except ValueError:
            elapsed_s = -1.0
        if not 0.0 <= elapsed_s <= 1e6:
            raise UsageError(
                f"{seconds!r} is no time.", subject="--at", remedy="Expected seconds, 0 or more."
            )
        planned = trouble(line, elapsed_s, keys) or order(line, elapsed_s, speeds)
        if planned is None:
            raise UsageError(
                "quit can't be planned.", subject="--at", remedy="Type it, or press Ctrl-C."
            )
        if isinstance(planned, Trouble):
            troubles.append(planned)
        else:
            happenings.append(planned)
    return happenings, troubles

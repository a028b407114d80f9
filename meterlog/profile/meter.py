"""MeterProfile: how to talk to one kind of meter, and how good its readings are."""

from __future__ import annotations

from dataclasses import dataclass

from meterlog.model import Accuracy, Channel, Quantity
from meterlog.profile.table import TomlTable, parse_toml

DIALECTS = ("scpi", "ascii-lines")


@dataclass(frozen=True, slots=True)
class LinkSettings:
    """Serial line settings; ignored by network links and pseudo terminals.

    Attributes
    ----------
    baud : int, bits per second
    data_bits : int
    parity : str
        ``none``, ``even`` or ``odd``.
    stop_bits : float
    dtr, rts : bool
        State of the two control lines while open.
    """

    baud: int = 9600
    data_bits: int = 8
    parity: str = "none"
    stop_bits: float = 1.0
    dtr: bool = True
    rts: bool = True


@dataclass(frozen=True, slots=True)
class ScpiTalk:
    """What to send to a SCPI meter (IEEE 488.2, SCPI-1999).

    Attributes
    ----------
    setup : tuple of str
        Configuration lines, sent once after ``*IDN?`` and ``*CLS``.
    query : str
        ``READ?``, ``FETC?`` or another that answers one value per channel, comma separated.
    arm : str
        Sent once before the first ``FETC?`` query, such as ``INIT``; empty for none.
    poll_s : float, seconds
        From one query to the next; 0 asks again as soon as an answer is there.
    answer_s : float, seconds
        How long to wait for an answer.
    ask_errors : bool
        Drain ``SYST:ERR?`` after the configuration and after a missing answer.
    """

    setup: tuple[str, ...] = ()
    query: str = "READ?"
    arm: str = ""
    poll_s: float = 0.0
    answer_s: float = 2.0
    ask_errors: bool = True


@dataclass(frozen=True, slots=True)
class LineFormat:
    """How one line of a free-running logger reads.

    Attributes
    ----------
    delimiter : str
        One character between fields; a blank stands for any run of blanks and tabs.
    columns : tuple of str
        What each field is: a channel's name, ``time`` for the device's own time, or ``-`` to skip.
    time_unit_s : float, seconds per unit of the time column
    comment : str
        Lines that begin with this are skipped; empty for none.
    header_lines : int
        Lines skipped after opening.
    decimal : str
        ``.`` or ``,``.
    overload_texts : tuple of str
        Field texts that mean overload, such as ``OL``.
    """

    delimiter: str = ","
    columns: tuple[str, ...] = ()
    time_unit_s: float = 1.0
    comment: str = "#"
    header_lines: int = 0
    decimal: str = "."
    overload_texts: tuple[str, ...] = ("OL", "OVLD", "0L")


@dataclass(frozen=True, slots=True)
class MeterProfile:
    """One kind of meter, as a profile file describes it.

    Attributes
    ----------
    name : str
        File name without ending.
    title : str
        For people.
    dialect : str
        One of :data:`DIALECTS`.
    link : LinkSettings
    channels : tuple of Channel
        In the order of the values in a reading; roles are ``other`` until assigned.
    scpi : ScpiTalk
        Used when the dialect is ``scpi``.
    lines : LineFormat
        Used when the dialect is ``ascii-lines``.
    text : str
        The TOML text as read.
    """

    name: str
    title: str
    dialect: str
    link: LinkSettings
    channels: tuple[Channel, ...]
    scpi: ScpiTalk
    lines: LineFormat
    text: str


def _link(table: TomlTable) -> LinkSettings:
    settings = LinkSettings(
        baud=table.whole("baud", 9600, 50, 4_000_000),
        data_bits=table.whole("data_bits", 8, 5, 8),
        parity=table.text("parity", "none", ("none", "even", "odd")),
        stop_bits=table.number("stop_bits", 1.0, 1.0, 2.0),
        dtr=table.flag("dtr", default=True),
        rts=table.flag("rts", default=True),
    )
    table.finish()
    return settings


def _scpi(table: TomlTable) -> ScpiTalk:
    talk = ScpiTalk(
        setup=table.texts("setup"),
        query=table.text("query", "READ?"),
        arm=table.text("arm", ""),
        poll_s=table.number("poll_s", 0.0, 0.0, 3600.0),
        answer_s=table.number("answer_s", 2.0, 0.01, 600.0),
        ask_errors=table.flag("ask_errors", default=True),
    )
    table.finish()
    return talk


def _lines(table: TomlTable) -> LineFormat:
    overload = table.texts("overload_texts") or LineFormat().overload_texts
    layout = LineFormat(
        delimiter=table.text("delimiter", ","),
        columns=table.texts("columns"),
        time_unit_s=table.number("time_unit_s", 1.0, 1e-9, 86_400.0),
        comment=table.text("comment", "#"),
        header_lines=table.whole("header_lines", 0, 0, 10_000),
        decimal=table.text("decimal", ".", (".", ",")),
        overload_texts=overload,
    )
    if len(layout.delimiter) != 1:
        raise table.error("delimiter", f"is {layout.delimiter!r}", "Expected one character.")
    if layout.delimiter == layout.decimal:
        raise table.error("decimal", "equals the delimiter", "They must differ.")
    table.finish()
    return layout


def _accuracy(table: TomlTable) -> Accuracy | None:
    if not table.names():
        return None
    accuracy = Accuracy(
        percent_of_reading=table.number("percent_of_reading", None, 0.0, 100.0),
        digits=table.number("digits", 0.0, 0.0, 1e6),
        resolution=table.number("resolution", None, 0.0, 1e6),
        floor=table.number("floor", 0.0, 0.0, 1e6),
        basis=table.text("basis"),
    )
    table.finish()
    return accuracy


def _channel(table: TomlTable, interval_s: float, integration_s: float) -> Channel:
    channel = Channel(
        name=table.text("name"),
        quantity=Quantity(table.text("quantity", None, [q.value for q in Quantity])),
        scale=table.number("scale", 1.0),
        offset=table.number("offset", 0.0),
        interval_s=interval_s,
        integration_s=integration_s,
        accuracy=_accuracy(table.table("accuracy")),
    )
    if channel.scale == 0.0:
        raise table.error("scale", "is 0", "Expected channel units per raw unit, such as 100.")
    table.finish()
    return channel


def meter_profile(name: str, text: str, subject: str) -> MeterProfile:
    """Make a MeterProfile of TOML text.

    Parameters
    ----------
    name : str
        The profile's name.
    text : str
    subject : str
        The file, for messages.

    Returns
    -------
    MeterProfile

    Raises
    ------
    ProfileError
        If a key is missing, unknown, of the wrong type or out of range; names file and key.
    """
    top = parse_toml(text, subject)
    title = top.text("title")
    dialect = top.text("dialect", None, DIALECTS)
    interval_s = top.number("interval_s", None, 1e-6, 3600.0)
    integration_s = top.number("integration_s", 0.0, 0.0, 3600.0)
    tables = top.tables("channels")
    channels = tuple(_channel(table, interval_s, integration_s) for table in tables)
    profile = MeterProfile(
        name=name,
        title=title,
        dialect=dialect,
        link=_link(top.table("link")),
        channels=channels,
        scpi=_scpi(top.table("scpi")),
        lines=_lines(top.table("lines")),
        text=text,
    )
    top.finish()
    names = [channel.name for channel in channels]
    if len(set(names)) != len(names):
        raise top.error("channels", f"repeat a name: {', '.join(names)}", "Names must differ.")
    if dialect == "ascii-lines":
        _check_columns(top, profile, names)
    return profile


def _check_columns(top: TomlTable, profile: MeterProfile, names: list[str]) -> None:
    columns = [c for c in profile.lines.columns if c not in {"-", "time"}]
    if sorted(columns) != sorted(names):
        raise top.error(
            "lines.columns",
            f"name {', '.join(columns) or 'nothing'}, but the channels are {', '.join(names)}",
            "Every channel needs exactly one column.",
        )

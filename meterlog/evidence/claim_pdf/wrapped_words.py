"""WrappedWords: any text as lines that fit a width, nothing cut off."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice

from PySide6.QtGui import QFont, QPaintDevice, QTextLayout, QTextOption

from meterlog.model.visible_text import visible

_MORE = " …"
_PIECE = 4000
"""Letters that are laid out at once: more than any page's line has."""


def clean_words(text: str) -> str:
    """Give a text without what can't be written: control signs become spaces, line feeds stay.

    What steers how others are read is shown for what it is.
    """
    whole = visible(text).encode("utf-16", "surrogatepass").decode("utf-16", "replace")
    lines = whole.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    return "\n".join(
        "".join(sign if sign.isprintable() or sign == "\u00ad" else " " for sign in line)
        for line in lines
    )


def wrapped(
    text: str, font: QFont, width: float, device: QPaintDevice, most: int | None = None
) -> list[str]:
    """Break a text into lines.

    Parameters
    ----------
    text : str
        Its own line feeds are kept.
    font : QFont
    width : float
        In the units of the font's pixels.
    device : QPaintDevice
        On which it will be painted.
    most : int or None
        Lines that are wanted; what comes after one more is not looked at.

    Returns
    -------
    list of str
        One at least. Broken between words, and inside a word only where it is wider than a line.
    """
    if most is not None:
        text = text[: (most + 1) * _PIECE]
    every = (
        line
        for part in clean_words(text).split("\n")
        for line in (_broken(part, font, width, device) if part.strip() else ("",))
    )
    return list(every if most is None else islice(every, most + 1)) or [""]


def _broken(text: str, font: QFont, width: float, device: QPaintDevice) -> Iterator[str]:
    """Give the lines of one paragraph, laid out piece by piece.

    Qt takes more than twice as long for a text of twice the length.
    """
    begun = 0
    while begun < len(text):
        piece = text[begun : begun + _PIECE]
        last = begun + len(piece) == len(text)
        lines = _lines(piece, font, width, device)
        # The last line of a piece would go on in the next one.
        for line in lines if last or len(lines) == 1 else lines[:-1]:
            begun += len(line)
            yield line.rstrip()


def _lines(text: str, font: QFont, width: float, device: QPaintDevice) -> list[str]:
    layout = QTextLayout(text, font, device)
    option = QTextOption()
    option.setWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
    layout.setTextOption(option)
    places: list[tuple[int, int]] = []
    layout.beginLayout()
    while True:
        line = layout.createLine()
        if not line.isValid():
            break
        line.setLineWidth(max(width, 1.0))
        places.append((line.textStart(), line.textLength()))
    layout.endLayout()
    # Qt counts in UTF-16: a sign beyond its first 65536 is two of them.
    units = text.encode("utf-16-le")
    return [
        units[2 * start : 2 * (start + size)].decode("utf-16-le", "replace")
        for start, size in places
    ]


def shortened(lines: list[str], most: int | None, more: str = _MORE) -> list[str]:
    """Keep the first lines; the last one kept says that there are more."""
    if most is None or len(lines) <= most:
        return lines
    kept = lines[: max(most, 1)]
    last = kept[-1]
    # Room for the sign: the last word goes where there is none.
    cut = last.rsplit(" ", 1)[0] if " " in last else last[: -len(more)]
    return [*kept[:-1], cut + more]

"""VisibleText: text without characters that steer how others are read.

A mark that turns the reading direction shows "4711" where "1174" stands, and one of no width makes
two numbers look alike. Evidence shows them for what they are. Joiners (U+200C, U+200D) stay: some
scripts can't be written without. A terminal is steered by control characters besides.

Source
------
Unicode Standard Annex 9, 2 (directional formatting characters); Unicode Technical Report 36, 2
(visual security).
"""

from __future__ import annotations

import json
import re

_STEERING = re.compile(
    "[\u061c\u180e\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb"
    "\U000e0000-\U000e007f]"
)

_CONTROL = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f\ud800-\udfff]")
_BREAK = "\n"


def visible(text: str) -> str:
    r"""Give ``text`` with each such character as ``\u`` and its number; most texts have none."""
    return _STEERING.sub(lambda found: f"\\u{ord(found[0]):04x}", text)


def steerless(text: str) -> str:
    r"""Give ``text`` as a terminal may show it: control characters as Python writes them, too.

    Breaks of lines stay; whoever puts a name into a line gives it through :func:`one_line`.
    """
    return visible(_CONTROL.sub(_escaped, text))


def one_line(text: object) -> str:
    """Give a name, such as a path, likewise and on one line, whatever is in it."""
    return steerless(str(text)).replace(_BREAK, "\\n")


def steerless_json(text: str) -> str:
    """Give JSON that means the same, each such character in it as JSON writes it in ASCII."""
    return _STEERING.sub(_json_escaped, _CONTROL.sub(_json_escaped, text))


def _escaped(found: re.Match[str]) -> str:
    return found[0].encode("unicode_escape").decode()


def _json_escaped(found: re.Match[str]) -> str:
    return json.dumps(found[0])[1:-1]

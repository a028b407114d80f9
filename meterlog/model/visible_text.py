"""VisibleText: text without characters that steer how others are read.

A mark that turns the reading direction shows "4711" where "1174" stands, and one of no width makes
two numbers look alike. Evidence shows them for what they are. Joiners (U+200C, U+200D) stay: some
scripts can't be written without.

Source
------
Unicode Standard Annex 9, 2 (directional formatting characters); Unicode Technical Report 36, 2
(visual security).
"""

from __future__ import annotations

import re

_STEERING = re.compile(
    "[\u061c\u180e\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb"
    "\U000e0000-\U000e007f]"
)


def visible(text: str) -> str:
    r"""Give ``text`` with each such character as ``\u`` and its number; most texts have none."""
    return _STEERING.sub(lambda found: f"\\u{ord(found[0]):04x}", text)

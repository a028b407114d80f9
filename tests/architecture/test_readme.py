"""The front page promises only what is there."""

import re
import shlex
from pathlib import Path

import pytest

from meterlog.cli import build_parser
from meterlog.commands import COMMANDS
from meterlog.model import Controller, Fuse, Limits, SpeedLimits
from meterlog.profile import load_meter, names

HOUSE = Path(__file__).resolve().parents[2]
README = (HOUSE / "README.md").read_text(encoding="utf-8")
MAKEFILE = (HOUSE / "Makefile").read_text(encoding="utf-8")


def _command_lines():
    """Give every meterlog command of the page as words, those of the table and of the blocks."""
    text = README.replace("\\\n", " ")
    spans = re.findall(r"`(meterlog [^`]+)`", text) + re.findall(r"^ {4}(meterlog .+)$", text, re.M)
    lines = [shlex.split(span)[1:] for span in spans]
    return [words for words in lines if words and not words[0].startswith("-")]


COMPLETE = [words for words in _command_lines() if len(words) > 1]


@pytest.mark.parametrize("words", COMPLETE, ids=" ".join)
def test_a_command_of_the_page_is_understood_as_it_stands(words):
    assert build_parser(words[0]).parse_args(words).command == words[0]


def test_every_command_is_on_the_page_and_no_other():
    assert {words[0] for words in _command_lines()} == set(COMMANDS)


def test_every_shipped_meter_is_on_the_page_with_its_channels():
    rows = dict(re.findall(r"^\| `([a-z0-9-]+)` \| ([a-z, ]+) \| ", README, re.M))
    shipped = {
        name: ", ".join(channel.name for channel in load_meter(name).channels)
        for name in names("meters")
    }
    assert {name: rows.get(name) for name in shipped} == shipped


def test_every_key_of_a_limits_file_is_on_the_page():
    table = README.partition("## Limits")[2].partition("\n## ")[0]
    keys = set(re.findall(r"`([a-z_]+)`", table))
    tables = {*Fuse.__slots__, *Controller.__slots__, *SpeedLimits.__slots__}
    own = {*Limits.__slots__, *tables} - {"name", "text", "speeds", "fuse", "controller"}
    words = {"guarded", "simple", "linear", "resistors", "pulsed", "true", "false"}
    known = own | (keys & words)
    assert keys == known


def test_every_make_target_of_the_page_exists():
    targets = set(re.findall(r"`?make ([a-z]+)`?", README)) - {"no"}
    assert {"demo", "test", "setup"} <= targets
    for target in targets:
        assert re.search(rf"^{target}:", MAKEFILE, re.M), target


def test_the_page_says_first_what_it_is_for_and_that_the_demo_is_invented():
    first = README.split("\n\n")[1]
    for word in ("fan", "dead spot", "technician", "claim"):
        assert word in first
    assert "parts and people are invented" in README
    for word in ("fuse", "Airbag", "high-voltage", "category", "service manual"):
        assert word in README

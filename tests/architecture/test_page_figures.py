"""Figures, limits and keys of the two pages are those of the code."""

import re
from pathlib import Path

import pytest
from PySide6.QtCore import Qt

from meterlog.acquire import silence
from meterlog.acquire.times import device_time
from meterlog.evidence import pdf_attached, zip_safety
from meterlog.model import errors, speed_step
from meterlog.profile import plain_file, table
from meterlog.recording import arrow_header, pyramid, recording, table_metadata
from meterlog.recording.event_lines import LATEST_NS
from meterlog.window import kept_file, long_recording, reading_distance
from meterlog.window.circuit_keys import CIRCUIT_BINDINGS, CircuitAction
from meterlog.window.keys import BINDINGS, Action
from meterlog.work import claim_inside, claim_photos, job_cards, job_folder

HOUSE = Path(__file__).resolve().parents[2]
README = (HOUSE / "README.md").read_text(encoding="utf-8")
PAGE = (HOUSE / "DEVELOPERS.md").read_text(encoding="utf-8")
MAKEFILE = (HOUSE / "Makefile").read_text(encoding="utf-8")
NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight")
MIB = 1 << 20


def _said(page, pattern):
    """Give the figures of the one place that is so worded, wherever its lines end."""
    (found,) = re.findall(pattern, " ".join(page.split()))
    told = found if isinstance(found, tuple) else (found,)
    return [float(one.replace(",", "")) for one in told]


@pytest.mark.parametrize(
    ("pattern", "figures"),
    [
        (r"\(F11: (\d+) mm high\)", [reading_distance.FULL_SCREEN_MM]),
        (r"the photos \((\d+) at most\)", [claim_photos.MOST_PHOTOS]),
        (r"but those above (\d+) MiB", [claim_inside.MOST_EACH / MIB]),
    ],
)
def test_a_figure_of_the_front_page_is_that_of_the_code(pattern, figures):
    assert _said(README, pattern) == figures


@pytest.mark.parametrize(
    ("pattern", "figures"),
    [
        (
            r"files above (\d+) MiB, and what goes beyond (\d+) MiB together",
            [claim_inside.MOST_EACH / MIB, claim_inside.MOST_TOGETHER / MIB],
        ),
        (r"over ([\d,]+) rows of one meter a process", [long_recording.APART_ROWS]),
        (r"draws from it what has over ([\d,]+)\)", [long_recording.LONG_ROWS]),
        (r"in memory once read and checked, up to (\d+) MiB", [pyramid._KEPT_BYTES / MIB]),
        (r"never less than ([\d.]+) s\.", [silence.SHORTEST_SILENCE_NS / 1e9]),
        (r"waits at most ([\d.]+) s for what follows", [device_time.HOLD_NS / 1e9]),
        (r"no hole above (\d+) GiB", [plain_file._LONGEST_HOLE >> 30]),
        (r"\| profiles \| (\d+) KiB", [table.LONGEST_BYTES >> 10]),
        (r"\| about.json, events \| (\d+) MiB", [recording._MOST_BYTES / MIB]),
        (r"within 2\^(\d+) ns, speeds 0 to (\d+)", [62, speed_step.FASTEST_STEP]),
        (r"heads up to (\d+) MiB", [arrow_header.LONGEST_HEAD / MIB]),
        (r"\| lists of a seal, edits[^|]*\| (\d+) MiB", [plain_file.MOST_TEXT_BYTES / MIB]),
        (r"\| what the window keeps \| (\d+) MiB", [kept_file.MOST_BYTES / MIB]),
        (
            r"\| job card, template[^|]*\| (\d+) MB; (\d+) MB; (\d+) MiB",
            [
                job_cards._MOST_BYTES / 1e6,
                job_folder._MOST_BYTES / 1e6,
                table_metadata._MOST_BYTES / MIB,
            ],
        ),
        (
            r"\| ([\d,]+) files, (\d+) GiB together",
            [pdf_attached._MOST_FILES, pdf_attached._MOST_BYTES >> 30],
        ),
        (
            r"at most (\d+) times its packed size beyond (\d+) MiB",
            [zip_safety.LIMITS.ratio, zip_safety.LIMITS.spared / MIB],
        ),
        (r"\| errors \| ([\d,]+) letters", [errors._LONGEST]),
    ],
)
def test_a_figure_of_the_page_for_contributors_is_that_of_the_code(pattern, figures):
    assert _said(PAGE, pattern) == figures


@pytest.mark.parametrize(
    ("file", "words"),
    [
        ("work/demo_text.py", r'"([A-Z]+ [A-Z ]+)"'),
        ("commands/demo.py", r'"(?:\\n)?([A-Z][a-z]+|circuit): '),
    ],
)
def test_each_part_that_the_demo_prints_is_on_the_front_page(file, words):
    printed = README.partition("without one it prints:")[2].partition("and findings.txt holds")[0]
    heads = re.findall(words, (HOUSE / "meterlog" / file).read_text(encoding="utf-8"))
    assert len(heads) > 1
    for head in heads:
        assert re.search(rf"^ {{4}}{head}\b", printed, re.M), head


def test_a_time_of_an_event_has_the_limit_of_the_page():
    assert LATEST_NS == 2**62


def test_as_many_test_processes_are_told_as_are_started():
    (told,) = re.findall(r"(\w+) processes for two cores", PAGE)
    (started,) = re.findall(r"pytest -q -n (\d) --dist loadfile --no-loadscope", MAKEFILE)
    assert NUMBERS.index(told) == int(started)


@pytest.mark.parametrize(
    ("words", "bindings", "action"),
    [
        (r"In a dark footwell \((\w+)\)", BINDINGS, Action.LOOKS),
        (r"measured between two edges \((\w+)\)", BINDINGS, Action.STRETCH),
        (r"read from across the vehicle \((\w+): \d+ mm", BINDINGS, Action.WHOLE_SCREEN),
        (r"with the key (\w+) in the window, which also takes", BINDINGS, Action.FOUND_STEPS),
        (r"\(in the window the key (\w+)\) takes the last mark", BINDINGS, Action.UNDO),
        (r"the page Circuit \(key (\w+)\)", BINDINGS, Action.CIRCUIT),
        (r"settled reading with (\w+), or type it", CIRCUIT_BINDINGS, CircuitAction.TAKE),
        (r"or type it \((\w+)\)", CIRCUIT_BINDINGS, CircuitAction.TYPE),
    ],
)
def test_a_key_of_the_front_page_does_what_is_said(words, bindings, action):
    (key,) = re.findall(words, " ".join(README.split()))
    (binding,) = (one for one in bindings if one.action is action and one.keys)
    assert Qt.Key[f"Key_{key}"] in binding.keys

"""Names that clear the screen, turn the reading direction, end a line: shown for what they are."""

import contextlib
import json
import sys

import pytest

from meterlog import cli
from meterlog.commands.terminal import answer_json, remark

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="no such names there")
NAME = "run\x1b[2J\u202egnp\x9b31m\nverdict: in order"
SHOWN = "run\\x1b[2J\\u202egnp\\x9b31m\\nverdict: in order"


@pytest.fixture(autouse=True)
def apart(tmp_path, monkeypatch):
    for name in ("XDG_CACHE_HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME"):
        monkeypatch.setenv(name, str(tmp_path / "own"))


@pytest.fixture
def odd(small):
    """The small recording, called so, in a folder of its own."""
    place = small.parent / "shelf" / NAME
    place.parent.mkdir()
    return small.rename(place)


def _harmless(said):
    for text in (said.out, said.err):
        assert not {"\x1b", "\u202e", "\x9b"} & set(text)
        assert "\nverdict: in order" not in text
    return said


COMMANDS = {
    "find": ("find", "--folder", "{shelf}"),
    "review": ("review", "{odd}", "--json"),
    "review in words": ("review", "{odd}"),
    "verify": ("verify", "{odd}"),
    "export": ("export", "{odd}", "--out", "{shelf}/o\x1b\nverdict: in order"),
    "screen": ("screen", "{shelf}", "--workers", "1", "--threads", "--out", "{shelf}/../tables"),
    "screen in JSON": ("screen", "{shelf}", "--threads", "--workers", "1", "--json", "--out", "t"),
    "amend": ("amend", "{odd}", "--show"),
    "compare": ("compare", "{odd}", "{odd}2"),
}


@pytest.mark.parametrize("words", COMMANDS.values(), ids=COMMANDS)
@pytest.mark.parametrize("damaged", [False, True])
def test_no_command_prints_one_raw(odd, capsys, monkeypatch, tmp_path, words, damaged):
    monkeypatch.chdir(tmp_path)
    if damaged:
        (odd / "data" / "x\x1b\u202e\nverdict: in order").touch()
        events = odd / "data" / "events.jsonl"
        events.write_bytes(events.read_bytes()[:-9])
    capsys.readouterr()
    with contextlib.suppress(SystemExit):
        cli.main([one.format(odd=odd, shelf=odd.parent) for one in words])
    said = _harmless(capsys.readouterr())
    assert "fault in meterlog itself" not in said.err
    assert said.out or said.err


def test_the_path_is_shown_with_what_is_in_it(run, odd):
    assert SHOWN in run("verify", odd).out
    assert SHOWN in run("find", "--folder", odd.parent).out
    assert f"{odd.parent}/none\\x1b\\nx: is not there" in run(
        "review", odd.parent / "none\x1b\nx", code=2
    ).err  # fmt: skip


@pytest.mark.parametrize(
    "words",
    [("verify", "run", NAME), (NAME,), ("review", f"--{NAME}")],
    ids=["too many", "no command", "no option"],
)
def test_what_was_typed_wrong_is_quoted_likewise(run, words):
    said = _harmless(run(*words, code=2)).err
    assert SHOWN in said


def test_json_means_the_same(capsys):
    value = {"folder": NAME, "tag": "a\U000e0041 \x7f ä\u200d"}
    answer_json(value)
    said = _harmless(capsys.readouterr()).out
    assert json.loads(said) == value
    assert "ä" in said


def test_a_remark_keeps_its_lines_and_rings_only_when_told(capsys):
    remark("one\ntwo\x07\tthree")
    remark("four", bell=True)
    assert capsys.readouterr().err == "one\ntwo\\x07\\tthree\n\afour\n"


def test_texts_of_an_export_steer_no_terminal_either(run, small):
    place = small.parent
    run(
        *("import", place / "small.csv", "--time", "t", "--assign", "motor-current=amps"),
        *("--part", "=1+1\x1b[31m", "--out", place / "odd"),
    )
    run("export", place / "odd", "--out", place / "out")
    texts = {one.name: one.read_text("utf-8") for one in (place / "out").glob("*.txt")}
    assert "=1+1\\x1b[31m" in texts["README.txt"]
    assert not [name for name, text in texts.items() if "\x1b" in text]

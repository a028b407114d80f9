"""What commands say: answers that parse, and progress that stays out of their way."""

import io
import json
import sys
from pathlib import Path

import pytest

from meterlog.commands.terminal import Progress, answer_json, short, table


class Terminal(io.StringIO):
    def isatty(self):
        return True


def test_columns_line_up_and_lines_end_without_blanks():
    text = table(("port", "what"), [("COM3", "adapter"), ("COM17", "")])
    assert text == "port   what\nCOM3   adapter\nCOM17"


def test_a_path_is_told_as_it_stands_once_this_folder_has_gone(tmp_path, monkeypatch):
    here = tmp_path / "here"
    here.mkdir()
    monkeypatch.chdir(here)
    assert short(here / "run") == "run"
    here.rmdir()
    assert short(here / "run") == str(here / "run")
    assert short(Path("run")) == "run"


def test_an_answer_is_one_json_object_without_nan(capsys):
    answer_json({"a": 1.5, "b": None, "c": "ä"})
    assert json.loads(capsys.readouterr().out) == {"a": 1.5, "b": None, "c": "ä"}
    with pytest.raises(ValueError, match="JSON"):
        answer_json({"a": float("nan")})


def test_without_a_terminal_progress_is_silent_for_the_first_seconds(capsys):
    progress = Progress("reviewing")
    progress(0.5)
    progress.done()
    seen = capsys.readouterr()
    assert (seen.out, seen.err) == ("", "")


def test_on_a_terminal_the_bar_fits_one_line_and_is_taken_away(monkeypatch):
    screen = Terminal()
    monkeypatch.setattr(sys, "stderr", screen)
    progress = Progress("reviewing")
    progress._drawn_s -= 1.0
    progress.bar(0.5, "x" * 200)
    drawn = screen.getvalue().removeprefix("\r\x1b[K")
    assert len(drawn) == 79
    assert "[############............]" in drawn
    progress.done()
    assert screen.getvalue().endswith("\r\x1b[K")

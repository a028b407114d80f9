"""The command line itself: help, unknown words, errors as sentences."""

import subprocess
import sys

import pytest

from meterlog import cli
from meterlog.commands import COMMANDS
from meterlog.model.errors import (
    DiskFailed,
    ProfileError,
    RecordingExists,
    RecordingUnreadable,
    TraceError,
    UsageError,
)


def run(*words, **more):
    return subprocess.run(
        [sys.executable, "-m", "meterlog", *words],
        capture_output=True,
        text=True,
        check=False,
        timeout=240,
        stdin=subprocess.DEVNULL,
        **more,
    )


def test_help_names_every_command_with_its_line():
    done = run("--help")
    assert done.returncode == 0
    for name, line in COMMANDS.items():
        assert f"{name:10}" in done.stdout
        assert line in done.stdout
    assert "example:" in done.stdout


@pytest.mark.parametrize("name", COMMANDS)
def test_help_of_each_command_says_what_it_is_for_and_ends_with_an_example(name, capsys):
    with pytest.raises(SystemExit) as left:
        cli.main([name, "--help"])
    assert left.value.code == 0
    text = capsys.readouterr().out
    line = COMMANDS[name].partition(";")[0]
    assert line[1:30] in " ".join(text.split())
    example = text.partition("example:\n")[2]
    assert f"meterlog {name}" in example
    for words in text.splitlines():
        assert len(words) <= 100, words


@pytest.mark.parametrize(
    "name", ["ports", "record", "review", "verify", "import", "export", "demo"]
)
def test_commands_with_something_to_parse_have_json(name, capsys):
    with pytest.raises(SystemExit):
        cli.main([name, "--help"])
    assert "--json" in capsys.readouterr().out


def test_an_unknown_command_suggests_the_nearest():
    done = run("reveiw")
    assert done.returncode == 2
    assert "Did you mean 'review'?" in done.stderr
    assert done.stdout == ""


@pytest.mark.parametrize(
    "words",
    [
        ("record",),
        ("record", "--meter", "line-logger@x", "--seconds", "soon"),
        ("record", "--meter", "line-logger@x", "--seconds", "0"),
        ("record", "--meter", "line-logger@x", "--seconds", "nan"),
        ("review",),
        ("export", "somewhere"),
        ("import", "x.csv"),
        ("verify",),
        ("review", "--colour", "red", "x"),
        ("virtual",),
    ],
)
def test_a_bad_request_gets_a_sentence_and_2(words, capsys):
    try:
        code = cli.main(list(words))
    except SystemExit as left:
        code = left.code
    said = capsys.readouterr()
    assert code == 2
    assert said.out == ""
    assert said.err.startswith("meterlog")
    assert "Traceback" not in said.err
    assert len(said.err) < 600


@pytest.mark.parametrize(
    ("error", "code"),
    [
        (UsageError("no.", subject="this", remedy="Do that."), 2),
        (ProfileError("no.", subject="this", remedy="Do that."), 2),
        (TraceError("no.", subject="this", remedy="Do that."), 2),
        (RecordingExists("no.", subject="this", remedy="Do that."), 2),
        (RecordingUnreadable("no.", subject="this", remedy="Do that."), 1),
        (DiskFailed("no.", subject="this", remedy="Do that."), 1),
    ],
)
def test_errors_for_people_are_one_paragraph(error, code, monkeypatch, capsys):
    def fail(_arguments):
        raise error

    monkeypatch.setattr(cli, "_run", fail)
    assert cli.main(["ports"]) == code
    assert capsys.readouterr().err == "meterlog: this: no. Do that.\n"


def test_a_fault_of_the_program_is_no_bare_traceback_unless_asked_for(monkeypatch, capsys):
    def fail(_arguments):
        raise RuntimeError("boom")

    monkeypatch.setattr(cli, "_run", fail)
    monkeypatch.delenv("METERLOG_DEBUG", raising=False)
    assert cli.main(["ports"]) == 1
    said = capsys.readouterr().err
    assert "RuntimeError: boom" in said
    assert "METERLOG_DEBUG=1" in said
    monkeypatch.setenv("METERLOG_DEBUG", "1")
    with pytest.raises(RuntimeError, match="boom"):
        cli.main(["ports"])


def test_ctrl_c_is_130_and_a_word(monkeypatch, capsys):
    def interrupt(_arguments):
        raise KeyboardInterrupt

    monkeypatch.setattr(cli, "_run", interrupt)
    assert cli.main(["ports"]) == 130
    assert capsys.readouterr().err == "meterlog: stopped.\n"


def test_without_a_screen_the_window_says_what_to_do_instead():
    import os

    bare = {k: v for k, v in os.environ.items() if k not in {"DISPLAY", "WAYLAND_DISPLAY"}}
    bare["QT_QPA_PLATFORM"] = ""
    done = run(env=bare)
    assert done.returncode == 2
    assert "--headless" in done.stderr
    assert "Traceback" not in done.stderr

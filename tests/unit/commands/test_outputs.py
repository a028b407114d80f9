"""Where answers go: a reader that leaves, a full disk, no output at all, another encoding."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

CLEAN = {key: value for key, value in os.environ.items() if not key.startswith("PYTHON")}
CLEAN |= {key: os.environ[key] for key in ("PYTHONPATH",) if key in os.environ}
needs_full = pytest.mark.skipif(not Path("/dev/full").exists(), reason="no /dev/full here")


def shell(line, **more):
    env = CLEAN | more | {"METERLOG": f"{sys.executable} -m meterlog"}
    done = subprocess.run(
        ["bash", "-c", f"set -o pipefail; {line}"],
        capture_output=True,
        check=False,
        timeout=240,
        env=env,
    )
    assert b"Traceback" not in done.stderr
    assert b"Exception ignored" not in done.stderr
    return done


@pytest.fixture
def long(run, tmp_path):
    """A recording whose review is longer than a pipe holds (64 KiB on Linux, pipe(7))."""
    rows = [f"{k / 50:.2f},12.5,{0 if k % 50 < 10 else 8},{0 if k % 50 < 10 else 4}" for k in
            range(20_000)]  # fmt: skip
    (tmp_path / "long.csv").write_text("t,feed,return,amps\n" + "\n".join(rows) + "\n")
    run(
        *("import", tmp_path / "long.csv", "--time", "t", "--limits", "linear-12v"),
        *("--assign", "motor-feed=feed", "--assign", "motor-return=return"),
        *("--assign", "motor-current=amps", "--out", tmp_path / "long"),
    )
    return tmp_path / "long"


@pytest.mark.parametrize("more", ["", "--json"])
def test_a_reader_that_has_seen_enough_is_no_error(long, more):
    done = shell(f"$METERLOG review {long} {more} | head -n 1")
    assert done.returncode == 0
    assert done.stdout.count(b"\n") == 1
    assert done.stderr == b""


@needs_full
@pytest.mark.parametrize("words", ["ports", "ports --json", "--version", "review --help"])
def test_an_answer_that_the_disk_does_not_take_is_1_and_one_sentence(words):
    done = shell(f"$METERLOG {words} > /dev/full")
    assert done.returncode == 1
    assert done.stderr.count(b"\n") == 1
    assert b"standard output: " in done.stderr
    assert os.strerror(28).encode() in done.stderr


@needs_full
def test_remarks_that_nobody_can_take_stop_nothing(small):
    assert shell(f"$METERLOG verify {small} 2> /dev/full").returncode == 0
    assert shell("$METERLOG verify /no/such/folder 2> /dev/full").returncode == 2


@pytest.mark.parametrize("closed", [">&-", ">&- 2>&- <&-"])
def test_closed_outputs_leave_the_exit_code_right(small, closed):
    assert shell(f"$METERLOG verify {small} {closed}").returncode == 0
    (small / "bagit.txt").unlink()
    assert shell(f"$METERLOG verify {small} {closed}").returncode == 1


def test_a_closed_output_is_never_the_next_file_that_is_opened(small, tmp_path):
    # The lowest free number goes to the next file: an answer would land in the exported tables.
    done = shell(f"$METERLOG export {small} --out {tmp_path / 'out'} >&- 2>&-")
    assert done.returncode == 0
    for path in (tmp_path / "out").iterdir():
        assert b"Written to" not in path.read_bytes()


@pytest.mark.parametrize(
    "more",
    [
        {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"},
        {"PYTHONIOENCODING": "latin-1"},
    ],
    ids=["ascii", "latin-1"],
)
def test_any_encoding_of_the_terminal_gives_all_the_answer(small, more):
    done = shell(f"$METERLOG review {small}", **more)
    assert done.returncode == 0
    assert b"Dead segment" in done.stdout
    encoding = more.get("PYTHONIOENCODING", "ascii")
    said = json.loads(shell(f"$METERLOG review {small} --json", **more).stdout.decode(encoding))
    assert any("±" in finding["statement"] for finding in said["findings"])


@pytest.mark.parametrize("columns", ["1", "10", "40"])
def test_help_fits_any_terminal_without_a_fault(columns):
    done = shell("$METERLOG import --help", COLUMNS=columns)
    assert done.returncode == 0
    assert done.stderr == b""


def test_a_remark_or_a_bar_that_nobody_reads_any_more_stops_no_recording(monkeypatch):
    from meterlog.commands.terminal import Progress, remark

    read, write = os.pipe()
    with os.fdopen(write, "w") as stream:
        monkeypatch.setattr(sys, "stderr", stream)
        os.close(read)
        remark("said to nobody")
        progress = Progress("recording")
        monkeypatch.setattr(progress, "is_due", lambda: True)
        progress.note("10 rows")
        progress.bar(0.5, "half")
        progress.done()
        monkeypatch.undo()
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())

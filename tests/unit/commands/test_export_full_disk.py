"""An export that a full disk cuts off: told, and nothing is left that would stand in the way."""

import os
import subprocess
import sys

import pytest

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="RLIMIT_FSIZE is POSIX")

# As a full disk: no file of this process grows beyond the limit.
FULL = """
import resource, signal, sys
from meterlog.cli import main
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
limit = int(sys.argv[1])
resource.setrlimit(resource.RLIMIT_FSIZE, (limit, limit))
sys.exit(main(sys.argv[2:]))
"""


@pytest.mark.parametrize("there", [False, True])
def test_what_a_full_disk_cuts_off_is_told_and_taken_away(run, small, tmp_path, there):
    whole = tmp_path / "whole"
    run("export", small, "--out", whole)
    sizes = {one.name: one.stat().st_size for one in whole.iterdir()}
    picture = sizes.pop("trace.png")
    tables = max(sizes.values())
    assert picture > tables, "the picture must be the file that does not fit"
    out = tmp_path / "out"
    if there:
        out.mkdir()
    # The last time all but the very end of the picture fits.
    for limit in (tables // 2, tables, (picture + tables) // 2, picture - 1):
        ran = subprocess.run(
            [sys.executable, "-c", FULL, str(limit), "export", str(small), "--out", str(out)],
            capture_output=True, text=True, timeout=240, check=False,
            env={**os.environ, "QT_QPA_PLATFORM": "offscreen"},
        )  # fmt: skip
        assert ran.returncode == 1
        assert "can't be written: File too large." in ran.stderr
        assert "libpng" not in ran.stderr
        assert list(out.iterdir()) == []
    run("export", small, "--out", out)
    assert (out / "trace.png").stat().st_size == picture


def test_a_pack_that_a_full_disk_cuts_off_is_told_by_the_folder_asked_for(run, small, tmp_path):
    run("job", tmp_path / "card.json", "--set", "work_order=4711")
    for limit in (4_000, 60_000):
        ran = subprocess.run(
            [
                *(sys.executable, "-c", FULL, str(limit), "claim", str(tmp_path / "card.json")),
                *("--before", str(small), "--out", str(tmp_path / "pack"), "--unsigned"),
            ],
            capture_output=True, text=True, timeout=240, check=False,
            env={**os.environ, "QT_QPA_PLATFORM": "offscreen"},
        )  # fmt: skip
        assert ran.returncode == 1
        assert "File too large" in ran.stderr
        assert f"{tmp_path / 'pack'}: " in ran.stderr
        assert ".pack-" not in ran.stderr
        assert not [one for one in tmp_path.iterdir() if "pack" in one.name]


def _cut_off(limit, *words):
    ran = subprocess.run(
        [sys.executable, "-c", FULL, str(limit), *map(str, words)],
        capture_output=True, text=True, timeout=240, check=False,
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen"},
    )  # fmt: skip
    assert ran.returncode == 1
    assert ran.stderr.count("File too large") == 1
    return ran.stderr


@pytest.mark.parametrize("limit", [0, 20_000])
def test_a_check_that_a_full_disk_cuts_off_does_not_bar_the_next_try(run, tmp_path, limit):
    """At first nothing is taken, then all but the circuit's profile."""
    place = tmp_path / "checks"
    words = ("circuit", "low-side-linear-12v", "--reading", "motor-feed=12.4")
    words = (*words, "--save", place / "c")
    said = _cut_off(limit, *words)
    assert f"{place / 'c'}: " in said
    assert "and save it again." in said
    assert list(place.iterdir()) == []
    run(*words)
    assert "feed wire: 12.400 V" in run("circuit", "--from", place / "c").out


@pytest.mark.parametrize("limit", [700, 4_000, 12_000])
def test_an_import_that_a_full_disk_cuts_off_names_the_folder_asked_for(run, tmp_path, limit):
    trace = tmp_path / "trace.csv"
    trace.write_text("t,amps\n" + "".join(f"{k / 50:.2f},{4 + k % 7}\n" for k in range(3000)))
    place = tmp_path / "made"
    words = ("import", trace, "--time", "t", "--assign", "motor-current=amps")
    words = (*words, "--limits", "linear-12v", "--out", place / "i")
    said = _cut_off(limit, *words)
    assert said.startswith(f"meterlog: {place / 'i'}: ")
    assert "Free some space or choose another folder, then import it again." in said
    assert said.count("Free some space") == 1
    assert ".i-" not in said
    assert list(place.iterdir()) == []
    run(*words)

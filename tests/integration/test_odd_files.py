"""Pipes, devices, holes, folders and nonsense in the place of every kind of file."""

import subprocess
import sys
from pathlib import Path

import pytest

FUZZ = Path(__file__).resolve().parents[1] / "fuzz" / "files.py"


@pytest.mark.slow
@pytest.mark.skipif(sys.platform != "linux", reason="devices and holes as Linux has them")
@pytest.mark.timeout(300)
def test_what_is_no_file_is_refused_in_words_by_every_reader():
    names = ("profile", "limits", "about.json, listed", "events, exported", "circuit entries")
    names += ("readings, reviewed", "raw", "amendments", "seal", "import", "export", "pack")
    names += ("job", "template", "settings", "index", "photo", "key,", "public key")
    done = subprocess.run(
        [sys.executable, FUZZ, "--special", *names],
        capture_output=True,
        text=True,
        timeout=280,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    assert " 0 ways to go wrong" in done.stdout
    assert done.stdout.count(" 0 wrong") > 30

"""A pack or an export that is told to stop ends at its next step, and leaves nothing behind."""

import os
import subprocess
import sys

import pytest

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="signals of POSIX")

# The signal comes while Qt draws: out of there an exception does not come as one.
ASKED = """
import os, signal, sys
from meterlog.cli import main
which, where = sys.argv[1:3]
if where == "drawing":
    from meterlog.evidence.claim_pdf import sheets
    real = sheets.Sheets.settle
    def settle(self):
        os.kill(os.getpid(), getattr(signal, which))
        return real(self)
    sheets.Sheets.settle = settle
else:
    from meterlog.evidence import csv_export
    from meterlog.work import evidence_folder
    real = evidence_folder.export_recording
    def export(*words, **named):
        os.kill(os.getpid(), getattr(signal, which))
        return real(*words, **named)
    evidence_folder.export_recording = export
sys.exit(main(sys.argv[3:]))
"""


def told(which, where, *words):
    return subprocess.run(
        [sys.executable, "-c", ASKED, which, where, *map(str, words)],
        capture_output=True, text=True, timeout=240, check=False,
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen"},
    )  # fmt: skip


@pytest.mark.parametrize("which", ["SIGINT", "SIGTERM"])
@pytest.mark.parametrize("where", ["drawing", "tables"])
def test_of_a_pack_nothing_is_left(run, small, tmp_path, which, where):
    run("job", tmp_path / "card.json", "--set", "work_order=4711")
    begun = {one.name for one in tmp_path.iterdir()}
    words = ("claim", tmp_path / "card.json", "--before", small, "--out", tmp_path / "pack")
    done = told(which, where, *words, "--unsigned")
    assert done.returncode == 130
    assert done.stderr.rstrip().endswith("meterlog: stopped.")
    assert {one.name for one in tmp_path.iterdir()} == begun


@pytest.mark.parametrize("which", ["SIGINT", "SIGTERM"])
def test_of_an_export_nothing_is_left(small, tmp_path, which):
    done = told(which, "tables", "export", small, "--out", tmp_path / "out")
    assert done.returncode == 130
    assert "meterlog: stopped." in done.stderr
    assert not (tmp_path / "out").exists() or not list((tmp_path / "out").iterdir())

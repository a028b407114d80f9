"""An import whose program dies leaves no recording that somebody could take for a whole one."""

import signal
import subprocess
import sys

from meterlog.recording import find_unsealed

DIES = """
import os, signal, sys
from meterlog.recording import trace_import
trace_import.seal = lambda *_: os.kill(os.getpid(), signal.SIGKILL)
from meterlog.cli import main
main(sys.argv[1:])
"""


def test_what_is_left_is_no_recording_and_the_next_import_takes_it_away(run, tmp_path):
    rows = "".join(f"{k / 50:.2f},12.5,4\n" for k in range(600))
    (tmp_path / "trace.csv").write_text(f"t,feed,amps\n{rows}")
    shelf = tmp_path / "shelf"
    words = [
        *("import", str(tmp_path / "trace.csv"), "--time", "t", "--out", str(shelf / "run")),
        *("--assign", "motor-feed=feed", "--assign", "motor-current=amps"),
    ]
    died = subprocess.run([sys.executable, "-c", DIES, *words], check=False, capture_output=True)
    assert died.returncode == -signal.SIGKILL
    (left,) = shelf.iterdir()  # all readings are in it, written to the end
    assert any(one.suffix == ".arrows" for one in left.rglob("*"))
    assert find_unsealed(shelf) == ()
    assert "Nothing was found" in run("find", "--folder", shelf, code=1).out
    run(*words)
    assert [one.name for one in shelf.iterdir()] == ["run"]
    assert "intact" in run("verify", shelf / "run").out

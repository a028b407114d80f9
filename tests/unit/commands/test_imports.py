"""What a command must not load: asking for help costs what the parser costs."""

import os
import subprocess
import sys

import pytest

HEAVY = ("jsonschema", "pymodbus", "numpy", "pyarrow", "serial", "PySide6", "pandas")


@pytest.mark.parametrize(
    "words", [["--help"], ["ports", "--help"], ["check-profile", "--help"], ["screen", "--help"]]
)
def test_help_loads_nothing_heavy(words):
    code = (
        "import sys\nfrom meterlog.cli import main\n"
        f"try:\n    main({words!r})\nexcept SystemExit:\n    pass\n"
        f"sys.stderr.write(' '.join(n for n in {HEAVY!r} if n in sys.modules))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, timeout=240
    )
    assert done.stdout.startswith("usage: ")
    assert done.stderr == ""


def test_a_list_of_ports_does_not_load_what_only_modbus_or_the_window_needs():
    code = (
        "import sys\nfrom meterlog.cli import main\nmain(['ports', '--json'])\n"
        "sys.stderr.write(' '.join(n for n in ('pymodbus', 'PySide6') if n in sys.modules))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, timeout=240
    )
    assert done.stderr == ""


BY_THE_WAY = """
import sys
from pathlib import Path
from meterlog.cli import main
from meterlog.instruments import AsciiLineDecoder
from meterlog.model import Channel, Quantity
from meterlog.profile import LineFormat

shelf, out = map(Path, sys.argv[1:])
card = str(out / "card.json")
german = ["--delimiter", "semicolon", "--decimal", "comma"]
jobs = [
    ["export", str(shelf / "run"), "--out", str(out / "plain")],
    ["export", str(shelf / "run"), "--out", str(out / "german"), *german],
    ["import", str(out / "plain"), "--out", str(out / "back")],
    ["import", str(out / "german"), "--out", str(out / "zurueck")],
    ["screen", str(shelf), "--out", str(out / "table"), "--threads", "--workers", "1"],
    ["screen", str(shelf), "--out", str(out / "table"), "--threads", "--workers", "1"],
    ["job", card, "--set", "work_order=4711"],
    ["claim", card, "--before", str(shelf / "run"), "--out", str(out / "pack"), "--unsigned"],
]
for words in jobs:
    if main(words):
        sys.exit(f"{words} went wrong")
# More than is read at a time by other means, and of no fixed width.
lines = b"".join(b"%.*f,1\\n" % (n % 5, n / 7) for n in range(40_000))
decoder = AsciiLineDecoder(
    LineFormat(columns=("a", "b")), (Channel("a", Quantity.VOLTAGE), Channel("b", Quantity.CURRENT))
)
assert len(decoder.feed(lines)) == 40_000
sys.exit(" ".join(one for one in ("pandas", "distributed") if one in sys.modules))
"""


def test_no_table_is_written_or_read_through_pandas_and_no_cluster_is_looked_for(small, tmp_path):
    (tmp_path / "shelf").mkdir()
    small.rename(tmp_path / "shelf" / "run")
    done = subprocess.run(
        [sys.executable, "-c", BY_THE_WAY, str(tmp_path / "shelf"), str(tmp_path)],
        capture_output=True,
        text=True,
        check=False,
        timeout=240,
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen"},
    )
    assert (done.returncode, done.stderr.splitlines()[-1:]) == (1, [""]), done.stderr[-2000:]

"""What a command must not load: asking for help costs what the parser costs."""

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
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, timeout=60
    )
    assert done.stdout.startswith("usage: ")
    assert done.stderr == ""


def test_a_list_of_ports_does_not_load_what_only_modbus_or_the_window_needs():
    code = (
        "import sys\nfrom meterlog.cli import main\nmain(['ports', '--json'])\n"
        "sys.stderr.write(' '.join(n for n in ('pymodbus', 'PySide6') if n in sys.modules))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, timeout=60
    )
    assert done.stderr == ""

"""The house keeps its own rules about who may import whom."""

import subprocess
import sys
from pathlib import Path

import pytest

HOUSE = Path(__file__).resolve().parents[2]


def test_the_import_contracts_hold():
    command = Path(sys.executable).with_name("lint-imports")
    done = subprocess.run(
        [str(command), "--no-cache"], cwd=HOUSE, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr
    assert "0 broken" in done.stdout


def test_nothing_below_the_window_loads_qt():
    program = (
        "import importlib, sys\n"
        "for name in ('analysis', 'recording', 'evidence', 'work', 'work.run'):\n"
        "    importlib.import_module(f'meterlog.{name}')\n"
        "    print(name, [m for m in sys.modules if m.startswith('PySide6')])"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], cwd=HOUSE, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    assert [line.partition(" ")[2] for line in done.stdout.splitlines()] == ["[]"] * 5, done.stdout


def test_help_loads_neither_numpy_nor_pyserial_nor_qt():
    program = (
        "import sys\nfrom meterlog.cli import build_parser\nbuild_parser('').format_help()\n"
        "heavy = {'numpy', 'serial', 'PySide6', 'pyarrow', 'pandas'} & set(sys.modules)\n"
        "print(sorted(heavy))"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], cwd=HOUSE, capture_output=True, text=True, check=False
    )
    assert done.stdout.strip() == "[]", done.stdout + done.stderr


@pytest.mark.parametrize("command", ["record", "review", "import", "export", "verify", "virtual"])
def test_help_of_a_command_loads_no_numpy(command):
    program = (
        f"import sys\nfrom meterlog.cli import build_parser\nbuild_parser({command!r})\n"
        "print(sorted({'numpy', 'serial', 'PySide6', 'pyarrow'} & set(sys.modules)))"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], cwd=HOUSE, capture_output=True, text=True, check=False
    )
    assert done.stdout.strip() == "[]", done.stdout + done.stderr

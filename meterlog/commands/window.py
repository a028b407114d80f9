"""``meterlog window``: open the window; the same as ``meterlog`` without a command."""

from __future__ import annotations

import argparse
from pathlib import Path

from meterlog.commands.entry import Subparsers, add_command
from meterlog.commands.screen import add_language, has_screen

_EXAMPLES = """meterlog
meterlog window recordings/20300102-030405-WO-1"""


def add_parser(subparsers: Subparsers[argparse.ArgumentParser]) -> None:
    """Add the command to the command line."""
    parser = add_command(
        subparsers,
        "window",
        "Choose meters, record, or look at a recording. Its keys are shown on screen.",
        _EXAMPLES,
    )
    parser.add_argument(
        "recording", nargs="?", type=Path, metavar="FOLDER", help="a recording to show"
    )
    add_language(parser)
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Open the window.

    Returns
    -------
    int
        0, or 1 when not everything could be kept.

    Raises
    ------
    UsageError
        If there is no screen, or the window does not speak the language asked for.
    """
    if not has_screen():
        from meterlog.model.errors import UsageError

        raise UsageError(
            "there is no screen for a window.",
            remedy="Use the commands instead, such as meterlog demo --headless; "
            "meterlog --help lists them.",
        )
    from meterlog.commands.one_heap import share_one_heap

    share_one_heap()  # a recording may run in it for days
    from meterlog.commands.qt_refusal import qt_started

    with qt_started():
        return _open(options)


def _open(options: argparse.Namespace) -> int:
    from meterlog.commands.window_signals import closed_by_signals
    from meterlog.window import open_window

    with closed_by_signals():
        return open_window(
            recording=getattr(options, "recording", None),
            language=getattr(options, "language", None),
        )

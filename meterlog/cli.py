"""The command line: finds the command, runs it, and turns errors into sentences and exit codes.

Exit codes: 0 done; 1 the check failed, or something outside went wrong (port, disk, meter);
2 the request itself is wrong (option, profile, trace file, a folder that is no recording or holds
something already); 130 stopped by Ctrl-C.
"""

from __future__ import annotations

import argparse
import contextlib
import importlib
import io
import os
import sys
from collections.abc import Sequence
from typing import NoReturn, TextIO

from meterlog import __version__
from meterlog.commands import COMMANDS

BAD_USE = 2
FAILED = 1
INTERRUPTED = 130
_LAST_STREAM = 2
"""The highest number of the three streams every program has."""

_OTHERWISE = {"import": "import_trace", "screen": "screen_folders"}
"""Modules not named as their command: 'import' is a word of the language and can't name a module
that is imported plainly; ``screen.py`` is about the screen that a window needs."""

_NOWHERE = (
    "meterlog: the folder you are in is gone: it was removed, or its disk was taken out. Go to "
    "another folder (cd), or give whole paths, and run it again.\n"
)

_EPILOG = """\
Run 'meterlog COMMAND --help' for the options of one command.

example:
  meterlog demo --headless        the whole job, no hardware and no screen needed
"""


class Parser(argparse.ArgumentParser):
    """An argument parser whose errors are two lines, not a page of usage."""

    def error(self, message: str) -> NoReturn:
        """Print what is wrong and how to get help, then leave with 2."""
        # Of what was typed, or stood for *, it may quote anything.
        message = _shown(message)
        self.exit(BAD_USE, f"{self.prog}: {message}\nTry '{self.prog} --help'.\n")


def _wanted(arguments: Sequence[str]) -> str:
    """Give the command named in ``arguments``: the first word that is no option."""
    words = [word for word in arguments if not word.startswith("-")]
    return words[0] if words else ""


def _shown(text: str) -> str:
    from meterlog.model.visible_text import one_line

    return one_line(text)


def _complain(text: str) -> None:
    with contextlib.suppress(OSError):
        sys.stderr.write(text)
        sys.stderr.flush()


def _unknown_command(name: str) -> int:
    import difflib

    near = difflib.get_close_matches(name, COMMANDS, 1)
    hint = f" Did you mean {near[0]!r}?" if near else ""
    _complain(
        f"meterlog: {_shown(name)}: there is no such command.{hint}"
        f" Commands: {', '.join(COMMANDS)}.\n"
    )
    return BAD_USE


def build_parser(only: str = "") -> argparse.ArgumentParser:
    """Give the parser.

    Parameters
    ----------
    only : str
        The command whose options are wanted; the modules of the others are not even imported,
        which keeps the start quick. ``"*"`` loads all.

    Returns
    -------
    argparse.ArgumentParser
    """
    parser = Parser(
        prog="meterlog",
        description="Prove which part of a cabin-fan circuit is bad, and that the new part is "
        "good.\nWithout a command the window opens.",
        epilog=_EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action="version", version=f"meterlog {__version__}")
    subparsers = parser.add_subparsers(
        dest="command", metavar="COMMAND", title="commands", parser_class=Parser
    )
    for name, line in COMMANDS.items():
        if only in {name, "*"}:
            module = importlib.import_module(f"meterlog.commands.{_module(name)}")
            module.add_parser(subparsers)
        else:
            subparsers.add_parser(name, help=line, add_help=False)
    return parser


def _module(command: str) -> str:
    return _OTHERWISE.get(command, command.replace("-", "_"))


def _run(arguments: Sequence[str]) -> int:
    name = _wanted(arguments)
    if name and name not in COMMANDS:
        return _unknown_command(name)
    if not arguments:
        arguments, name = ("window",), "window"
    parser = build_parser(name)
    options = parser.parse_args(arguments)
    return int(options.run(options))


def _is_nowhere() -> bool:
    """Tell whether the folder this was started in has gone; no path from there leads anywhere."""
    try:
        os.getcwd()  # noqa: PTH109 - the same, and quicker to load
    except FileNotFoundError:
        return True
    return False


def _report(error: Exception) -> int:
    # Imported here because the model brings numpy, which help and version need not wait for.
    from meterlog.model.errors import (
        MeterlogError,
        ProfileError,
        RecordingExists,
        TraceError,
        UsageError,
    )
    from meterlog.model.visible_text import one_line, steerless

    if isinstance(error, MeterlogError):
        _complain(f"meterlog: {error}\n")
        bad_use = isinstance(error, (UsageError, ProfileError, RecordingExists, TraceError))
        return BAD_USE if bad_use else FAILED
    if isinstance(error, OSError):
        if not error.filename and _is_nowhere():
            _complain(_NOWHERE)
            return FAILED
        where = f"{one_line(error.filename)}: " if error.filename else ""
        _complain(f"meterlog: {where}{steerless(error.strerror or str(error))}.\n")
        return FAILED
    _complain(
        f"meterlog: a fault in meterlog itself: {type(error).__name__}: {steerless(str(error))}\n"
        "Recordings are not touched by this. Set METERLOG_DEBUG=1 and run it again to see where.\n"
    )
    return FAILED


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command.

    Parameters
    ----------
    arguments : sequence of str or None
        Without the program's name; None takes those of the process.

    Returns
    -------
    int
        The exit code; see the head of this module.
    """
    _ready_streams()
    try:
        code = _guarded(sys.argv[1:] if arguments is None else list(arguments))
    except SystemExit:
        if not _all_said(tell=True):
            raise SystemExit(FAILED) from None
        raise
    return code if _all_said(tell=code == 0) else FAILED


def _guarded(arguments: Sequence[str]) -> int:
    try:
        return _run(arguments)
    except KeyboardInterrupt:
        _complain("meterlog: stopped.\n")
        return INTERRUPTED
    except BrokenPipeError:
        # The reader of our output has gone (such as 'head'): nothing left to say to anybody.
        _discard(sys.stdout)
        return 0
    except Exception as error:
        if os.environ.get("METERLOG_DEBUG"):
            raise
        return _report(error)


def _ready_streams() -> None:
    """Make sure that there is something to write to, and that no character can stop it."""
    if sys.stdout is None or sys.stderr is None:
        # Closed by the caller. Their numbers must be taken, or a port would become the output.
        while (number := os.open(os.devnull, os.O_RDWR)) <= _LAST_STREAM:
            pass
        os.close(number)
        nothing = open(os.devnull, "w", encoding="utf-8")  # noqa: SIM115, PTH123 - for good
        sys.stdout = sys.stdout or nothing
        sys.stderr = sys.stderr or nothing
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")


def _all_said(*, tell: bool) -> bool:
    """Hand over what still waits to be written; give whether it could be, and ``tell`` if not."""
    said = True
    for stream in (sys.stdout, sys.stderr):
        try:
            stream.flush()
        except BrokenPipeError:
            _discard(stream)
        except OSError as error:
            _discard(stream)
            if stream is sys.stderr:
                continue  # remarks are no answer
            said = False
            if tell:
                _complain(f"meterlog: standard output: {error.strerror}.\n")
    return said


def _discard(stream: TextIO) -> None:
    """Send what ``stream`` still holds nowhere, so that Python does not stumble over it."""
    with contextlib.suppress(OSError, ValueError):
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, stream.fileno())
        os.close(nowhere)

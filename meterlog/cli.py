"""The command line: finds the command, runs it, and turns errors into sentences and exit codes.

Exit codes: 0 done; 1 the check failed, or something outside went wrong (port, disk, meter);
2 the request itself is wrong (option, profile, trace file); 130 stopped by Ctrl-C.
"""

from __future__ import annotations

import argparse
import importlib
import os
import sys
from collections.abc import Sequence
from typing import NoReturn

from meterlog import __version__
from meterlog.commands import COMMANDS

BAD_USE = 2
FAILED = 1
INTERRUPTED = 130

_EPILOG = """\
Run 'meterlog COMMAND --help' for the options of one command.

example:
  meterlog demo --headless        the whole job, no hardware and no screen needed
"""


class Parser(argparse.ArgumentParser):
    """An argument parser whose errors are two lines, not a page of usage."""

    def error(self, message: str) -> NoReturn:
        """Print what is wrong and how to get help, then leave with 2."""
        self.exit(BAD_USE, f"{self.prog}: {message}\nTry '{self.prog} --help'.\n")


def _wanted(arguments: Sequence[str]) -> str:
    """Give the command named in ``arguments``: the first word that is no option."""
    words = [word for word in arguments if not word.startswith("-")]
    return words[0] if words else ""


def _unknown_command(name: str) -> int:
    import difflib

    near = difflib.get_close_matches(name, COMMANDS, 1)
    hint = f" Did you mean {near[0]!r}?" if near else ""
    sys.stderr.write(
        f"meterlog: {name}: there is no such command.{hint} Commands: {', '.join(COMMANDS)}.\n"
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
    # 'import' is a word of the language and can't name a module that is imported plainly.
    return "import_trace" if command == "import" else command


def _run(arguments: Sequence[str]) -> int:
    name = _wanted(arguments)
    if name and name not in COMMANDS:
        return _unknown_command(name)
    if not arguments:
        arguments, name = ("window",), "window"
    parser = build_parser(name)
    options = parser.parse_args(arguments)
    return int(options.run(options))


def _report(error: Exception) -> int:
    # Imported here because the model brings numpy, which help and version need not wait for.
    from meterlog.model.errors import MeterlogError, ProfileError, TraceError, UsageError

    if isinstance(error, MeterlogError):
        sys.stderr.write(f"meterlog: {error}\n")
        bad_use = isinstance(error, (UsageError, ProfileError, TraceError))
        return BAD_USE if bad_use else FAILED
    if isinstance(error, OSError):
        where = f"{error.filename}: " if error.filename else ""
        sys.stderr.write(f"meterlog: {where}{error.strerror or error}.\n")
        return FAILED
    sys.stderr.write(
        f"meterlog: a fault in meterlog itself: {type(error).__name__}: {error}\n"
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
    try:
        return _run(sys.argv[1:] if arguments is None else list(arguments))
    except KeyboardInterrupt:
        sys.stderr.write("meterlog: stopped.\n")
        return INTERRUPTED
    except BrokenPipeError:
        # The reader of our output has gone (such as 'head'): nothing left to say to anybody.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except Exception as error:
        if os.environ.get("METERLOG_DEBUG"):
            raise
        return _report(error)

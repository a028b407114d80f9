"""One way to add a command: its line, its words and its examples."""

from __future__ import annotations

import argparse

from meterlog.commands import COMMANDS

Subparsers = argparse._SubParsersAction  # noqa: SLF001 - argparse gives it no public name


def add_command(
    subparsers: Subparsers[argparse.ArgumentParser], name: str, words: str, examples: str
) -> argparse.ArgumentParser:
    """Add the parser of command ``name``.

    Parameters
    ----------
    subparsers : the object that ``ArgumentParser.add_subparsers`` gives
    name : str
        One of :data:`meterlog.commands.COMMANDS`.
    words : str
        What the command does beyond its one line, laid out as it shall be shown.
    examples : str
        Commands that can be typed as they stand, one a line.

    Returns
    -------
    argparse.ArgumentParser
        To add options to.
    """
    line = COMMANDS[name]
    lead = line[0].upper() + line[1:] + "."
    return subparsers.add_parser(
        name,
        help=line,
        description=f"{lead}\n{words}".rstrip(),
        epilog="example:\n" + "\n".join(f"  {text}" for text in examples.splitlines()),
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )

"""Remedies as they are taken in the window, where words name a command or an option instead."""

from __future__ import annotations

import re

from meterlog.window.sentences import sentence
from meterlog.window.words import later, say

_NO_PORT = later("See `meterlog ports` for those that are there.")
_HERE = tuple(
    (re.compile(command), here)
    for command, here in (
        (re.escape(_NO_PORT), "The Meters page lists the ports that are there."),
        (
            re.escape("`meterlog ports` lists the profiles."),
            "The Meters page lists the kinds of meter.",
        ),
        (
            re.escape("`meterlog ports --ask` with this port tries other profiles"),
            "to ask this port on the Meters page tries the other kinds of meter",
        ),
        (r"\(z, or --take-zero [\w-]+\)", "(press Z)"),
        (r" \(--sensor-accuracy [^)]*\)", " on the Meters page"),
        (
            r"Start again with --assign [\w-]+=PROFILE\.CHANNEL\.",
            "Say on the Meters page which channel it is on, and start again.",
        ),
        (r"Make one with --as-template\.", "Keep one under another name."),
        (
            re.escape("such as fitted_by or new_part.number."),
            "such as who fitted the part, or the new part's number.",
        ),
        (
            r"Choose another folder, then start a new recording\.",
            later("Choose another folder on the Meters page, then start again."),
        ),
        (re.escape("no answer to *IDN? within"), "no answer within"),
        (
            re.escape(
                "Check that it is on, that speed and parity of the line are those of the profile,"
                " and that it speaks SCPI."
            ),
            later(
                "Check that it is on and its lead plugged in, or choose"
                " another meter or port on the Meters page."
            ),
        ),
        (re.escape("--circuit "), "circuit check "),
        (re.escape(" (meterlog circuit --save)"), " on the Circuit page"),
        (r"^--key: ", "fingerprint: "),
        (r", in double quotes\.", "."),
        (re.escape("Leave --key out, or give the pack."), "Leave the fingerprint empty."),
        (
            re.escape("Give it, such as --part FM-20."),
            later("Enter the part's number on the Job page."),
        ),
        (
            re.escape("Screen folders with good runs of it, or give its number with --part."),
            later(
                "Screen folders with good runs of it (meterlog screen), or enter the part's number"
                " on the Job page."
            ),
        ),
        (
            re.escape(
                "Give the baselines.parquet that meterlog screen has written, or its folder."
            ),
            later(
                "Choose the baselines.parquet that meterlog screen has written, on the Recordings"
                " page."
            ),
        ),
        (r"Leave out --turns\.", "Set the turns to 1."),
    )
)
_GOES_ON = later("Plug it in again: the recording goes on, and so will its readings.")


def remedy_here(words: str) -> str:
    """Give words with the remedies that there are in the window, in its language."""
    for command, here in _HERE:
        words = command.sub(here, words)
    return sentence(words)


def remedy_while_recording(words: str) -> str:
    """Give the words about a port that went away with what helps while the recording goes on."""
    if _NO_PORT not in words:
        return remedy_here(words)
    return f"{remedy_here(words.replace(_NO_PORT, '').strip())} {say(_GOES_ON)}"

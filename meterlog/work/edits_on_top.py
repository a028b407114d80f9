"""EditsOnTop: a recording with its edits laid on, ready for one more, or for undo and redo.

An edit that is written is never taken out. Undo writes the contrary edit on top, with a reason
that says so; redo the same again. So which edit can be undone follows from the list alone,
whoever made it and with whichever face of the program.
"""

from __future__ import annotations

import contextlib
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from meterlog.model.amendment import Amendment, AmendmentKind
from meterlog.model.errors import EvidenceError, ProfileError, UsageError
from meterlog.recording import Recording
from meterlog.work.amended import AmendedRecording
from meterlog.work.amendments import add_amendment, amendments_of, amendments_path, refuse_empty

UNDO, REDO = "undo of the edit of", "redo of the edit of"
"""How the reasons of such edits begin; the time of that edit and its own reason follow."""


class EditsOnTop:
    """The edits of one recording as they are now.

    Parameters
    ----------
    recording : Recording
        As it was recorded: no edit laid on it yet. It is not changed.

    Attributes
    ----------
    folder : Path
    edits : tuple of Amendment
    damage : tuple of str
        What is wrong with their file; nothing can be added then.
    amended : AmendedRecording
        With all of them that fit.

    Raises
    ------
    EvidenceError
        If their file can't be read.
    """

    def __init__(self, recording: Recording) -> None:
        self.folder: Path = recording.folder
        self.edits, self.damage = amendments_of(self.folder)
        self.amended = AmendedRecording(recording)
        for one in self.edits:
            # A review says of those that do not fit.
            with contextlib.suppress(UsageError, ProfileError):
                self.amended.apply(one)

    def lay(self, edit: Amendment) -> None:
        """Lay one more edit on, without writing it.

        Raises
        ------
        UsageError, ProfileError
            If it does not fit, changes nothing, or nobody and no reason is named.
        EvidenceError
            If their file is damaged: an edit behind damage would never be applied.
        """
        self._refuse_damage()
        refuse_empty(self.folder, edit)
        self.amended.apply(edit)

    def write(self, edit: Amendment) -> Amendment:
        """Lay one more edit on and write it down.

        Returns
        -------
        Amendment
            As it was written.

        Raises
        ------
        UsageError, ProfileError, EvidenceError
            As :meth:`lay`, and if the disk does not take it.
        """
        self.lay(edit)
        made = add_amendment(self.folder, edit)
        self.edits = (*self.edits, made)
        return made

    def check(self, edit: Amendment) -> None:
        """Raise as :meth:`lay` would; nothing is changed."""
        self._refuse_damage()
        refuse_empty(self.folder, edit)
        self.amended.copy().apply(edit)

    def undoing(self, who: str) -> Amendment:
        """Give the edit that undoes the newest one that stands.

        Raises
        ------
        UsageError
            If there is none.
        """
        done, _ = turns(self.edits)
        if not done:
            raise _nothing(self.folder, "undo")
        return _contrary(done[-1], UNDO, who)

    def redoing(self, who: str) -> Amendment:
        """Give the edit that does again what was undone last; raises as :meth:`undoing`."""
        _, undone = turns(self.edits)
        if not undone:
            raise _nothing(self.folder, "redo")
        last = undone[-1]
        return replace(last, who=who, why=_reason(last, REDO), made_utc="")

    def _refuse_damage(self) -> None:
        if self.damage:
            raise EvidenceError(
                f"can't be added to: {self.damage[0]}",
                subject=str(amendments_path(self.folder)),
                remedy="Put back a whole copy of that file; or keep it under another name and make"
                " the edits anew.",
            )


def turns(edits: Sequence[Amendment]) -> tuple[tuple[Amendment, ...], tuple[Amendment, ...]]:
    """Follow the edits with their undos and redos.

    Parameters
    ----------
    edits : sequence of Amendment
        In the order in which they were made.

    Returns
    -------
    done : tuple of Amendment
        Those that stand and could be undone, the newest last.
    undone : tuple of Amendment
        Those that could be done again, the one undone last at the end; none once another edit
        was made.
    """
    done: list[Amendment] = []
    undone: list[Amendment] = []
    for one in edits:
        if one.why.startswith(UNDO) and done and _same(one, _contrary(done[-1], UNDO, one.who)):
            undone.append(done.pop())
        elif one.why.startswith(REDO) and undone and _same(one, undone[-1]):
            undone.pop()
            done.append(one)
        else:
            done.append(one)
            undone = []
    return tuple(done), tuple(undone)


def _same(one: Amendment, other: Amendment) -> bool:
    """Tell whether two edits do the same, whoever made them and why."""
    return replace(one, who="", why="", made_utc="") == replace(other, who="", why="", made_utc="")


def _contrary(edit: Amendment, how: str, who: str) -> Amendment:
    old, new = edit.new, edit.old
    if edit.kind is AmendmentKind.STEP and new.isdecimal():
        old = str(int(old)) if old.isdecimal() else old
    return replace(edit, old=old, new=new, who=who, why=_reason(edit, how), made_utc="")


def _reason(edit: Amendment, how: str) -> str:
    first = edit.why
    for words in (UNDO, REDO):
        if first.startswith(words):
            first = first.partition("(")[2].removesuffix(")")
    if how == UNDO:
        return f"undo of the edit of {edit.made_utc} ({first})"
    return f"redo of the edit of {edit.made_utc} ({first})"


def _nothing(folder: Path, what: str) -> UsageError:
    return UsageError(f"has no edit to {what}.", subject=str(folder), remedy="Make an edit first.")

"""SidesDesk: which recordings and circuit checks go in, and what is read of them."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtWidgets import QFileDialog

from meterlog.model import About
from meterlog.model.card_contradictions import contradictions
from meterlog.model.errors import MeterlogError
from meterlog.window.claim_page.claim_page import ClaimPage
from meterlog.window.claim_page.recording_facts import RecordingFacts, read_facts
from meterlog.window.claim_page.side_choice import SideChoice, tell
from meterlog.window.folder_dialog import show_beside
from meterlog.window.job_at_hand import JobAtHand
from meterlog.window.long_work import LongWork
from meterlog.window.remedies_here import remedy_here
from meterlog.window.sentences import sentence
from meterlog.window.words import later, say
from meterlog.work.job_folder import Side

_RUN = {Side.OLD: later("before the repair"), Side.NEW: later("after the repair")}
_NAME = {Side.OLD: "before", Side.NEW: "after"}
_PART = {Side.OLD: later("old part"), Side.NEW: later("new part")}


class SidesDesk:
    """What goes in.

    The newest run with each part goes in unless another was chosen.

    Parameters
    ----------
    at_hand : JobAtHand
    page : ClaimPage

    Attributes
    ----------
    on_facts : callable
        Called when other recordings go in, or when more is known of them.
    """

    def __init__(self, at_hand: JobAtHand, page: ClaimPage) -> None:
        self.on_facts: Callable[[], None] = lambda: None
        self._at_hand, self._page = at_hand, page
        self._sides = {Side.OLD: page.before, Side.NEW: page.after}
        self._chosen: dict[Side, Path | None] = {}
        self._job: Path | None = None
        self._facts: dict[Path, RecordingFacts] = {}
        self._stale = False
        """What is being read was asked for before the recordings may have changed."""
        self._reading: LongWork[tuple[RecordingFacts, ...]] = LongWork("heads")
        self._asking: QFileDialog | None = None
        for side, choice in self._sides.items():
            choice.chosen.connect(lambda folder, side=side: self._on_choice(side, folder))
            choice.other.connect(lambda side=side: self._ask(side, circuit=False))
        page.circuits.other.connect(lambda: self._ask(Side.OLD, circuit=True))
        page.circuits.ticked.connect(self._show_facts)

    def show(self) -> None:
        """Show what belongs to the job at hand."""
        if self._at_hand.folder != self._job:
            self._job = self._at_hand.folder
            self._chosen = {}
        work = self._at_hand.work
        runs = [
            (one.folder, _PART[one.side]) for one in reversed(work.recordings) if not one.circuit
        ]
        for side, choice in self._sides.items():
            chosen = self._chosen[side] if side in self._chosen else work.newest(side)
            choice.show_list(runs, chosen)
        self._page.circuits.show_list(work.circuits())
        self._show_facts()
        self._read()

    def read_again(self) -> None:
        """Read all heads anew: a recording may have been sealed or edited since."""
        self._facts = {}
        self._stale = self._reading.busy
        self._reading.cancel()
        self._read()

    def tick(self) -> None:
        """Take what was read."""
        read = self._reading.fetch()
        if read is None:
            return
        facts, trouble = read
        stale, self._stale = self._stale, False
        if not stale:
            self._facts |= {one.folder: one for one in facts or ()}
            if trouble:
                tell(self._page.said, trouble)
            self._show_facts()
        if stale or facts is not None:
            self._read()

    def doubts(self) -> tuple[str, ...]:
        """Say where the job card and what goes in contradict each other, as far as is known.

        Returns
        -------
        tuple of str
            In the window's language.
        """
        going = {side: one.folder for side, one in self._sides.items() if one.folder is not None}
        heads = {side: about for side, folder in going.items() if (about := self._head(folder))}
        checks = [(one, about) for one in self._page.circuits.folders if (about := self._head(one))]
        if not heads and not checks:
            return ()
        # Arrow is behind these: with a head it was loaded already, in the thread that read it.
        from meterlog.work.run_doubts import job_doubts, run_doubts

        card = self._at_hand.card
        said: list[str] = []
        first = next(iter(going), None)
        if first is not None and first in heads:
            under = heads[first].job.measured_under
            said += map(sentence, contradictions(card, under, say(_RUN[first])))
        runs = {_NAME[side]: say(_RUN[side]) for side in heads}
        found = run_doubts(card, [(_NAME[side], about) for side, about in heads.items()])
        said += [f"{runs[name]}: {sentence(one)}" for name, one in found]
        for folder, about in checks:
            said += [f"{folder.name}: {sentence(one)}" for one in job_doubts(card, about)]
        return tuple(said)

    def _head(self, folder: Path) -> About | None:
        facts = self._facts.get(folder)
        return None if facts is None else facts.about

    def leave(self) -> None:
        """Ask for no more recordings: another job comes, which they are not of."""
        if self._asking is not None:
            self._asking.close()

    def close(self) -> None:
        """Let go of the thread."""
        self._reading.cancel()
        self._reading.wait()

    def _read(self) -> None:
        work = self._at_hand.work
        unread = [one.folder for one in work.recordings if one.folder not in self._facts]
        # Those that go in first.
        wanted = {choice.folder for choice in self._sides.values()}
        unread.sort(key=lambda folder: folder not in wanted)
        if unread:
            self._reading.begin(lambda progress: read_facts(unread, progress))

    def _show_facts(self) -> None:
        for choice in self._sides.values():
            self._show_side(choice)
        self._page.circuits.show_facts(self._facts)
        self.on_facts()

    def _show_side(self, choice: SideChoice) -> None:
        folder = choice.folder
        choice.show_facts(self._facts.get(folder) if folder is not None else None)

    def _on_choice(self, side: Side, folder: object) -> None:
        self._chosen[side] = folder if isinstance(folder, Path) else None
        self._show_side(self._sides[side])
        self.on_facts()

    def _ask(self, side: Side, *, circuit: bool) -> None:
        title = (
            say("a circuit check")
            if circuit
            else say("a recording with the {part}", part=say(_PART[side]))
        )
        dialog = QFileDialog(self._page.window(), say("Choose the folder of {title}", title=title))
        dialog.setFileMode(QFileDialog.FileMode.Directory)
        dialog.setOption(QFileDialog.Option.ShowDirsOnly)
        dialog.setOption(QFileDialog.Option.DontUseNativeDialog)
        shelf = self._at_hand.jobs_folder().parent
        if shelf.is_dir():
            dialog.setDirectory(str(shelf))
        dialog.fileSelected.connect(lambda name: self.take(Path(name), side, circuit=circuit))
        self._asking = dialog
        show_beside(dialog)

    def take(self, folder: Path, side: Side, *, circuit: bool = False) -> None:
        """Put a recording that was made elsewhere on the job's list, and into the pack."""
        from meterlog.recording.given_folder import recording_at

        tell(self._page.said, "")
        try:
            recording_at(folder)
            if not circuit:
                self._chosen[side] = folder
            self._at_hand.change_work(lambda work: work.taking(folder, side, circuit=circuit))
        except MeterlogError as error:
            tell(self._page.said, remedy_here(str(error)))
        self.show()

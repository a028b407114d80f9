"""Works that are killed at any instant: each is prepared, done in a second process, looked at.

A work is a class with ``prepare(place)``, ``act(tell)`` and ``check(told)``. ``act`` says by
``tell`` what it has finished; ``check`` gives what does not hold.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from kill_imports import Importing
from kill_models import READ_BACK, model_recording, numbers_in, spill_of
from kill_pyramids import PyramidMaking, PyramidRecording

from meterlog.evidence import verify_folder
from meterlog.evidence.pack_verify import verify_pack
from meterlog.model.amendment import Amendment, AmendmentKind
from meterlog.model.errors import DiskFailed
from meterlog.model.job_card import JobCard
from meterlog.recording import MovingRecorder, Recording, find_unsealed, join_parts, layout, seal
from meterlog.recording.folder_aside import folder_aside
from meterlog.work.amendments import add_amendment, amendments_of
from meterlog.work.claim import PDF, ZIP, ClaimRequest, make_claim
from meterlog.work.job_cards import change_card, load_card
from meterlog.work.job_folder import JobWork, Side, change_work, load_work
from meterlog.work.library import Library, Wanted

Tell = Callable[[int], None]


class Sealing:
    """A closed recording gets its seal."""

    def prepare(self, place: Path) -> None:
        """Make the recording."""
        self.folder = place / "run"
        model_recording(self.folder, 400)

    def act(self, tell: Tell) -> None:
        """Seal it."""
        seal(self.folder)

    def check(self, told: list[int]) -> list[str]:
        """Find a seal that holds, or none; then it can be made."""
        wrong = []
        if not layout.is_sealed(self.folder):
            if self.folder not in find_unsealed(self.folder.parent):
                wrong.append("not offered for recovery")
            seal(self.folder, recovered=True)
        if not verify_folder(self.folder).intact:
            wrong.append("the seal does not hold")
        return wrong + numbers_in(self.folder, 400, 400)


class Claiming:
    """A claim pack is made of one recording."""

    source: Path | None = None

    def prepare(self, place: Path) -> None:
        """Make the recording, once for all."""
        if Claiming.source is None or not Claiming.source.exists():
            Claiming.source = place.parents[1] / "source"
            model_recording(Claiming.source, 200)
            seal(Claiming.source)
        self.out = place / "pack"

    def act(self, tell: Tell) -> None:
        """Make the pack."""
        card = JobCard(work_order="1", complaint="invented")
        make_claim(
            ClaimRequest(card, self.out.parent, Claiming.source, None, self.out), lambda _: None
        )

    def check(self, told: list[int]) -> list[str]:
        """Find both files of the pack, and both intact, or no pack."""
        wrong = []
        if self.out.exists():
            names = sorted(path.name for path in self.out.iterdir())
            if names != [PDF, ZIP]:
                return [f"half a pack: {names}"]
            wrong += [f"{name} is not intact" for name in names if not _intact(self.out / name)]
        with folder_aside(self.out):  # as the next pack begins
            left = [path.name for path in self.out.parent.iterdir() if path != self.out]
        if len(left) != 1:
            wrong.append(f"left behind: {left}")
        return wrong


def _intact(path: Path) -> bool:
    return verify_pack(path).intact


class Indexing:
    """The index of a shelf of recordings is made."""

    shelf: Path | None = None

    def prepare(self, place: Path) -> None:
        """Make the shelf, once for all, and sometimes an index that is behind it."""
        if Indexing.shelf is None or not Indexing.shelf.exists():
            Indexing.shelf = place.parents[1] / "shelf"
            for number in range(12):
                model_recording(Indexing.shelf / f"run-{number:02}", 5)
                seal(Indexing.shelf / f"run-{number:02}")
        self.index = place / "index.sqlite3"

    def act(self, tell: Tell) -> None:
        """Look through the shelf, and drop it again, without end."""
        while True:
            with Library(self.index) as library:
                library.refresh([Indexing.shelf], lambda _: None)
                library.forget(Indexing.shelf)

    def check(self, told: list[int]) -> list[str]:
        """Find all by an index that is mended or made anew."""
        with Library(self.index) as library:
            looked = library.refresh([Indexing.shelf], lambda _: None)
            hits = library.search([Indexing.shelf], Wanted())
        wrong = [] if looked.known == len(hits) == 12 else [f"{looked.known}, {len(hits)} of 12"]
        names = sorted(hit.folder.name for hit in hits)
        return wrong + ([] if len(set(names)) == len(names) else ["something is there twice"])


class CardWriting:
    """A job card is changed again and again."""

    def prepare(self, place: Path) -> None:
        """Begin the card."""
        self.path = place / "job.json"
        change_card(self.path, lambda card: replace(card, work_order="0"))

    def act(self, tell: Tell) -> None:
        """Change it without end."""
        for number in range(1, 1_000_000):
            words = f"{number} " * 2000
            change_card(
                self.path, lambda card, n=number, w=words: replace(card, work_order=str(n), notes=w)
            )
            tell(number)

    def check(self, told: list[int]) -> list[str]:
        """Find the last change that was said to be kept, or one more."""
        card = load_card(self.path)
        kept, last = int(card.work_order), max(told, default=0)
        wrong = [] if kept in {last, last + 1} else [f"{kept} is kept, {last} was told"]
        if kept and card.notes != f"{kept} " * 2000:
            wrong.append("torn")
        change_card(self.path, lambda card: replace(card, work_order="next"))
        names = [path.name for path in self.path.parent.iterdir()]
        return wrong + ([] if names == ["job.json"] else [f"left behind: {names}"])


class WorkListing:
    """A job's list of recordings grows."""

    def prepare(self, place: Path) -> None:
        """Begin with an empty list."""
        self.job = place / "job"
        change_work(self.job, lambda work: work)

    def act(self, tell: Tell) -> None:
        """Add one after the other."""
        for number in range(1_000_000):
            folder = self.job.parent / f"run-{number}"
            change_work(self.job, lambda work, f=folder: work.taking(f, Side.OLD))
            tell(number + 1)

    def check(self, told: list[int]) -> list[str]:
        """Find all that were said to be kept, in order."""
        work, last = load_work(self.job), max(told, default=0)
        names = [one.folder.name for one in work.recordings]
        wrong = [] if names == [f"run-{n}" for n in range(len(names))] else ["not in order"]
        if len(names) not in {last, last + 1}:
            wrong.append(f"{len(names)} are kept, {last} were told")
        after = change_work(self.job, lambda _: JobWork())
        return wrong + ([] if after == JobWork() else ["can't be changed any more"])


class Amending:
    """Edits are put on top of a recording."""

    def prepare(self, place: Path) -> None:
        """Make the recording."""
        self.folder = place / "run"
        model_recording(self.folder, 5)
        seal(self.folder)

    def act(self, tell: Tell) -> None:
        """Write down one after the other."""
        for number in range(1_000_000):
            add_amendment(self.folder, _edit(number))
            tell(number + 1)

    def check(self, told: list[int]) -> list[str]:
        """Find all that were said to be kept, in order, and nothing that nobody wrote."""
        last = max(told, default=0)
        found, damage = amendments_of(self.folder)
        wrong = []
        if [one.new for one in found] != [str(number) for number in range(len(found))]:
            wrong.append("not what was written")
        if len(found) not in {last, last + 1}:
            wrong.append(f"{len(found)} are kept, {last} were told; damage: {damage}")
        add_amendment(self.folder, _edit(len(found)))
        again, later = amendments_of(self.folder)
        if len(again) != len(found) + 1 and not later:
            wrong.append("the next edit is lost, and nobody says so")
        return wrong + ([] if verify_folder(self.folder).intact else ["the recording was touched"])


def _edit(number: int) -> Amendment:
    return Amendment(AmendmentKind.LIMIT, "speed.1.max_a", None, "-1", str(number), "N. N.", "test")


class Joining:
    """A recording that went on elsewhere is put together."""

    def prepare(self, place: Path) -> None:
        """Make both parts."""
        self.last = spill_of(place, 400, 250)
        self.out = place / "whole"

    def act(self, tell: Tell) -> None:
        """Put them together."""
        join_parts(self.last, self.out)

    def check(self, told: list[int]) -> list[str]:
        """Find the whole, sealed, or nothing; then it can be made."""
        if not self.out.exists():
            join_parts(self.last, self.out)
        wrong = [] if verify_folder(self.out).intact else ["the seal does not hold"]
        with folder_aside(self.out):  # as the next one begins
            left = [path.name for path in self.out.parent.iterdir() if path.name.startswith(".")]
        if len(left) != 1:
            wrong.append(f"left behind: {left}")
        return wrong + numbers_in(self.out, 400, 400)


class Moving:
    """A recording's folder vanishes while it is written, and it goes on elsewhere."""

    def prepare(self, place: Path) -> None:
        """Say where."""
        self.folder, self.elsewhere = place / "run", place / "elsewhere"

    def act(self, tell: Tell) -> None:
        """Record, and lose the folder after some of it."""
        about, block = READ_BACK
        recorder = MovingRecorder(self.folder, about, places=lambda: [self.elsewhere])
        for number in range(1_000_000):
            try:
                if number % 10 == 9:
                    recorder._recorder.sync()  # as it does of itself each second
                recorder.take(block(number * 20, 20))
                if number % 3 == 0:
                    recorder._recorder.flush()
                    tell(recorder.rows["meter"])
            except DiskFailed:
                tell(recorder.rows["meter"])
            if number == 15:
                self.folder.rename(self.folder.with_name("taken out"))

    def check(self, told: list[int]) -> list[str]:
        """Find in both parts together all that was handed over."""
        first = self.folder.with_name("taken out")
        first = first if first.exists() else self.folder
        if not layout.holds_recording(first):
            return [] if not told else ["the recording is gone"]
        parts = list(self.elsewhere.glob("*")) if self.elsewhere.exists() else []
        whole = first
        if parts and (parts[0] / layout.CONTINUES).exists() and _opens(parts[0]):
            whole = self.folder.parent / "whole"
            join_parts(parts[0], whole, first)
        return numbers_in(whole, max(told, default=0))


def _opens(part: Path) -> bool:
    """Tell whether a part has got as far as its first file on the disk."""
    return Recording.open(part).rows("meter") > 0


WORKS = {
    "seal": Sealing,
    "import": Importing,
    "claim pack": Claiming,
    "index": Indexing,
    "job card": CardWriting,
    "list of a job": WorkListing,
    "amendments": Amending,
    "join": Joining,
    "move": Moving,
    "pyramid": PyramidMaking,
    "recording with a pyramid": PyramidRecording,
}
"""By name."""

"""Claim: the pack of a warranty claim, from two recordings and a job card.

A pack is two files: ``claim.zip``, a signed bag (RFC 8493) with everything in it, and
``claim.pdf``, which says the same to a reader and carries the tables and the signed lists inside.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime
from pathlib import Path

import meterlog
from meterlog.evidence.claim_content import ClaimCircuit, ClaimContent, ClaimSide, PageSize
from meterlog.evidence.pack_bag import tag_files, write_bag
from meterlog.evidence.pack_zip import write_zip
from meterlog.evidence.packed_ahead import PackedAhead
from meterlog.evidence.page_list import PAGES
from meterlog.evidence.shown_text import shown
from meterlog.evidence.signing import Signer
from meterlog.evidence.table_form import TableForm
from meterlog.evidence.zip_form import PACKED_BY, PACKER
from meterlog.model import Comparison, Limits, Review
from meterlog.model.edit_notes import limits_in
from meterlog.model.errors import EvidenceError, UsageError
from meterlog.model.job_card import (
    JobCard,
    card_to_dict,
    missing_words,
)
from meterlog.profile.files_below import files_below
from meterlog.profile.full_path import full_path
from meterlog.recording import Recording, layout
from meterlog.recording.bag import sha256_of
from meterlog.recording.folder_aside import folder_aside, put_in_place
from meterlog.work.amended import Amending, edits_told, parted
from meterlog.work.circuit_checks import judged_checks
from meterlog.work.claim_card import seen_card
from meterlog.work.claim_doubts import card_doubts, pair_doubts, same_draw, seal_doubts
from meterlog.work.claim_inside import (
    begin_packing,
    contents_of,
    names_inside,
    refuse_simulated,
    refuse_too_large,
)
from meterlog.work.claim_photos import copy_photos
from meterlog.work.claim_privacy import ClaimPrivacy
from meterlog.work.compare import CompareRequest, compare_reviewed
from meterlog.work.comparison_files import write_comparison
from meterlog.work.evidence_folder import write_evidence
from meterlog.work.review import review_folder
from meterlog.work.run_doubts import head_doubts, job_doubts

PDF, ZIP, BAG = "claim.pdf", "claim.zip", "claim"
"""Names of the files of a pack, and of the one folder in the zip."""


@dataclass(frozen=True, slots=True)
class ClaimRequest:
    """What a pack shall hold.

    Attributes
    ----------
    card : JobCard
    photos_from : Path
        Folder of the card; only photos in it are taken.
    before, after : Path or None
        Recordings; one at least.
    circuits : tuple of Path
        Recordings that hold circuit checks alone (``meterlog circuit --save``).
    out : Path
        Absent or empty.
    page : PageSize
    without_customer : bool
        Leave out who and whose vehicle it is.
    limits : Limits or None
        None: each is judged by its own.
    form : TableForm
    signer : Signer or None
        None: nobody signs.
    as_recorded : bool
        Leave out the edits on top of the recordings; the pack says that they are.
    """

    card: JobCard
    photos_from: Path
    before: Path | None
    after: Path | None
    out: Path
    circuits: tuple[Path, ...] = ()
    page: PageSize = PageSize.A4
    without_customer: bool = False
    limits: Limits | None = None
    form: TableForm = field(default_factory=TableForm)
    signer: Signer | None = None
    as_recorded: bool = False


@dataclass(frozen=True, slots=True)
class ClaimMade:
    """What came of it.

    Attributes
    ----------
    files : tuple of Path
    missing : tuple of str
        What the job card does not say.
    remarks : tuple of str
        What could not be put in, such as a photo that can't be read.
    fingerprint : str
        Of the key that signed; empty where nobody did.
    doubts : tuple of str
        What the runs say against the claim, known only now that they were judged and compared.
    """

    files: tuple[Path, ...]
    missing: tuple[str, ...]
    remarks: tuple[str, ...]
    fingerprint: str
    doubts: tuple[str, ...] = ()


def make_claim(
    request: ClaimRequest,
    progress: Callable[[float], None],
    now: Callable[[], datetime] = lambda: datetime.now(UTC),
) -> ClaimMade:
    """Make a pack. Nothing is left behind where it can't be finished.

    Parameters
    ----------
    request : ClaimRequest
    progress : callable
        Called with the part done, 0 to 1. May raise to cancel.
    now : callable
        Tells the time, UTC.

    Returns
    -------
    ClaimMade

    Raises
    ------
    RecordingUnreadable
        If a folder holds no recording or it is damaged beyond use.
    EvidenceError
        If a file can't be written.
    UsageError
        If one recording is given twice, or a circuit check that holds none or is simulated where
        the recordings are not.
    """
    made_utc = now().isoformat(timespec="seconds")
    out = request.out
    try:
        with folder_aside(out) as work, PackedAhead() as ahead:
            made = _Making(request, made_utc, work / BAG, progress, ahead).make(work)
            progress(1.0)  # the last that may cancel: from here on the pack is there
            put_in_place([work / name for name in (PDF, ZIP)], out)
    except OSError as error:
        raise EvidenceError(
            f"the pack can't be written: {error.strerror}.",
            subject=_outside(str(error.filename or out), out),
            remedy="Choose a folder that you may write to, on a disk with room.",
        ) from error
    except EvidenceError as error:
        subject = _outside(error.subject, out)
        if subject == error.subject:
            raise
        raise EvidenceError(error.message, subject=subject, remedy=error.remedy) from error
    return replace(made, files=(out / PDF, out / ZIP))


def _outside(subject: str, out: Path) -> str:
    """Give the folder that was asked for where a file is meant of that beside it, which is gone."""
    beside = str(full_path(out.parent) / f".{out.name}-")
    return str(out) if subject and str(full_path(Path(subject))).startswith(beside) else subject


class _Making:
    """One pack on its way."""

    def __init__(
        self,
        request: ClaimRequest,
        made_utc: str,
        bag: Path,
        progress: Callable[[float], None],
        ahead: PackedAhead,
    ) -> None:
        self._request, self._made_utc, self._bag = request, made_utc, bag
        self._progress, self._ahead = progress, ahead
        self._remarks: list[str] = []
        self._edits: list[str] = []
        card = request.card
        self._missing = missing_words(card)
        self._card, self._limits = card, request.limits
        self._privacy: ClaimPrivacy | None = None
        if request.without_customer:
            self._privacy = ClaimPrivacy(card)
            self._card = self._privacy.card(card)
            self._missing += self._privacy.doubts_left_out(card)
            self._limits = request.limits and self._privacy.limits(request.limits)
        self._card, hidden = seen_card(self._card)
        self._remarks += hidden

    def make(self, work: Path) -> ClaimMade:
        """Put all files into ``work``."""
        request, payload = self._request, self._bag / layout.PAYLOAD
        payload.mkdir(parents=True)
        photos, lost = copy_photos(
            self._card, request.photos_from, payload / "photos", self._part(0.0, 0.1)
        )
        self._remarks += [
            f"photo {shown(name, 200)}: can't be put in: {why}." for _, name, why in lost
        ]
        # By number, not by name: a name can tell whose vehicle it is.
        self._missing += tuple(
            f"Photo {number} of the job card is not in the pack: {why}." for number, _, why in lost
        )
        if self._privacy is not None and photos:
            self._remarks.append(
                f"photos: {len(photos)} in a pack without customer data, and nothing in them is "
                "made unreadable: look whether one shows a plate, a VIN, a name or a face."
            )
        called = {f"photo-{number}.jpg": name for number, name in enumerate(self._card.photos, 1)}
        self._card = replace(self._card, photos=tuple(f"photos/{one.name}" for one in photos))
        sides = self._sides(payload)
        circuits = self._circuits(payload, sides)
        comparison = self._comparison(payload, sides)
        told = same_draw(sides[0].review, comparison) if comparison is not None else ()
        sides = (replace(sides[0], lacking=(*sides[0].lacking, *told)), *sides[1:])
        content = ClaimContent(
            card=self._card,
            sides=sides,
            circuits=circuits,
            comparison=comparison,
            missing=self._missing,
            doubts=card_doubts(self._card, [(one.name, one.recording) for one in sides]),
            amendments=tuple(self._edits),
            photos=photos,
            photo_names=() if self._privacy else tuple(called[one.name] for one in photos),
            without_customer=request.without_customer,
            made_utc=self._made_utc,
            fingerprint="" if request.signer is None else request.signer.fingerprint,
        )
        self._write_card(payload)
        content = replace(content, checksums=self._checksums(payload))
        self._write_both(content, self._info(sides), work / PDF)
        refuse_too_large(self._bag, request.out.name)  # now with its lists
        write_zip(self._bag, work / ZIP, self._part(0.92, 0.08), self._ahead.get)
        doubts = tuple(f"{sides[0].name}: {one}" for one in told)
        return ClaimMade((), self._missing, tuple(self._remarks), content.fingerprint, doubts)

    def _write_both(self, content: ClaimContent, info: Mapping[str, str], pdf: Path) -> None:
        """Write the PDF and make the bag, each of which holds digests of the other.

        The pages say which files are inside, not what the signed lists say; so they are drawn
        first, then their digests go into the lists, and the lists into the PDF.
        """
        # Imported here: tables and the bag must come out where Qt's libraries are missing.
        from meterlog.evidence.claim_pdf import write_claim_pdf
        from meterlog.evidence.pdf_pages import page_digests, put_inside

        signer = self._request.signer
        (self._bag / PAGES).touch()
        tags = tag_files(self._bag, info, signer, tick=lambda: self._progress(0.52))
        carried, too_large = names_inside(self._bag)
        self._remarks += [
            f"{name}: is too large for the PDF and in the zip alone: hand in both."
            for name in too_large
        ]
        drafts = {**contents_of(self._bag, carried), **tags}
        write_claim_pdf(
            content, pdf, self._request.page, drafts, self._part(0.6, 0.3), self._ahead.get
        )
        (self._bag / PAGES).write_bytes(page_digests(pdf))
        write_bag(self._bag, info, signer, tags, lambda: self._progress(0.91))
        lists = tuple(name for name in drafts if not name.startswith(f"{layout.PAYLOAD}/"))
        done = contents_of(self._bag, lists)
        put_inside(pdf, {key: new for key, new in done.items() if new != drafts[key]})

    def _part(self, begun: float, size: float) -> Callable[[float], None]:
        """Give what counts the progress of one part of the work."""
        return lambda part: self._progress(begun + size * part)

    def _sides(self, payload: Path) -> tuple[ClaimSide, ...]:
        named = [("before", self._request.before), ("after", self._request.after)]
        sides: list[ClaimSide] = []
        for name, folder in named:
            if folder is None:
                continue
            begun = 0.1 + 0.2 * len(sides)
            tell = self._part(begun, 0.12)
            recording, review = self._reviewed(folder, name, self._limits, tell)
            self._progress(begun + 0.12)
            if self._limits is not None:
                recording.about = replace(recording.about, limits=self._limits)
            own, lost = judged_checks(recording)
            _, no_picture = write_evidence(
                recording,
                review,
                payload / name,
                self._part(begun + 0.12, 0.07),
                self._request.form,
            )
            begin_packing(self._bag, payload / name, self._ahead)
            if no_picture:
                self._remarks.append(f"{name}: {no_picture}.")
            told = head_doubts(self._card, name, recording.about)
            others = limits_in(review.notes)
            doubts = (*review.part_lines, *others, *seal_doubts(recording), *told, *lost)
            side = ClaimSide(name, recording, review, tuple(own), doubts)
            sides.append(side)
        if len(sides) > 1:
            more = pair_doubts(*(one.recording for one in sides))
            sides[0] = replace(sides[0], lacking=(*sides[0].lacking, *more))
        return tuple(sides)

    def _circuits(self, payload: Path, sides: Sequence[ClaimSide]) -> tuple[ClaimCircuit, ...]:
        """Write and give the circuit checks that were kept by themselves."""
        found: list[ClaimCircuit] = []
        for number, folder in enumerate(self._request.circuits, start=1):
            name = "circuit" if number == 1 else f"circuit-{number}"
            recording, review = self._reviewed(folder, name)
            refuse_simulated(folder, recording, sides)
            self._progress(0.5)
            write_evidence(recording, review, payload / name, lambda _: None, self._request.form)
            begin_packing(self._bag, payload / name, self._ahead)
            checks, lost = judged_checks(recording)
            if not checks and not lost:
                raise UsageError(
                    "holds no circuit check.",
                    subject=f"--circuit {folder}",
                    remedy="Give one that was kept by itself (meterlog circuit --save).",
                )
            other = job_doubts(self._card, recording.about)
            lacking = (*review.part_lines, *seal_doubts(recording), *other, *lost)
            found.append(ClaimCircuit(name, recording, tuple(checks), lacking))
        return tuple(found)

    def _reviewed(
        self,
        folder: Path,
        name: str,
        limits: Limits | None = None,
        tell: Callable[[float], None] | None = None,
    ) -> tuple[Recording, Review]:
        """Judge a recording, without customer data where they are left out; keep its edits."""
        asked, privacy = self._request, self._privacy
        amending = Amending(applied=not asked.as_recorded, named=not asked.without_customer)
        forget = None if privacy is None else privacy.forget
        recording, review = review_folder(folder, limits, tell, amending=amending, prepare=forget)
        if privacy is not None:
            review = privacy.review(review)
        self._keep_edits(folder, name, review)
        return recording, review

    def _keep_edits(self, folder: Path, name: str, review: Review) -> None:
        """Keep what is to be said of the edits on top of a recording."""
        edits, damage = parted(edits_told(review))
        said = [f"{name}: {text}" for text in edits]
        if damage:
            # One entry an edit: what stands before the damage, and what is wrong behind it.
            last = said.pop() if said else f"{name}:"
            said.append(f"{last} NOT WHOLE from there on: {' '.join(damage)}")
        self._edits += said
        self._remarks += [f"{folder.name}: {text}" for text in damage]

    def _comparison(self, payload: Path, sides: Sequence[ClaimSide]) -> Comparison | None:
        if self._request.before is None or self._request.after is None:
            return None
        # Called as in the pack: a folder's own name can tell whose vehicle it is.
        asked = CompareRequest((Path("before"),), Path("after"), self._limits)
        comparison = compare_reviewed(asked, [(one.recording, one.review) for one in sides])
        write_comparison(comparison, payload)
        return comparison

    def _write_card(self, payload: Path) -> None:
        text = json.dumps(card_to_dict(self._card), indent=2, ensure_ascii=False)
        (payload / "job-card.json").write_text(text + "\n", encoding="utf-8")

    def _info(self, sides: Sequence[ClaimSide]) -> dict[str, str]:
        info = {
            "Bagging-Date": self._made_utc[:10],
            "External-Description": "Readings and judgement of a cabin fan, for a warranty claim",
            "External-Identifier": " ".join(one.recording.about.recording_id for one in sides),
            "Bag-Software-Agent": f"meterlog {meterlog.__version__}",
            PACKED_BY: PACKER,
        }
        if self._card.claim_number:
            info["Internal-Sender-Identifier"] = self._card.claim_number
        return info

    def _checksums(self, payload: Path) -> dict[str, str]:
        names = sorted(path for path in files_below(payload) if path.is_file())
        return {str(path.relative_to(self._bag).as_posix()): sha256_of(path) for path in names}

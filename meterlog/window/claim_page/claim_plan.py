"""ClaimPlan: what the page says a pack shall hold, and making it. No widgets."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from meterlog.model.errors import MeterlogError, UsageError
from meterlog.model.job_card import JobCard
from meterlog.profile.full_path import full_path
from meterlog.window.words import say

if TYPE_CHECKING:
    from meterlog.work.claim import ClaimMade

A4, LETTER = "a4", "letter"
_HEAD_BYTES = 200


@dataclass(frozen=True, slots=True)
class ClaimPlan:
    """What a pack shall hold.

    Attributes
    ----------
    job : Path
        Folder of the job; the card's photos are named from it.
    card : JobCard
    before, after : Path or None
    circuits : tuple of Path
    out : Path
    page : str
        ``a4`` or ``letter``.
    without_customer, signed : bool
    passphrase : str
        Of the signing key; empty where it has none.
    decimal_comma : bool
        In all tables; between the fields stands a semicolon then.
    """

    job: Path
    card: JobCard
    before: Path | None
    after: Path | None
    circuits: tuple[Path, ...]
    out: Path
    page: str = A4
    without_customer: bool = False
    signed: bool = True
    passphrase: str = field(default="", repr=False)
    decimal_comma: bool = False


def make(plan: ClaimPlan, progress: Callable[[float], None]) -> ClaimMade:
    """Make the pack; takes seconds.

    Parameters
    ----------
    plan : ClaimPlan
    progress : callable
        See :func:`~meterlog.work.claim.make_claim`.

    Raises
    ------
    MeterlogError
        As :func:`~meterlog.work.claim.make_claim` does, and where there is no recording, the folder
        can't be meant, or the key can't be used. Nothing is left behind then.
    """
    from meterlog.evidence.claim_content import PageSize
    from meterlog.evidence.signing import Signer
    from meterlog.evidence.table_form import TableForm
    from meterlog.recording.given_folder import new_folder, recording_at
    from meterlog.work.claim import ClaimRequest, make_claim

    if plan.before is None and plan.after is None:
        raise UsageError(
            say("There is no recording to claim by."),
            remedy=say("Choose the one before the repair, the one after it, or both."),
        )
    for folder in (plan.before, plan.after, *plan.circuits):
        if folder is not None:
            recording_at(folder)
    form = TableForm(";", ",") if plan.decimal_comma else TableForm()
    request = ClaimRequest(
        card=plan.card,
        photos_from=full_path(plan.job),
        before=plan.before,
        after=plan.after,
        out=new_folder(plan.out),
        circuits=plan.circuits,
        page=PageSize(plan.page),
        without_customer=plan.without_customer,
        form=form,
        signer=Signer.load_or_make(plan.passphrase) if plan.signed else None,
    )
    return make_claim(request, progress)


def key_wants_words() -> bool | None:
    """Tell whether the signing key is kept under a passphrase; None while there is no key."""
    from meterlog.evidence import signing

    try:
        with (signing.key_folder() / signing.KEY).open("rb") as stream:
            return b"ENCRYPTED" in stream.read(_HEAD_BYTES).partition(b"\n")[0]
    except FileNotFoundError:
        return None
    except (OSError, MeterlogError):
        return False  # what is wrong with it is told when it is to sign

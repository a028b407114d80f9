"""ProofSection: edits, attached files, checksums and the key that signs."""

from __future__ import annotations

from collections.abc import Collection

from meterlog.evidence.claim_content import ClaimContent
from meterlog.evidence.claim_pdf.page_look import STRONG
from meterlog.evidence.claim_pdf.sheets import Sheets
from meterlog.evidence.claim_pdf.table_block import Column, Row, lay_table
from meterlog.evidence.signed_manifest import SIGNATURE
from meterlog.recording import layout

_SUMS = (Column("file"), Column(""), Column("SHA-256", fixed=True))


def add_proof(sheets: Sheets, content: ClaimContent, attached: Collection[str]) -> None:
    """Put the chapter by which somebody else can check that nothing was changed.

    Parameters
    ----------
    sheets : Sheets
    content : ClaimContent
    attached : collection of str
        Names of the files that the PDF carries.
    """
    sheets.heading("Edits, checksums and signature", chapter=True, keep=110.0)
    sheets.heading("Edits made on top of the recordings", keep=30.0)
    if content.amendments:
        sheets.listed(content.amendments)
    else:
        sheets.words("None.")
    sheets.heading("Signature", keep=30.0)
    if content.fingerprint:
        sheets.words(f"Fingerprint of the signing key: {content.fingerprint}", STRONG)
        sheets.words(
            "The fingerprint is the beginning of the SHA-256 of the public key (Ed25519, RFC 8032)."
            " Compare it with one that you got by another way than this pack."
        )
    else:
        sheets.words("Nobody signed: that nothing was changed shows from the checksums alone.")
    sheets.words(
        '"meterlog verify" on the pack\'s folder, its zip or this PDF says what is intact, what is'
        " changed and who signed, these pages included. On paper they prove nothing: what counts is"
        " the pack's data."
    )
    if attached:
        sheets.words(
            f"Files inside this PDF, to be saved by a PDF viewer: {len(attached)}. In their names"
            " there stands a dot for each slash: data/job-card.json is data.job-card.json. Pictures"
            " are drawn in it; they, and tables that are too large for a PDF, are in the zip."
            f"{_counted(attached)}"
        )
    sums = content.checksums
    if sums or attached:
        sheets.heading("Files of the pack", keep=70.0)
        names = sorted({*sums, *attached})
        rows = [
            Row((name, "attached" if name in attached else "in the zip", sums.get(name, "")))
            for name in names
        ]
        lay_table(sheets, _SUMS, rows)


def _counted(attached: Collection[str]) -> str:
    """Say why "meterlog verify" of the PDF counts fewer: those that no list can hold."""
    named = ((layout.TAG_MANIFEST, "the last list"), (SIGNATURE, "the signature over it"))
    unlisted = [f"{name} ({what})" for name, what in named if name in attached]
    if not unlisted:
        return ""
    return (
        f' "meterlog verify" counts {len(attached) - len(unlisted)} of them, those whose checksum'
        f" stands in a list; not counted: {' and '.join(unlisted)}."
    )

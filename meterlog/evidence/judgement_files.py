"""JudgementFiles: the whole judgement of a recording for the export, to be read and to be parsed.

Each says which recording it is of and what its readings are: files get parted from their folder.
"""

from __future__ import annotations

import json
import textwrap
from collections.abc import Sequence

from meterlog.evidence.judgement_text import judgement_text
from meterlog.evidence.origin_words import origin_words
from meterlog.evidence.readings_csv import origin_of
from meterlog.evidence.review_json import review_to_dict
from meterlog.evidence.seal_state import seal_problems, seal_state, seal_words
from meterlog.evidence.unbroken import unbroken
from meterlog.evidence.verify import seal_digest
from meterlog.model import Review
from meterlog.recording import Recording

_WIDTH = 100


def judgement_file(recording: Recording, review: Review, beside: Sequence[str] = ()) -> str:
    """Give the text of ``judgement.txt``: verdict, findings, tap test, budgets and all the rest.

    Parameters
    ----------
    recording : Recording
    review : Review
    beside : sequence of str
        What other files of the evidence come to, such as a circuit check.

    Returns
    -------
    str
        Lines end in line feeds.
    """
    about = recording.about
    head = [f"Judgement of recording {about.recording_id}"]
    seal = seal_digest(recording.folder)
    if seal:
        head.append(f"Seal {seal}")
    head.append(f"Limits {about.limits.name}")
    lacks = (*(f"NOT WHOLE: {text}" for text in recording.damage), *seal_words(recording))
    for words in (*origin_words(recording), *lacks):
        head += ["", *textwrap.wrap(words, _WIDTH)]
    for words in review.part_lines:
        head += ["", *unbroken(words, _WIDTH)]
    for words in beside:
        head += ["", *textwrap.wrap(words, _WIDTH)]
    if beside:
        head += ["", "What follows is of the traces alone."]
    return "\n".join(head) + "\n\n" + judgement_text(review, _WIDTH, budgets=True)


def review_file(recording: Recording, review: Review) -> str:
    """Give the text of ``review.json``: the same as numbers and words for programs.

    Parameters
    ----------
    recording : Recording
    review : Review

    Returns
    -------
    str
        One JSON object: ``recording`` says of what, the rest is what
        :func:`meterlog.evidence.review_to_dict` gives.

    Source
    ------
    RFC 8259: no number in it is NaN or infinite.
    """
    about = recording.about
    content = {
        "recording": {
            "id": about.recording_id,
            "origin": origin_of(recording).value,
            "typed_by_hand": [one.key for one in about.instruments if one.typed],
            "state": seal_state(recording),
            "not_as_sealed": list(seal_problems(recording)),
            "damage": list(recording.damage),
            "end_s": recording.end_ns / 1e9,
        },
        "limits": about.limits.name,
        **review_to_dict(review),
    }
    return json.dumps(content, indent=2, ensure_ascii=False, allow_nan=False) + "\n"

"""RecordingHead: what an import must know of a recording, among the metadata of its tables."""

from __future__ import annotations

from dataclasses import replace

from meterlog.model import About, Job, Review
from meterlog.model.edit_notes import edits_in, limits_in
from meterlog.recording import (
    EDITS_NAME,
    HEAD_NAME,
    HEAD_PROPERTY,
    PART_NAME,
    Recording,
    about_bytes,
    kept_circuits,
)


def recording_head(about: About) -> dict[str, list[dict[str, str]]]:
    """Give the head of a recording as a common property of CSVW metadata.

    Parameters
    ----------
    about : About

    Returns
    -------
    dict
        Instruments with channels, accuracies, sensors and zeros, the limits and the conditions
        under which it was measured. Neither customer, vehicle, complaint, part nor technician, and
        no port: no finding rests on them.
    """
    instruments = tuple(replace(one, url="") for one in about.instruments)
    job = Job(measured_under=about.job.measured_under)
    text = about_bytes(replace(about, instruments=instruments, job=job)).decode("utf-8")
    return {HEAD_PROPERTY: [_held(HEAD_NAME, text)]}


def head_of_events(recording: Recording, review: Review) -> dict[str, object]:
    """Give the same for the events, with the circuit profiles by which entries were made.

    And with the edits, and with limits that were not its own: the events are as edited and the
    limits those of the judgement, so whoever imports them has to be told. So has who imports one
    part of a recording.

    Parameters
    ----------
    recording : Recording
    review : Review

    Returns
    -------
    dict
    """
    circuits = [_held(name, text) for name, text in kept_circuits(recording.folder)]
    (head,) = recording_head(recording.about).values()
    edits = [" ".join(one.split()) for one in (*edits_in(review.notes), *limits_in(review.notes))]
    held = [_held(EDITS_NAME, "\n".join(edits))] if edits else []
    held += [_held(PART_NAME, review.part)] if review.part else []
    return {HEAD_PROPERTY: [*head, *circuits, *held]}


def _held(name: str, text: str) -> dict[str, str]:
    return {"@type": "schema:PropertyValue", "schema:name": name, "schema:value": text}

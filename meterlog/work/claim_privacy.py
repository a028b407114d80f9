"""ClaimPrivacy: a recording without what tells whose vehicle it was, before it is judged.

The judgement quotes what was typed while recording; so it must be judged without it.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import fields, replace
from typing import Any

from meterlog.model import Conditions, Event, EventKind, Job, Limits, Review
from meterlog.model.card_doubts import doubt_words
from meterlog.model.job_card import JobCard, customer_pattern, without_customer
from meterlog.recording import Recording

LEFT_OUT = "[left out]"
_SOME_PART = "It goes on from another recording: what came before is not in it."
_LEAST = 5
"""Letters of a word with a digit that is taken for a plate or a VIN: a year has four."""


class ClaimPrivacy:
    """Takes out of recordings what tells whose vehicle it was.

    Parameters
    ----------
    card : JobCard
        With the customer data that are looked for.
    """

    def __init__(self, card: JobCard) -> None:
        self._known = JobCard(customer=card.customer, plate=card.plate, vin=card.vin)

    def card(self, card: JobCard) -> JobCard:
        """Give the card without it.

        In the vehicle's name, too, each single name of the customer's entry goes: a vehicle is
        often called by its owner. Where it is its maker's name, less is known of the vehicle; the
        part's numbers stay.
        """
        bare = without_customer(card)
        return replace(bare, vehicle=_bare(self._known)(bare.vehicle))

    def doubts_left_out(self, card: JobCard) -> tuple[str, ...]:
        """Say that doubts about what is left out are left out with it, such as those of a VIN.

        Else nobody would hear that the vehicle's identity was in doubt. What they quote is not
        told.
        """
        told = set(doubt_words(self.card(card)))
        gone = sum(words not in told for words in doubt_words(card))
        if not gone:
            return ()
        many = "One doubt" if gone == 1 else f"{gone} doubts"
        return (f"{many} about entries that are left out here, such as the VIN, can't be told.",)

    def forget(self, recording: Recording) -> None:
        """Leave it out of what was read of a recording; nothing on the disk is touched.

        Notes go whole. Of the head's job the part and the conditions stay. In them, in the other
        events and in the limits ``[left out]`` stands for customer, plate and VIN of the card, and
        for words with digits of the head's vehicle, such as its VIN.
        """
        about = recording.about
        job = about.job
        bare = _bare(self._knowing(job.vehicle))
        kept = Job(
            part=bare(job.part),
            conditions=bare(job.conditions),
            measured_under=_conditions(job.measured_under, bare),
        )
        recording.about = replace(about, job=kept, limits=_limits(about.limits, bare))
        recording.events = tuple(_event(one, bare) for one in recording.events)

    def review(self, review: Review) -> Review:
        """Give a review that names no folder, which may be called by whose vehicle it is."""
        return replace(review, part=_SOME_PART) if review.part else review

    def limits(self, limits: Limits) -> Limits:
        """Give limits without it."""
        return _limits(limits, _bare(self._known))

    def _knowing(self, vehicle: str) -> JobCard:
        words = [word for word in re.split(r"[\s,;]+", vehicle) if len(word) >= _LEAST]
        words = [word for word in words if re.search(r"\d", word)]
        return replace(self._known, customer="\n".join((self._known.customer, *words)))


def _bare(known: JobCard) -> Callable[[str], str]:
    pattern = customer_pattern(known)
    return (lambda text: text) if pattern is None else (lambda text: pattern.sub(LEFT_OUT, text))


def _event(event: Event, bare: Callable[[str], str]) -> Event:
    return replace(event, value=LEFT_OUT if event.kind is EventKind.NOTE else bare(event.value))


def _limits(limits: Limits, bare: Callable[[str], str]) -> Limits:
    return replace(limits, name=bare(limits.name), text=bare(limits.text))


def _conditions(conditions: Conditions, bare: Callable[[str], str]) -> Conditions:
    said = {one.name: getattr(conditions, one.name) for one in fields(conditions)}
    # Any: the type checker can't tell which fields are texts.
    words: dict[str, Any] = {
        name: bare(value) for name, value in said.items() if isinstance(value, str)
    }
    return replace(conditions, **words)

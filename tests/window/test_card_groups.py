"""Fields of the job card in the order of the work; entries that can be taken back."""

from dataclasses import replace

import pytest

from meterlog.model.card_doubts import doubt_words
from meterlog.model.card_fields import ASKED, FIELDS
from meterlog.model.errors import DiskFailed
from meterlog.model.job_card import JobCard, PartIdentity, missing_words, with_value
from meterlog.window.job_page.card_groups import (
    GROUPS,
    PHOTOS,
    doubts_by_field,
    field_label,
    missing_fields,
)
from meterlog.window.job_page.card_turns import CardTurns


def test_every_field_stands_in_one_group_and_has_a_name_of_its_own_there():
    keys = [key for group in GROUPS for key in group.keys]
    assert sorted([*keys, PHOTOS]) == sorted(field.key for field in FIELDS)
    for group in GROUPS:
        labels = [field_label(group, key) for key in group.keys]
        assert len(set(labels)) == len(labels)
        assert all(label and label[0].isupper() for label in labels)


def test_what_is_missing_leads_to_a_field_that_ends_it():
    card = JobCard(plate="QX 118 ZZ")
    missing = missing_fields(card)
    assert [words for _, words in missing] == list(missing_words(card))
    assert len(missing) == len(ASKED) - 1
    for key, words in missing:
        assert words not in missing_words(with_value(card, key, "said"))


def test_a_doubt_is_told_beside_the_field_it_is_about():
    card = JobCard(
        vin="1M8GDM9AXKP042789",
        failed_on="2026-05-04",
        repaired_on="2026-05-01",
        old_part=PartIdentity(serial="S1"),
        new_part=PartIdentity(serial="S1"),
    )
    told = doubts_by_field(card)
    assert set(told) == {"vin", "repaired_on", "new_part.serial"}
    assert sorted(one for words in told.values() for one in words) == sorted(doubt_words(card))
    assert set(doubts_by_field(replace(card, failed_on="4.5.26"))) == {
        *("vin", "failed_on", "new_part.serial")
    }


def walk(turns, card, *entries):
    for key, text in entries:
        after = with_value(card, key, text)
        turns.note(key, card, after)
        card = after
    return card


def test_entries_are_taken_back_newest_first_and_put_in_again():
    turns, start = CardTurns(), JobCard(notes="n")
    card = walk(turns, start, ("vehicle", "A"), ("plate", "Q"), ("plate", "QX"))

    def change(how):
        nonlocal card
        card = how(card)

    assert turns.undo(change) == "plate"  # what was typed on is one entry
    assert card == replace(start, vehicle="A")
    assert turns.undo(change) == "vehicle"
    assert card == start
    assert turns.undo(change) == ""
    assert (turns.redo(change), turns.redo(change)) == ("vehicle", "plate")
    assert card == replace(start, vehicle="A", plate="QX")
    assert not turns.can_redo


def test_what_was_taken_back_is_gone_after_another_entry_and_an_undo_that_fails_is_none():
    turns = CardTurns()
    card = walk(turns, JobCard(), ("vehicle", "A"))

    def fail(_):
        raise DiskFailed("no room")

    with pytest.raises(DiskFailed):
        turns.undo(fail)
    assert turns.can_undo
    assert not turns.can_redo
    turns.undo(lambda _: None)
    walk(turns, card, ("plate", "Q"))
    assert turns.redo(lambda _: None) == ""

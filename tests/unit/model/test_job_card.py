"""Job cards: what they hold, what they lack, what they tell about the customer."""

import json
from dataclasses import fields, replace
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.model.card_doubts import doubt_words
from meterlog.model.card_fields import ASKED, FIELDS
from meterlog.model.errors import UsageError
from meterlog.model.job_card import (
    JobCard,
    PartIdentity,
    card_of,
    card_to_dict,
    filled,
    for_template,
    missing_words,
    value_of,
    with_value,
    without_customer,
)

KEYS = [field.key for field in FIELDS]
words = st.text(st.characters(exclude_categories=["Cs", "Cc"]), max_size=20)
cards = st.builds(
    lambda texts, photos: replace(_card(dict(zip(KEYS, texts, strict=True))), photos=photos),
    st.tuples(*[words for _ in KEYS]),
    st.lists(words, max_size=3).map(tuple),
)
FULL = {key: f"x {key}" for key in KEYS}


def _card(values):
    card = JobCard()
    for key, text in values.items():
        card = with_value(card, key, text)
    return card


def test_the_table_of_fields_is_that_of_the_card():
    parts = [field.name for field in fields(PartIdentity)]
    own = []
    for field in fields(JobCard):
        is_part = field.name.endswith("_part")
        own += [f"{field.name}.{part}" for part in parts] if is_part else [field.name]
    assert sorted(own) == sorted(KEYS)
    assert {key for keys, _ in ASKED for key in keys} <= set(KEYS)


@given(cards)
def test_a_card_comes_back_from_its_json(card):
    assert card_of(json.loads(json.dumps(card_to_dict(card)))) == card


def test_fields_that_are_not_there_are_empty():
    assert card_of({}) == JobCard()
    assert card_of({"old_part": {"serial": "7"}}).old_part == PartIdentity(serial="7")


@pytest.mark.parametrize(
    ("values", "what"),
    [
        ([], "the file is [], not an object."),
        (None, "the file is None, not an object."),
        ({"colour": "red"}, "colour is no field of a job card"),
        ({"vin": 5}, "vin is 5, not a text."),
        ({"vin": None}, "vin is None, not a text."),
        ({"old_part": "FM-20"}, "old_part is 'FM-20', not an object."),
        ({"old_part": {"number": 20}}, "old_part.number is 20, not a text."),
        ({"new_part": {"colour": ""}}, "new_part.colour is no field of a job card"),
        ({"photos": "a.jpg"}, "photos is 'a.jpg', not a list of texts."),
        ({"photos": ["a.jpg", 1]}, "photos[1] is 1, not a text."),
        ({"notes": "a\x1b[2J"}, "notes holds the character '\\x1b', which is no text."),
        ({"notes": "\ud800"}, "notes holds the character '\\ud800', which is no text."),
        ({"notes": ["x" * 500]}, "not a text."),
    ],
)
def test_what_is_no_card_is_refused_with_the_key(values, what):
    with pytest.raises(UsageError) as refused:
        card_of(values, "job.json")
    said = str(refused.value)
    assert said.startswith("job.json: ")
    assert what in said
    assert len(said) < 600


def test_values_are_set_and_read_by_key():
    card = with_value(JobCard(), "Old-Part.Serial", "  7 ")
    assert card.old_part.serial == "7"
    assert value_of(card, "old_part.serial") == "7"
    assert with_value(card, "photos", "a.jpg\n\nb.jpg\n").photos == ("a.jpg", "b.jpg")
    assert with_value(card, "old_part.serial", "") == JobCard()


@pytest.mark.parametrize("key", ["", "old_part", "old_part.", "old_part.x", "old_part.serial.x"])
def test_an_unknown_key_is_refused(key):
    with pytest.raises(UsageError, match="is no field of a job card"):
        with_value(JobCard(), key, "x")
    with pytest.raises(UsageError, match="is no field of a job card"):
        value_of(JobCard(), key)


def test_a_key_that_is_nearly_right_gets_a_hint():
    with pytest.raises(UsageError, match="Did you mean odometer"):
        with_value(JobCard(), "odometr", "x")


def test_an_empty_card_lacks_all_that_is_asked_for_most_asked_for_first():
    said = missing_words(JobCard())
    assert said[0] == "VIN or plate of the vehicle is not stated."
    assert len(said) == len(ASKED)
    assert all(len(sentence) < 75 and sentence.endswith(".") for sentence in said)


def test_a_full_card_lacks_nothing_and_blanks_are_nothing():
    card = _card(FULL)
    assert missing_words(card) == ()
    assert missing_words(replace(card, cause=" \n")) == ("The cause is not stated.",)


def test_one_of_two_that_say_the_same_is_enough():
    card = _card(FULL)
    for one, other in (("vin", "plate"), ("odometer", "hours"), ("claim_number", "work_order")):
        assert missing_words(with_value(card, one, "")) == ()
        neither = with_value(with_value(card, one, ""), other, "")
        assert len(missing_words(neither)) == 1


@pytest.mark.parametrize("key", KEYS)
def test_each_field_that_is_asked_for_is_missed_when_empty(key):
    alone = [words for keys, words in ASKED if keys == (key,)]
    assert list(missing_words(with_value(_card(FULL), key, ""))) == alone


def test_a_template_fills_only_what_is_empty():
    template = _card({"claimant": "Invented Workshop", "new_part.number": "FM-20"})
    card = _card({"new_part.number": "FM-21", "new_part.serial": "7"})
    done = filled(card, template)
    assert done.claimant == "Invented Workshop"
    assert done.new_part == PartIdentity(number="FM-21", serial="7")


def test_a_template_holds_nothing_of_the_one_job():
    kept = for_template(_card(FULL))
    left = {key for key in KEYS if value_of(kept, key)}
    assert left == {
        "claimant", "vehicle", "correction", "old_part.name", "old_part.number", "new_part.name",
        "new_part.number", "old_part_kept", "fitted_by", "technician", "labour",
    }  # fmt: skip


def test_without_customer_data_neither_the_fields_nor_their_texts_are_left():
    card = JobCard(
        customer="Jo Invented, 12 Sample Street\nphone 555-0100",
        plate="B-XY 1234",
        vin="1M8GDM9AXKP042788",
        vehicle="Invented van 2019",
        complaint="Jo  Invented says: dead until hit. BXY1234 stood at 12 sample street.",
        notes="vin 1m8gdm9axkp042788, short P042788 and KP042788, 042788; call 555 0100",
        new_part=PartIdentity(serial="S042788X"),
        photos=("B-XY 1234.jpg",),
    )
    bare = without_customer(card)
    assert (bare.customer, bare.plate, bare.vin) == ("", "", "")
    assert bare.vehicle == "Invented van 2019"
    assert bare.complaint == "[left out] says: dead until hit. [left out] stood at [left out]."
    assert "[left out], short P042788 and [left out], [left out]; call" in bare.notes
    assert bare.new_part.serial == "S042788X"
    assert bare.photos == card.photos


def test_short_plates_do_not_tear_holes_into_the_text():
    card = JobCard(plate="C3", customer="Jo", complaint="connector C3 is hot, jo")
    assert without_customer(card).complaint == "connector C3 is hot, jo"


def test_without_any_customer_data_nothing_changes():
    card = replace(_card(FULL), customer="", plate="", vin="")
    assert without_customer(card) == card


@given(cards)
def test_without_customer_is_final(card):
    bare = without_customer(card)
    assert (bare.customer, bare.plate, bare.vin) == ("", "", "")
    assert without_customer(bare) == bare


def test_what_looks_wrong_is_told():
    assert doubt_words(JobCard()) == ()
    assert doubt_words(JobCard(failed_on="2026-11-28", repaired_on="2026-11-28")) == ()
    said = doubt_words(
        JobCard(
            vin="1M8GDM9A0KP042788",
            failed_on="28.11.2026",
            old_part=PartIdentity(serial="ab7"),
            new_part=PartIdentity(serial="AB7 "),
        )
    )
    assert len(said) == 3
    assert "check digit" in said[0]
    assert "'28.11.2026'; expected year-month-day" in said[1]
    assert "the same serial number ab7" in said[2]
    (backwards,) = doubt_words(JobCard(failed_on="2026-11-28", repaired_on="2026-11-27"))
    assert "before" in backwards


def test_counts_that_are_none_are_told():
    sound = JobCard(
        odometer="48 200 km", odometer_out="48.201", hours="1,204 h", in_service="May 2024"
    )
    assert doubt_words(sound) == ()
    said = doubt_words(
        JobCard(odometer="lots", odometer_out="x5", hours="-5", old_part_fitted="yesterday")
    )
    assert len(said) == 3
    assert "'odometer in' is 'lots', without a number" in said[0]
    assert "'hours' is '-5', less than nothing" in said[1]
    assert "'yesterday', without a number" in said[2]


def test_without_customer_data_a_surname_alone_is_left_out_but_not_the_words_of_the_trade():
    card = JobCard(
        customer="Ms Imra Vantablank, Vantablank Motors",
        vehicle="Imra Nomad (invented)",
        complaint="Vantablank says the motor is dead; imra's husband, too",
        old_part=PartIdentity(name="fan motor"),
    )
    bare = without_customer(card)
    assert bare.complaint == "[left out] says the motor is dead; [left out]'s husband, too"
    assert (bare.vehicle, bare.old_part.name) == ("Imra Nomad (invented)", "fan motor")


@pytest.mark.parametrize(
    ("came", "left", "told"),
    [
        ("61 234 km", "61 230 km", True),
        ("61,234 km", "61.230 km", True),
        ("61 234 km", "61 240 km", False),
        ("61234", "61230 km", False),
        ("61234 mi", "98547 km", False),
        ("about 61 000", "60 000", False),
        ("61.2 km", "5 km", False),
        ("", "5 km", False),
    ],
)
def test_a_vehicle_that_left_with_less_on_its_odometer_is_told(came, left, told):
    said = doubt_words(JobCard(odometer=came, odometer_out=left))
    assert bool([one for one in said if "is less than when it came" in one]) is told


def test_a_day_that_has_not_come_yet_is_told():
    today = datetime.now(UTC).date()
    soon, late = (today + timedelta(days=days) for days in (1, 3))
    assert doubt_words(JobCard(failed_on=today.isoformat(), repaired_on=soon.isoformat())) == ()
    (told,) = doubt_words(JobCard(failed_on=today.isoformat(), repaired_on=late.isoformat()))
    assert told == f"The date of repair, {late}, has not come yet."

"""``meterlog job``, and what ``meterlog record`` is told of its meters."""

import errno
import json
import os
import sys
from dataclasses import replace

import pytest
from PIL import Image

from meterlog.commands.job import _WORDS
from meterlog.model.card_fields import FIELDS
from meterlog.recording import Recording
from meterlog.work.job_cards import load_card


@pytest.fixture(autouse=True)
def place(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    (tmp_path / "here").mkdir()
    monkeypatch.chdir(tmp_path / "here")
    return tmp_path / "here"


def test_help_names_every_key_in_its_order():
    said = _WORDS.partition("KEY is one of:")[2].partition(".\n\n")[0]
    assert [word.strip() for word in said.split(",")] == [field.key for field in FIELDS]


def test_a_card_is_begun_filled_and_shown(run, place):
    said = run("job", "a.json", "--set", "work_order=4711", "--set", "new-part.number=FM=20")
    assert "Job card a.json" in said.out
    assert "work order             4711" in said.out
    assert load_card(place / "a.json").new_part.number == "FM=20"
    said = run(
        "job", "a.json", "--set", "complaint=dead\nuntil hit", "--set", "vin=1M8GDM9A0KP042788"
    )
    assert "complaint, in the customer's words  dead\n" in said.out
    assert "The old part's number is not stated." in said.out
    assert "new part's number" not in said.out
    assert "Look again:\n  The VIN's check digit" in said.out
    shown = run("job", "a.json")
    assert shown.out == said.out
    assert "work order" in run("job", "a.json", "--set", "vin=").out
    assert load_card(place / "a.json").vin == ""


def test_json_holds_card_what_is_missing_and_warnings(run):
    found = json.loads(run("job", "a.json", "--set", "failed_on=soon", "--json").out)
    assert set(found) == {"file", "card", "missing", "warnings"}
    assert found["card"]["failed_on"] == "soon"
    assert found["missing"][0] == "VIN or plate of the vehicle is not stated."
    assert found["warnings"] == [
        "The date of failure is 'soon'; expected year-month-day, such as 2026-11-29."
    ]


def test_photos_are_added_once_and_missed_when_gone(run, place):
    Image.new("RGB", (8, 8)).save(place / "label.jpg")
    run("job", "a.json", "--photo", "label.jpg")
    run("job", "a.json", "--photo", place / "label.jpg", "--photo", "label.jpg")
    assert load_card(place / "a.json").photos == ("label.jpg",)
    (place / "label.jpg").unlink()
    assert "The photo label.jpg is not there." in run("job", "a.json").out
    said = run("job", "a.json", "--photo", "none.jpg", code=2)
    assert "--photo none.jpg: there is no such file." in said.err


def test_what_is_no_whole_picture_is_refused_at_once_and_the_card_is_as_it_was(run, place):
    run("job", "a.json", "--set", "work_order=4711")
    before = (place / "a.json").read_bytes()
    noise = Image.effect_noise((400, 300), 60)
    noise.save(place / "good.jpg")
    whole = (place / "good.jpg").read_bytes()
    (place / "label.jpg").write_bytes(b"#!/bin/sh\necho label\n")
    (place / "torn.jpg").write_bytes(whole[: len(whole) // 2])
    (place / "empty.png").write_bytes(b"")
    for name in ("label.jpg", "torn.jpg", "empty.png"):
        words = ("--set", "vin=1", "--photo", "good.jpg", "--photo", name)
        said = run("job", "a.json", *words, code=2).err
        assert f"--photo {name}: no claim takes it: it is no picture that can be read." in said
        assert "Give a whole picture (JPEG, PNG," in said
        assert (place / "a.json").read_bytes() == before
    run("job", "a.json", "--photo", "good.jpg")
    assert load_card(place / "a.json").photos == ("good.jpg",)


def test_templates_fill_what_is_empty_after_what_is_stated(run, place):
    stated = ("--set", "claimant=Invented Workshop", "--set", "labour=0.8 h", "--set", "vin=1")
    said = run("job", "a.json", *stated, "--as-template", "fan motor")
    assert "kept as template 'fan motor'" in said.err
    run("job", "b.json", "--set", "labour=1.2 h", "--from-template", "fan motor")
    card = load_card(place / "b.json")
    assert (card.claimant, card.labour, card.vin) == ("Invented Workshop", "1.2 h", "")


@pytest.mark.parametrize(
    ("words", "what"),
    [
        ((), "there is no such job card. Begin one"),
        (("--set", "colour=red"), "is no field of a job card"),
        (("--set", "vin"), "Give KEY=VALUE"),
        (("--set", "vin=1", "--set", "VIN=2"), "--set vin: is given twice."),
        (("--set", "notes=\x1b[2J"), "which is no text"),
        (("--from-template", "none"), "there is no such template"),
        (("--set", "claimant=a", "--as-template", "a/b"), "is no name for a template"),
    ],
)
def test_what_can_not_be_done_is_told(run, place, words, what):
    said = run("job", "a.json", *words, code=2)
    assert what in said.err
    assert said.out == ""
    if "--as-template" not in words:
        assert not (place / "a.json").exists()


def test_a_card_that_is_none_is_left_alone(run, place):
    (place / "a.json").write_text('{"colour": "red"}')
    said = run("job", "a.json", "--set", "vin=1", code=2)
    assert "a.json: colour is no field of a job card" in said.err
    assert (place / "a.json").read_text() == '{"colour": "red"}'


METER = ("record", "--meter", "typed-volts@typed:", "--seconds", "0.3", "--out")


def test_record_keeps_the_label_and_says_that_calibration_is_overdue(run, place):
    said = run(
        *(*METER, "one", "--calibration", "typed-volts=2020-01-31"),
        *("--serial", "typed-volts=T9", "--model", "typed-volts=M 3"),
    )
    assert "typed-volts (M 3 serial T9): calibration was due 2020-01-31" in said.err
    (first,) = Recording.open(place / "one").about.instruments
    assert first.identity.calibration_due == "2020-01-31"
    run(*METER, "two", "--serial", "typed-volts=T9")
    (second,) = Recording.open(place / "two").about.instruments
    assert second.identity == first.identity
    run(*METER, "three")
    (third,) = Recording.open(place / "three").about.instruments
    assert third.identity == replace(first.identity, model="", serial="", calibration_due="")


@pytest.mark.parametrize(
    ("words", "what"),
    [
        (("--calibration", "typed-volts=soon"), "--calibration typed-volts: is no date: 'soon'."),
        (("--calibration", "typed-volts=31.1.2027"), "Give year-month-day"),
        (("--calibration", "2027-01-31"), "does not say what of which meter"),
        (("--serial", "=7"), "does not say what of which meter"),
        (("--serial", "typed-volts=\x1b7"), "does not say what of which meter"),
        (("--model", "typed-volts=a", "--model", "typed-volts=b"), "is given twice"),
        (("--serial", "other=7"), "There are: typed-volts."),
    ],
)
def test_record_refuses_what_it_can_not_keep(run, place, words, what):
    said = run(*METER, "one", *words, code=2)
    assert what in said.err
    assert not (place / "one").exists()


@pytest.mark.skipif(sys.platform != "linux", reason="only some systems take such names")
@pytest.mark.parametrize("name", [b"s\xff.jpg", b"s\x1b.jpg", b"a\nb.jpg"])
def test_a_photo_that_no_card_can_name_is_not_copied_either(run, place, name):
    run("job", "a.json", "--set", "work_order=4711")
    before = (place / "a.json").read_bytes()
    (place.parent / "else").mkdir()
    odd = place.parent / "else" / os.fsdecode(name)
    good = place.parent / "else" / "good.jpg"
    Image.new("RGB", (8, 8)).save(good)
    odd.write_bytes(good.read_bytes())
    run("job", "a.json", "--set", "vin=1", "--photo", good, "--photo", odd, code=2)
    assert (place / "a.json").read_bytes() == before
    assert not (place / "photos").exists()
    run("job", "a.json", "--photo", good)
    run("job", "a.json", "--photo", odd, code=2)
    assert [one.name for one in (place / "photos").iterdir()] == ["good.jpg"]


def test_copies_of_photos_go_again_where_the_card_can_not_be_written(run, place, monkeypatch):
    Image.new("RGB", (8, 8)).save(place.parent / "good.jpg")
    monkeypatch.setattr("meterlog.work.job_cards.sync_descriptor", _full)
    said = run("job", "a.json", "--photo", place.parent / "good.jpg", code=1).err
    assert "No space left" in said
    assert not (place / "photos").exists()


def _full(_descriptor):
    raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

"""The chain of events: what was changed, moved, put in or taken out is named, sealed or not."""

import hashlib
import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from meterlog.evidence import verify_folder
from meterlog.model import Event, EventKind
from meterlog.recording import Recording, seal
from meterlog.recording.checked_text import with_crc
from meterlog.recording.event_chain import EventChain, chained_anew, check_chain
from meterlog.recording.event_lines import event_text, parse_event_lines

ABOUT = b'{"about": "invented"}\n'
NAME = "data/events.jsonl"


def lines(count=6, about=ABOUT):
    chain = EventChain(about)
    return [chain.line(Event(k * 1000, EventKind.NOTE, f"entry {k}")) for k in range(count)]


def breaks(some, about=ABOUT):
    return check_chain(b"".join(some), about).breaks


def changed(line, old, new):
    """Change a line as somebody would who knows of its checksum: that is made to fit."""
    text = line.decode().replace(old, new)
    return with_crc(text[: text.rindex(', "crc32"')] + "}")


def test_each_link_is_the_hash_that_the_docstring_says():
    link = hashlib.sha256(ABOUT).digest()
    for line in lines():
        body = line[: line.index(b', "chain"')]
        link = hashlib.sha256(link + body).digest()
        assert json.loads(line)["chain"] == link.hex()
    assert breaks(lines()) == ()


def test_a_changed_line_whose_checksum_was_made_to_fit_is_named_and_still_given():
    some = lines()
    some[2] = changed(some[2], "entry 2", "entry X")
    events, damage = parse_event_lines(b"".join(some), NAME)
    assert damage == ()
    assert len(events) == 6
    (text,) = breaks(some)
    assert text == (
        f"{NAME}: line 3 does not follow from line 2: it was changed, or lines before it were "
        "taken out or moved."
    )


@pytest.mark.parametrize("gone", [0, 1, 4])
def test_a_line_taken_out_is_told_at_the_one_behind_it(gone):
    some = lines()
    del some[gone]
    (text,) = breaks(some)
    assert f"line {gone + 1} does not follow from" in text
    assert ("data/about.json" in text) == (gone == 0)


def test_swapped_lines_are_named_with_what_they_follow_from():
    some = lines()
    some[1], some[2] = some[2], some[1]
    told = breaks(some)
    assert told[0].startswith(f"{NAME}: line 2 follows from line 3, not from line 1")
    assert told[1].startswith(f"{NAME}: line 3 follows from line 1, not from line 2")
    assert "line 4 follows from line 2" in told[2]


def test_a_line_put_in_twice_or_without_a_link_is_named():
    some = lines()
    assert "line 4 follows from line 2, not from line 3" in breaks([*some[:3], *some[2:]])[0]
    bare = with_crc(event_text(Event(5, EventKind.NOTE, "put in")))
    (text,) = breaks([*some[:3], bare, *some[3:]])
    assert text == f"{NAME}: line 4 holds no link of the chain: it was put in."


def test_a_line_put_in_with_a_link_of_its_own_is_found_at_the_next():
    some = lines()
    chain = EventChain(ABOUT)
    for k in range(3):
        chain.line(Event(k * 1000, EventKind.NOTE, f"entry {k}"))
    forged = chain.line(Event(2500, EventKind.TAP))
    (text,) = breaks([*some[:3], forged, *some[3:]])
    assert "line 5 follows from line 3, not from line 4" in text


def test_another_about_json_does_not_carry_these_events():
    (text,) = breaks(lines(), about=ABOUT + b" ")
    assert text.startswith(f"{NAME}: line 1 does not follow from data/about.json")


def test_events_from_before_the_chain_are_no_break():
    bare = [with_crc(event_text(Event(k, EventKind.NOTE, "old"))) for k in range(3)]
    found = check_chain(b"".join(bare), ABOUT)
    assert (found.chained, found.breaks) == (False, ())


@given(st.integers(0, 5), st.data())
def test_one_flipped_bit_is_told_once_at_its_own_line(number, data):
    some = lines()
    place = data.draw(st.integers(0, len(some[number]) * 8 - 1))
    wrong = bytearray(some[number])
    wrong[place // 8] ^= 1 << place % 8
    some[number] = bytes(wrong)
    content = b"".join(some)
    _, damage = parse_event_lines(content, NAME)
    assert f"{NAME}: line {number + 1} " in damage[0]
    assert check_chain(content, ABOUT).breaks == ()


@given(st.permutations(range(6)))
def test_no_order_but_the_right_one_passes(order):
    some = lines()
    assert bool(breaks([some[k] for k in order])) == (list(order) != sorted(order))


@given(st.sets(st.integers(0, 5), min_size=1))
def test_nothing_can_be_left_out_but_the_end(kept):
    some = [line for k, line in enumerate(lines()) if k in kept]
    assert bool(breaks(some)) == (sorted(kept) != list(range(len(kept))))


def test_lines_laid_on_another_about_json_follow_from_it():
    content = b"".join(lines())
    new = chained_anew(content, b"another")
    assert check_chain(new, b"another").breaks == ()
    assert parse_event_lines(new, NAME) == parse_event_lines(content, NAME)
    with pytest.raises(ValueError, match="not whole"):
        chained_anew(content[:-5], b"another")


def test_an_unsealed_recording_tells_a_line_taken_out(maker):
    folder = maker.small().folder
    path = folder / NAME
    first, *rest = path.read_bytes().splitlines(keepends=True)
    path.write_bytes(b"".join(rest))
    recording = Recording.open(folder)
    assert recording.chained
    assert len(recording.events) == len(rest)
    (text,) = recording.damage
    assert "line 1 does not follow from data/about.json" in text
    assert text in verify_folder(folder).problems
    path.write_bytes(b"".join([first, *rest[:-1]]))
    (text,) = Recording.open(folder).damage
    assert "its last lines are missing" in text


def test_a_recording_from_before_opens_without_damage_and_verify_remarks_it(maker):
    folder = maker.small().folder
    path = folder / NAME
    bare = [with_crc(event_text(event)) for event in Recording.open(folder).events]
    path.write_bytes(b"".join(bare))
    recording = Recording.open(folder)
    assert (recording.damage, recording.chained) == ((), False)
    seal(folder)
    found = verify_folder(folder)
    assert found.intact
    assert "before its lines were chained" in found.remarks[0]

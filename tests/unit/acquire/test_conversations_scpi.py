"""SCPI instruments asked for numbers and for blocks, over links that are played by the test."""

import struct
import time
from dataclasses import replace

import pytest

from meterlog.acquire.asker import Progress
from meterlog.acquire.block_asker import PAUSE_SHARE, BlockAsker
from meterlog.acquire.polled import Polled
from meterlog.acquire.scpi_asker import ScpiAsker
from meterlog.profile import load_meter

MS = 1_000_000


# -- SCPI text ------------------------------------------------------------------------------------


def _fetching(query="FETC?"):
    profile = load_meter("bench-scpi")
    return replace(profile, interval_s=0.2, scpi=replace(profile.scpi, query=query))


def _said(asker, link, *answers):
    """Give what is kept of answers: (text, arrival in ms)."""
    kept = []
    for text, ms in answers:
        asker.ask(link)
        answer = asker.take(link, text, ms * MS)
        assert answer.progress is Progress.WHOLE
        kept.append(answer.readings.values[:, 0].tolist())
    return kept


def test_the_same_result_fetched_again_before_a_new_one_can_be_there_is_passed_over(played, choose):
    asker, link = ScpiAsker(choose(_fetching())), played()
    kept = _said(
        asker,
        link,
        (b"1.0\n", 0),
        (b"1.0\n", 50),
        (b"1.0\n", 150),
        (b"2.0\n", 190),
        (b"2.0\n", 200),
    )
    assert kept == [[1.0], [], [], [2.0], []]
    assert (asker.repeated, asker.refused) == (3, 0)


def test_the_same_number_an_interval_later_is_a_reading_of_its_own(played, choose):
    asker, link = ScpiAsker(choose(_fetching("FETCh:VOLTage:DC?"))), played()
    kept = _said(asker, link, (b"1.0\n", 0), (b"1.0\n", 100), (b"1.0\n", 200), (b"1.0\n", 399))
    assert kept == [[1.0], [], [1.0], []]
    assert asker.repeated == 2


def test_a_number_written_otherwise_is_not_the_same_answer(played, choose):
    asker, link = ScpiAsker(choose(_fetching())), played()
    assert _said(asker, link, (b"1.0\n", 0), (b"1.00\n", 10)) == [[1.0], [1.0]]
    assert asker.repeated == 0


def test_an_answer_cut_in_pieces_is_compared_whole(played, choose):
    asker, link = ScpiAsker(choose(_fetching())), played()
    _said(asker, link, (b"12.0\n", 0))
    asker.ask(link)
    assert asker.take(link, b"3", 10 * MS).progress is Progress.WAITING
    answer = asker.take(link, b"2.0\n", 20 * MS)
    assert answer.readings.values.tolist() == [[32.0]]
    asker.ask(link)
    assert asker.take(link, b"32", 30 * MS).progress is Progress.WAITING
    assert len(asker.take(link, b".0\r\n", 40 * MS).readings) == 0
    assert asker.repeated == 1


@pytest.mark.parametrize("query", ["READ?", "MEAS:VOLT:DC?", "DATA:FETC?"])
def test_what_measures_anew_is_kept_however_often_it_is_the_same(query, played, choose):
    asker, link = ScpiAsker(choose(_fetching(query))), played()
    assert _said(asker, link, (b"1.0\n", 0), (b"1.0\n", 1)) == [[1.0], [1.0]]
    assert asker.repeated == 0


# -- SCPI blocks ----------------------------------------------------------------------------------

BLOCKS = load_meter("block-daq")


def _rows(*rows):
    return b"".join(struct.pack(">3h", *row) for row in rows)


def _block(payload):
    size = str(len(payload)).encode()
    return b"#" + str(len(size)).encode() + size + payload + b"\n"


def test_a_block_is_whole_when_its_stated_length_has_come(played, choose):
    asker, link = BlockAsker(choose(BLOCKS)), played(b"", b'0,"No error"\n')
    asker.ask(link)
    sent = _block(_rows((1, 2, 3), (4, 5, 6)))
    assert asker.take(link, sent[:9], 1).progress is Progress.MOVING
    assert asker.take(link, b"", 10**12).progress is Progress.WAITING
    answer = asker.take(link, sent[9:], 2)
    assert answer.progress is Progress.WHOLE
    assert answer.readings.values.tolist() == [[1, 2, 3], [4, 5, 6]]
    assert answer.readings.own_time_s.tolist() == [0.0, 0.001]
    assert not asker.timed_by_question


def test_a_block_of_unknown_length_ends_with_a_pause_or_with_its_message(played, choose):
    for link in (played(), played(messages=True)):
        asker = BlockAsker(choose(replace(BLOCKS, scpi=replace(BLOCKS.scpi, ask_errors=False))))
        pause_ns = round(PAUSE_SHARE * BLOCKS.scpi.answer_s * 1e9)
        asker.ask(link)
        first = asker.take(link, b"#0" + _rows((1, 2, 3)) + b"\n", 5)
        if link.messages:
            assert first.progress is Progress.WHOLE
            assert first.readings.values.tolist() == [[1, 2, 3]]
            continue
        assert first.progress is Progress.MOVING
        assert asker.take(link, b"", 4 + pause_ns).progress is Progress.WAITING
        ended = asker.take(link, b"", 5 + pause_ns)
        assert ended.progress is Progress.WHOLE
        assert ended.readings.values.tolist() == [[1, 2, 3]]


def test_a_block_without_samples_is_an_answer(played, choose):
    for nothing in (b"#10\n", b"#10", b"#3000\n"):
        asker, link = BlockAsker(choose(BLOCKS)), played()
        asker.ask(link)
        answer = asker.take(link, nothing, 1)
        assert answer.progress is Progress.WHOLE
        assert (len(answer.readings), asker.refused) == (0, 0)


def test_lost_samples_are_told_and_the_clock_is_tied_anew(played, choose):
    overrun = b'-363,"Input buffer overrun"\n'
    link = played(b"", b'0,"No error"\n', b"", b"", overrun, b'0,"No error"\n')
    asker = BlockAsker(choose(BLOCKS))
    second_ns = 10**9
    sent = _block(_rows((1, 1, 1), (2, 2, 2)))
    asker.ask(link)
    assert asker.take(link, sent, 1).complaints == ()
    asker.ask(link)
    link.waiting.clear()
    # Within the same second the queue is not asked about again.
    assert asker.take(link, sent, 2).readings.own_time_s.tolist() == pytest.approx([0.002, 0.003])
    asker.ask(link)
    link.waiting.clear()
    answer = asker.take(link, sent, 2 + second_ns)
    assert answer.complaints == ("-363 Input buffer overrun",)
    assert answer.readings.own_time_s.tolist() == pytest.approx([0.0, 0.001])
    assert link.sent.count(b"SYST:ERR?\n") == 3


def test_an_error_queue_that_is_not_answered_is_asked_about_once(played, choose):
    quick = replace(BLOCKS, scpi=replace(BLOCKS.scpi, answer_s=0.02))
    asker, link = BlockAsker(choose(quick)), played()
    sent = _block(_rows((1, 1, 1)))
    told = [asker.take(link, sent, turn * 10**10).complaints for turn in range(3)]
    assert ["SYST:ERR?" in "".join(one) for one in told] == [True, False, False]


# -- what all that are asked have in common -------------------------------------------------------


def test_patience_lasts_while_a_block_keeps_coming_and_ends_when_it_stops(played, on):
    profile = replace(
        BLOCKS, scpi=replace(BLOCKS.scpi, answer_s=0.05, poll_s=0.0, ask_errors=False)
    )
    sent = _block(_rows(*((n, n, n) for n in range(40))))
    link = played()
    talk = on(Polled, profile, link)
    talk.begin()
    for place in range(0, len(sent) - 20, 20):
        link.waiting = [sent[place : place + 20]]
        assert talk.hear(0.01).complaints == ()
        time.sleep(0.012)
    assert len(link.sent) == 1
    until = time.monotonic() + 5.0
    told = ()
    while not told:
        assert time.monotonic() < until
        told = talk.hear(0.01).complaints
    assert told == ("no answer to FETC? within 0.05 s",)
    talk.hear(0.0)
    assert link.sent == [b"FETC?\n"] * 2


def test_neither_question_nor_arrival_times_a_block_but_the_question_times_a_number(played, on):
    for profile, answer in ((BLOCKS, _block(_rows((1, 1, 1)))), (_fetching("READ?"), b"1.0\n")):
        quiet = replace(profile, scpi=replace(profile.scpi, ask_errors=False))
        talk = on(Polled, quiet, played(answer))
        talk.begin()
        heard = talk.hear(0.0)
        assert len(heard.readings) == 1
        assert (heard.asked_ns is None) is (profile is BLOCKS)

"""SCPI instruments asked for numbers and for blocks, over links that are played by the test."""

import struct
import time
from dataclasses import replace

import pytest

from meterlog.acquire.talk.asker import Progress
from meterlog.acquire.talk.block_asker import PAUSE_SHARE, BlockAsker
from meterlog.acquire.talk.polled import Polled
from meterlog.acquire.talk.scpi_asker import ScpiAsker
from meterlog.instruments import ScpiDialogue
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
    talk.hear(0.0)
    for place in range(0, len(sent) - 20, 20):
        link.waiting = [sent[place : place + 20]]
        assert talk.hear(0.01).complaints == ()
        time.sleep(0.012)
    assert len(link.sent) == 1
    until = time.monotonic() + 60.0
    told = ()
    while not told:
        assert time.monotonic() < until
        told = talk.hear(0.01).complaints
    assert told == ("no answer to FETC? within 0.05 s",)
    talk.hear(0.0)
    assert link.sent == [b"FETC?\n", b"*IDN?\n"]


def test_neither_question_nor_arrival_times_a_block_but_the_question_times_a_number(played, on):
    for profile, answer in ((BLOCKS, _block(_rows((1, 1, 1)))), (_fetching("READ?"), b"1.0\n")):
        quiet = replace(profile, scpi=replace(profile.scpi, ask_errors=False))
        talk = on(Polled, quiet, played(answer))
        talk.begin()
        heard = talk.hear(0.0)
        assert len(heard.readings) == 1
        assert (heard.asked_ns is None) is (profile is BLOCKS)


# -- answers that come late, twice, or without a question -----------------------------------------

WHO = b"INVENTED,METER 1,SN1,1.0\n"
NO_ERROR = b'0,"No error"\n'


def _begun(played, on, *answers, answer_s=0.05, ask_errors=True):
    """Give a conversation about to ask, and its link, which has these answers to come."""
    profile = load_meter("bench-scpi")
    scpi = replace(
        profile.scpi, answer_s=answer_s, poll_s=0.0, setup=(), ask_errors=ask_errors, query="READ?"
    )
    link = played(b"", WHO, *([NO_ERROR] if ask_errors else []))
    talk = on(Polled, replace(profile, scpi=scpi), link)
    talk.open()
    talk.begin()
    link._answers = list(answers)
    return talk, link


def _hear_until(talk, enough):
    """Give the values, the complaints and what was put aside until ``enough`` of it."""
    values, told, aside = [], [], b""
    until = time.monotonic() + 60.0
    while not enough(values, told):
        assert time.monotonic() < until, (values, told, aside)
        heard = talk.hear(0.01)
        values += heard.readings.values[:, 0].tolist()
        told += heard.complaints
        aside += heard.aside
    return values, told, aside


@pytest.mark.parametrize("ask_errors", [True, False])
def test_a_late_answer_is_not_taken_for_that_to_the_next_question(ask_errors, played, on):
    queue = [NO_ERROR] if ask_errors else []
    talk, _ = _begun(
        played, on, b"", [b"1.0\n", WHO], *queue, b"2.0\n", b"3.0\n", ask_errors=ask_errors
    )
    values, told, aside = _hear_until(talk, lambda values, _: len(values) == 2)
    assert values == [2.0, 3.0]
    assert told[0] == "no answer to READ? within 0.05 s"
    assert "its answer to READ? came later than answer_s = 0.05 s" in told[1]
    assert (talk.refused, talk.last_refused) == (1, b"1.0")
    assert aside.startswith(b"1.0\n" + WHO)


def test_one_that_is_busy_for_long_is_asked_nothing_until_it_has_answered_all(played, on):
    talk, link = _begun(played, on)
    _hear_until(talk, lambda _, told: told)
    talk.hear(0.01)
    assert link.sent[-1] == b"*IDN?\n"
    # It wakes, and answers READ? and *IDN? before anything else is asked.
    link.waiting = [b"1.0\n" + WHO]
    assert len(talk.hear(0.01).readings) == 0
    assert talk.refused == 2
    link._answers = [b"", WHO, NO_ERROR, b"2.0\n"]
    assert _hear_until(talk, lambda values, _: values)[0] == [2.0]


def test_of_an_answer_that_comes_twice_one_is_kept(played, on):
    talk, _ = _begun(played, on, b"1.0\r\n1.0\r\n", b"2.0\r\n")
    values, told, _ = _hear_until(talk, lambda values, _: len(values) == 2)
    assert (values, told) == ([1.0, 2.0], [])
    assert (talk.refused, talk.last_refused) == (1, b"1.0")


def test_what_waits_before_a_question_is_no_answer_to_it(played, on):
    talk, link = _begun(played, on, b"1.0\n", b"2.0\n")
    assert _hear_until(talk, lambda values, _: values)[0] == [1.0]
    link.waiting = [b"1.0\n"]
    values, _, aside = _hear_until(talk, lambda values, _: values)
    assert (values, talk.refused, aside) == ([2.0], 1, b"1.0\n")


def test_a_question_given_back_is_no_answer(played, on):
    talk, _ = _begun(played, on, [b"READ?\r\n", b"1.0\r\n"], b"READ?\r\n2.0\r\n")
    assert _hear_until(talk, lambda values, _: len(values) == 2)[0] == [1.0, 2.0]
    assert talk.refused == 0


def test_what_an_earlier_program_asked_is_not_taken_for_who_it_is(played, on):
    talk, link = _begun(played, on)
    link._answers = [b"", [b"+1.2E+01\n", b'-410,"Query INTERRUPTED"\n', WHO], NO_ERROR]
    talk.open()
    assert (talk.identity.maker, talk.identity.model) == ("INVENTED", "METER 1")


def test_an_error_queue_that_dribbles_holds_nobody_up_for_long(played):
    class Slow(played):
        def write(self, data):
            super().write(data)
            self.waiting = [b"", b'-113,"Undefined header"\n']

        def read(self, wait_s):
            time.sleep(0.02)
            return super().read(wait_s)

    talk = replace(load_meter("bench-scpi").scpi, answer_s=0.1)
    begun = time.monotonic()
    assert 1 < len(ScpiDialogue(Slow(), talk).errors()) < 10
    assert time.monotonic() - begun < 0.5

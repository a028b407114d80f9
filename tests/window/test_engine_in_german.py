"""What the engine finds, said in German: no sentence of it stays English in the window."""

from datetime import UTC, datetime
from types import SimpleNamespace

import pytest

from meterlog.analysis import Reviewer
from meterlog.analysis.compare import Ask, compare, side_of
from meterlog.circuit import Isolation
from meterlog.instruments.virtual import simulate
from meterlog.instruments.virtual.scenarios import SCENARIOS
from meterlog.model import (
    CircuitCheck,
    CircuitReading,
    CircuitSign,
    CircuitState,
    Identity,
    Instrument,
    Job,
    PointKind,
    Sign,
)
from meterlog.model.errors import MeterlogError
from meterlog.model.job_card import JobCard, PartIdentity
from meterlog.profile import load_circuit, load_limits, load_meter
from meterlog.recording import Recording
from meterlog.window.circuit_names import know_circuit
from meterlog.window.language import speak, speak_english
from meterlog.window.remedies_here import remedy_here
from meterlog.window.sentences import english_left, know_names, sentence
from meterlog.work.job_cards import load_card
from meterlog.work.run_doubts import meter_doubts, run_doubts

ON_HIGH = CircuitState(key="on", speed=4)


@pytest.fixture(autouse=True)
def german():
    """German, and no names of an earlier test."""
    assert speak("de") == "de"
    yield
    for owner in ("circuit", "compared"):
        know_names((), of=owner)
    speak_english()


def left_in_english(texts):
    """Give the texts of which words stay English, as the window says them."""
    return [sentence(text) for text in texts if english_left(text) or _reads_english(text)]


def _reads_english(text):
    """Tell whether words are left that are English and no German."""
    said = f" {sentence(text)} "
    return any(f" {word} " in said for word in ("the", "of", "and", "is", "not", "with", "speed"))


def review_of(scenario, meter="line-logger", **how):
    done = simulate(scenario, 1, meter=load_meter(meter), **how)
    reviewer = Reviewer([done.instrument], load_limits("linear-12v"))
    for event in done.events:
        reviewer.feed(event)
    reviewer.feed(done.block)
    return reviewer.finish()


def texts_of(review):
    """Give all that the window says of a review."""
    yield from (finding.statement for finding in review.findings)
    yield from (doubt.text for doubt in review.doubts)
    yield from review.notes
    yield review.verdict.paragraph
    yield from review.verdict.unseen
    for one in review.verdict.ranked:
        yield from (one.what, one.part, one.next_measurement)


@pytest.mark.parametrize("scenario", sorted(SCENARIOS))
def test_a_run_is_judged_in_german(scenario):
    assert left_in_english(texts_of(review_of(scenario))) == []


def test_decimals_have_a_comma_and_lists_keep_theirs():
    assert sentence("3.46 A at speeds 1, 2 and 4") == "3,46 A auf den Stufen 1, 2 und 4"
    assert sentence("1, 2, 3") == "1, 2, 3"
    assert sentence("meterlog 0.3.1") == "meterlog 0.3.1"


def circuit_texts(circuit, check):
    """Give all that the window says of a check."""
    verdict = Isolation(circuit).verdict(check)
    yield verdict.settled_words
    yield from verdict.notes
    yield from (one.words for one in verdict.doubted)
    for suspect in verdict.suspects:
        yield suspect.label
        yield from (fault.words for fault in suspect.faults)
    test = verdict.next_test
    if test is not None:
        yield from (test.words, test.meaning, *test.cautions)
        yield from (one.words for one in test.outcomes)


def checked(circuit, *values):
    """Give a check of a fan that stands, with readings at the first points of the circuit."""
    points = [one for one in circuit.points if one.kind is PointKind.VOLTAGE]
    readings = tuple(
        CircuitReading(at, ON_HIGH, point.name, value, 0.03)
        for at, (point, value) in enumerate(zip(points, values, strict=False), start=2)
    )
    sign = CircuitSign(1, ON_HIGH, Sign.FAN, "dead")
    return CircuitCheck(circuit.name, readings=readings, signs=(sign,))


@pytest.mark.parametrize(
    ("name", "values"),
    [
        ("high-side-linear-12v", (12.4, 12.38, 0.02)),  # the main fuse is open
        ("low-side-high-relay-24v", (25.1,)),
        ("pulsed-module-12v", (12.4, 12.4, 12.4, 12.38)),
        ("resistors-ground-side-12v", (12.4, 4.0)),  # goes with nothing
    ],
)
def test_a_circuit_is_checked_in_german(name, values):
    circuit = load_circuit(name)
    texts = [text for text in circuit_texts(circuit, checked(circuit, *values)) if text]
    assert len(texts) > 12
    assert left_in_english(texts) == []


def test_what_a_circuit_of_ones_own_calls_its_things_goes_into_the_sentences():
    words = "near 0 V leaves Zuleitung zum Kasten A, Sicherung F12 or Steuergeraet des Geblaeses"
    assert sentence(words) == words
    shipped = load_circuit("high-side-linear-12v")
    know_names(
        ("Zuleitung zum Kasten A", "Sicherung F12", "Steuergeraet des Geblaeses"), of="circuit"
    )
    assert sentence(words) == (
        "fast 0 V lässt übrig: Zuleitung zum Kasten A, Sicherung F12 oder"
        " Steuergeraet des Geblaeses"
    )
    know_circuit(shipped)
    assert sentence(words) == words, "those of another circuit are forgotten"


def raised(doing):
    with pytest.raises(MeterlogError) as error:
        doing()
    return str(error.value)


def test_errors_of_files_are_said_in_german_with_what_to_do(tmp_path):
    empty, broken = tmp_path / "empty", tmp_path / "meine Karte.json"
    empty.mkdir()
    broken.write_text("{", "utf-8")
    for doing, said in (
        (lambda: load_circuit("no-such"), "kein Profil dieses Namens"),
        (lambda: Recording.open(empty), "enthält keine Aufzeichnung"),
        (lambda: load_card(broken), "ist keine Auftragskarte"),
    ):
        words = remedy_here(raised(doing))
        assert said in words
        assert not _reads_english(words), words


def test_the_reason_of_a_system_nobody_translated_stays_in_its_sentence():
    assert sentence(
        "/x/run: could not be written: Quota of the planet exceeded. 0 bytes stand in it."
    ) == (
        "/x/run: konnte nicht geschrieben werden: Quota of the planet exceeded."
        " 0 Bytes stehen darin."
    )


@pytest.mark.parametrize(("old", "new"), [("healthy-old", "worn"), ("healthy-old", "healthy-new")])
def test_a_comparison_is_told_in_german(old, new, about_of):
    sides = [side_of(name, about_of(), review_of(name)) for name in (old, new)]
    comparison = compare(sides[:1], sides[1], Ask()).comparison
    know_names(
        [one for run in (*comparison.old, comparison.new) for one in (run.name, run.part)],
        of="compared",
    )
    texts = [comparison.summary, *comparison.notes, *(one.words for one in comparison.steps)]
    texts += [one.words for one in (*comparison.figures, *comparison.conditions) if one.words]
    assert len(texts) > 5
    assert left_in_english(texts) == []


def test_what_the_heads_of_runs_say_against_a_claim_is_said_in_german():
    card = JobCard(
        work_order="A-1", vehicle="Kestrel", failed_on="2026-05-06", repaired_on="2026-05-07",
        old_part=PartIdentity(serial="S-9"), new_part=PartIdentity(serial="S-10"),
    )  # fmt: skip
    job = Job(work_order="B-2", vehicle="Merlin", part="FM-20, 8")
    meters = (
        Instrument("m1", "p", "u", (), identity=Identity(calibration_due="2026-01-01")),
        Instrument("m2", "p", "u", ()),
    )
    days = {"before": datetime(2026, 5, 9, tzinfo=UTC), "after": datetime(2026, 5, 4, tzinfo=UTC)}
    heads = [
        (name, SimpleNamespace(job=job, started_utc=day, local_offset_s=0, instruments=meters))
        for name, day in days.items()
    ]
    doubts = [words for _, words in run_doubts(card, heads)]
    doubts += [words for _, about in heads for words in meter_doubts(about)]
    assert len(doubts) == 14
    assert left_in_english(doubts) == []
    told = " ".join(map(sentence, doubts))
    assert "der Lauf nach der Reparatur ist vom 2026-05-04." in told

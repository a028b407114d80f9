"""The verdict of a run that has ended, what to measure next, and every kind of finding in words."""

from dataclasses import replace

import pytest

from meterlog.model import FindingKind, Outcome, Ranked, RunVerdict, SpanKind, Sureness, Verdict
from meterlog.window.findings_view import FindingsView, finding_words
from meterlog.window.kind_words import KIND_WORDS
from meterlog.window.verdict_words import outcome_words


def ranked(part, sureness=Sureness.PROVEN):
    return Ranked(f"The {part} is bad.", part, sureness, 0.99, ("x",), (), f"Measure the {part}.")


VERDICT = RunVerdict(
    Outcome.FAULT,
    "A fault was found. (invented)",
    (ranked("motor"), ranked("feed", Sureness.POSSIBLE)),
    ("Dropouts shorter than 0.07 s.",),
)


def texts(view):
    return [view.list.item(row).text() for row in range(view.list.count())]


def listed(review, qtbot):
    view = FindingsView()
    qtbot.addWidget(view)
    view.show_review(review)
    return view


@pytest.fixture
def review(window, show):
    return show(window).review


def test_the_verdict_stands_first_then_the_next_measurements_then_the_findings(review, qtbot):
    view = listed(replace(review, verdict=VERDICT), qtbot)
    assert texts(view) == [
        "✕ FAULT FOUND\nA fault was found. (invented)",
        "→ NEXT: motor (proven)\nMeasure the motor.",
        "→ THEN: feed (possible)\nThe feed is bad. Measure the feed.",
        finding_words(review.findings[0]),
        "Not seen: Dropouts shorter than 0.07 s.",
        "Note: All of it is invented.",
    ]
    assert view.title.text() == "✕ Fault found: 1 failed"


def test_while_recording_there_is_no_verdict(window, show):
    shown = show(window, live=True)
    view = window.desk.run_page.findings
    assert shown.review.verdict is None
    assert texts(view)[0] == finding_words(shown.review.findings[0])
    assert view.title.text() == "Findings: 1 failed"


def test_a_verdict_that_comes_alone_is_shown_and_its_head_is_in_sight(window, show):
    shown = show(window)
    view = window.desk.run_page.findings
    view.list.verticalScrollBar().setValue(view.list.verticalScrollBar().maximum())
    shown.review = replace(shown.review, verdict=VERDICT)
    window.desk.run_page.show_judgement(window.desk.session)
    assert texts(view)[0].startswith("✕ FAULT FOUND")
    assert view.list.verticalScrollBar().value() == 0


def test_each_outcome_has_a_sign_of_its_own():
    words = [outcome_words(replace(VERDICT, outcome=outcome)) for outcome in Outcome]
    assert words == ["✓ In order", "✕ Fault found", "⚠ Suspicion", "? Can't tell"]


def test_a_verdict_leads_nowhere_and_a_finding_behind_it_to_its_place(review, qtbot):
    view = listed(replace(review, verdict=VERDICT), qtbot)
    picked = []
    view.picked.connect(picked.append)
    view.list.itemActivated.emit(view.list.item(0))
    view.list.itemActivated.emit(view.list.item(3))
    assert picked == [review.findings[0]]


@pytest.mark.parametrize("kind", list(FindingKind))
def test_every_kind_of_finding_has_words(review, kind):
    head = finding_words(replace(review.findings[0], kind=kind)).splitlines()[0]
    assert head == f"✕ FAIL  {KIND_WORDS[kind]}  at 0:04"
    assert "-" not in KIND_WORDS[kind]


def test_no_two_kinds_share_their_words():
    assert len(set(KIND_WORDS.values())) == len(FindingKind)
    assert KIND_WORDS[FindingKind.COMMAND_LOST] == "command lost"


def test_what_failed_precedes_what_is_in_doubt_and_what_passed_comes_last(review, qtbot):
    dead = review.findings[0]
    made = [
        replace(dead, kind=FindingKind.FUSE_LOAD, verdict=Verdict.PASS),
        replace(dead, kind=FindingKind.STEP_CURRENT, verdict=Verdict.PASS),
        replace(dead, kind=FindingKind.DIP, verdict=Verdict.CANT_TELL),
        dead,
        replace(dead, kind=FindingKind.STEP_CURRENT, verdict=Verdict.FAIL, statement="weak"),
    ]
    view = listed(replace(review, findings=tuple(made), notes=()), qtbot)
    order = [3, 4, 2, 1, 0]
    assert texts(view) == [finding_words(made[place]) for place in order]


@pytest.mark.parametrize("dark", [False, True])
def test_at_small_size_verdict_and_steps_can_be_read(window, show, qtbot, dark):
    window.resize(1024, 600)
    shown = show(window)
    if dark:
        window.toggle_looks()
    shown.review = replace(shown.review, verdict=replace(VERDICT, paragraph="Long words. " * 40))
    page = window.desk.run_page
    page.show_judgement(window.desk.session)
    qtbot.waitUntil(lambda: window.width() == 1024 and window.height() == 600)
    window.grab()
    view = page.findings.list
    first = view.visualItemRect(view.item(0))
    assert first.top() >= 0
    assert first.width() <= view.viewport().width()
    assert view.viewport().height() >= 100
    assert page.steps.table.viewport().height() >= 60


def test_a_lost_command_is_named_on_the_ribbon_and_looks_like_no_other_span():
    from meterlog.evidence.palette import PALETTES

    for palette in PALETTES:
        style = palette.spans[SpanKind.COMMAND_LOST]
        assert style.word == "command lost"
        others = [palette.spans[kind] for kind in SpanKind if kind is not SpanKind.COMMAND_LOST]
        assert all((style.hatch, style.fill) != (one.hatch, one.fill) for one in others)

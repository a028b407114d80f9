from PySide6.QtCore import Qt

from meterlog.evidence import verify_folder
from meterlog.model import Event, EventKind, SpanKind
from meterlog.model.amendment import Amendment, AmendmentKind
from meterlog.recording import Recorder, Recording, seal
from meterlog.window.session import Phase
from meterlog.work import review_folder
from meterlog.work.amendments import add_amendment


def _record(folder, about, blocks, *, close=True):
    recorder = Recorder.create(folder, about)
    for item in (Event(0, EventKind.SPEED, "0"), Event(2_000_000_000, EventKind.SPEED, "1")):
        recorder.take(item)
    for block in blocks:
        recorder.take(block)
    recorder.tick(20_000_000_000)
    if close:
        recorder.close()
        seal(folder)
    return recorder


def _dead_spot(block_of):
    return (
        block_of(0, 2, (12.5, 12.5, 0.0)),
        block_of(2, 8, (12.25, 8.0, 3.81)),
        block_of(8, 10, (12.5, 0.25, 0.0)),
        block_of(10, 14, (12.25, 8.0, 3.81)),
    )


def test_a_recording_opened_shows_what_a_review_of_it_says(
    window, qtbot, tmp_path, about_of, block_of
):
    folder = tmp_path / "one"
    _record(folder, about_of(), _dead_spot(block_of))
    review = review_folder(folder)[1]
    assert SpanKind.DEAD in [span.kind for span in review.spans]
    window.desk.open(folder)
    qtbot.waitUntil(lambda: window.desk.session.phase is Phase.SHOWING)
    page = window.desk.run_page
    qtbot.waitUntil(lambda: page.ribbon.spans == review.spans)
    texts = [page.findings.list.item(i).text() for i in range(page.findings.list.count())]
    notes = [text for text in texts if text.startswith("Note: ")]
    unseen = [text for text in texts if text.startswith("Not seen: ")]
    assert texts[0].startswith("✕ FAULT FOUND\n")
    assert len(unseen) == len(review.verdict.unseen) > 0
    ranked = [text for text in texts[1:] if text.startswith("→ ")]
    assert len(ranked) == len(review.verdict.ranked) > 0
    texts = [text for text in texts[1:] if text not in {*notes, *unseen, *ranked}]
    assert len(texts) == len(review.findings) > 0
    assert len(notes) == len(review.notes)
    assert sorted(text.partition("\n")[2] for text in texts) == sorted(
        finding.statement for finding in review.findings
    )
    assert page.steps.table.rowCount() == len(review.steps)
    left, right = page.trace._volts.item.getViewBox().viewRange()[0]
    assert left <= 0.0
    assert right >= 13.9
    assert page.trace._amperes.curves[0][1].getData()[1].max() == 3.81
    assert window.pages.currentIndex() == 1


def test_a_folder_that_is_no_recording_is_told_in_place(window, qtbot, tmp_path, show):
    show(window)
    before = window.desk.session.shown
    window.desk.open(tmp_path / "nothing")
    qtbot.waitUntil(lambda: not window.desk.session.busy and window.said.isVisible())
    assert "nothing" in window.said.text()
    assert window.desk.session.shown is before


def listed(page, qtbot):
    """Have the folder read again, and wait until the list shows it."""
    page.show_recordings()
    qtbot.waitUntil(lambda: not page.recordings.reading)


def test_the_list_offers_recordings_newest_first_and_opens_one(
    window, qtbot, tmp_path, about_of, block_of
):
    _record(tmp_path / "one", about_of(), _dead_spot(block_of))
    page = window.desk.meters_page
    listed(page, qtbot)
    item = page.recordings.list.item(0)
    assert item.text() == "one"
    page.recordings.list.itemActivated.emit(item)
    qtbot.waitUntil(lambda: window.desk.session.phase is Phase.SHOWING)
    assert window.desk.session.folder == tmp_path / "one"


def test_a_recording_that_was_cut_off_is_offered_and_sealed_as_recovered(
    window, qtbot, tmp_path, about_of, block_of
):
    folder = tmp_path / "cut"
    recorder = _record(folder, about_of(), _dead_spot(block_of), close=False)
    page = window.desk.meters_page
    listed(page, qtbot)
    assert not page.recordings.cut_off.isVisibleTo(page), "somebody is recording it now"
    recorder.close()
    listed(page, qtbot)
    assert page.recordings.cut_off.isVisibleTo(page)
    assert "1 cut off" in page.recordings.cut_off.text()
    assert "not sealed" in page.recordings.list.item(0).text()
    qtbot.mouseClick(page.recordings.cut_off, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: not page.recordings.cut_off.isVisibleTo(page), timeout=10_000)
    assert Recording.open(folder).state == "recovered"
    assert verify_folder(folder).intact


def test_nothing_can_be_opened_while_recording(window, tmp_path, show, monkeypatch):
    shown = show(window, live=True)
    session = window.desk.session
    session.phase = Phase.RECORDING
    window.desk.open(tmp_path)
    assert session.shown is shown
    assert "Stop the recording first" in session.trouble
    session.phase = Phase.SHOWING


def test_a_recording_with_edits_on_top_is_shown_with_them(
    window, qtbot, tmp_path, about_of, block_of
):
    folder = tmp_path / "one"
    _record(folder, about_of(), _dead_spot(block_of))
    edit = Amendment(AmendmentKind.STEP, "", 2_000_000_000, "1", "3", "N. N.", "the knob was at 3")
    add_amendment(folder, edit)
    window.desk.open(folder)
    qtbot.waitUntil(lambda: window.desk.session.phase is Phase.SHOWING)
    session, page = window.desk.session, window.desk.run_page
    qtbot.waitUntil(lambda: page.ribbon.spans == session.review.spans)
    assert [event.value for event in session.shown.events][:2] == ["0", "3"]
    assert [step.speed for step in session.review.steps] == [0, 3]
    texts = [page.findings.list.item(i).text() for i in range(page.findings.list.count())]
    assert any("relabelled from 1 to 3. Reason: the knob was at 3." in text for text in texts)
    assert verify_folder(folder).intact


def test_a_meter_that_gave_nothing_has_no_readings_in_the_status_line(
    window, qtbot, tmp_path, about_of, block_of
):
    nothing = (float("nan"),) * 3
    for name, blocks, said in (
        ("silent", (block_of(0, 6, nothing),), "0 readings"),
        ("some", (block_of(0, 4, (12.5, 12.5, 0.0)), block_of(4, 9, nothing)), "40 readings"),
    ):
        _record(tmp_path / name, about_of(), blocks)
        window.desk.open(tmp_path / name)
        qtbot.waitUntil(lambda: not window.desk.session.busy)
        window.desk.tick()
        assert window.desk._telling.status.rows.text() == said

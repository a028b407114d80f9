"""The Recordings page by mouse alone, and what it shows."""

import pytest
from PySide6.QtCore import QPoint, Qt

from meterlog.evidence.palette import DARK, DAY
from meterlog.window.long_work import LongWork
from meterlog.window.pages import Page
from meterlog.window.recordings_page.currents_view import mark_words, mixed_words
from meterlog.window.recordings_page.hit_words import detail_words, length_words
from meterlog.window.recordings_page.newest_question import NewestQuestion
from meterlog.work.library import Kind, Verdicts, WatchedFolders

LEFT = Qt.MouseButton.LeftButton


def click(qtbot, widget):
    qtbot.mouseClick(widget, LEFT)


def names(desk):
    return [hit.folder.name for hit in desk.page.table.hits.hits]


def test_sorted_by_its_head_chosen_and_opened_with_a_double_click(window, recording, turned, qtbot):
    recording("a", 0, "Wren bus (invented)")
    recording("b", 1, "Aral bus (invented)")
    desk = turned(2)
    table = desk.page.table
    head = table.horizontalHeader()
    at = QPoint(head.sectionViewportPosition(2) + 20, head.height() // 2)
    qtbot.mouseClick(head.viewport(), LEFT, pos=at)
    qtbot.waitUntil(lambda: desk._sort[0] == 2 and not desk._searching.busy, timeout=5000)
    first = names(desk)[0]
    qtbot.mouseClick(head.viewport(), LEFT, pos=at)
    qtbot.waitUntil(lambda: names(desk)[0] != first, timeout=5000)
    place = table.visualRect(table.hits.index(0, 1)).center()
    qtbot.mouseClick(table.viewport(), LEFT, pos=place)
    assert [one.folder.name for one in table.chosen_hits()] == names(desk)[:1]
    assert f"vehicle: {table.hits.hits[0].vehicle}" in desk.page.detail.text()
    qtbot.mouseDClick(table.viewport(), LEFT, pos=place)
    assert window.desk.page is Page.RUN


def test_narrowed_by_boxes_and_cleared(window, recording, job, turned, qtbot):
    job("j", recording("a"))
    desk = turned(2)
    kind = desk.page.search.kind
    kind.setCurrentIndex(kind.findText("jobs"))
    qtbot.waitUntil(lambda: names(desk) == ["j"], timeout=5000)
    assert desk.page.table.hits.hits[0].kind is Kind.JOB
    verdict = desk.page.search.verdict
    verdict.setCurrentIndex(verdict.findText("✕ fault found"))
    qtbot.waitUntil(lambda: names(desk) == [], timeout=5000)
    assert desk.page.detail.text() == "Nothing was found."
    assert desk.page.folders.many.text() == "0 found"
    click(qtbot, desk.page.search.clear)
    qtbot.waitUntil(lambda: len(names(desk)) == 2, timeout=5000)


def test_another_folder_is_watched_looked_at_alone_and_left_out(
    window, recording, turned, qtbot, tmp_path_factory
):
    stick = tmp_path_factory.mktemp("stick")
    recording("a")
    there = recording("b", 1, place=stick)
    desk = turned(1)
    desk.watch(stick)
    assert WatchedFolders().load() == (stick,)
    qtbot.waitUntil(lambda: names(desk) == ["b", "a"], timeout=10000)
    folders = desk.page.folders
    folders.folders.setCurrentIndex(2)
    qtbot.waitUntil(lambda: names(desk) == ["b"], timeout=5000)
    assert folders.forget.isVisible()
    click(qtbot, folders.forget)
    qtbot.waitUntil(lambda: names(desk) == ["a"], timeout=10000)
    assert WatchedFolders().load() == ()
    assert not folders.forget.isVisible()
    assert there.is_dir()


def test_judging_is_stopped_and_begun_again(window, recording, turned, qtbot, monkeypatch):
    stopped = []

    def never_done(_index, _roots, _most, tell):
        while True:
            tell(0.5)

    apart = "meterlog.window.recordings_page.library_work.judge_apart"
    with monkeypatch.context() as patch:
        patch.setattr(apart, never_done)
        recording("a")
        desk = turned(1)
        strip, judge = desk.page.strip, desk.page.folders.judge
        qtbot.waitUntil(lambda: "Judging 1" in strip.words.text(), timeout=10000)
        click(qtbot, strip.stop)
        qtbot.waitUntil(judge.isVisible, timeout=10000)
        stopped.append(judge.text())
    assert stopped == ["Judge 1"]
    assert not strip.isVisible()
    click(qtbot, judge)
    table = desk.page.table
    qtbot.waitUntil(lambda: table.hits.hits[0].verdict is Verdicts.IN_ORDER, timeout=20000)
    assert not judge.isVisible()


def test_judging_waits_while_something_is_recorded(window, recording, turned, qtbot, monkeypatch):
    asked = []
    apart = "meterlog.window.recordings_page.library_work.judge_apart"
    monkeypatch.setattr(apart, lambda *_: asked.append(1) or 0)
    monkeypatch.setattr(type(window.desk.session), "recording", property(lambda _: True))
    recording("a")
    desk = turned(1)
    qtbot.waitUntil(lambda: desk.work._to_judge == 1, timeout=10000)
    for _ in range(5):
        desk.tick()
    assert asked == []
    keys = desk.keys()
    assert "C" not in [key.shown for key in keys]


@pytest.mark.parametrize("palette", [DAY, DARK])
def test_the_picture_is_painted_with_its_mark_in_each_look(
    window, recording, turned, qtbot, palette
):
    recording("a", 0, "Wren bus (invented)")
    recording("b", 1, amps=3.8)
    desk = turned(2)
    view = desk.page.currents
    judged = {Verdicts.IN_ORDER}
    hits = desk.page.table.hits
    qtbot.waitUntil(lambda: {one.verdict for one in hits.hits} == judged, timeout=20000)
    desk.page.table.selectAll()
    qtbot.waitUntil(lambda: view.shown is not None and len(view.shown.points) == 2, timeout=5000)
    desk.set_palette(palette, 15)
    assert mark_words(view.shown) == "SIMULATED"
    assert mixed_words(view.shown) == "2 vehicles"
    picture = view.grab().toImage()
    colours = {
        picture.pixelColor(x, y).name()
        for x in range(picture.width())
        for y in range(picture.height())
    }
    assert {palette.caution, palette.band, palette.panel} <= colours
    for hit in hits.hits:
        assert "Nothing was found wrong" in detail_words(hit)


@pytest.mark.parametrize(
    ("seconds", "words"),
    [(9.94, "9.9 s"), (60.0, "1 min 0 s"), (3599.6, "1 h 0 min"), (7500.0, "2 h 5 min")],
)
def test_lengths_read_as_people_say_them(seconds, words):
    assert length_words(seconds) == words


def test_of_what_waits_only_the_newest_question_is_answered(qtbot):
    question = NewestQuestion("test")
    gate = LongWork("gate")
    assert question.fetch() is None
    answers, done = [], []
    for number in range(5):
        question.ask(lambda number=number: done.append(number) or number)

    def fetched():
        answer = question.fetch()
        if answer is not None:
            answers.append(answer)
        return not question.busy

    qtbot.waitUntil(fetched, timeout=5000)
    assert answers[-1] == (4, "")
    assert done[-1] == 4
    assert len(done) <= 2
    assert not gate.busy

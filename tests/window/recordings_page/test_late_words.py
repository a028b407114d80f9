"""Words and troubles that come late are those of the table and the search that hold now."""

from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace

import pytest

from meterlog.model.errors import DiskFailed
from meterlog.window.good_ones import FoundTables
from meterlog.window.recordings_page import good_ones_desk
from meterlog.window.recordings_page.good_ones_desk import GoodOnesDesk
from meterlog.window.recordings_page.good_ones_row import GoodOnesRow
from meterlog.work import screening
from meterlog.work.library import Hit, Kind, Verdicts
from meterlog.work.screening.usuals import TableSign
from tests.rig.held_work import HeldWork

FIRST, SECOND = "first/baselines.parquet", "second/baselines.parquet"


class Table:
    """Stands in for a table that was read; it knows nothing of any recording."""

    def __init__(self, place):
        self.numbers = (place.parent.name,)
        self.sign = SimpleNamespace(path=place)

    def judge(self, *_):
        return 0


@pytest.fixture
def hit(tmp_path):
    empty = dict.fromkeys(("work_order", "vehicle", "part", "technician", "odometer"), "")
    return Hit(
        folder=tmp_path / "run", kind=Kind.RUN, started="", **empty, complaint="", mark="",
        duration_s=1.0, instruments="", state="sealed", trouble="", verdict=Verdicts.IN_ORDER,
        worst="", sentence="In order.", currents_json="", away=False, side="", key="k",
    )  # fmt: skip


@pytest.fixture
def tables(monkeypatch):
    """Tables by their names, each read once the test lets it go."""
    every = tuple(map(Path, (FIRST, SECOND)))
    held = HeldWork(lambda name: FoundTables(every, Path(name)))
    monkeypatch.setattr(good_ones_desk, "find_tables", lambda choice, *_: held(choice))
    monkeypatch.setattr(screening, "Usuals", Table)
    monkeypatch.setattr(TableSign, "of", lambda place: SimpleNamespace(path=place))
    yield held
    held.let_all_go()


@pytest.fixture
def words(monkeypatch):
    """What a table says of a recording, held until the test lets it go."""

    def say(name):
        if name == "lost":
            raise DiskFailed("can't be kept.", subject="the index")
        return f"by {name}"

    held = HeldWork(say)
    monkeypatch.setattr(good_ones_desk, "_beside", lambda usuals, *_: held(usuals.numbers[0]))
    yield held
    held.let_all_go()


@pytest.fixture
def desk(qtbot, tables, words, hit):
    """A desk beside a recording that stays the chosen one; what it told is in a list."""
    row = GoodOnesRow()
    qtbot.addWidget(row)
    library = SimpleNamespace(search=lambda *_: ())
    desk = GoodOnesDesk(library, row, lambda: None, lambda: desk.said.append(desk.words(hit)))
    desk.said = []
    desk.choose(FIRST)
    yield desk
    for held, name in ((tables, FIRST), (tables, SECOND), (words, "first"), (words, "second")):
        held.let_go(name)
    desk.close()


def _until(desk, qtbot, told):
    def done():
        desk.tick(may_hold=True)
        assert told()

    qtbot.waitUntil(done)


def test_what_the_table_before_says_of_a_recording_is_not_told_by_another(
    desk, tables, words, hit, qtbot
):
    tables.let_go(FIRST)
    _until(desk, qtbot, lambda: desk.usuals is not None)
    desk.words(hit)
    qtbot.waitUntil(lambda: words.asked == ["first"])
    desk.choose(SECOND)
    tables.let_go(SECOND)
    _until(desk, qtbot, lambda: desk.usuals.numbers == ("second",))
    words.let_go("first")
    words.let_go("second")
    _until(desk, qtbot, lambda: not desk.busy)
    assert desk.words(hit) == "by second"
    assert set(desk.said) == {"", "by second"}


def test_words_on_show_follow_the_table_without_being_asked_for(desk, tables, words, hit, qtbot):
    words.let_go("first")
    words.let_go("second")
    tables.let_go(FIRST)
    _until(desk, qtbot, lambda: desk.words(hit) == "by first")
    desk.choose(SECOND)
    tables.let_go(SECOND)
    _until(desk, qtbot, lambda: desk.usuals.numbers == ("second",) and not desk.busy)
    assert desk.said[-1] == "by second"


def test_a_table_that_was_read_when_another_had_been_chosen_is_not_used(desk, tables, qtbot):
    desk.tick(may_hold=True)
    qtbot.waitUntil(lambda: tables.asked == [FIRST])
    desk.choose(SECOND)
    tables.let_go(FIRST)
    _until(desk, qtbot, lambda: tables.asked == [FIRST, SECOND])
    assert desk.usuals is None
    assert "first" not in desk._row.told.text()
    tables.let_go(SECOND)
    _until(desk, qtbot, lambda: desk.usuals is not None)
    assert "second" in desk._row.told.text()


def test_why_nothing_is_told_of_a_recording_is_said(desk, tables, words, hit, qtbot, monkeypatch):
    tables.let_go(FIRST)
    words.let_go("first")
    _until(desk, qtbot, lambda: desk.usuals is not None and not desk.busy)
    assert desk.trouble == ""
    monkeypatch.setattr(desk.usuals, "numbers", ("lost",))
    desk.words(replace(hit, sentence="Judged anew."))
    words.let_go("lost")
    _until(desk, qtbot, lambda: not desk.busy)
    assert "can't be kept" in desk.trouble


def test_trouble_with_a_search_goes_once_a_later_one_has_been_answered(
    turned, recording, qtbot, monkeypatch
):
    recording("one")
    desk = turned(1)
    library, search = desk.work.library, desk.work.library.search

    def refuse(*_):
        raise DiskFailed("is locked.", subject="the index")

    monkeypatch.setattr(library, "search", refuse)
    desk._search()
    qtbot.waitUntil(lambda: desk.tick() or "is locked" in desk.page.trouble.text())
    monkeypatch.setattr(library, "search", search)
    desk._search()
    qtbot.waitUntil(lambda: desk.tick() or not desk._searching.busy)
    desk.tick()
    assert "is locked" not in desk.page.trouble.text()
    assert len(desk.page.table.hits.hits) == 1

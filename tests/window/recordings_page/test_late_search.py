"""What is on show says so where it was found to an older question than the newest."""

import pytest

from meterlog.model.errors import DiskFailed
from meterlog.window.recordings_page import recordings_desk
from tests.rig.held_work import HeldWork


@pytest.fixture
def desk(window, recording, turned):
    recording("one", day=0, vehicle="Kestrel van (invented)")
    recording("two", day=1, vehicle="Löwe hatch (invented)")
    return turned(2)


@pytest.fixture
def held(desk, monkeypatch):
    """Searches by their words, each answered once the test lets it go; "lost" finds no index."""
    truly, asked = desk.work.library.search, {}

    def found(words):
        if words == "lost":
            raise DiskFailed("can't be read.", subject="the index")
        return truly(*asked[words])

    held = HeldWork(found)

    def search(roots, wanted):
        asked[wanted.words] = roots, wanted
        return held(wanted.words)

    monkeypatch.setattr(desk.work.library, "search", search)
    yield held
    held.let_all_go()


def _shown(desk):
    return desk.page.folders.many.text(), len(desk.page.table.hits.hits)


def test_the_count_is_never_that_of_an_older_question(desk, held, qtbot):
    assert _shown(desk) == ("2 found", 2)
    desk.page.search.words.setText("Kestrel")
    assert _shown(desk) == ("2 found", 2)  # for a blink, so that nothing flickers
    qtbot.waitUntil(lambda: _shown(desk) == ("searching…", 2))
    desk.page.search.words.setText("Kestrel hatch")
    held.let_go("Kestrel")
    qtbot.waitUntil(lambda: _shown(desk) == ("searching…", 1))
    held.let_go("Kestrel hatch")
    qtbot.waitUntil(lambda: _shown(desk) == ("0 found", 0))


def test_the_same_question_asked_again_leaves_the_count(desk, held, qtbot, monkeypatch):
    monkeypatch.setattr(recordings_desk, "_SEARCHING_S", -1.0)
    desk._search()
    qtbot.waitUntil(lambda: "" in held.asked)
    qtbot.wait(60)
    assert _shown(desk) == ("2 found", 2)
    held.let_all_go()  # the window is closed before fixtures are


def test_a_search_that_failed_counts_nothing_and_says_why(desk, held, qtbot):
    held.let_go("lost")
    desk.page.search.words.setText("lost")
    qtbot.waitUntil(lambda: _shown(desk) == ("", 2))
    desk.tick()
    assert "the index: can't be read." in desk.page.trouble.text()
    held.let_go("Löwe")
    desk.page.search.words.setText("Löwe")
    qtbot.waitUntil(lambda: _shown(desk) == ("1 found", 1))

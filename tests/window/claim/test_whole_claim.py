"""The whole claim in the window by keyboard alone: card, two recordings, pack, check."""

import zipfile

from PySide6.QtCore import Qt

from meterlog.evidence.pack_verify import verify_pack
from meterlog.window.pages import Page
from meterlog.work.job_folder import Side

Key = Qt.Key


def at(window):
    """Give what has the focus, or the window."""
    return window.focusWidget() or window


def test_from_the_first_entry_to_a_pack_that_holds(window, qtbot, recorded, tmp_path):
    desk = window.desk
    qtbot.keyClick(at(window), Key.Key_J)
    assert desk.page is Page.JOB
    qtbot.waitUntil(desk.parts[Page.JOB].widget.isVisible)
    qtbot.keyClick(at(window), Key.Key_Q)
    for text in ("WO-7781", "Imra Vantablank", "Hartwell Nomad (invented)"):
        qtbot.keyClicks(at(window), text)
        qtbot.keyClick(at(window), Key.Key_Return)
    qtbot.keyClick(at(window), Key.Key_Escape)
    qtbot.keyClick(at(window), Key.Key_A)
    qtbot.keyClicks(at(window), "1M8GDM9AXKP042788")
    qtbot.keyClick(at(window), Key.Key_Escape)
    # What a run does when it is sealed, without the minutes it takes.
    desk.at_hand.take_recording(recorded("before", dead=True))
    qtbot.keyClick(at(window), Key.Key_X)
    assert desk.at_hand.work.fitted is Side.NEW
    desk.at_hand.take_recording(recorded("after"))

    qtbot.keyClick(at(window), Key.Key_K)
    assert desk.page is Page.CLAIM
    claim = desk.parts[Page.CLAIM]
    qtbot.waitUntil(claim.widget.isVisible)
    qtbot.keyClick(at(window), Key.Key_P)
    qtbot.waitUntil(lambda: desk.tick() or claim.page.made.isVisible(), timeout=30000)
    folder = claim.page.made.folder
    assert claim.page.said.text() == ""
    for name in ("claim.zip", "claim.pdf"):
        found = verify_pack(folder / name)
        assert found.intact, found.problems
        assert found.signature.own
    with zipfile.ZipFile(folder / "claim.zip") as archive:
        names = archive.namelist()
        card = archive.read("claim/data/job-card.json").decode()
    assert {"claim/data/comparison.txt", "claim/data/before/findings.csv"} <= set(names)
    for text in ("WO-7781", "Imra Vantablank", "1M8GDM9AXKP042788"):
        assert text in card

    claim.page.made.check.setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.keyClick(at(window), Key.Key_Return)
    qtbot.waitUntil(
        lambda: desk.tick() or claim.page.check.verdict.text() == "Intact", timeout=30000
    )

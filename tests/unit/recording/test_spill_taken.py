"""Recordings of one name go on in one place at one moment: each has a folder of its own."""

import threading

from meterlog.model.errors import DiskFailed
from meterlog.recording import MovingRecorder, Recording, layout, moving_recorder


def test_two_that_choose_the_same_folder_do_not_take_it_from_each_other(maker, monkeypatch):
    one, names = maker.instrument(), ("a", "b", "c")
    real, together = moving_recorder.fresh_spill, threading.Barrier(len(names))
    chosen = []

    def fresh(place, name):
        folder = real(place, name)
        chosen.append(folder)
        if len(chosen) <= len(names):
            together.wait(20)  # all have looked before any has made it
        return folder

    monkeypatch.setattr(moving_recorder, "fresh_spill", fresh)
    spill = maker.folder / "spill"
    recorders = [
        MovingRecorder(maker.folder / name / "run", maker.about(one), places=lambda: [spill])
        for name in names
    ]
    told = []

    def go_on(recorder):
        recorder.take(maker.block(one.key, 0, 40))
        home = recorder.parts[0].parent
        home.rename(home.with_name(f"{home.name}-gone"))
        try:
            recorder._try(recorder._recorder.sync)
        except DiskFailed as error:
            told.append(error.message)
        recorder.take(maker.block(one.key, 40, 10))
        recorder.close()

    threads = [threading.Thread(target=go_on, args=(recorder,)) for recorder in recorders]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(set(chosen[: len(names)])) == 1
    assert ["The recording goes on in" in text for text in told] == [True] * len(names)
    ends = {recorder.parts[-1] for recorder in recorders}
    assert {path.name for path in ends} == {f"run-goes-on-{number}" for number in (1, 2, 3)}
    assert [recorder.failed for recorder in recorders] == [""] * len(names)
    for folder in ends:
        assert Recording.open(folder).rows(one.key) == 50
        assert (folder / layout.CONTINUES).is_file()
    assert {path.name for path in spill.iterdir()} == {path.name for path in ends}

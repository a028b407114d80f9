"""Each phase that was gone into is told once to every reader, whenever he looks."""

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from meterlog.window.phase import Phase, PhaseLog

_WALKS = st.lists(st.sampled_from(Phase), max_size=12)


@given(_WALKS, st.sets(st.integers(0, 12)))
def test_turns_are_the_same_wherever_the_looks_fall(walk, looks):
    log, seen = PhaseLog(), []
    mark = log.mark()
    for number, phase in enumerate(walk):
        log.go(phase)
        if number in looks:
            seen.extend(mark.turns())
    seen.extend(mark.turns())
    gone = [Phase.IDLE, *walk]
    assert seen == [(one, then) for one, then in pairwise(gone) if one != then]
    assert list(mark.turns()) == []


@given(_WALKS, _WALKS)
def test_a_reader_begins_with_what_comes_after_him(before, after):
    log = PhaseLog()
    for phase in before:
        log.go(phase)
    start, mark = log.now, log.mark()
    for phase in after:
        log.go(phase)
    turns = list(mark.turns())
    assert [one for one, _ in turns[:1]] in ([], [start])
    assert log.now is (turns[-1][1] if turns else start)

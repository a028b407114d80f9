from meterlog.instruments.virtual.truth import TruthLog
from meterlog.model import SpanKind

OFF, RUNNING, LOCKED, DEAD = SpanKind.OFF, SpanKind.RUNNING, SpanKind.LOCKED, SpanKind.DEAD


def watched(*stretches):
    log = TruthLog()
    step = 0
    for kind, count in stretches:
        for _ in range(count):
            log.see(kind, step * 0.001, (step + 1) * 0.001)
            step += 1
    spans = log.spans(step * 0.001)
    return [(span.kind, round(span.start_s, 6), round(span.end_s, 6)) for span in spans]


def test_spans_begin_and_end_where_the_condition_changed():
    assert watched((OFF, 100), (DEAD, 50), (RUNNING, 30)) == [
        (OFF, 0.0, 0.1),
        (DEAD, 0.1, 0.15),
        (RUNNING, 0.15, 0.18),
    ]


def test_what_lasts_a_few_milliseconds_is_no_span():
    seen = watched((OFF, 50), (RUNNING, 100), (DEAD, 5), (RUNNING, 100))
    assert seen == [(OFF, 0.0, 0.05), (RUNNING, 0.05, 0.255)]


def test_a_motor_that_takes_a_moment_to_break_away_runs_from_the_command_on():
    assert watched((OFF, 100), (LOCKED, 4), (RUNNING, 96)) == [
        (OFF, 0.0, 0.1),
        (RUNNING, 0.1, 0.2),
    ]


def test_many_short_dips_do_not_add_up_to_a_span():
    dips = [(RUNNING, 5), (DEAD, 2)] * 30
    assert [kind for kind, _, _ in watched((OFF, 50), *dips)] == [OFF, RUNNING]


def test_a_dead_spot_ends_at_the_first_current_even_if_dips_follow_at_once():
    dips = [(RUNNING, 5), (DEAD, 2)] * 30
    assert watched((OFF, 50), (DEAD, 50), *dips)[1] == (DEAD, 0.05, 0.1)


def test_the_last_span_is_cut_at_the_end():
    assert watched((OFF, 30))[-1] == (OFF, 0.0, 0.03)

"""A range is called as in a circuit in order only where it is no wider than that."""

from meterlog.circuit.outcomes import in_order_words


def test_a_narrow_range_is_as_in_a_circuit_in_order_and_a_wide_one_says_what_that_shows():
    assert in_order_words("about 12.4 V", (12.2, 12.6), "V") == ", as in a circuit in order,"
    assert in_order_words("near 0 V", (-0.1, 0.1), "V") == ", as in a circuit in order,"
    wide = in_order_words("0.07 to 11.5 V", (0.29, 0.48), "V")
    assert wide == " (0.29 to 0.48 V in a circuit in order)"

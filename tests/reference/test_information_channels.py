"""Expected information against a textbook channel and against numerical integration.

Source: D. J. C. MacKay, Information Theory, Inference, and Learning Algorithms (2003), section 9.3:
a binary symmetric channel with f = 0.15 has I = 0.15 bits for inputs of 0.9 and 0.1, and a capacity
of 0.39 bits at even inputs (section 9.5). Normal channels: scipy's adaptive quadrature.
"""

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.stats import norm

from meterlog.circuit.information import SLIP, below, mutual_bits, reading_bits, sign_joint

PARTS = np.array([0, 1])
CHANNEL = np.array([[0.85, 0.15], [0.15, 0.85]])


@pytest.mark.parametrize(("first", "bits"), [(0.9, 0.15), (0.5, 0.39)])
def test_binary_symmetric_channel(first, bits):
    joint = sign_joint(CHANNEL, np.array([first, 1.0 - first]), PARTS)
    assert mutual_bits(joint) == pytest.approx(bits, abs=0.005)


@pytest.mark.parametrize("apart", [0.5, 1.0, 2.0, 6.0])
@pytest.mark.parametrize("first", [0.5, 0.1])
@pytest.mark.parametrize("wide", [1.0, 0.2])
def test_two_normals_with_slips(apart, first, wide):
    low, high = -20.0, 20.0
    shares = np.array([first, 1.0 - first])
    laws = [norm(0.0, 1.0), norm(apart, wide)]

    def density(part, y):
        return (1.0 - SLIP) * laws[part].pdf(y) + SLIP / (high - low)

    def integrand(y):
        each = [density(0, y), density(1, y)]
        whole = shares @ each
        return sum(
            share * one * np.log2(one / whole) for share, one in zip(shares, each, strict=True)
        )

    exact = quad(integrand, low, high, points=[0.0, apart], limit=400)[0]
    args = (np.array([[0.0, apart]]), np.array([[1.0, wide]]), shares, PARTS, (low, high))
    fine, coarse = reading_bits(*args, 64)[0], reading_bits(*args, 14)[0]
    assert fine == pytest.approx(exact, abs=0.012)
    # Cutting into bins only ever loses (the table of the distribution is good to 0.0004).
    assert coarse <= fine + 0.004
    assert fine <= exact + 0.004


def test_normal_distribution_function():
    edges = np.linspace(-8.0, 8.0, 400)[None]
    found = below(edges, np.array([[0.3]]), np.array([[0.7]]))[0, 0]
    assert np.abs(found - norm(0.3, 0.7).cdf(edges[0])).max() < 0.0005

"""Joint: the normal density of several readings together, and of what is left without some."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from meterlog.circuit.figures import Floats

LOG_TWO_PI = float(np.log(2.0 * np.pi))


@dataclass(frozen=True, slots=True)
class Joint:
    """Normal density of the same n readings in each of many cases.

    Attributes
    ----------
    log_density : float64[cases]
        Natural logarithm of the density of all readings together.
    inverse : float64[cases, n, n]
        P, the inverse of their covariance S.
    pull : float64[cases, n]
        P times what was read less what was expected. Reading i lies ``pull / P_ii`` from what the
        others let expect there, the standard deviation of which is ``1 / sqrt(P_ii)``.

    Source
    ------
    Leaving readings out by the inverse of the whole: C. E. Rasmussen and C. K. I. Williams,
    Gaussian Processes for Machine Learning (2006), 5.4.2, equations 5.10 to 5.12, there for one;
    for several by the inverse of a partitioned matrix, appendix A.3 (numbers of the equations from
    memory).
    """

    log_density: Floats
    inverse: Floats
    pull: Floats

    @property
    def count(self) -> int:
        """How many readings there are."""
        return int(self.pull.shape[1])

    def of(self, cases: slice | np.ndarray) -> Joint:
        """Give some of the cases."""
        return Joint(self.log_density[cases], self.inverse[cases], self.pull[cases])

    def log_left(self) -> Floats:
        """Give how much the logarithm of the density gains by leaving out each reading.

        Returns
        -------
        float64[cases, n]
        """
        own = np.einsum("cii->ci", self.inverse)
        gain: Floats = 0.5 * (self.pull**2 / own - np.log(own) + LOG_TWO_PI)
        return gain

    def without(self, at: int) -> Joint:
        """Leave out the reading at one place; the places behind it move up."""
        rest = np.delete(np.arange(self.count), at)
        own = self.inverse[:, at, at]
        column = self.inverse[:, rest, at]
        by = column / own[:, None]
        return Joint(
            self.log_density + self.log_left()[:, at],
            self.inverse[:, rest[:, None], rest] - by[:, :, None] * column[:, None, :],
            self.pull[:, rest] - by * self.pull[:, at, None],
        )

    def silenced(self, which: np.ndarray) -> Joint:
        """Let readings that each case has its own of tell nothing.

        Parameters
        ----------
        which : int[cases, m]
            Their places, -1 for none.

        Returns
        -------
        Joint
            With zeros in their rows and columns and in the pull; the density is of the others.
        """
        density, inverse, pull = self.log_density, self.inverse.copy(), self.pull.copy()
        cases = np.arange(len(pull))
        for places in which.T:
            some = np.flatnonzero(places >= 0)
            at, case = places[some], cases[some]
            own = inverse[case, at, at]
            column = inverse[case, :, at]
            gain = 0.5 * (pull[case, at] ** 2 / own - np.log(own) + LOG_TWO_PI)
            density = density.copy()
            density[case] += gain
            by = column / own[:, None]
            pull[case] -= by * pull[case, at][:, None]
            inverse[case] -= by[:, :, None] * column[:, None, :]
            # Exactly nothing is left, whatever rounding says.
            pull[case, at] = 0.0
            inverse[case, at, :] = 0.0
            inverse[case, :, at] = 0.0
        return Joint(density, inverse, pull)


def joint_of(residual: Floats, covariance: Floats) -> Joint:
    """Give the joint density of readings.

    Parameters
    ----------
    residual : float64[cases, n]
        What was read less what was expected.
    covariance : float64[cases, n, n]
        Positive definite.

    Returns
    -------
    Joint
    """
    cases, count = residual.shape
    if not count:
        return Joint(np.zeros(cases), np.zeros((cases, 0, 0)), np.zeros((cases, 0)))
    inverse = np.linalg.inv(covariance)
    inverse = 0.5 * (inverse + inverse.transpose(0, 2, 1))
    pull = np.einsum("cij,cj->ci", inverse, residual)
    own = np.linalg.cholesky(covariance).diagonal(axis1=1, axis2=2)
    log_volume = 2.0 * np.log(own).sum(axis=1)
    square = np.einsum("ci,ci->c", residual, pull)
    return Joint(-0.5 * (square + log_volume + count * LOG_TWO_PI), inverse, pull)

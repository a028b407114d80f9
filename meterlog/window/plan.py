"""Plan: what the Meters page says, as words; made into a run in the background."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

from meterlog.model import Job, Role
from meterlog.model.errors import UsageError
from meterlog.profile import load_limits
from meterlog.window.words import say
from meterlog.work import Run, SensorWords, Wiring, choose_meters, fresh_folder


@dataclass(frozen=True, slots=True)
class Plan:
    """One recording to be made.

    Attributes
    ----------
    meters : tuple of str
        ``PROFILE@PORT`` each.
    roles : tuple of str
        ``ROLE=KEY.CHANNEL`` each.
    limits : str
        Name or file of a limits profile.
    parent : Path
        The folder in which the recording's own folder is made.
    job : Job
    sensors : SensorWords
        What stands before the channels.
    kept_zeros : tuple of Role
        Their zeros are those kept from an earlier recording.
    """

    meters: tuple[str, ...]
    roles: tuple[str, ...]
    limits: str
    parent: Path
    job: Job = field(default_factory=Job)
    sensors: SensorWords = field(default_factory=SensorWords)
    kept_zeros: tuple[Role, ...] = ()

    def run(self) -> Run:
        """Give the run, not yet started.

        Raises
        ------
        UsageError, ProfileError
            If a meter has no port, no channel has a role, or a profile is unknown or wrong.
        """
        if not self.meters:
            raise UsageError(say("there is no meter."), remedy=say("Add one on the Meters page."))
        for words in self.meters:
            name, _, url = words.partition("@")
            if not url.strip():
                raise UsageError(
                    say("has no port."),
                    subject=name,
                    remedy=say(
                        "Choose one on the Meters page, or type an address such as "
                        "socket://host:port."
                    ),
                )
        choices = choose_meters(
            Wiring(self.meters, self.roles, sensors=self.sensors, kept_zeros=self.kept_zeros)
        )
        subject = self.job.work_order or self.job.vehicle
        return Run(choices, load_limits(self.limits), fresh_folder(subject, self.parent), self.job)

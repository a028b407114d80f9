"""Sound: what the eyes under the dash can't see. QtMultimedia is loaded only when it is used."""

from meterlog.window.sound.cues import Cue
from meterlog.window.sound.sound_desk import SoundDesk
from meterlog.window.sound.tone import RATE, Tone

__all__ = ["RATE", "Cue", "SoundDesk", "Tone"]

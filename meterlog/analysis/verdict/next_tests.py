"""NextTests: what to measure next for each cause, where, and what to expect.

Source: order of tests and expected values: common practice of workshop manuals (battery, feed
within 0.7 V of it, return, ground pin within 0.3 V, request, load below 80 % of the fuse), no
single published source. The service manual of the vehicle comes before all of it.
"""

from __future__ import annotations

MANUAL = "The vehicle's service manual comes first."
SAFE = (
    "Fan and key off before any plug is parted; leave airbag plugs (usually yellow) alone."
    f" {MANUAL}"
)
MOVING = "Keep fingers and leads away from the moving wheel."

TAP_TEST = (
    "Do the tap test in full: zero of the clamp, ten seconds still, move the leads (mark it), then"
    " at each stop tap the motor lightly and mark it, three times; ten seconds still, zero again."
)
BRIEF = (
    "Judge it again with a shorter min_dwell_s in the limits (review --limits), down to a few"
    " readings: then it is told when each was and on which side. Shake the leads and the plug one"
    f" by one meanwhile, and tap the motor lightly; mark each. {SAFE}"
)
MOTOR_OPEN = (
    "When it stands again: feed within 0.7 V of the battery, return near 0 V, current 0 A; then,"
    " key off, turn the wheel a little by hand: if it starts now, brush or commutator is bad."
    " Fit the new motor and record the same speeds: no dropout, current within limits, below 80 %"
    f" of the fuse on high. {MOVING} {SAFE}"
)
MOTOR_OR_GROUND = (
    "Record the motor's return (ground side) as well, against the battery's negative post, and"
    " wait for the fault: near 0 V with no current means the motor is open; near the feed means"
    f" the ground side is (controller, its ground or its request). {SAFE}"
)
MOTOR_OR_CIRCUIT = (
    "Record the motor's feed and return, both against the battery's negative post, and wait for"
    " the fault: feed gone: fuse, relay, plug; feed there and return near 0 V: motor open; both"
    f" near the battery: ground side open. {SAFE}"
)
FEED = (
    "Fan on high, all plugged in, meter to the battery's negative post: battery, both sides of the"
    " main fuse, relay input (30), relay output (87), motor feed; each within 0.7 V of the battery;"
    " the fault lies before the first that falls. If 87 is dead: coil 86 near battery, 85 near"
    " 0 V. Move one plug at a time and mark it. A blown fuse has a cause: same rating only, never"
    f" bridge it; measure the motor's current on high afterwards. {SAFE}"
)
GROUND = (
    "Fan on high, all plugged in, meter to the battery's negative post: ground pin of the"
    " controller below 0.3 V (more: ground wire or stud); then its request. Ground and request"
    " good and the motor's return near the feed: the controller is open. Before a new one is"
    " fitted: motor current on high below 80 % of the fuse, as a motor that draws too much kills"
    f" controllers. {SAFE}"
)
COMMAND = (
    "Record the request at the controller together with the current; manual mode, one speed. If"
    " the request goes first: control head, its wiring, a sensor, or load shedding. Polarity and"
    " values differ by model: compare with the manual. A meter of 10 Mohm only, no test lamp on"
    f" module pins. {SAFE}"
)
CUT_OUT = (
    "Note the rhythm, the controller's temperature and the request; turn the wheel by hand (key"
    " off): does it rub or bind? See filter and intake. Motor current on high below 80 % of the"
    " fuse? If not, the motor makes the controller cut out; if it is, run the motor from a fused"
    " lead (20 to 30 A, heavy wire), wheel clear, for a short time: steady there means the"
    f" controller is at fault. The heat sink burns. {MOVING} {SAFE}"
)
HELD = (
    "Key off: turn the wheel by hand: stuck or stiff: motor or something in the housing. Free:"
    " measure again on high from rest. On low a held rotor draws little more than usual, so judge"
    f" on high, and briefly. {MOVING} {SAFE}"
)
DRAG = (
    "Key off: turn the wheel by hand: rub, noise, stiffness? Look at the plug for heat and at the"
    " case drain for water. Then the current on high at the same voltage with filter and housing"
    " as in use: below 80 % of the fuse, and within a tenth of a known good motor. Fit no new"
    f" controller beside a motor that draws too much. {MOVING} {SAFE}"
)
STAYS_ON = (
    "Clamp empty and shut: take its zero. If current still flows with the fan off: relay output"
    " (87) and motor's return against the battery's negative post: 87 live with the coil off means"
    f" the relay sticks; return near 0 V means the controller is shorted. {SAFE}"
)
SHORTAGE = (
    "On high: voltage across the motor within 0.7 V of the battery? If not, follow the drop from"
    " the battery to the feed and from the return to the ground. If it is: filter, flaps, wheel on"
    f" its shaft; then brushes (unsteady current). {MOVING} {SAFE}"
)
RESISTIVE_FEED = (
    "Fan on high: measure straight across each part of the feed: fuse and holder, relay contacts"
    " (30 to 87, 0.3 V at most), plug and wire (0.1 to 0.2 V each); the largest is the place. Look"
    f" for heat. Low speed hides it. {SAFE}"
)
RESISTIVE_GROUND = (
    "Fan on high: measure straight from the controller's ground pin to the battery's negative post"
    " (0.2 V, 0.3 V at most), then each joint and stud; the largest drop is the place. A computer"
    f" on mains power can be a second ground: run it on its battery. {SAFE}"
)
FUSE = (
    "Compare the fuse in the holder with the rating in the manual (same rating and kind only);"
    " then the current on high, and at the start with a fast channel. Above 80 % of the rating:"
    f" drag first, then filter and plug. {SAFE}"
)
HEAT = (
    "Fan on the speed named: voltage across the controller and its current; see filter and intake"
    " (its air cools it), and the motor's current on high below 80 % of the fuse. The heat sink"
    f" burns. {SAFE}"
)
BARS = (
    "Record half a second or more at a steady speed with a channel of 7,000 readings/s or more,"
    " the motor on plain direct voltage, twice: the same bar again? A pattern alone is no reason"
    f" to replace a motor: it must go with a dropout. {SAFE}"
)
MISSED = (
    "Record the current with a faster channel (or the meter's peak mode), fan on high, doors shut;"
    " tap the motor lightly and mark each tap: a true dropout reads next to nothing."
    f" {MOVING} {SAFE}"
)
MEASURING = "Put that right first, and measure again: nothing is told of the vehicle before."
MEASURING_SOME = (
    "Put that right, and measure again: what rests on it tells nothing of the vehicle before."
)
OTHER = f"Measure again with feed, return and current of the motor recorded. {SAFE}"

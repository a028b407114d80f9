"""Sensing: a meter's channel with a sensor in front of it."""

from __future__ import annotations

from dataclasses import replace

from meterlog.model import Accuracy, Channel, Quantity, Range, Role, Sensor, SensorKind
from meterlog.model.errors import UsageError

_BECOMES = {
    SensorKind.CLAMP: Quantity.CURRENT,
    SensorKind.SHUNT: Quantity.CURRENT,
    SensorKind.DIVIDER: Quantity.VOLTAGE,
}


def sensed(channel: Channel, role: Role, sensor: Sensor | None) -> Channel:
    """Give the channel in its role, behind its sensor.

    Parameters
    ----------
    channel : Channel
        As the meter's profile has it.
    role : Role
    sensor : Sensor or None
        None: nobody has said anything of one.

    Returns
    -------
    Channel
        Scale, quantity, accuracy, ranges and zero offset are those behind the sensor. The
        sensor's own accuracy is added to the meter's as a linear sum of half-widths: the safe
        side, as nobody knows how the two go together.

    Raises
    ------
    UsageError
        If role, sensor and meter do not go together.
    """
    if sensor is None:
        _check(role, channel.quantity, channel.quantity)
        return replace(channel, role=role)
    quantity = _quantity(channel, role, sensor)
    factor = sensor.factor
    basis = _basis(sensor, quantity.unit)
    accuracy = None
    if channel.accuracy is not None:
        accuracy = _with_own(channel.accuracy.scaled(factor, basis), sensor)
    elif sensor.own_percent is not None:
        raise UsageError(
            "there is no accuracy of the meter to which the sensor's could be added.",
            subject=role.value,
            remedy="Put [channels.accuracy] into the meter's profile, or leave out"
            " --sensor-accuracy.",
        )
    return replace(
        channel,
        role=role,
        quantity=quantity,
        scale=channel.scale * factor,
        offset=channel.offset * factor,
        accuracy=accuracy,
        ranges=tuple(_range(one, sensor, factor, basis) for one in channel.ranges),
        sensor=sensor,
    )


def _quantity(channel: Channel, role: Role, sensor: Sensor) -> Quantity:
    here = channel.quantity
    if sensor.kind is not SensorKind.DIRECT:
        if here is not Quantity.VOLTAGE:
            raise UsageError(
                f"a {sensor.kind.value} gives a voltage, but channel {channel.name} reads amperes"
                " itself.",
                subject=role.value,
                remedy=f"Leave out --{sensor.kind.value}; for several turns through a clamp meter"
                " say --turns alone.",
            )
        _check(role, _BECOMES[sensor.kind], here, sensor)
        return _BECOMES[sensor.kind]
    if sensor.ratio != 1.0 and role.quantity is not None:
        here = role.quantity
    _check(role, here, channel.quantity)
    if sensor.turns != 1 and here is not Quantity.CURRENT:
        raise UsageError(
            "turns go through a clamp, but this role is a voltage.",
            subject=role.value,
            remedy="Leave out --turns.",
        )
    return here


def _check(role: Role, quantity: Quantity, read: Quantity, sensor: Sensor | None = None) -> None:
    wanted = role.quantity or quantity
    if quantity is wanted:
        return
    if sensor is not None:
        raise UsageError(
            f"a {sensor.kind.value} gives a {quantity.value}, but {role.value} needs a"
            f" {wanted.value}.",
            subject=role.value,
            remedy=f"Leave out --{sensor.kind.value}, or give the channel another role.",
        )
    raise UsageError(
        f"{role.value} needs a {wanted.value}, but this channel reads a {read.value}.",
        subject=role.value,
        remedy=f"Choose another channel; for a clamp or shunt on a voltage input say which, such"
        f" as --clamp {role.value}=10mV/A or --shunt {role.value}=100A/60mV, or give its factor:"
        f" --scale {role.value}=100.",
    )


def _basis(sensor: Sensor, unit: str) -> str:
    words = str(sensor)
    if sensor.own_percent is not None:
        own = f"{sensor.own_percent:g} % + {sensor.own_floor or 0.0:g} {unit}"
        own += "" if sensor.own_top is None else f", up to {sensor.own_top:g} {unit},"
        behind = f"behind {words}: " if words else ""
        return f"{behind}the sensor's own {own} added, as a linear sum"
    behind_something = sensor.kind is not SensorKind.DIRECT or sensor.ratio != 1.0
    return f"behind {words}; the sensor's own error not in" if behind_something else words


def _with_own(accuracy: Accuracy, sensor: Sensor) -> Accuracy:
    if sensor.own_percent is None:
        return accuracy
    return replace(
        accuracy,
        percent_of_reading=accuracy.percent_of_reading + sensor.own_percent,
        floor=accuracy.floor + (sensor.own_floor or 0.0),
    )


def _range(one: Range, sensor: Sensor, factor: float, basis: str) -> Range:
    scaled = one.scaled(factor, basis)
    return replace(scaled, accuracy=_with_own(scaled.accuracy, sensor))

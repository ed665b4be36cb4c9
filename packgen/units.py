"""Every unit packgen knows, in one table, and the quantities made of them.

Inside packgen a length is a float in mm. Other dimensions have the base unit given in `BASE`. All factors are exact by
definition: NIST Special Publication 811 (2008), appendix B.8 (inch 25.4 mm, avoirdupois pound 453.592 37 g, mile
1609.344 m, US gallon 231 cubic inches). US cups and spoons are the fractions of that gallon.
"""

from __future__ import annotations

from dataclasses import dataclass

MM_PER_INCH = 25.4
POINTS_PER_INCH = 72
MM_PER_POINT = MM_PER_INCH / POINTS_PER_INCH
_US_GALLON_ML = 231 * 2.54**3

BASE = {
    "length": "mm", "mass": "g", "time": "s", "angle": "deg", "temperature": "°C", "volume": "ml", "speed": "m/s",
    "force": "N", "frequency": "Hz", "grammage": "g/m²", "count": "", "percent": "%", "density": "kg/m³",
    "flow": "ml/s",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: its written symbol, its dimension, and base = factor x value + offset."""

    symbol: str
    dimension: str
    factor: float
    offset: float = 0.0
    names: tuple[str, ...] = ()
    customary: bool = False


_TABLE = (
    Unit("mm", "length", 1.0, names=("millimetre", "millimetres", "millimeter", "millimeters")),
    Unit("cm", "length", 10.0, names=("centimetre", "centimetres", "centimeter", "centimeters")),
    Unit("m", "length", 1000.0, names=("metre", "metres", "meter", "meters")),
    Unit("km", "length", 1e6, names=("kilometre", "kilometres", "kilometer", "kilometers")),
    Unit("in", "length", 25.4, names=('"', "″", "inch", "inches"), customary=True),
    Unit("ft", "length", 304.8, names=("'", "′", "foot", "feet"), customary=True),
    Unit("yd", "length", 914.4, names=("yard", "yards"), customary=True),
    Unit("mi", "length", 1609344.0, names=("mile", "miles"), customary=True),
    Unit("mg", "mass", 0.001, names=("milligram", "milligrams")),
    Unit("g", "mass", 1.0, names=("gram", "grams", "gramme", "grammes")),
    Unit("kg", "mass", 1000.0, names=("kilogram", "kilograms", "kilo", "kilos")),
    Unit("oz", "mass", 28.349523125, names=("ounce", "ounces"), customary=True),
    Unit("lb", "mass", 453.59237, names=("lbs", "pound", "pounds"), customary=True),
    Unit("ms", "time", 0.001, names=("millisecond", "milliseconds")),
    Unit("s", "time", 1.0, names=("sec", "secs", "second", "seconds")),
    Unit("min", "time", 60.0, names=("mins", "minute", "minutes")),
    Unit("h", "time", 3600.0, names=("hr", "hrs", "hour", "hours")),
    Unit("deg", "angle", 1.0, names=("°", "degree", "degrees")),
    Unit("°C", "temperature", 1.0, names=("C", "celsius", "degC")),
    Unit("°F", "temperature", 5 / 9, -160 / 9, names=("F", "fahrenheit", "degF"), customary=True),
    Unit("ml", "volume", 1.0, names=("mL", "millilitre", "millilitres", "milliliter", "milliliters", "cc")),
    Unit("cl", "volume", 10.0, names=("centilitre", "centilitres")),
    Unit("l", "volume", 1000.0, names=("L", "litre", "litres", "liter", "liters")),
    Unit("fl oz", "volume", _US_GALLON_ML / 128, names=("fluid ounce", "fluid ounces"), customary=True),
    Unit("tsp", "volume", _US_GALLON_ML / 768, names=("teaspoon", "teaspoons"), customary=True),
    Unit("tbsp", "volume", _US_GALLON_ML / 256, names=("tablespoon", "tablespoons"), customary=True),
    Unit("cup", "volume", _US_GALLON_ML / 16, names=("cups",), customary=True),
    Unit("m/s", "speed", 1.0, names=("metres per second", "meters per second")),
    Unit("cm/s", "speed", 0.01),
    Unit("km/h", "speed", 1 / 3.6, names=("kph", "kmh")),
    Unit("mph", "speed", 1609.344 / 3600, names=("miles per hour",), customary=True),
    Unit("ft/s", "speed", 0.3048, names=("feet per second",), customary=True),
    Unit("N", "force", 1.0, names=("newton", "newtons")),
    Unit("lbf", "force", 0.45359237 * 9.80665, names=("pound-force", "pounds-force"), customary=True),
    Unit("kg/m³", "density", 1.0, names=("kg/m3", "g/l")),
    Unit("ml/s", "flow", 1.0, names=("cm³/s",)),
    Unit("l/min", "flow", 1000 / 60, names=("L/min", "litres per minute", "liters per minute")),
    Unit("gal/min", "flow", _US_GALLON_ML / 60, names=("gallons per minute", "gpm"), customary=True),
    Unit("Hz", "frequency", 1.0, names=("hertz",)),
    Unit("rpm", "frequency", 1 / 60, names=("turns per minute", "turns/min")),
    Unit("g/m²", "grammage", 1.0, names=("gsm", "g/m2")),
    Unit("", "count", 1.0),
    Unit("%", "percent", 1.0, names=("percent", "per cent")),
)

UNITS: dict[str, Unit] = {name: unit for unit in _TABLE for name in (unit.symbol, *unit.names)}


def unit(name: str) -> Unit:
    """The unit of that name. Raises KeyError if there is none; letters' case counts only where it must (C, F, N)."""
    return UNITS[name] if name in UNITS else UNITS[name.lower()]


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number in the base unit of its dimension, with the unit it was written in."""

    value: float
    dimension: str
    unit: str = ""

    def to(self, name: str) -> float:
        """The number in another unit of the same dimension. Raises ValueError if the dimensions differ."""
        other = unit(name)
        if other.dimension != self.dimension:
            raise ValueError(f"{self.dimension} cannot be given in {name}")
        return (self.value - other.offset) / other.factor

    def __str__(self) -> str:
        shown = self.to(self.unit)
        number = f"{shown:.0f}" if abs(shown) >= 1e4 else f"{shown:.4g}"
        if self.dimension == "count":
            return number
        if self.unit == "deg":
            return f"{number}°"
        return number + ("" if self.unit in ("°C", "°F", "%") else " ") + self.unit


def quantity(value: float, name: str = "") -> Quantity:
    """A quantity from a number and the name of its unit, e.g. quantity(3.25, "in")."""
    found = unit(name)
    return Quantity(value * found.factor + found.offset, found.dimension, found.symbol)

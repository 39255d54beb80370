package trade

import "math"

// The exact constants from which the factors follow. The inch, the pound and
// standard gravity are exact by definition (NIST SP 811 (2008), appendix B).
const (
	inch    = 0.0254     // m
	pound   = 0.45359237 // kg
	gravity = 9.80665    // m/s²
	lbf     = pound * gravity
	psi     = lbf / (inch * inch) // Pa
	usGal   = 231 * inch * inch * inch
	impGal  = 4.54609e-3        // m³
	mercury = 13595.1 * gravity // Pa a metre, conventional
	water   = 1000 * gravity    // Pa a metre, conventional
	btu     = 1055.05585262     // J, International Table
	foot    = 12 * inch
	degree  = math.Pi / 180
)

// Where the factors come from.
const (
	si   = "SI Brochure (BIPM), prefixes and units accepted for use with the SI"
	nist = "NIST SP 811 (2008), appendix B.8, from the exact definitions"
	astm = "ASTM B258: d = 0.127 mm × 92^((36-n)/39)"
)

// unitRows lists the units by dimension, the most usual first: a message that
// must name one takes the first that fits. "mil" stands for the millimetre, as
// workshops say it; the thousandth of an inch is "thou".
var unitRows = []UnitRow{
	{Unit: "mm", Dimension: Length, SI: "m", Factor: 1e-3, One: "millimetre", Many: "millimetres", Source: si,
		words: []string{"millimeter", "millimeters", "mil", "mill", "mils", "mills", "mms"}},
	{Unit: "cm", Dimension: Length, SI: "m", Factor: 1e-2, One: "centimetre", Many: "centimetres", Source: si,
		words: []string{"centimeter", "centimeters", "cms"}},
	{Unit: "m", Dimension: Length, SI: "m", Factor: 1, One: "metre", Many: "metres", Source: si,
		words: []string{"meter", "meters", "mtr", "mtrs"}},
	{Unit: "km", Dimension: Length, SI: "m", Factor: 1e3, One: "kilometre", Many: "kilometres", Source: si,
		words: []string{"kilometer", "kilometers", "kms"}},
	{Unit: "µm", Dimension: Length, SI: "m", Factor: 1e-6, One: "micrometre", Many: "micrometres", Source: si,
		symbols: []string{"um"}, words: []string{"micron", "microns", "micrometer", "micrometers"}},
	{Unit: "in", Dimension: Length, SI: "m", Factor: inch, One: "inch", Many: "inches", Source: nist,
		symbols: []string{`"`}, words: []string{"ins"}},
	{Unit: "ft", Dimension: Length, SI: "m", Factor: foot, One: "foot", Many: "feet", Source: nist,
		symbols: []string{"'"}},
	{Unit: "yd", Dimension: Length, SI: "m", Factor: 3 * foot, One: "yard", Many: "yards", Source: nist, words: []string{"yds"}},
	{Unit: "mi", Dimension: Length, SI: "m", Factor: 5280 * foot, One: "mile", Many: "miles", Source: nist},
	{Unit: "thou", Dimension: Length, SI: "m", Factor: inch / 1000, One: "thou", Many: "thou", Source: nist,
		words: []string{"thousandth of an inch", "thousandths of an inch", "thous"}},

	{Unit: "mm²", Dimension: Area, SI: "m²", Factor: 1e-6, One: "square millimetre", Many: "square millimetres", Source: si,
		symbols: []string{"sq mm", "mm sq", "sqmm", "qmm"}, words: []string{"square millimeter", "square millimeters", "square mil", "square mill", "square mils", "mil squared", "millimetres squared", "millimeters squared", "millimetre squared", "mm squared", "square mm"}},
	{Unit: "cm²", Dimension: Area, SI: "m²", Factor: 1e-4, One: "square centimetre", Many: "square centimetres", Source: si,
		symbols: []string{"sq cm"}, words: []string{"square centimeter", "square centimeters"}},
	{Unit: "m²", Dimension: Area, SI: "m²", Factor: 1, One: "square metre", Many: "square metres", Source: si,
		symbols: []string{"sq m"}, words: []string{"square meter", "square meters"}},
	{Unit: "in²", Dimension: Area, SI: "m²", Factor: inch * inch, One: "square inch", Many: "square inches", Source: nist,
		symbols: []string{"sq in"}},
	{Unit: "AWG", Dimension: Area, SI: "m²", One: "gauge", Many: "gauge", Source: astm,
		words: []string{"ga", "american wire gauge"}},

	{Unit: "L", Dimension: Volume, SI: "m³", Factor: 1e-3, One: "litre", Many: "litres", Source: si,
		symbols: []string{"ℓ"}, words: []string{"liter", "liters", "ltr", "ltrs", "dm3"}},
	{Unit: "mL", Dimension: Volume, SI: "m³", Factor: 1e-6, One: "millilitre", Many: "millilitres", Source: si,
		words: []string{"milliliter", "milliliters", "mls"}},
	{Unit: "cL", Dimension: Volume, SI: "m³", Factor: 1e-5, One: "centilitre", Many: "centilitres", Source: si,
		words: []string{"centiliter", "centiliters"}},
	{Unit: "cm³", Dimension: Volume, SI: "m³", Factor: 1e-6, One: "cubic centimetre", Many: "cubic centimetres", Source: si,
		symbols: []string{"cc", "ccm", "cu cm"}, words: []string{"ccs", "cubic centimeter", "cubic centimeters"}},
	{Unit: "m³", Dimension: Volume, SI: "m³", Factor: 1, One: "cubic metre", Many: "cubic metres", Source: si,
		symbols: []string{"cu m"}, words: []string{"cubic meter", "cubic meters"}},
	{Unit: "in³", Dimension: Volume, SI: "m³", Factor: inch * inch * inch, One: "cubic inch", Many: "cubic inches", Source: nist,
		symbols: []string{"cu in"}},
	{Unit: "US gal", Dimension: Volume, SI: "m³", Factor: usGal, One: "US gallon", Many: "US gallons", Source: nist},
	{Unit: "US qt", Dimension: Volume, SI: "m³", Factor: usGal / 4, One: "US quart", Many: "US quarts", Source: nist,
		symbols: []string{"qt"}, words: []string{"quart", "quarts", "qts"}},
	{Unit: "US pt", Dimension: Volume, SI: "m³", Factor: usGal / 8, One: "US pint", Many: "US pints", Source: nist},
	{Unit: "US fl oz", Dimension: Volume, SI: "m³", Factor: usGal / 128, One: "US fluid ounce", Many: "US fluid ounces", Source: nist},
	{Unit: "imp gal", Dimension: Volume, SI: "m³", Factor: impGal, One: "imperial gallon", Many: "imperial gallons", Source: nist, words: []string{"UK gal", "UK gallon", "UK gallons"}},
	{Unit: "imp pt", Dimension: Volume, SI: "m³", Factor: impGal / 8, One: "imperial pint", Many: "imperial pints", Source: nist, words: []string{"UK pt", "UK pint", "UK pints"}},
	{Unit: "imp fl oz", Dimension: Volume, SI: "m³", Factor: impGal / 160, One: "imperial fluid ounce", Many: "imperial fluid ounces", Source: nist, words: []string{"UK fl oz"}},

	{Unit: "kg", Dimension: Mass, SI: "kg", Factor: 1, One: "kilogram", Many: "kilograms", Source: si,
		words: []string{"kilo", "kilos", "kilogramme", "kilogrammes", "kgs"}},
	{Unit: "g", Dimension: Mass, SI: "kg", Factor: 1e-3, One: "gram", Many: "grams", Source: si,
		words: []string{"gramme", "grammes", "gm", "gms"}},
	{Unit: "mg", Dimension: Mass, SI: "kg", Factor: 1e-6, One: "milligram", Many: "milligrams", Source: si},
	{Unit: "t", Dimension: Mass, SI: "kg", Factor: 1e3, One: "tonne", Many: "tonnes", Source: si,
		words: []string{"metric ton", "metric tons"}},
	{Unit: "lb", Dimension: Mass, SI: "kg", Factor: pound, One: "pound", Many: "pounds", Source: nist,
		words: []string{"lbs"}},
	{Unit: "oz", Dimension: Mass, SI: "kg", Factor: pound / 16, One: "ounce", Many: "ounces", Source: nist},

	{Unit: "N", Dimension: Force, SI: "N", Factor: 1, One: "newton", Many: "newtons", Source: si},
	{Unit: "kN", Dimension: Force, SI: "N", Factor: 1e3, One: "kilonewton", Many: "kilonewtons", Source: si},
	{Unit: "lbf", Dimension: Force, SI: "N", Factor: lbf, One: "pound force", Many: "pounds force", Source: nist},
	{Unit: "kgf", Dimension: Force, SI: "N", Factor: gravity, One: "kilogram force", Many: "kilograms force", Source: nist,
		words: []string{"kp", "kilopond", "kiloponds"}},

	{Unit: "N·m", Dimension: Torque, SI: "N·m", Factor: 1, One: "newton metre", Many: "newton metres", Source: si,
		symbols: []string{"Nm"}, words: []string{"newton meter", "newton meters", "newtonmetre", "newtonmetres", "newtonmeter", "newtonmeters", "newtons metre", "nms"}},
	{Unit: "N·cm", Dimension: Torque, SI: "N·m", Factor: 1e-2, One: "newton centimetre", Many: "newton centimetres", Source: si,
		symbols: []string{"Ncm"}, words: []string{"newton centimeter", "newton centimeters"}},
	{Unit: "daN·m", Dimension: Torque, SI: "N·m", Factor: 10, One: "decanewton metre", Many: "decanewton metres", Source: si,
		symbols: []string{"daNm"}},
	{Unit: "lb·ft", Dimension: Torque, SI: "N·m", Factor: lbf * foot, One: "pound foot", Many: "pound feet", Source: nist,
		symbols: []string{"lbft", "lbf·ft", "lbfft", "ft·lb", "ftlb", "ft·lbf", "ftlbf", "ft·lbs", "ftlbs", "lbs·ft", "lb/ft", "ft/lb", "ft/lbs", "lbs/ft"},
		words:   []string{"foot pound", "foot pounds", "pounds foot", "pounds feet", "feet pounds", "pound foots", "pounds force feet", "pound force feet", "pound force foot"}},
	{Unit: "lb·in", Dimension: Torque, SI: "N·m", Factor: lbf * inch, One: "pound inch", Many: "pound inches", Source: nist,
		symbols: []string{"lbin", "lbf·in", "lbfin", "in·lb", "inlb", "in·lbf", "inlbf", "in·lbs", "inlbs", "lbs·in", "lb/in", "in/lb", "in/lbs"},
		words:   []string{"inch pound", "inch pounds", "pounds inch", "pound force inches", "inch lb", "inch lbs"}},
	{Unit: "oz·in", Dimension: Torque, SI: "N·m", Factor: lbf * inch / 16, One: "ounce inch", Many: "ounce inches", Source: nist,
		symbols: []string{"ozf·in", "in·oz", "ozin"}, words: []string{"inch ounce", "inch ounces"}},
	{Unit: "kgf·m", Dimension: Torque, SI: "N·m", Factor: gravity, One: "kilogram force metre", Many: "kilogram force metres", Source: nist,
		symbols: []string{"kgfm", "kgm", "kg·m", "m·kg", "mkg", "m·kgf", "kpm", "kp·m"}, words: []string{"kilogram metre", "kilogram metres", "kilogram meter", "kilogram meters"}},
	{Unit: "kgf·cm", Dimension: Torque, SI: "N·m", Factor: gravity / 100, One: "kilogram force centimetre", Many: "kilogram force centimetres", Source: nist,
		symbols: []string{"kgfcm", "kg·cm", "kgcm"}},

	{Unit: "bar", Dimension: Pressure, SI: "Pa", Factor: 1e5, One: "bar", Many: "bar", Source: nist, words: []string{"bars", "barg", "bar(g)"}},
	{Unit: "psi", Dimension: Pressure, SI: "Pa", Factor: psi, One: "P S I", Many: "P S I", Source: nist,
		words: []string{"psig", "lb/in2", "lbf/in2", "pounds per square inch", "pound per square inch", "lbs per square inch", "lb/sq in", "lbs/in2"}},
	{Unit: "kPa", Dimension: Pressure, SI: "Pa", Factor: 1e3, One: "kilopascal", Many: "kilopascals", Source: si},
	{Unit: "mbar", Dimension: Pressure, SI: "Pa", Factor: 100, One: "millibar", Many: "millibar", Source: nist, words: []string{"millibars"}},
	{Unit: "hPa", Dimension: Pressure, SI: "Pa", Factor: 100, One: "hectopascal", Many: "hectopascals", Source: si},
	{Unit: "MPa", Dimension: Pressure, SI: "Pa", Factor: 1e6, One: "megapascal", Many: "megapascals", Source: si,
		symbols: []string{"N/mm2"}, words: []string{"newtons per square millimetre"}},
	{Unit: "Pa", Dimension: Pressure, SI: "Pa", Factor: 1, One: "pascal", Many: "pascals", Source: si},
	{Unit: "ksi", Dimension: Pressure, SI: "Pa", Factor: 1000 * psi, One: "K S I", Many: "K S I", Source: nist},
	{Unit: "kgf/cm²", Dimension: Pressure, SI: "Pa", Factor: gravity * 1e4, One: "kilogram per square centimetre", Many: "kilograms per square centimetre", Source: nist,
		symbols: []string{"kg/cm2"}},
	{Unit: "atm", Dimension: Pressure, SI: "Pa", Factor: 101325, One: "atmosphere", Many: "atmospheres", Source: nist},
	{Unit: "inHg", Dimension: Pressure, SI: "Pa", Factor: mercury * inch, One: "inch of mercury", Many: "inches of mercury", Source: nist,
		symbols: []string{"in·Hg", `"Hg`, `"·Hg`}, words: []string{"inches mercury", "inch hg", "inches hg"}},
	{Unit: "mmHg", Dimension: Pressure, SI: "Pa", Factor: mercury * 1e-3, One: "millimetre of mercury", Many: "millimetres of mercury", Source: nist,
		symbols: []string{"mm·Hg"}},
	{Unit: "inH₂O", Dimension: Pressure, SI: "Pa", Factor: water * inch, One: "inch of water", Many: "inches of water", Source: nist,
		symbols: []string{"in·H2O", `"H2O`, "in·wc", "inwc", `"wc`}, words: []string{"inches water column", "inches water", "inch water column"}},
	{Unit: "mmH₂O", Dimension: Pressure, SI: "Pa", Factor: water * 1e-3, One: "millimetre of water", Many: "millimetres of water", Source: nist,
		symbols: []string{"mm·H2O", "mm·wc"}},

	{Unit: "V", Dimension: Voltage, SI: "V", Factor: 1, One: "volt", Many: "volts", Source: si,
		words: []string{"vdc", "vac", "v dc", "v ac", "volts dc", "volts ac", "volt dc", "volt ac"}},
	{Unit: "mV", Dimension: Voltage, SI: "V", Factor: 1e-3, One: "millivolt", Many: "millivolts", Source: si},
	{Unit: "kV", Dimension: Voltage, SI: "V", Factor: 1e3, One: "kilovolt", Many: "kilovolts", Source: si},
	{Unit: "µV", Dimension: Voltage, SI: "V", Factor: 1e-6, One: "microvolt", Many: "microvolts", Source: si, symbols: []string{"uV"}},
	{Unit: "A", Dimension: Current, SI: "A", Factor: 1, One: "amp", Many: "amps", Source: si,
		words: []string{"ampere", "amperes", "adc", "aac"}},
	{Unit: "mA", Dimension: Current, SI: "A", Factor: 1e-3, One: "milliamp", Many: "milliamps", Source: si,
		words: []string{"milliampere", "milliamperes"}},
	{Unit: "µA", Dimension: Current, SI: "A", Factor: 1e-6, One: "microamp", Many: "microamps", Source: si,
		symbols: []string{"uA"}, words: []string{"microampere", "microamperes"}},
	{Unit: "kA", Dimension: Current, SI: "A", Factor: 1e3, One: "kiloamp", Many: "kiloamps", Source: si},
	{Unit: "Ω", Dimension: Resistance, SI: "Ω", Factor: 1, One: "ohm", Many: "ohms", Source: si},
	{Unit: "kΩ", Dimension: Resistance, SI: "Ω", Factor: 1e3, One: "kilohm", Many: "kilohms", Source: si,
		symbols: []string{"k·Ω", "kohm", "kohms", "k·ohm", "k·ohms"}, words: []string{"kiloohm", "kiloohms", "kilo ohm", "kilo ohms"}},
	{Unit: "MΩ", Dimension: Resistance, SI: "Ω", Factor: 1e6, One: "megohm", Many: "megohms", Source: si,
		symbols: []string{"M·Ω", "Mohm", "Mohms", "M·ohm", "M·ohms"}, words: []string{"megaohm", "megaohms", "mega ohm", "mega ohms", "meg ohm", "meg ohms"}},
	{Unit: "mΩ", Dimension: Resistance, SI: "Ω", Factor: 1e-3, One: "milliohm", Many: "milliohms", Source: si,
		symbols: []string{"m·Ω", "mohm", "mohms"}, words: []string{"milli ohm", "milli ohms"}},
	{Unit: "µF", Dimension: Capacitance, SI: "F", Factor: 1e-6, One: "microfarad", Many: "microfarads", Source: si,
		symbols: []string{"uF"}, words: []string{"mfd", "micro farad", "micro farads"}},
	{Unit: "nF", Dimension: Capacitance, SI: "F", Factor: 1e-9, One: "nanofarad", Many: "nanofarads", Source: si},
	{Unit: "pF", Dimension: Capacitance, SI: "F", Factor: 1e-12, One: "picofarad", Many: "picofarads", Source: si},
	{Unit: "mH", Dimension: Inductance, SI: "H", Factor: 1e-3, One: "millihenry", Many: "millihenries", Source: si, words: []string{"millihenrys"}},
	{Unit: "µH", Dimension: Inductance, SI: "H", Factor: 1e-6, One: "microhenry", Many: "microhenries", Source: si, symbols: []string{"uH"}},
	{Unit: "Ah", Dimension: Charge, SI: "C", Factor: 3600, One: "amp hour", Many: "amp hours", Source: si,
		symbols: []string{"A·h"}, words: []string{"ampere hour", "ampere hours"}},
	{Unit: "mAh", Dimension: Charge, SI: "C", Factor: 3.6, One: "milliamp hour", Many: "milliamp hours", Source: si,
		symbols: []string{"mA·h"}, words: []string{"milliampere hours"}},
	{Unit: "Wh", Dimension: Energy, SI: "J", Factor: 3600, One: "watt hour", Many: "watt hours", Source: si, symbols: []string{"W·h"}},
	{Unit: "kWh", Dimension: Energy, SI: "J", Factor: 3.6e6, One: "kilowatt hour", Many: "kilowatt hours", Source: si, symbols: []string{"kW·h"}},
	{Unit: "J", Dimension: Energy, SI: "J", Factor: 1, One: "joule", Many: "joules", Source: si},
	{Unit: "kJ", Dimension: Energy, SI: "J", Factor: 1e3, One: "kilojoule", Many: "kilojoules", Source: si},
	{Unit: "W", Dimension: Power, SI: "W", Factor: 1, One: "watt", Many: "watts", Source: si},
	{Unit: "kW", Dimension: Power, SI: "W", Factor: 1e3, One: "kilowatt", Many: "kilowatts", Source: si},
	{Unit: "mW", Dimension: Power, SI: "W", Factor: 1e-3, One: "milliwatt", Many: "milliwatts", Source: si},
	{Unit: "hp", Dimension: Power, SI: "W", Factor: 550 * lbf * foot, One: "horsepower", Many: "horsepower", Source: nist, words: []string{"bhp"}},
	{Unit: "PS", Dimension: Power, SI: "W", Factor: 75 * gravity, One: "metric horsepower", Many: "metric horsepower", Source: nist},
	{Unit: "BTU/h", Dimension: Power, SI: "W", Factor: btu / 3600, One: "B T U per hour", Many: "B T U per hour", Source: nist,
		words: []string{"btu/hr", "btuh", "btu per hour", "btus per hour"}},

	{Unit: "Hz", Dimension: Frequency, SI: "Hz", Factor: 1, One: "hertz", Many: "hertz", Source: si},
	{Unit: "kHz", Dimension: Frequency, SI: "Hz", Factor: 1e3, One: "kilohertz", Many: "kilohertz", Source: si},
	{Unit: "MHz", Dimension: Frequency, SI: "Hz", Factor: 1e6, One: "megahertz", Many: "megahertz", Source: si},
	{Unit: "GHz", Dimension: Frequency, SI: "Hz", Factor: 1e9, One: "gigahertz", Many: "gigahertz", Source: si},
	{Unit: "rpm", Dimension: Rotation, SI: "rad/s", Factor: math.Pi / 30, One: "R P M", Many: "R P M", Source: nist,
		words: []string{"rev/min", "r/min", "revs per minute", "revolutions per minute", "revs", "1/min"}},

	{Unit: "°C", Dimension: Temperature, SI: "K", Factor: 1, Offset: 273.15, One: "degree Celsius", Many: "degrees Celsius", Source: nist,
		symbols: []string{"C", "degC", "deg·C", "°·C"}, words: []string{"celsius", "degrees centigrade", "degree centigrade", "centigrade", "degrees c"}},
	{Unit: "°F", Dimension: Temperature, SI: "K", Factor: 1 / 1.8, Offset: 459.67 / 1.8, One: "degree Fahrenheit", Many: "degrees Fahrenheit", Source: nist,
		symbols: []string{"F", "degF", "deg·F", "°·F"}, words: []string{"fahrenheit", "degrees f"}},
	{Unit: "K", Dimension: Temperature, SI: "K", Factor: 1, One: "kelvin", Many: "kelvins", Source: si},

	{Unit: "min", Dimension: Time, SI: "s", Factor: 60, One: "minute", Many: "minutes", Source: si, words: []string{"mins", "min"}},
	{Unit: "s", Dimension: Time, SI: "s", Factor: 1, One: "second", Many: "seconds", Source: si, words: []string{"sec", "secs"}},
	{Unit: "h", Dimension: Time, SI: "s", Factor: 3600, One: "hour", Many: "hours", Source: si, words: []string{"hr", "hrs"}},
	{Unit: "ms", Dimension: Time, SI: "s", Factor: 1e-3, One: "millisecond", Many: "milliseconds", Source: si, words: []string{"msec"}},
	{Unit: "µs", Dimension: Time, SI: "s", Factor: 1e-6, One: "microsecond", Many: "microseconds", Source: si, symbols: []string{"us"}},
	{Unit: "day", Dimension: Time, SI: "s", Factor: 86400, One: "day", Many: "days", Source: si},
	{Unit: "week", Dimension: Time, SI: "s", Factor: 7 * 86400, One: "week", Many: "weeks", Source: nist, words: []string{"wk", "wks"}},
	{Unit: "month", Dimension: Time, SI: "s", Factor: 365 * 86400 / 12.0, One: "month", Many: "months", Source: "a twelfth of the 365-day year of " + nist},
	{Unit: "year", Dimension: Time, SI: "s", Factor: 365 * 86400, One: "year", Many: "years", Source: nist + " (year of 365 days)", words: []string{"yr", "yrs"}},
	{Unit: "°", Dimension: Angle, SI: "rad", Factor: degree, One: "degree", Many: "degrees", Source: nist, words: []string{"deg", "degs"}},
	{Unit: "turn", Dimension: Angle, SI: "rad", Factor: 360 * degree, One: "turn", Many: "turns", Source: nist,
		words: []string{"revolution", "revolutions", "rev"}},

	{Unit: "km/h", Dimension: Speed, SI: "m/s", Factor: 1 / 3.6, One: "kilometre per hour", Many: "kilometres per hour", Source: si,
		words: []string{"kph", "kmh", "kmph", "kilometers per hour", "kilometer per hour"}},
	{Unit: "mph", Dimension: Speed, SI: "m/s", Factor: 5280 * foot / 3600, One: "mile per hour", Many: "miles per hour", Source: nist, words: []string{"mi/h", "mph"}},
	{Unit: "m/s", Dimension: Speed, SI: "m/s", Factor: 1, One: "metre per second", Many: "metres per second", Source: si},
	{Unit: "L/min", Dimension: Flow, SI: "m³/s", Factor: 1e-3 / 60, One: "litre per minute", Many: "litres per minute", Source: si,
		words: []string{"lpm", "liters per minute", "liter per minute"}},
	{Unit: "L/h", Dimension: Flow, SI: "m³/s", Factor: 1e-3 / 3600, One: "litre per hour", Many: "litres per hour", Source: si,
		words: []string{"l/hr", "liters per hour"}},
	{Unit: "m³/h", Dimension: Flow, SI: "m³/s", Factor: 1 / 3600.0, One: "cubic metre per hour", Many: "cubic metres per hour", Source: si},
	{Unit: "cfm", Dimension: Flow, SI: "m³/s", Factor: foot * foot * foot / 60, One: "C F M", Many: "C F M", Source: nist,
		words: []string{"cubic feet per minute", "ft3/min"}},

	{Unit: "dB(A)", Dimension: SoundLevel, SI: "dB(A)", Factor: 1, One: "decibel A", Many: "decibels A", Source: "IEC 61672-1, A-weighted level (from memory)",
		symbols: []string{"dBA", "dB·A"}, words: []string{"decibels A-weighted", "A-weighted decibels"}},
	{Unit: "dB", Dimension: Level, SI: "dB", Factor: 1, One: "decibel", Many: "decibels", Source: si},
	{Unit: "%", Dimension: Ratio, SI: "1", Factor: 1e-2, One: "per cent", Many: "per cent", Source: si, words: []string{"percent", "pct"}},
	{Unit: "ppm", Dimension: Ratio, SI: "1", Factor: 1e-6, One: "part per million", Many: "parts per million", Source: nist},
	{Unit: "lm", Dimension: Light, SI: "lm", Factor: 1, One: "lumen", Many: "lumens", Source: si},
	{Unit: "lx", Dimension: Lighting, SI: "lx", Factor: 1, One: "lux", Many: "lux", Source: si},
	{Unit: "N/mm", Dimension: SpringRate, SI: "N/m", Factor: 1e3, One: "newton per millimetre", Many: "newtons per millimetre", Source: si},
}

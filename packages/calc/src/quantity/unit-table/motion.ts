import { standardGravity as g, poundForce, unit } from "./unit";

const turn = 2 * Math.PI;
const perThousandRevsPerMinute = (speed: number): readonly [number, number] => [speed * 60, 1000 * turn];

/** Units of motion, heat, power, sound and plain numbers. */
export const motionUnits = {
  temperature: [
    unit("°C", [1, 1], "C|deg C|degC|degrees C|celsius|degrees celsius|centigrade", { offset: 273.15 }),
    unit("°F", [5, 9], "F|deg F|degF|degrees F|fahrenheit|degrees fahrenheit", { offset: 459.67 }),
    unit("K", [1, 1], "kelvin"),
  ],
  temperatureDifference: [
    unit("K", [1, 1], "kelvin"),
    unit("°C", [1, 1], "C|deg C|degC|degrees C|celsius"),
    unit("°F", [5, 9], "F|deg F|degF|degrees F|fahrenheit"),
  ],
  speed: [
    unit("km/h", [10, 36], "kph|k.p.h.|kmh|km/hr|kmph"),
    unit("mph", [1609.344, 3600], "m.p.h.|mile/h|miles/h|miles/hour|mile/hr"),
    unit("m/s", [1, 1], "m/sec"),
    unit("mm/s", [1, 1000], "mm/sec"),
    unit("in/s", [254, 10_000], "in/sec|ips"),
    unit("ft/s", [3048, 10_000], "ft/sec|fps"),
  ],
  acceleration: [unit("g", [g, 1]), unit("m/s²", [1, 1], "m/sec²"), unit("ft/s²", [3048, 10_000], "ft/sec²")],
  angularSpeed: [
    unit("rev/min", [turn, 60], "rpm|r.p.m.|revs/min|r/min|1/min|min⁻¹|U/min|revs"),
    unit("rad/s", [1, 1], "rad/sec"),
    unit("°/s", [Math.PI, 180], "deg/s|deg/sec|degrees/s"),
  ],
  frequency: [
    unit("Hz", [1, 1], "hertz|cycles/s|cps|1/s"),
    unit("kHz", [1000, 1]),
    unit("cycles/min", [1, 60], "cpm|cycles/minute"),
  ],
  time: [
    unit("s", [1, 1], "sec|secs|second|seconds"),
    unit("ms", [1, 1000], "millisecond|milliseconds"),
    unit("min", [60, 1], "mins|minute|minutes"),
    unit("h", [3600, 1], "hr|hrs|hour|hours"),
  ],
  energy: [
    unit("kJ", [1000, 1]),
    unit("J", [1, 1], "joule|joules"),
    unit("MJ", [1_000_000, 1], "", { strictCase: true }),
    unit("ft lbf", [poundForce * 0.3048, 1], "ft lb|foot pounds|foot pound"),
    unit("kW·h", [3_600_000, 1], "kWh"),
  ],
  power: [
    unit("kW", [1000, 1], "kilowatt|kilowatts"),
    unit("bhp", [poundForce * 550 * 0.3048, 1], "b.h.p.|hp|h.p.|horsepower"),
    unit("PS", [75 * g, 1], "ch|cv|pk|metric hp|metric horsepower"),
    unit("W", [1, 1], "watt|watts"),
  ],
  specificHeat: [
    unit("J/(kg·K)", [1, 1], "J/kg K|J/kg/K|J/(kg °C)"),
    unit("kJ/(kg·K)", [1000, 1], "kJ/kg K|kJ/kg/K"),
  ],
  soundLevel: [unit("dB(A)", [1, 1], "dBA|dB A"), unit("dB", [1, 1], "decibel|decibels")],
  anglePerLength: [
    unit("°/m", [Math.PI, 180], "deg/m"),
    unit("°/mm", [Math.PI * 1000, 180], "deg/mm"),
    unit("'/mm", [Math.PI * 1000, 10_800], "min/mm"),
    unit("°/in", [Math.PI * 10_000, 180 * 254], "deg/in|deg/inch"),
    unit("'/in", [Math.PI * 10_000, 10_800 * 254], "min/in|min/inch"),
    unit("rad/m", [1, 1]),
  ],
  anglePerAcceleration: [unit("°/g", [Math.PI, 180 * g], "deg/g"), unit("rad·s²/m", [1, 1], "rad/(m/s²)")],
  lengthPerAngle: [
    unit("mm/turn", [1, 1000 * turn], "mm/rev"),
    unit("in/turn", [254, 10_000 * turn], "in/rev"),
    unit("m/turn", [1, turn], "m/rev"),
    unit("mm/°", [180, 1000 * Math.PI], "mm/deg"),
    unit("m/rad", [1, 1]),
    unit("km/h per 1000 rev/min", perThousandRevsPerMinute(10 / 36), "km/h/1000 rpm|kph/1000 rpm"),
    unit("mph per 1000 rev/min", perThousandRevsPerMinute(0.44704), "mph/1000 rpm"),
  ],
  ratio: [
    unit("", [1, 1], "", { tight: true }),
    unit("%", [1, 100], "percent|per cent|pct"),
    unit(":1", [1, 1], "to 1|to one", { tight: true }),
  ],
  count: [unit("", [1, 1], "", { tight: true })],
} as const;

import { evaluate, type Unit } from "mathjs";
import { describe, expect, test } from "vitest";
import { dimensionNames, dimensions, type MeasuredDimension, siUnits } from "./dimension";
import { parseQuantity } from "./parse";
import { defaultUnit, findUnit, fromSi, stepToSi, toSi, unitNamed, unitsOf } from "./unit";
import { imperialGallon, inch, pound, poundForce, standardGravity } from "./unit-table/unit";

const measured = dimensions.filter((dimension): dimension is MeasuredDimension => dimension !== "text");

/**
 * Second opinion: the same unit put to mathjs (15.2), as [its expression, the SI expression]. Where mathjs lacks the
 * unit, or has the American one under the name, it is put in units it has, by the definition named beside.
 */
const inMathjs: Readonly<Record<MeasuredDimension, Readonly<Record<string, string>>>> = {
  length: {
    mm: "mm",
    in: "in",
    cm: "cm",
    m: "m",
    ft: "ft",
    thou: "mil",
    µm: "um",
    yd: "yd",
    km: "km",
    mile: "mi",
  },
  area: { "mm²": "mm^2", "cm²": "cm^2", "in²": "in^2", "m²": "m^2", "ft²": "ft^2" },
  volume: {
    "cm³": "cm^3",
    l: "litre",
    "mm³": "mm^3",
    "m³": "m^3",
    "in³": "in^3",
    pint: "0.56826125 litre", // imperial: an eighth of 4.54609 l (Weights and Measures Act 1985, schedule 1)
    gal: "4.54609 litre",
    "fl oz": "28.4130625 millilitre",
    "US gal": "gallon",
  },
  secondMoment: { "mm⁴": "mm^4", "cm⁴": "cm^4", "in⁴": "in^4", "m⁴": "m^4" },
  angle: { "°": "deg", "'": "arcmin", '"': "arcsec", rad: "rad", mrad: "mrad" },
  mass: {
    kg: "kg",
    lb: "lbm",
    g: "g",
    t: "tonne",
    oz: "oz",
    st: "stone",
    qr: "28 lbm", // imperial quarter, hundredweight and ton; mathjs has the short ones
    cwt: "112 lbm",
    ton: "2240 lbm",
  },
  force: { N: "N", lbf: "lbf", kgf: "kgf", kN: "kN", daN: "daN" },
  torque: {
    N·m: "N m",
    "lbf ft": "lbf ft",
    "lbf in": "lbf in",
    "kgf m": "kgf m",
    "kgf cm": "kgf cm",
    N·cm: "N cm",
    N·mm: "N mm",
    daN·m: "daN m",
    kN·m: "kN m",
  },
  pressure: {
    bar: "bar",
    psi: "lbf/in^2", // mathjs rounds its psi at the tenth digit
    kPa: "kPa",
    "kgf/cm²": "kgf/cm^2",
    MPa: "MPa",
    "N/mm²": "N/mm^2",
    GPa: "GPa",
    Pa: "Pa",
    mbar: "mbar",
    ksi: "1000 lbf/in^2",
    inHg: "25.4 mm * 13595.1 kg/m^3 * 9.80665 m/s^2", // conventional mercury; mathjs rounds its mmHg to 133.322 Pa
  },
  rate: {
    "N/mm": "N/mm",
    "lb/in": "lbf/in",
    "kgf/mm": "kgf/mm",
    "N/m": "N/m",
    "kgf/cm": "kgf/cm",
    "N/cm": "N/cm",
  },
  angularRate: {
    "N·m/°": "N m/deg",
    "lbf ft/°": "lbf ft/deg",
    "lbf in/°": "lbf inch/deg",
    "kgf m/°": "kgf m/deg",
    "N·m/rad": "N m/rad",
  },
  dampingRate: { "N·s/m": "N s/m", "N·s/mm": "N s/mm", "lbf·s/in": "lbf s/in", "kgf·s/m": "kgf s/m" },
  temperature: { "°C": "degC", "°F": "degF", K: "K" },
  temperatureDifference: { K: "K", "°C": "K", "°F": "degR" }, // a Fahrenheit step is a Rankine degree
  speed: { "km/h": "km/h", mph: "mi/h", "m/s": "m/s", "mm/s": "mm/s", "in/s": "in/s", "ft/s": "ft/s" },
  acceleration: { g: "9.80665 m/s^2", "m/s²": "m/s^2", "ft/s²": "ft/s^2" },
  angularSpeed: { "rev/min": "cycle/minute", "rad/s": "rad/s", "°/s": "deg/s" },
  frequency: { Hz: "Hz", kHz: "kHz", "cycles/min": "1/minute" },
  time: { s: "s", ms: "ms", min: "minute", h: "hour" },
  energy: { kJ: "kJ", J: "J", MJ: "MJ", "ft lbf": "ft lbf", kW·h: "kW hour" },
  power: { kW: "kW", bhp: "550 ft lbf/s", PS: "75 kgf m/s", W: "W" },
  density: { "kg/m³": "kg/m^3", "g/cm³": "g/cm^3", "lb/in³": "lbm/in^3", "lb/ft³": "lbm/ft^3" },
  momentOfInertia: { "kg·m²": "kg m^2", "kg·cm²": "kg cm^2", "lb·ft²": "lbm ft^2", "lb·in²": "lbm inch^2" },
  specificHeat: { "J/(kg·K)": "J/(kg K)", "kJ/(kg·K)": "kJ/(kg K)" },
  soundLevel: {}, // a level is its own number; nothing to convert
  anglePerLength: {
    "°/m": "deg/m",
    "°/mm": "deg/mm",
    "'/mm": "arcmin/mm",
    "°/in": "deg/in",
    "'/in": "arcmin/in",
    "rad/m": "rad/m",
  },
  anglePerAcceleration: { "°/g": "deg/(9.80665 m/s^2)", "rad·s²/m": "rad/(m/s^2)" },
  lengthPerAngle: {
    "mm/turn": "mm/cycle",
    "in/turn": "in/cycle",
    "m/turn": "m/cycle",
    "mm/°": "mm/deg",
    "m/rad": "m/rad",
    "km/h per 1000 rev/min": "km/h / (1000 cycle/minute)",
    "mph per 1000 rev/min": "mi/h / (1000 cycle/minute)",
  },
  ratio: {}, // plain numbers; nothing to convert
  count: {},
};
const siInMathjs: Readonly<Record<string, string>> = {
  "m²": "m^2",
  "m³": "m^3",
  "m⁴": "m^4",
  N·m: "N m",
  "N·m/rad": "N m/rad",
  "N·s/m": "N s/m",
  "m/s²": "m/s^2",
  "kg/m³": "kg/m^3",
  "kg·m²": "kg m^2",
  "J/(kg·K)": "J/(kg K)",
  "rad·s²/m": "rad s^2/m",
};
const withoutOpinion: readonly MeasuredDimension[] = ["soundLevel", "ratio", "count"];

test("SCR-07: 25 g on a bottle of 4 kg is 981 N (national competition rules 2025, app. 6: 25 g read, mass ours)", () => {
  const force = parseQuantity("25 g", "acceleration").si * parseQuantity("4 kg", "mass").si;
  expect(Math.abs(force - 981)).toBeLessThanOrEqual(1);
});

describe("conversion factors agree with mathjs", () => {
  const rows = measured.flatMap((dimension) =>
    withoutOpinion.includes(dimension)
      ? []
      : unitsOf(dimension).map(({ symbol }) => [dimension, symbol] as const),
  );
  test.each(rows)("%s in %s", (dimension, symbol) => {
    const expression = inMathjs[dimension][symbol];
    if (expression === undefined) throw new Error(`no expression for ${dimension} in ${symbol}`);
    const si = siUnits[dimension];
    const stated: Unit = evaluate(dimension === "temperature" ? `41 ${expression}` : `41 * (${expression})`);
    const theirs = stated.toNumber(siInMathjs[si] ?? si);
    expect(toSi(41, unitNamed(dimension, symbol)) / theirs).toBeCloseTo(1, 12);
  });
});

test("the defining constants are the published ones, to the last digit", () => {
  expect(pound).toBe(0.45359237); // international yard and pound agreement, 1959
  expect(inch).toBe(0.0254); // the same
  expect(standardGravity).toBe(9.80665); // 3rd CGPM, 1901
  expect(poundForce).toBeCloseTo(0.45359237 * 9.80665, 14);
  expect(imperialGallon).toBe(0.00454609); // Weights and Measures Act 1985
  expect(toSi(1, unitNamed("power", "PS"))).toBe(735.49875); // DIN 66036: 75 kgf·m/s
  expect(toSi(1, unitNamed("power", "bhp"))).toBeCloseTo(745.69987158227, 10); // 550 ft·lbf/s
  expect(toSi(1, unitNamed("pressure", "psi"))).toBeCloseTo(6894.757293168, 8); // NIST SP 811, appendix B.8
  expect(toSi(1, unitNamed("pressure", "inHg"))).toBeCloseTo(3386.389, 3); // NIST SP 811: conventional inch of mercury
});

// TYR-37: the speed symbol H as a supplier's table prints it (read), tolerance 0.6 mph.
test("210 km/h is 130 mph", () => {
  expect(
    Math.abs(fromSi(toSi(210, unitNamed("speed", "km/h")), unitNamed("speed", "mph")) - 130),
  ).toBeLessThan(0.6);
});

test("what the SI number is a power of ten of converts to the nearest double", () => {
  for (const value of [1.1, 3, 5.7, 16, 23.9, 0.7]) {
    expect(toSi(value, unitNamed("length", "mm"))).toBe(value / 1000);
    expect(toSi(value, unitNamed("volume", "cc"))).toBe(value / 1e6);
  }
  expect(toSi(9 / 16, unitNamed("length", "in"))).toBe(0.0142875);
});

test("a reading back from SI gives the number entered", () => {
  for (const dimension of measured) {
    for (const unit of unitsOf(dimension)) {
      for (const value of [-40, 0.125, 37, 1234.5]) {
        expect(fromSi(toSi(value, unit), unit), `${value} ${unit.symbol}`).toBeCloseTo(value, 9);
      }
    }
  }
});

test("a step knows no zero point: one Fahrenheit degree is 5/9 K", () => {
  expect(stepToSi(1, unitNamed("temperature", "°F"))).toBeCloseTo(5 / 9, 15);
  expect(toSi(32, unitNamed("temperature", "°F"))).toBeCloseTo(273.15, 12);
  expect(toSi(-40, unitNamed("temperature", "°F"))).toBeCloseTo(
    toSi(-40, unitNamed("temperature", "°C")),
    12,
  );
});

describe("spellings", () => {
  test("every unit is found by its symbol and by each spelling, in its own dimension", () => {
    for (const dimension of measured) {
      for (const unit of unitsOf(dimension)) {
        for (const spelling of [unit.symbol, ...unit.also]) expect(findUnit(dimension, spelling)).toBe(unit);
      }
    }
  });

  test.each([
    ["torque", "Lbf-Ft", "lbf ft"],
    ["torque", " N m ", "N·m"],
    ["torque", "N*m", "N·m"],
    ["torque", "n.m", "N·m"],
    ["torque", "lb. ft.", "lbf ft"],
    ["pressure", "KGF / CM^2", "kgf/cm²"],
    ["pressure", "P.S.I.", "psi"],
    ["rate", "lbs per inch", "lb/in"],
    ["angularRate", "Nm per deg", "N·m/°"],
    ["acceleration", "m/s^2", "m/s²"],
    ["soundLevel", "db (a)", "dB(A)"],
    ["angularSpeed", "r.p.m.", "rev/min"],
    ["specificHeat", "J/kg·K", "J/(kg·K)"],
    ["secondMoment", "mm4", "mm⁴"],
  ] as const)("%s: %s is %s", (dimension, written, symbol) => {
    expect(findUnit(dimension, written)?.symbol).toBe(symbol);
  });

  test("capitals count where they tell units apart: mPa is not read as MPa, nor MBAR as mbar", () => {
    expect(findUnit("pressure", "MPa")?.symbol).toBe("MPa");
    expect(findUnit("pressure", "mPa")).toBeUndefined();
    expect(findUnit("pressure", "mpa")).toBeUndefined();
    expect(findUnit("pressure", "MBAR")).toBeUndefined();
    expect(findUnit("energy", "mJ")).toBeUndefined();
  });

  test("letters that are run apart are not put together: m m is not mm", () => {
    expect(findUnit("length", "m m")).toBeUndefined();
    expect(findUnit("mass", "k g")).toBeUndefined();
  });

  test("no spelling stands for two units of a dimension", () => {
    for (const dimension of measured) {
      const seen = new Map<string, string>();
      for (const { symbol, also } of unitsOf(dimension)) {
        for (const spelling of [symbol, ...also]) {
          expect(seen.get(spelling) ?? symbol, `${spelling} of ${dimension}`).toBe(symbol);
          seen.set(spelling, symbol);
        }
      }
    }
  });

  test("a unit named in code that the dimension lacks is refused with the ones it has", () => {
    expect(() => unitNamed("force", "psi")).toThrow(
      new RangeError(`"psi" is no unit of force: N, lbf, kgf, kN, daN`),
    );
  });
});

test("every dimension has an article and a default unit", () => {
  for (const dimension of dimensions) expect(dimensionNames[dimension]).toMatch(/^an? \S/);
  expect(defaultUnit("length").symbol).toBe("mm");
  expect(defaultUnit("ratio").symbol).toBe("");
});

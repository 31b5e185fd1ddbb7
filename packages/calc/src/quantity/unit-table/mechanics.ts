import { standardGravity as g, pound, poundForce, unit } from "./unit";

const deg = Math.PI / 180;

/**
 * Units of mass, force and what is made of them. In torque, pressure and rate the trade writes lb and kg for the
 * forces lbf and kgf, so these are read; as a force on its own they are a mass and are not.
 */
export const mechanicsUnits = {
  mass: [
    unit("kg", [1, 1], "kgs|kilo|kilos|kilogram|kilograms|kilogramme|kilogrammes"),
    unit("lb", [pound, 1], "lbs|pound|pounds"),
    unit("g", [1, 1000], "gram|grams|gramme|grammes"),
    unit("t", [1000, 1], "tonne|tonnes"),
    unit("oz", [pound, 16], "ounce|ounces"),
    unit("st", [14 * pound, 1], "stone|stones"),
    unit("qr", [28 * pound, 1], "qrs|qtr|qtrs|quarter|quarters"),
    unit("cwt", [112 * pound, 1], "cwts|hundredweight|hundredweights"),
    unit("ton", [2240 * pound, 1], "tons|long ton|long tons"),
  ],
  force: [
    unit("N", [1, 1], "newton|newtons"),
    unit("lbf", [poundForce, 1], "lbsf|pound-force|pounds-force"),
    unit("kgf", [g, 1], "kp|kilogram-force|kilopond"),
    unit("kN", [1000, 1], "kilonewton|kilonewtons"),
    unit("daN", [10, 1]),
  ],
  torque: [
    unit("N·m", [1, 1], "Nm|newton metre|newton metres|newton meters"),
    unit(
      "lbf ft",
      [poundForce * 0.3048, 1],
      "ft lbf|lb ft|ft lb|lbs ft|ft lbs|lbft|ftlb|lbfft|ftlbf|ftlbs|foot pound|foot pounds|pound foot|pound feet",
    ),
    unit(
      "lbf in",
      [poundForce * 0.0254, 1],
      "in lbf|lb in|in lb|lbs in|in lbs|lbin|inlb|inch pound|inch pounds|pound inch|pound inches",
    ),
    unit("kgf m", [g, 1], "kgm|kg m|m kg|mkg|m kgf|kgfm|kp m|m kp|mkp|kpm"),
    unit("kgf cm", [g, 100], "kg cm|cm kg|kgcm|kp cm|cm kp"),
    unit("N·cm", [1, 100], "Ncm"),
    unit("N·mm", [1, 1000], "Nmm"),
    unit("daN·m", [10, 1], "daNm"),
    unit("kN·m", [1000, 1], "kNm"),
  ],
  pressure: [
    unit("bar", [100_000, 1], "bars"),
    unit(
      "psi",
      [poundForce * 1e8, 254 ** 2],
      "lbf/in²|lb/in²|lbs/in²|lb/sq in|lbs/sq in|lbf/sq in|psig|p.s.i.",
    ),
    unit("kPa", [1000, 1], "kilopascal|kilopascals"),
    unit("kgf/cm²", [g * 10_000, 1], "kg/cm²|kp/cm²|kgf/sq cm|kg/sq cm|at"),
    unit("MPa", [1_000_000, 1], "megapascal|megapascals", { strictCase: true }),
    unit("N/mm²", [1_000_000, 1], "N/sq mm"),
    unit("GPa", [1_000_000_000, 1], "gigapascal|gigapascals"),
    unit("Pa", [1, 1], "pascal|pascals|N/m²"),
    unit("mbar", [100, 1], "millibar|hPa", { strictCase: true }),
    unit("ksi", [poundForce * 1e11, 254 ** 2]),
    unit("inHg", [25.4 * 133.322387415, 1], `in Hg|"Hg|inches Hg|inches of mercury`),
  ],
  rate: [
    unit("N/mm", [1000, 1], "kN/m"),
    unit("lb/in", [poundForce * 10_000, 254], "lbf/in|lbs/in|lb/inch|lbs/inch|lbf/inch|pounds/inch"),
    unit("kgf/mm", [g * 1000, 1], "kg/mm|kp/mm"),
    unit("N/m", [1, 1]),
    unit("kgf/cm", [g * 100, 1], "kg/cm|kp/cm"),
    unit("N/cm", [100, 1]),
  ],
  angularRate: [
    unit("N·m/°", [1, deg], "Nm/°|N·m/deg|Nm/deg|N·m/degree"),
    unit(
      "lbf ft/°",
      [poundForce * 0.3048, deg],
      "lb ft/deg|lbf ft/deg|ft lb/deg|ft lbf/deg|lb ft/°|ft lb/°|ft lbf/°",
    ),
    unit(
      "lbf in/°",
      [poundForce * 0.0254, deg],
      "lb in/deg|lbf in/deg|in lb/deg|in lbf/deg|lb in/°|in lb/°|in lbf/°",
    ),
    unit("kgf m/°", [g, deg], "kg m/deg|kgf m/deg|kg m/°|kgm/°|kgm/deg"),
    unit("N·m/rad", [1, 1], "Nm/rad"),
  ],
  dampingRate: [
    unit("N·s/m", [1, 1], "Ns/m|N/(m/s)"),
    unit("N·s/mm", [1000, 1], "Ns/mm|kN·s/m|kNs/m|N/(mm/s)"),
    unit(
      "lbf·s/in",
      [poundForce * 10_000, 254],
      "lb s/in|lbf s/in|lb sec/in|lbf sec/in|lb/(in/s)|lbf/(in/s)",
    ),
    unit("kgf·s/m", [g, 1], "kg s/m|kgf s/m|kgf/(m/s)"),
  ],
  density: [
    unit("kg/m³", [1, 1], "kg/cu m"),
    unit("g/cm³", [1000, 1], "g/cc|g/ml|kg/l|kg/dm³|t/m³"),
    unit("lb/in³", [pound * 1e12, 254 ** 3], "lb/cu in|lbs/cu in"),
    unit("lb/ft³", [pound * 1e12, 3048 ** 3], "lb/cu ft|lbs/cu ft"),
  ],
  momentOfInertia: [
    unit("kg·m²", [1, 1], "kgm²"),
    unit("kg·cm²", [1, 10_000], "kgcm²"),
    unit("lb·ft²", [pound * 3048 ** 2, 1e8], "lb sq ft"),
    unit("lb·in²", [pound * 254 ** 2, 1e8], "lb sq in"),
  ],
} as const;

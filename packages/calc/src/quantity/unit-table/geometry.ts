import { imperialGallon, inch, unit } from "./unit";

const toInch = (power: number): readonly [number, number] => [254 ** power, 10000 ** power];

/** Units of length, area, volume, second moment of area and angle; the first of each is the one shown by default. */
export const geometryUnits = {
  length: [
    unit("mm", [1, 1000], "millimetre|millimetres|millimeter|millimeters"),
    unit("in", toInch(1), `"|''|inch|inches|ins`),
    unit("cm", [1, 100], "centimetre|centimetres|centimeter|centimeters"),
    unit("m", [1, 1], "metre|metres|meter|meters"),
    unit("ft", [3048, 10000], "'|foot|feet"),
    unit("thou", [254, 10_000_000], "thousandths|thousandths of an inch"),
    unit("µm", [1, 1_000_000], "μm|um|micron|microns"),
    unit("yd", [9144, 10000], "yard|yards"),
    unit("km", [1000, 1], "kilometre|kilometres|kilometer|kilometers"),
    unit("mile", [1609.344, 1], "miles|mi"),
  ],
  area: [
    unit("mm²", [1, 1_000_000], "sq mm|square millimetres"),
    unit("cm²", [1, 10_000], "sq cm|square centimetres"),
    unit("in²", toInch(2), "sq in|square inches|square inch|sq ins"),
    unit("m²", [1, 1], "sq m|square metres"),
    unit("ft²", [3048 ** 2, 10000 ** 2], "sq ft|square feet"),
  ],
  volume: [
    unit("cm³", [1, 1_000_000], "cc|c.c.|ccm|ml|cu cm|cubic centimetres"),
    unit("l", [1, 1000], "ltr|ltrs|litre|litres|liter|liters|dm³"),
    unit("mm³", [1, 1_000_000_000], "cu mm|cubic millimetres"),
    unit("m³", [1, 1], "cu m|cubic metres"),
    unit("in³", toInch(3), "cu in|cubic inches|cubic inch|cu ins"),
    unit("pint", [imperialGallon, 8], "pints|pt|pts|imp pint|imp pints|imperial pint|imperial pints"),
    unit("gal", [imperialGallon, 1], "gals|gallon|gallons|imp gal|imperial gallon|imperial gallons"),
    unit("fl oz", [imperialGallon, 160], "imp fl oz|fluid ounce|fluid ounces"),
    unit("US gal", [231 * inch ** 3, 1], "US gals|US gallon|US gallons"),
  ],
  secondMoment: [unit("mm⁴", [1, 1e12]), unit("cm⁴", [1, 1e8]), unit("in⁴", toInch(4)), unit("m⁴", [1, 1])],
  angle: [
    unit("°", [Math.PI, 180], "deg|degs|degree|degrees", { tight: true }),
    unit("'", [Math.PI, 10_800], "min|mins|minute|minutes|arcmin|min of arc|minutes of arc", { tight: true }),
    unit('"', [Math.PI, 648_000], "''|sec|secs|second|seconds|arcsec|seconds of arc", { tight: true }),
    unit("rad", [1, 1], "radian|radians"),
    unit("mrad", [1, 1000], "milliradian|milliradians"),
  ],
} as const;

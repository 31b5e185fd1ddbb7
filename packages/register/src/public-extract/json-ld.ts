import type { PartialDate } from "../identity/partial-date";
import type { ExtractCar, ExtractValue } from "./extract-car";

/** A node of JSON-LD. */
export type JsonLd = { readonly [name: string]: unknown };

const context = "https://schema.org";

/**
 * A date as ISO 8601 writes it to the precision known: a day, a month, a year. Anything vaguer ("c. 1971", "before
 * March 1972") has no such form, and nothing is better than a false day.
 */
export function isoOfPartial({ earliest, latest, precision }: PartialDate): string | undefined {
  if (precision === "day") return earliest;
  if (precision === "month" && earliest.slice(0, 7) === latest.slice(0, 7)) return earliest.slice(0, 7);
  if (precision === "year" && earliest.slice(0, 4) === latest.slice(0, 4)) return earliest.slice(0, 4);
  return undefined;
}

const sideNames = { whole: "", left: ", left", right: ", right" } as const;

function property(value: ExtractValue, when: string): JsonLd {
  const { characteristic, label, side, text, si, unit } = value;
  return {
    "@type": "PropertyValue",
    propertyID: side === "whole" ? characteristic : `${characteristic}.${side}`,
    name: `${label}${sideNames[side]} (${when})`,
    value: si ?? text,
    ...(unit === undefined ? {} : { unitText: unit, description: text }),
  };
}

const colour = "body.colour";

/**
 * A car in schema.org's words (types Car and IndividualProduct: schema.org/Car, schema.org/IndividualProduct). The chassis
 * number is `serialNumber`: `vehicleIdentificationNumber` means the 17 characters of ISO 3779, which these cars do not have.
 *
 * @param address where the car's public page stands, whole
 */
export function carJsonLd(car: ExtractCar, address: string): JsonLd {
  const { asBuilt = [], today = [], numbers = [], options = [] } = car;
  const built = car.built && isoOfPartial(car.built);
  const now = [...today, ...asBuilt].find(({ characteristic }) => characteristic === colour)?.text;
  const properties = [
    ...numbers.map(({ kind, number }) => ({
      "@type": "PropertyValue",
      propertyID: `${kind}Number`,
      name: `${kind} number`,
      value: number,
    })),
    ...asBuilt.map((value) => property(value, "as built")),
    ...today.map((value) => property(value, "today")),
    ...(car.status === undefined
      ? []
      : [{ "@type": "PropertyValue", propertyID: "status", name: "Status", value: car.status }]),
  ];
  return {
    "@context": context,
    "@type": ["Car", "IndividualProduct"],
    "@id": address,
    url: address,
    name: `${car.marque} ${car.series} ${car.chassis}`.trim(),
    serialNumber: car.chassis,
    model: car.series,
    ...(car.marque === "" ? {} : { manufacturer: { "@type": "Organization", name: car.marque } }),
    ...(built === undefined ? {} : { productionDate: built }),
    ...(now === undefined ? {} : { color: now }),
    ...(options.length === 0 ? {} : { vehicleConfiguration: options.join(", ") }),
    ...(properties.length === 0 ? {} : { additionalProperty: properties }),
  };
}

/** One page of a club's published cars, as a list. */
export function listJsonLd({
  name,
  address,
  total,
  cars,
}: {
  readonly name: string;
  readonly address: string;
  readonly total: number;
  readonly cars: readonly { readonly name: string; readonly address: string }[];
}): JsonLd {
  return {
    "@context": context,
    "@type": "ItemList",
    "@id": address,
    name,
    numberOfItems: total,
    itemListElement: cars.map((car, index) => ({
      "@type": "ListItem",
      position: index + 1,
      name: car.name,
      url: car.address,
    })),
  };
}

/**
 * JSON-LD as the text of a script element: nothing in it can end the element or open a comment (HTML, "Restrictions for
 * contents of script elements").
 */
export function scriptText(node: JsonLd): string {
  return JSON.stringify(node).replace(/</g, "\\u003c").replace(/>/g, "\\u003e").replace(/&/g, "\\u0026");
}

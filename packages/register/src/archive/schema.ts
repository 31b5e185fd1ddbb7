import { z } from "zod";
import type { Field } from "./field";
import { type Kind, kindFile } from "./kind";
import { archiveManifest } from "./manifest";

type Json = Readonly<Record<string, unknown>>;

function annotated(field: Field | undefined, property: unknown): Json {
  const { meaning = "", unit, refersTo, person, personal } = field ?? {};
  return {
    description: meaning,
    ...(unit === undefined ? {} : { unit }),
    ...(refersTo === undefined ? {} : { refersTo }),
    ...(person ? { refersTo: "person" } : {}),
    ...(personal === undefined
      ? {}
      : { personalData: personal === "emptied" ? true : personal.path.join("/") }),
    ...(property as Json),
  };
}

/**
 * What one line of a kind must be, as JSON Schema (draft 2020-12), made from the schema that reads it. Beside what the
 * standard names, a property may carry `unit`, `refersTo` (the kind whose `id` it holds) and `personalData`.
 */
export function rowJsonSchema(kind: Kind): Json {
  const { $schema, properties = {}, ...rest } = z.toJSONSchema(kind.row, { target: "draft-2020-12" });
  return {
    $schema,
    $id: `${kindFile(kind.name)}.schema.json`,
    title: kind.name,
    description: `${kind.meaning} Sorted by: ${kind.order.join(", ")}.`,
    ...rest,
    properties: Object.fromEntries(
      Object.entries(properties).map(([name, property]) => [
        name,
        annotated(kind.fields.get(name), property),
      ]),
    ),
  };
}

/** What `manifest.json` must be, as JSON Schema (draft 2020-12). */
export function manifestJsonSchema(): Json {
  const { $schema, ...rest } = z.toJSONSchema(archiveManifest, { target: "draft-2020-12" });
  return { $schema, $id: "manifest.schema.json", title: "manifest", ...rest };
}

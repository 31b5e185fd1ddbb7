import type { RegisterList } from "@trunnion/api";
import { assemblyLabels, type Condition, carStatusWords, hasPart, verdictWords } from "@trunnion/register";
import { sayCount } from "../../lib/car-count";
import { type Narrowing, pathWith, pathWithout } from "../filter/part-path";

type Facets = RegisterList["facets"];

export interface RegisterFacetsProps {
  readonly narrowing: Narrowing;
  readonly facets: Facets;
}

interface Kind {
  readonly label: string;
  readonly of: readonly Line[];
}

/** Cars of one kind, and the part of a condition that finds them. */
interface Line {
  readonly label: string;
  readonly cars: number;
  readonly part: Condition;
}

const notKnown = (what: "series" | "status" | "decade"): Condition => ({
  op: "not",
  of: { op: "known", what },
});

function decadePart(decade: number | null): Condition {
  if (decade === null) return notKnown("decade");
  return { op: "built", from: `${decade}-01-01`, to: `${decade + 9}-12-31` };
}

const kindsOf = ({ series, status, decade, verdict, modified }: Facets): readonly Kind[] => [
  {
    label: "Series",
    of: series.map(({ slug, name, cars }) => ({
      label: name,
      cars,
      part: slug === null ? notKnown("series") : { op: "series", in: [slug] },
    })),
  },
  {
    label: "Status",
    of: status.map(({ status: one, cars }) => ({
      label: carStatusWords[one],
      cars,
      part: one === "unknown" ? notKnown("status") : { op: "status", in: [one] },
    })),
  },
  {
    label: "Built",
    of: decade.map(({ decade: one, cars }) => ({
      label: one === null ? "decade not known" : `${one}s`,
      cars,
      part: decadePart(one),
    })),
  },
  {
    label: "Something is",
    of: verdict.map(({ verdict: one, cars }) => ({
      label: verdictWords[one],
      cars,
      part: { op: "anyVerdict", in: [one] },
    })),
  },
  {
    label: "Modified",
    of: modified.map(({ assembly, cars }) => ({
      label: assemblyLabels[assembly],
      cars,
      part: { op: "modified", in: [assembly] },
    })),
  },
];

/** How many of the cars found there are of each kind; a kind narrows the list to its cars, once more lifts that. */
export function RegisterFacets({ narrowing, facets }: RegisterFacetsProps) {
  const kinds = kindsOf(facets).filter(({ of }) => of.length > 0);
  if (kinds.length === 0) return null;
  const picked = kinds
    .flatMap(({ of }) => of)
    .filter(({ part }) => hasPart(narrowing.condition, part)).length;
  return (
    <details className="facets print:hidden" open={picked > 0}>
      <summary className="min-h-11 cursor-pointer py-2 font-semibold text-small">
        What there is among them{picked === 0 ? "" : `, ${picked} picked`}
      </summary>
      <div className="facet-grid">
        {kinds.map((kind) => (
          <Facet key={kind.label} narrowing={narrowing} kind={kind} />
        ))}
      </div>
    </details>
  );
}

interface FacetProps extends Pick<RegisterFacetsProps, "narrowing"> {
  readonly kind: Kind;
}

function Facet({ narrowing, kind: { label, of } }: FacetProps) {
  return (
    <section aria-label={label}>
      <h2 className="font-semibold text-small">{label}</h2>
      <ul>
        {of.map((line) => (
          <li key={line.label}>
            <FacetLine narrowing={narrowing} line={line} />
          </li>
        ))}
      </ul>
    </section>
  );
}

const row = "flex min-h-11 items-center justify-between gap-3 text-small sm:min-h-8";

function FacetLine({
  narrowing,
  line: { label, cars, part },
}: Pick<FacetProps, "narrowing"> & { readonly line: Line }) {
  const picked = hasPart(narrowing.condition, part);
  const href = picked ? pathWithout(narrowing, part) : pathWith(narrowing, part);
  const text = (
    <>
      <span>
        {label}
        {picked ? <span className="text-soft"> · lift</span> : null}
      </span>
      <span className="tabular-nums">{sayCount(cars)}</span>
    </>
  );
  if (href === undefined) return <span className={row}>{text}</span>;
  return (
    <a href={href} data-live={label} className={row} {...(picked ? { "aria-current": "true" as const } : {})}>
      {text}
    </a>
  );
}

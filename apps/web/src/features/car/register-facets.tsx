import type { RegisterList } from "@trunnion/api";
import { assemblyLabels, carStatusWords, verdictWords } from "@trunnion/register";
import { sayCount } from "../../lib/car-count";
import { type RegisterSearch, registerPath } from "../../lib/path";

export interface RegisterFacetsProps {
  readonly club: string;
  readonly search: RegisterSearch;
  readonly facets: RegisterList["facets"];
}

interface Kind {
  readonly name: keyof RegisterSearch;
  readonly label: string;
  readonly of: readonly { readonly value: string; readonly label: string; readonly cars: number }[];
}

const kindsOf = ({
  series,
  status,
  decade,
  verdict,
  modified,
}: RegisterFacetsProps["facets"]): readonly Kind[] => [
  {
    name: "series",
    label: "Series",
    of: series.flatMap(({ slug, name, cars }) => (slug === null ? [] : [{ value: slug, label: name, cars }])),
  },
  {
    name: "status",
    label: "Status",
    of: status.map((one) => ({ value: one.status, label: carStatusWords[one.status], cars: one.cars })),
  },
  {
    name: "decade",
    label: "Built",
    of: decade.map((one) => ({
      value: String(one.decade ?? -1),
      label: one.decade === null ? "decade not known" : `${one.decade}s`,
      cars: one.cars,
    })),
  },
  {
    name: "verdict",
    label: "Something is",
    of: verdict.map((one) => ({ value: one.verdict, label: verdictWords[one.verdict], cars: one.cars })),
  },
  {
    name: "modified",
    label: "Modified",
    of: modified.map((one) => ({ value: one.assembly, label: assemblyLabels[one.assembly], cars: one.cars })),
  },
];

/** How many of the cars found there are of each kind; a kind narrows the list to its cars, once more lifts that. */
export function RegisterFacets({ club, search, facets }: RegisterFacetsProps) {
  const kinds = kindsOf(facets).filter(({ of }) => of.length > 0);
  if (kinds.length === 0) return null;
  const picked = kinds.filter(({ name }) => search[name] !== undefined).length;
  return (
    <details className="print:hidden mt-5 border-hair border-y" open={picked > 0}>
      <summary className="flex min-h-11 cursor-pointer items-center font-semibold text-small">
        What there is among them{picked === 0 ? "" : `, ${picked} picked`}
      </summary>
      <div className="grid gap-x-8 gap-y-4 pb-4 sm:grid-cols-2 lg:grid-cols-5">
        {kinds.map((kind) => (
          <Facet key={kind.name} club={club} search={search} kind={kind} />
        ))}
      </div>
    </details>
  );
}

interface FacetProps extends Pick<RegisterFacetsProps, "club" | "search"> {
  readonly kind: Kind;
}

function Facet({ club, search, kind: { name, label, of } }: FacetProps) {
  return (
    <section aria-label={label}>
      <h2 className="font-semibold text-small">{label}</h2>
      <ul>
        {of.map(({ value, label: text, cars }) => {
          const { [name]: now, ...rest } = search;
          const picked = now === value;
          const href = registerPath(club, picked ? rest : { ...rest, [name]: value });
          return (
            <li key={value}>
              <a
                href={href}
                className="flex min-h-11 items-center justify-between gap-3 text-small sm:min-h-8"
                {...(picked ? { "aria-current": "true" as const } : {})}
              >
                <span>
                  {text}
                  {picked ? <span className="text-soft"> · lift</span> : null}
                </span>
                <span className="tabular-nums">{sayCount(cars)}</span>
              </a>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

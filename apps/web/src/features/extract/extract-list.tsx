import type { ExtractCar } from "@trunnion/register";
import { PageHead } from "../../components/page-head";
import { Pager } from "../../components/pager";
import { SmallPlate } from "../../components/plate";
import { extractCarPath, extractPath } from "../../lib/path";

export interface ExtractListProps {
  readonly club: { readonly slug: string; readonly name: string };
  readonly lead: string;
  readonly total: number;
  readonly cars: readonly ExtractCar[];
  /** Reference after which the next page begins. */
  readonly next?: string;
  /** True past the first page. */
  readonly past: boolean;
}

const count = new Intl.NumberFormat("en-GB");

/** The cars a club shows to everybody. */
export function ExtractList({ club, lead, total, cars, next, past }: ExtractListProps) {
  const hasBuilt = cars.some(({ built }) => built !== undefined);
  const hasStatus = cars.some(({ status }) => status !== undefined);
  return (
    <>
      <PageHead title={`${club.name}: cars`} lead={`${count.format(total)} cars`} />
      {lead === "" ? null : <p className="max-w-prose pb-6">{lead}</p>}
      <table aria-label="Cars" className="w-full max-w-4xl">
        <thead>
          <tr className="border-ink border-b text-left text-small">
            <th className="py-1 pr-6">Chassis</th>
            <th className="py-1 pr-6">Series</th>
            {hasBuilt ? <th className="py-1 pr-6">Built</th> : null}
            {hasStatus ? <th className="py-1">Status</th> : null}
          </tr>
        </thead>
        <tbody>
          {cars.map((car) => (
            <tr key={car.reference} className="border-hair border-b">
              <td className="py-1.5 pr-6">
                <SmallPlate chassis={car.chassis} href={extractCarPath(club.slug, car.reference)} />
              </td>
              <td className="py-1.5 pr-6">{car.series}</td>
              {hasBuilt ? <td className="py-1.5 pr-6">{car.built?.text ?? "not known"}</td> : null}
              {hasStatus ? <td className="py-1.5">{car.status}</td> : null}
            </tr>
          ))}
        </tbody>
      </table>
      <Pager
        shown={`${count.format(cars.length)} of ${count.format(total)} cars`}
        {...(past ? { first: extractPath(club.slug) } : {})}
        {...(next === undefined ? {} : { next: extractPath(club.slug, { after: next }) })}
      />
      <p className="max-w-prose pt-10 text-fine text-soft">
        What the club chose to show; no personal data. A record, not a certificate.
      </p>
    </>
  );
}

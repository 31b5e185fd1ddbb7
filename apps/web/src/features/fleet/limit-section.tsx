import type { SpreadLimits } from "@trunnion/api";
import { SectionHead } from "../../components/page-head";

interface LimitSectionProps {
  readonly limits: readonly SpreadLimits[];
  readonly words: { readonly left: string; readonly right: string };
}

/** What the specifications want, series by series. */
export function LimitSection({ limits, words }: LimitSectionProps) {
  return (
    <section aria-labelledby="specified" className="grid grid-cols-1 gap-2">
      <SectionHead id="specified" title="What is specified" />
      {limits.length === 0 ? (
        <p className="max-w-prose">No current specification says anything of it.</p>
      ) : (
        <div className="overflow-x-auto">
          <table className="plain-table">
            <caption className="sr-only">Nominal and limits by series</caption>
            <thead>
              <tr>
                <th scope="col">Series</th>
                <th scope="col">Cars</th>
                <th scope="col">Nominal</th>
                <th scope="col">Limits</th>
              </tr>
            </thead>
            <tbody>
              {limits.map(({ series, cars, side, nominal, limits: between }) => (
                <tr key={`${series} ${cars} ${side}`}>
                  <th scope="row" className="whitespace-nowrap font-normal">
                    {series}
                    {side === "whole" ? "" : `, ${words[side].toLowerCase()}`}
                  </th>
                  <td>{cars === "" ? "every car" : cars}</td>
                  <td>{nominal === "" ? <span className="text-soft">none</span> : nominal}</td>
                  <td>{between === "" ? <span className="text-soft">none</span> : between}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}

import type { ExtractCar, ExtractValue } from "@trunnion/register";
import { type Definition, DefinitionTable } from "../../components/definition-table";
import { PageHead, SectionHead } from "../../components/page-head";
import { Plate } from "../../components/plate";
import { extractPath } from "../../lib/path";

export interface ExtractCarPageProps {
  readonly club: { readonly slug: string; readonly name: string };
  readonly car: ExtractCar;
  readonly sideWords: { readonly left: string; readonly right: string };
}

const numberNames: Readonly<Record<string, string>> = {
  commission: "Commission number",
  engine: "Engine number",
  body: "Body number",
};

function factsOf(car: ExtractCar): readonly Definition[] {
  const shown = (label: string, value: string | undefined): readonly Definition[] =>
    value === undefined ? [] : [{ label, value }];
  return [
    { label: "Series", value: `${car.marque} ${car.series}`.trim() },
    ...shown("Built", car.built?.text),
    ...shown("First registered", car.firstRegistered?.text),
    ...shown("Status", car.status),
    ...(car.numbers ?? []).map(({ kind, number }) => ({ label: numberNames[kind] ?? kind, value: number })),
    ...shown("Options", car.options?.join(", ")),
  ];
}

function Values({
  id,
  title,
  values,
  sideWords,
}: {
  readonly id: string;
  readonly title: string;
  readonly values: readonly ExtractValue[] | undefined;
  readonly sideWords: ExtractCarPageProps["sideWords"];
}) {
  if (values === undefined) return null;
  const side = ({ side: one }: ExtractValue) => (one === "whole" ? "" : `, ${sideWords[one].toLowerCase()}`);
  return (
    <section aria-labelledby={id} className="max-w-2xl">
      <SectionHead id={id} title={title} />
      {values.length === 0 ? (
        <p className="text-soft">Nothing is recorded of what the club shows.</p>
      ) : (
        <DefinitionTable
          rows={values.map((value) => ({ label: `${value.label}${side(value)}`, value: value.text }))}
        />
      )}
    </section>
  );
}

/** One car as everybody may see it. */
export function ExtractCarPage({ club, car, sideWords }: ExtractCarPageProps) {
  return (
    <>
      <PageHead
        title={`${car.marque} ${car.series}`.trim()}
        back={{ href: extractPath(club.slug), label: `${club.name}: cars` }}
        plate={<Plate chassis={car.chassis} />}
      />
      <div className="grid gap-10">
        <div className="max-w-2xl">
          <DefinitionTable rows={factsOf(car)} />
        </div>
        <Values id="as-built" title="As built" values={car.asBuilt} sideWords={sideWords} />
        <Values id="today" title="As last recorded" values={car.today} sideWords={sideWords} />
      </div>
      <p className="max-w-prose pt-10 text-fine text-soft">
        What the club chose to show; no personal data. A record, not a certificate.
      </p>
    </>
  );
}

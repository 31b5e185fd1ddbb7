"use client";
import { type Characteristic, characteristicBook } from "@trunnion/register";
import { useMemo, useState } from "react";
import { EditForm } from "../../components/form/edit-form";
import { ChoiceField } from "../../components/form/form-field";
import { PageHead } from "../../components/page-head";
import type { Leader } from "../../components/plan";
import { Plate } from "../../components/plate";
import type { FormAction } from "../../lib/form-state";
import { carPath, newSettingSheetPath, startChangePath } from "../../lib/path";
import { PartChooser } from "./part-chooser";
import { useTicked } from "./use-ticked";

export interface StartPageProps {
  readonly club: string;
  readonly car: { readonly reference: string; readonly chassis: string };
  readonly leaders: readonly Leader[];
  readonly own: readonly Characteristic[];
  readonly units: "metric" | "imperial";
  readonly shown: { readonly assembly: string; readonly find: string; readonly ticked: string };
  readonly action: FormAction;
}

/** Where a change begins: what was changed, on the plan or by name, and in which units its owner thinks. */
export function StartPage({ club, car, leaders, own, units, shown: asked, action }: StartPageProps) {
  const [shown, setShown] = useState({ assembly: asked.assembly, find: asked.find });
  const ticked = useTicked(asked.ticked);
  const book = useMemo(() => characteristicBook(own), [own]);
  return (
    <>
      <PageHead
        title="Record a change"
        back={{ href: carPath(club, car.reference), label: car.chassis }}
        plate={<Plate chassis={car.chassis} />}
        lead="Choose everything that was changed at one time: new bar, links and bushes are one change."
      />
      <p className="max-w-prose pb-6">
        Aligned or measured only?{" "}
        <a href={newSettingSheetPath(club, car.reference)} className="inline-flex min-h-11 items-center">
          Write a setting sheet
        </a>
      </p>
      <EditForm action={action} submit="Go on" name="do" value="begin" wide>
        <PartChooser
          {...{ book, leaders, ticked, ...shown }}
          linkTo={(assembly) => startChangePath(club, car.reference, { assembly, ticked: asked.ticked })}
          choose={setShown}
        />
        <div className="max-w-60">
          <ChoiceField
            name="units"
            label="Your units"
            value={units}
            options={[
              { value: "metric", label: "Metric" },
              { value: "imperial", label: "Imperial" },
            ]}
          />
        </div>
      </EditForm>
    </>
  );
}

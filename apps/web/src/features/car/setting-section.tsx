import type { BracketModel, Known, Verdict } from "@trunnion/register";
import type { ReactNode } from "react";
import { Bracket } from "../../components/bracket";
import { Figure } from "../../components/figure";
import { SectionHead } from "../../components/page-head";
import { Provenance } from "../../components/provenance";
import { VerdictMark } from "../../components/verdict-mark";

/** One reading at one corner, or the car's one reading. */
export interface CornerReading {
  /** "−0.5°"; empty where not measured. */
  readonly text: string;
  readonly verdict: Verdict;
  readonly verdictText: string;
  readonly bracket?: BracketModel;
  readonly known?: Known;
  /** What supports it. */
  readonly support?: ReactNode;
}

export interface CarSetting {
  readonly key: string;
  readonly label: string;
  /** "0° to 1°"; empty where nothing is specified. */
  readonly limits: string;
  readonly left?: CornerReading;
  readonly right?: CornerReading;
  /** Instead of left and right, for what the axle or the car has once. */
  readonly whole?: CornerReading;
}

/** Front, rear, whole car: in this order the table is the car seen from above, nose up. */
export interface SettingGroup {
  readonly key: string;
  readonly label: string;
  readonly settings: readonly CarSetting[];
}

export interface SettingSectionProps {
  readonly groups: readonly SettingGroup[];
  readonly sideWords: { readonly left: string; readonly right: string };
}

/** The four corners: what each is set to, and what it may be. */
export function SettingSection({ groups, sideWords }: SettingSectionProps) {
  return (
    <section aria-labelledby="settings">
      <SectionHead id="settings" title="Settings" />
      {groups.length === 0 ? (
        <p>No setting has been measured, and none is specified.</p>
      ) : (
        <table className="corner-table">
          <caption className="sr-only">Settings per corner with their limits</caption>
          <thead>
            <tr>
              <th scope="col">Setting</th>
              <th scope="col">Limits</th>
              <th scope="col">{sideWords.left}</th>
              <th scope="col">{sideWords.right}</th>
            </tr>
          </thead>
          {groups.map((group) => (
            <Group key={group.key} group={group} sideWords={sideWords} />
          ))}
        </table>
      )}
    </section>
  );
}

function Group({
  group,
  sideWords,
}: {
  readonly group: SettingGroup;
  readonly sideWords: SettingSectionProps["sideWords"];
}) {
  return (
    <tbody>
      <tr className="corner-group">
        <th scope="rowgroup" colSpan={4}>
          {group.label}
        </th>
      </tr>
      {group.settings.map((setting) => (
        <SettingRow key={setting.key} setting={setting} sideWords={sideWords} />
      ))}
    </tbody>
  );
}

function SettingRow({
  setting,
  sideWords,
}: {
  readonly setting: CarSetting;
  readonly sideWords: SettingSectionProps["sideWords"];
}) {
  const { label, limits, left, right, whole } = setting;
  return (
    <tr>
      <th scope="row" className="corner-name font-normal">
        {label}
      </th>
      <td className="corner-limits">
        <span aria-hidden className="text-soft wide:hidden">
          {limits === "" ? "" : "Limits "}
        </span>
        {limits === "" ? <span className="text-soft">no limits specified</span> : limits}
      </td>
      {whole === undefined ? (
        <>
          <Corner reading={left} side={sideWords.left} />
          <Corner reading={right} side={sideWords.right} />
        </>
      ) : (
        <Corner reading={whole} />
      )}
    </tr>
  );
}

interface CornerProps {
  readonly reading: CornerReading | undefined;
  /** Left out for a reading that spans both. */
  readonly side?: string;
}

function Corner({ reading, side }: CornerProps) {
  return (
    <td
      className={side === undefined ? "corner-whole" : "corner"}
      {...(side === undefined ? { colSpan: 2 } : {})}
    >
      {side === undefined ? null : (
        <span aria-hidden className="block text-fine text-soft wide:hidden">
          {side}
        </span>
      )}
      {reading === undefined || reading.text === "" ? (
        <span className="text-soft">not measured</span>
      ) : (
        <span className="corner-reading">
          <Figure text={reading.text} column />
          {reading.bracket === undefined ? null : (
            <Bracket model={reading.bracket} differs={reading.verdict === "outsideLimits"} />
          )}
          <VerdictMark verdict={reading.verdict} text={reading.verdictText} />
        </span>
      )}
      {reading?.known === undefined ? null : <Provenance known={reading.known} />}
      {reading?.support}
    </td>
  );
}

"use client";
import { fromSi, printQuantity, unitNamed } from "@trunnion/calc";
import {
  diameterForRate,
  type StudyCar,
  type StudyResult,
  type StudySetting,
  settingNow,
  studyRoll,
  withoutBars,
} from "@trunnion/register";
import { useState } from "react";
import { Button } from "../../components/button";
import { SectionHead } from "../../components/page-head";
import { Answers, type Case } from "./answers";

export interface RollHandsProps {
  readonly car: StudyCar;
  readonly diameters: { readonly front?: number; readonly rear?: number };
  /** Where the form goes without a script. */
  readonly action: string;
  readonly typed: Readonly<Record<string, string>>;
}

const G = 9.80665;

interface Hand {
  readonly name: keyof StudySetting;
  readonly label: string;
  readonly unit: string;
  /** SI over the unit shown. */
  readonly times: number;
  readonly most: (car: StudyCar) => number;
  readonly least: (car: StudyCar) => number;
  readonly step: number;
}

const rateUnit = unitNamed("rate", "N/mm");
const perMm = 1 / fromSi(1, rateUnit);
const spring = (name: "frontSpring" | "rearSpring", axle: "front" | "rear"): Hand => ({
  name,
  label: `${axle === "front" ? "Front" : "Rear"} spring`,
  unit: "N/mm",
  times: perMm,
  least: (car) => Math.max(1, Math.floor(car[axle].springRate / perMm / 3)),
  most: (car) => Math.ceil((car[axle].springRate / perMm) * 3),
  step: 0.1,
});
const bar = (name: "frontBar" | "rearBar", axle: "front" | "rear"): Hand => ({
  name,
  label: `${axle === "front" ? "Front" : "Rear"} bar at the wheel`,
  unit: "N/mm",
  times: perMm,
  least: () => 0,
  most: (car) => Math.max(30, Math.ceil((car[axle].barWheelRate / perMm) * 4)),
  step: 0.1,
});
const hands: readonly Hand[] = [
  spring("frontSpring", "front"),
  bar("frontBar", "front"),
  spring("rearSpring", "rear"),
  bar("rearBar", "rear"),
  {
    name: "acceleration",
    label: "Cornering",
    unit: "g",
    times: G,
    least: () => 0.1,
    most: () => 1.2,
    step: 0.05,
  },
];

const shown = (value: number) => Number(value.toFixed(2));

/** The sliders' setting as an address has it: what is not there, or is no number, stands where the car stands. */
function settingOf(car: StudyCar, typed: Readonly<Record<string, string>>): StudySetting {
  const now = settingNow(car);
  const moved = hands.map((hand) => {
    const { name, times } = hand;
    const text = typed[name]?.trim() ?? "";
    const value = text === "" ? Number.NaN : Number(text);
    const inside = Number.isFinite(value) && value >= hand.least(car) && value <= hand.most(car);
    return [name, inside ? value * times : now[name]] as const;
  });
  return { ...now, ...Object.fromEntries(moved) };
}

const asBar = (
  rate: number,
  axle: "front" | "rear",
  { car, diameters }: Pick<RollHandsProps, "car" | "diameters">,
) => {
  const diameter = diameters[axle];
  const now = car[axle].barWheelRate;
  if (diameter === undefined || now === 0) return "";
  if (rate === 0) return "no bar";
  const mm = { dimension: "length", unit: "mm", decimals: 1 } as const;
  return `as a solid bar of ${printQuantity(diameterForRate({ diameter, rate: now }, rate), mm)} in place of ${printQuantity(diameter, mm)}`;
};

function casesOf(car: StudyCar, setting: StudySetting): readonly Case[] {
  const now = { ...settingNow(car), acceleration: setting.acceleration };
  const run = (one: StudySetting): StudyResult => studyRoll(car, one);
  return [
    { key: "now", label: "as it stands", result: run(now) },
    { key: "moved", label: "as moved", result: run(setting) },
    { key: "frontOnly", label: "moved, front bar only", result: run(withoutBars(setting, "frontOnly")) },
    { key: "rearOnly", label: "moved, rear bar only", result: run(withoutBars(setting, "rearOnly")) },
    { key: "none", label: "moved, without bars", result: run(withoutBars(setting, "none")) },
  ];
}

/**
 * Sliders over springs and bars; every answer is worked out in the same frame by the calculator that the server runs.
 * Without a script they are numbers in a form, and the server answers.
 */
export function RollHands(props: RollHandsProps) {
  const { car, action, typed } = props;
  const [setting, setSetting] = useState(() => settingOf(car, typed));
  const move = (name: keyof StudySetting, value: number) =>
    setSetting((before) => ({ ...before, [name]: value }));
  return (
    <section aria-labelledby="hands" className="grid grid-cols-1 gap-6">
      <SectionHead id="hands" title="Move it">
        <button
          type="button"
          className="inline-flex min-h-11 cursor-pointer items-center text-small underline scriptless:hidden"
          onClick={() => setSetting(settingNow(car))}
        >
          Back to how it stands
        </button>
      </SectionHead>
      <div className="grid grid-cols-1 gap-10 wide:grid-cols-[minmax(0,22rem)_1fr]">
        <form action={action} className="grid content-start gap-4">
          {Object.entries(typed)
            .filter(([name, value]) => value !== "" && !hands.some((hand) => hand.name === name))
            .map(([name, value]) => (
              <input key={name} type="hidden" name={name} value={value} />
            ))}
          {hands.map((hand) => (
            <Slider key={hand.name} hand={hand} car={car} setting={setting} move={move}>
              {hand.name === "frontBar" || hand.name === "rearBar"
                ? asBar(setting[hand.name], hand.name === "frontBar" ? "front" : "rear", props)
                : ""}
            </Slider>
          ))}
          <div className="hidden scriptless:block">
            <Button>Work it out</Button>
          </div>
        </form>
        <Answers cases={casesOf(car, setting)} />
      </div>
    </section>
  );
}

interface SliderProps {
  readonly hand: Hand;
  readonly car: StudyCar;
  readonly setting: StudySetting;
  readonly move: (name: keyof StudySetting, value: number) => void;
  readonly children: string;
}

function Slider({ hand, car, setting, move, children }: SliderProps) {
  const { name, label, unit, times, step } = hand;
  const value = shown(setting[name] / times);
  const bounds = { min: hand.least(car), max: hand.most(car), step };
  const take = (text: string) => {
    const typed = Number(text);
    if (text.trim() !== "" && Number.isFinite(typed) && typed >= bounds.min && typed <= bounds.max)
      move(name, typed * times);
  };
  const id = `hand-${name}`;
  return (
    <div className="grid gap-1">
      <div className="flex items-baseline justify-between gap-3">
        <label htmlFor={id} className="font-semibold">
          {label}
        </label>
        <span className="flex items-baseline gap-1 tabular-nums">
          <span className="scriptless:hidden">{value}</span>
          <span className="font-light">{unit}</span>
        </span>
      </div>
      <input
        id={id}
        type="range"
        value={value}
        {...bounds}
        onChange={(event) => take(event.target.value)}
        aria-valuetext={`${value} ${unit}`}
        className="min-h-11 w-full cursor-ew-resize accent-ink scriptless:hidden"
      />
      <input
        type="number"
        name={name}
        defaultValue={value}
        {...bounds}
        aria-label={`${label}, ${unit}`}
        className="field hidden scriptless:block"
      />
      {children === "" ? null : <p className="text-fine text-soft">{children}</p>}
    </div>
  );
}

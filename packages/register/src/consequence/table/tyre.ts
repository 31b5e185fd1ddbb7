import type { Binding } from "../binding";
import { type Axle, assumed, axleMass, axles, firstOf, group, of } from "./feed";

const size = (axle: Axle) => group({ size: of(`tyres.${axle}.size`) });

function ofAxle(axle: Axle, name: string): readonly Binding[] {
  return [
    {
      id: `${axle}.tyre.size`,
      title: `${name} tyre`,
      computation: "tyre.size",
      mode: "each",
      inputs: { size: of(`tyres.${axle}.size`) },
      figures: [
        { output: "overallDiameter", label: `${name} tyre, overall diameter` },
        { output: "sectionWidth", label: `${name} tyre, section width` },
      ],
    },
    {
      id: `${axle}.tyre.change`,
      title: `${name} tyre size`,
      computation: "tyre.change",
      mode: "change",
      inputs: { before: size(axle), after: size(axle) },
      figures: [
        { output: "heightChange", label: `${name} ride height by the tyres` },
        {
          output: "circumferenceAfter",
          before: "circumferenceBefore",
          label: `${name} rolling circumference`,
        },
      ],
    },
    {
      id: `${axle}.tyre.rim`,
      title: `${name} tyre on its rim`,
      computation: "tyre.rim",
      mode: "each",
      inputs: { tyre: of(`tyres.${axle}.size`), wheel: of(`wheels.${axle}.size`) },
      figures: [
        { output: "rimShare", label: `${name} rim width over tyre width` },
        { output: "verdict", label: `${name} rim width` },
      ],
    },
    {
      id: `${axle}.tyre.load`,
      title: `${name} tyre's load`,
      computation: "tyre.load",
      mode: "each",
      inputs: { size: of(`tyres.${axle}.size`), axleMass: axleMass(axle) },
      figures: [
        { output: "use", label: `${name} tyre, share of its load used at rest` },
        { output: "loadVerdict", label: `${name} tyre's load` },
      ],
    },
  ];
}

/** The rear wheels drive and turn the speedometer's cable. */
const driven: readonly Binding[] = [
  {
    id: "speedometer",
    title: "Speedometer",
    computation: "tyre.speedometer",
    mode: "change",
    inputs: {
      before: size("rear"),
      after: size("rear"),
      indicated: assumed(100 / 3.6, "at 100 km/h shown"),
    },
    figures: [
      { output: "readingChange", label: "Speedometer's reading at the same true speed" },
      { output: "trueSpeed", label: "True speed at 100 km/h shown, had it been right before" },
    ],
  },
  {
    id: "gearing",
    title: "Gearing",
    computation: "tyre.gearing",
    mode: "each",
    inputs: {
      tyre: size("rear"),
      gearRatio: firstOf(
        of("driveline.ratio.fifth"),
        of("driveline.ratio.fourth"),
        assumed(1, "top gear taken as direct"),
      ),
      finalDrive: of("driveline.finalDrive.ratio"),
    },
    figures: [{ output: "speedPer1000", label: "Speed in top gear per 1000 rev/min" }],
  },
];

export const tyreBindings: readonly Binding[] = [
  ...axles.flatMap(({ axle, name }) => ofAxle(axle, name)),
  ...driven,
];

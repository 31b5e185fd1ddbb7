import { drawHeading } from "../layout/heading";
import { block, drawBlock, drawRow } from "../layout/row";
import { type } from "../layout/style";
import { drawPlate } from "../mark/plate";
import type { DossierContext } from "./dossier-context";

const plateWidth = 178;
const labelWidth = 108;

/** Plate and name of the car. */
export function drawDossierHead({ model, flow, faces }: DossierContext): void {
  const { page, box, y } = flow;
  const { car } = model;
  const height = drawPlate(page, { x: box.left, top: y, width: plateWidth }, car.chassis, faces);
  const x = box.left + plateWidth + 18;
  const room = box.right - x;
  let top = drawBlock(
    page,
    block(faces.bold, type.event, `${car.marque} ${car.series}`.trim(), room),
    x,
    y - 2,
  );
  for (const text of [`Dossier: the car as the register has it on ${model.on}`, model.club, car.claim]) {
    if (text !== "") top = drawBlock(page, block(faces.regular, type.body, text, room), x, top - 1);
  }
  flow.y = Math.min(y - height, top) - 8;
}

/** Identity, in two columns of label and value. */
export function drawFacts(context: DossierContext): void {
  const { model, flow, faces } = context;
  const { box } = flow;
  const facts = [
    ...model.facts,
    ...(model.keepers ?? []).map(({ name, span }) => ({
      label: "Keeper",
      value: [name, span].filter(Boolean).join(", "),
    })),
  ];
  drawHeading(context, { title: "Identity" });
  const column = (box.right - box.left - 16) / 2;
  for (let at = 0; at < facts.length; at += 2) {
    const cells = facts.slice(at, at + 2).flatMap(({ label, value }, place) => {
      const x = box.left + place * (column + 16);
      return [
        { x, lines: block(faces.regular, type.small, label, labelWidth - 8) },
        {
          x: x + labelWidth,
          lines: block(faces.regular, type.body, value === "" ? "not recorded" : value, column - labelWidth),
        },
      ];
    });
    drawRow(flow, { cells, padding: 2 });
  }
  flow.y -= 8;
}

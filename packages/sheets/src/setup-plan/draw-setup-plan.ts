import { SETUP_PLAN_LAYOUT, type SetupPlanModel } from "@trunnion/register";
import type { ContentWriter } from "../content/content-writer";
import { SheetDocument } from "../document/sheet-document";
import { type Faces, loadFaces } from "../font/face";
import { drawColumns, drawHeading, drawParagraph } from "../layout/heading";
import { PageFlow } from "../layout/page-flow";
import { type PageBox, type Paper, pageBox, papers } from "../layout/paper";
import { block, drawBlock, drawRow } from "../layout/row";
import type { Drawing } from "../layout/sheet-context";
import { rule, type } from "../layout/style";
import { drawPlate } from "../mark/plate";
import { lostText, preparedText } from "../section/footer";
import { printableModel } from "../text/printable";

interface PlanContext extends Drawing {
  readonly model: SetupPlanModel;
}

const plateWidth = 178;

function drawHead({ model, flow, faces }: PlanContext): void {
  const { page, box, y } = flow;
  const height = drawPlate(page, { x: box.left, top: y, width: plateWidth }, model.car.chassis, faces);
  const x = box.left + plateWidth + 18;
  const room = box.right - x;
  let top = drawBlock(page, block(faces.bold, type.event, `Set-up plan, ${model.wheel}`, room), x, y - 2);
  for (const text of [`${model.car.marque} ${model.car.series}`.trim(), model.club])
    if (text !== "") top = drawBlock(page, block(faces.regular, type.body, text, room), x, top - 1);
  flow.y = Math.min(y - height, top) - 10;
}

function drawWanted(context: PlanContext): void {
  const { model, flow, faces } = context;
  drawHeading(context, { title: "Wanted" });
  const width = flow.box.right - flow.box.left;
  const text = model.wanted.map(({ label, value }) => `${label}: ${value}`).join("  ·  ");
  drawParagraph(context, block(faces.bold, type.body, text, width), 4);
  drawParagraph(context, block(faces.regular, type.body, model.verdict, width), 3);
  for (const remark of model.remarks)
    drawParagraph(context, block(faces.regular, type.body, remark, width), 3);
  flow.y -= 10;
}

/** Where the columns stand; the last is left open for what the gauge showed. */
function columnsOf({ box }: PageFlow) {
  const { left, right } = box;
  const width = right - left;
  return {
    number: left,
    what: left + 16,
    camber: left + width * 0.44,
    castor: left + width * 0.54,
    toe: left + width * 0.64,
    measured: left + width * 0.82,
    right,
  };
}

function drawSteps(context: PlanContext): void {
  const { model, flow, faces } = context;
  const at = columnsOf(flow);
  drawHeading(context, { title: "In this order", note: "with the reading to expect after each step" });
  drawColumns(context, [
    { x: at.what, text: "Do" },
    { x: at.camber, text: "Camber" },
    { x: at.castor, text: "Castor" },
    { x: at.toe, text: "Toe" },
    { x: at.measured, text: "Measured" },
  ]);
  const { before, steps, left } = model;
  const rows = [{ what: "As it stands", ...before }, ...steps];
  rows.forEach(({ what, camber, castor, toe }, index) => {
    const text = (words: string, width: number, face = faces.regular) => block(face, type.body, words, width);
    drawRow(flow, {
      padding: 5,
      minimum: 26,
      cells: [
        { x: at.number, lines: text(index === 0 ? "" : String(index), 14, faces.bold) },
        { x: at.what, lines: text(what, at.camber - at.what - 8, index === 0 ? faces.regular : faces.bold) },
        { x: at.camber, lines: text(camber, at.castor - at.camber - 4) },
        { x: at.castor, lines: text(castor === "" ? "–" : castor, at.toe - at.castor - 4) },
        { x: at.toe, lines: text(toe, at.measured - at.toe - 6) },
      ],
      decorate: (page, top, height) =>
        drawBlank(page, { from: at.measured, to: at.right, y: top - height + 5 }),
    });
  });
  const last = (x: number, text: string) => ({ x, lines: block(faces.regular, type.body, text, 80) });
  const what = block(faces.regular, type.body, "Left over: reached less wanted", at.camber - at.what - 8);
  drawRow(flow, {
    padding: 5,
    minimum: 22,
    cells: [
      { x: at.what, lines: what },
      last(at.camber, left.camber || "–"),
      last(at.castor, left.castor || "–"),
      last(at.toe, left.toe || "–"),
    ],
  });
  flow.y -= 12;
}

function drawSideEffects(context: PlanContext): void {
  const { model, flow, faces } = context;
  drawHeading(context, { title: "What else it moves" });
  const text = model.sideEffects.join("  ·  ");
  drawParagraph(context, block(faces.regular, type.body, text, flow.box.right - flow.box.left), 4);
  flow.y -= 8;
}

function drawBlank(
  page: ContentWriter,
  { from, to, y }: { readonly from: number; readonly to: number; readonly y: number },
): void {
  page.line([from, y, to, y], { stroke: rule.line });
}

function drawCautions(context: PlanContext): void {
  const { model, flow, faces } = context;
  const width = flow.box.right - flow.box.left;
  drawHeading(context, { title: "Before and after" });
  for (const caution of model.cautions)
    drawParagraph(context, block(faces.regular, type.body, caution, width), 4);
}

function drawFoot(
  page: ContentWriter,
  box: PageBox,
  {
    model,
    prepared,
    unprintable,
    place,
  }: {
    readonly model: SetupPlanModel;
    readonly prepared: Date;
    readonly unprintable: number;
    readonly place: string;
  },
  faces: Faces,
): void {
  const { left, right } = box;
  page.line([left, 35, right, 35], { stroke: rule.hair });
  const hash = (model.hash.slice(0, 16).match(/.{1,4}/g) ?? []).join(" ");
  const lines = [
    `Worked out from ${hash} · prepared ${preparedText(prepared)}`,
    unprintable > 0 ? lostText(unprintable) : model.club.slice(0, 80),
  ];
  lines.forEach((text, index) => {
    page.text({ face: faces.regular, size: type.fine, x: left, y: 26.5 - index * 8.5, text });
  });
  page.text({ face: faces.bold, size: type.body, x: right, y: 21, text: place, align: "right" });
}

function instantOf({ preparedAt, layoutVersion }: SetupPlanModel): Date {
  if (layoutVersion !== SETUP_PLAN_LAYOUT)
    throw new RangeError(
      `layout ${layoutVersion} is not known; this program draws layout ${SETUP_PLAN_LAYOUT}`,
    );
  const date = new Date(preparedAt);
  if (!Number.isNaN(date.getTime())) return date;
  throw new RangeError(
    `preparedAt is "${preparedAt}"; it must be an ISO instant such as 2026-05-14T18:30:00Z`,
  );
}

/**
 * A set-up plan as a page for the garage: what is wanted, the steps in order with the reading to expect after each, and
 * a line to write down what the gauge showed. The same model gives the same bytes.
 *
 * @throws RangeError for a layout this version cannot draw, a paper it does not know, or a `preparedAt` that is no instant
 */
export async function drawSetupPlan(
  given: SetupPlanModel,
  { paper }: { readonly paper: Paper },
): Promise<Uint8Array> {
  if (!papers.includes(paper))
    throw new RangeError(`paper "${paper}" is not known; it must be ${papers.join(" or ")}`);
  const prepared = instantOf(given);
  const faces = loadFaces();
  const box = pageBox(paper);
  const { model, unprintable } = printableModel(given, faces, `plan of ${given.car.chassis.slice(0, 40)}`);
  const { width, height } = box;
  const title = `Set-up plan of ${model.car.chassis}, ${model.wheel}`;
  const identity = ["setup-plan", paper, model.hash, model.preparedAt].join("\n");
  const document = new SheetDocument({ title, preparedAt: prepared, identity, width, height }, faces);
  const flow = new PageFlow(box, { height: 0, draw: () => undefined });
  const context = { model, flow, faces };
  drawHead(context);
  drawWanted(context);
  drawSteps(context);
  drawSideEffects(context);
  drawCautions(context);
  const { pages } = flow;
  pages.forEach((page, at) => {
    const place = `page ${at + 1} of ${pages.length}`;
    drawFoot(page, box, { model, prepared, unprintable, place }, faces);
  });
  document.addCar(model.car.chassis, pages);
  return document.bytes();
}

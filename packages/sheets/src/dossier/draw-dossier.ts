import { DOSSIER_LAYOUT, type DossierModel } from "@trunnion/register";
import { type Picture, SheetDocument } from "../document/sheet-document";
import { type Faces, loadFaces } from "../font/face";
import { drawHeading, drawParagraph } from "../layout/heading";
import { PageFlow } from "../layout/page-flow";
import { type Paper, pageBox, papers } from "../layout/paper";
import { block } from "../layout/row";
import { type } from "../layout/style";
import { printableModel } from "../text/printable";
import type { DossierContext } from "./dossier-context";
import { drawEvidence, type PlacedPicture } from "./evidence";
import { drawDossierFooter, drawDossierStrip, stripHeight } from "./frame";
import { drawDossierHead, drawFacts } from "./head";
import { drawHistory } from "./history";
import { drawRowTable } from "./row-table";

/** Most pictures in one dossier. */
export const DOSSIER_PICTURES = 200;

export interface DossierOptions {
  readonly paper: Paper;
  /** JPEG pictures of the evidence, by its id. */
  readonly pictures?: ReadonlyMap<string, Picture>;
}

function drawAssemblies(context: DossierContext): void {
  for (const { label, rows } of context.model.assemblies) {
    if (rows.length > 0) drawRowTable(context, { title: label, note: `${rows.length}`, rows });
  }
}

function drawNotRecorded(context: DossierContext): void {
  const { model, flow, faces } = context;
  const unknown = model.assemblies.filter(({ notRecorded }) => notRecorded.length > 0);
  if (unknown.length === 0) return;
  const width = flow.box.right - flow.box.left;
  flow.ensure(40);
  drawHeading(context, { title: "Not recorded", note: "not known is not known to be right" });
  for (const { label, notRecorded } of unknown) {
    drawParagraph(
      context,
      block(faces.regular, type.small, `${label}: ${notRecorded.join(", ")}.`, width),
      3,
    );
  }
  flow.y -= 10;
}

function drawCautions({ model, flow, faces, ...rest }: DossierContext): void {
  const width = flow.box.right - flow.box.left;
  for (const caution of model.cautions) {
    drawParagraph({ flow, faces, ...rest }, block(faces.bold, type.small, caution, width), 4);
  }
  flow.y -= 8;
}

function placePictures(
  document: SheetDocument,
  model: DossierModel,
  pictures: ReadonlyMap<string, Picture>,
): ReadonlyMap<string, PlacedPicture> {
  const placed = new Map<string, PlacedPicture>();
  for (const { id } of model.evidence) {
    const picture = pictures.get(id);
    if (!picture || placed.has(id)) continue;
    if (placed.size >= DOSSIER_PICTURES)
      throw new RangeError(`more than ${DOSSIER_PICTURES} pictures in one dossier; leave some out`);
    const name = `P${placed.size + 1}`;
    document.addPicture(name, picture);
    placed.set(id, { ...picture, name });
  }
  return placed;
}

function instantOf({ preparedAt, layoutVersion }: DossierModel): Date {
  if (layoutVersion !== DOSSIER_LAYOUT)
    throw new RangeError(`layout ${layoutVersion} is not known; this program draws layout ${DOSSIER_LAYOUT}`);
  const date = new Date(preparedAt);
  if (!Number.isNaN(date.getTime())) return date;
  throw new RangeError(
    `preparedAt is "${preparedAt}"; it must be an ISO instant such as 2026-05-14T18:30:00Z`,
  );
}

/** Draws the pages of a dossier from its finished model. */
function pagesOf(given: DossierModel, faces: Faces, { document, paper, pictures, prepared }: Drawn) {
  const box = pageBox(paper);
  const { model, unprintable } = printableModel(given, faces, `dossier of ${given.car.chassis.slice(0, 40)}`);
  const flow = new PageFlow(box, {
    height: stripHeight,
    draw: (page) => drawDossierStrip(page, box, model, faces),
  });
  const context = { model, flow, faces };
  drawDossierHead(context);
  drawCautions(context);
  drawFacts(context);
  const count = model.deviations.length;
  if (count > 0) {
    const note = count === 1 ? "1 deviation" : `${count} deviations`;
    drawRowTable(context, { title: "What differs from factory", note, rows: model.deviations });
  }
  drawHistory(context);
  drawAssemblies(context);
  drawNotRecorded(context);
  if (model.evidence.length > 0) drawEvidence(context, placePictures(document, model, pictures));
  const { pages } = flow;
  pages.forEach((page, at) => {
    drawDossierFooter(page, box, { model, prepared, unprintable, page: at + 1, pages: pages.length }, faces);
  });
  return pages;
}

interface Drawn {
  readonly document: SheetDocument;
  readonly paper: Paper;
  readonly pictures: ReadonlyMap<string, Picture>;
  readonly prepared: Date;
}

/**
 * A car's dossier as PDF: identity, what differs, history, state with how each value is known, what is not recorded,
 * evidence with pictures. The same model and pictures give the same bytes.
 *
 * @throws RangeError for a layout this version cannot draw, a paper it does not know, a `preparedAt` that is no instant,
 * more than 200 pictures, a text above 5,000 characters or more than 100 pages; nothing is drawn in part
 */
export async function drawDossier(model: DossierModel, options: DossierOptions): Promise<Uint8Array> {
  const { paper, pictures = new Map() } = options;
  if (!papers.includes(paper))
    throw new RangeError(`paper "${paper}" is not known; it must be ${papers.join(" or ")}`);
  const prepared = instantOf(model);
  const faces = loadFaces();
  const { width, height } = pageBox(paper);
  const title = `Dossier of ${model.car.chassis}, ${model.car.marque} ${model.car.series}`;
  const identity = ["dossier", paper, model.recordHash, model.preparedAt, model.car.chassis].join("\n");
  const document = new SheetDocument({ title, preparedAt: prepared, identity, width, height }, faces);
  document.addCar(model.car.chassis, pagesOf(model, faces, { document, paper, pictures, prepared }));
  return document.bytes();
}

import type { DossierEvidence } from "@trunnion/register";
import type { Picture } from "../document/sheet-document";
import { drawHeading } from "../layout/heading";
import { block, blockHeight, drawBlock, type Line } from "../layout/row";
import { rule, type } from "../layout/style";
import type { DossierContext } from "./dossier-context";

/** A picture placed in the document under a name. */
export interface PlacedPicture extends Picture {
  readonly name: string;
}

const perRow = 3;
const gap = 12;
const pictureHeight = 118;

/** Photographs and documents, with what each supports. */
export function drawEvidence(context: DossierContext, pictures: ReadonlyMap<string, PlacedPicture>): void {
  const { model, flow } = context;
  flow.ensure(50);
  const count = model.evidence.length;
  drawHeading(context, { title: "Evidence", note: count === 1 ? "1 piece" : `${count} pieces` });
  flow.onContinue = () => drawHeading(context, { title: "Evidence", note: "continued" });
  flow.y -= 6;
  for (let at = 0; at < count; at += perRow) {
    drawPieces(context, model.evidence.slice(at, at + perRow), pictures);
  }
  flow.onContinue = undefined;
}

function captionOf({ faces }: DossierContext, piece: DossierEvidence, width: number): Line[] {
  const { caption, taken, supports } = piece;
  return [
    ...block(faces.bold, type.small, caption === "" ? "No caption" : caption, width).slice(0, 4),
    ...(taken === "" ? [] : block(faces.regular, type.small, taken, width).slice(0, 2)),
    ...supports.flatMap((text) => block(faces.regular, type.fine, text, width)).slice(0, 8),
  ];
}

function drawPieces(
  context: DossierContext,
  pieces: readonly DossierEvidence[],
  pictures: ReadonlyMap<string, PlacedPicture>,
): void {
  const { flow, faces } = context;
  const { left, right } = flow.box;
  const width = (right - left - gap * (perRow - 1)) / perRow;
  const captions = pieces.map((piece) => captionOf(context, piece, width));
  const height = pictureHeight + 4 + Math.max(...captions.map(blockHeight)) + 8;
  flow.ensure(height);
  const { page, y: top } = flow;
  for (const [place, piece] of pieces.entries()) {
    const x = left + place * (width + gap);
    const picture = pictures.get(piece.id);
    page.rect([x, top - pictureHeight, width, pictureHeight], { stroke: rule.hair });
    if (picture === undefined) {
      const text = "no picture of it";
      page.text({
        face: faces.regular,
        size: type.small,
        x: x + width / 2,
        y: top - pictureHeight / 2,
        text,
        align: "centre",
      });
    } else {
      const scale = Math.min((width - 4) / picture.width, (pictureHeight - 4) / picture.height);
      const [w, h] = [picture.width * scale, picture.height * scale];
      page.picture(picture.name, [x + (width - w) / 2, top - pictureHeight + (pictureHeight - h) / 2, w, h]);
    }
    drawBlock(page, captions[place] ?? [], x, top - pictureHeight - 4);
  }
  flow.y = top - height;
}

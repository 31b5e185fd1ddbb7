import type { ContentWriter } from "../content/content-writer";
import { type Faces, textWidth } from "../font/face";
import { rule } from "../layout/style";
import { fitSize, shorten, wrap } from "../text/wrap";

const stamped = 1.1; // spacing of stamped characters, points

export interface PlatePlace {
  readonly x: number;
  readonly top: number;
  readonly width: number;
}

interface Lettering {
  readonly size: number;
  readonly lines: readonly string[];
}

const margin = 34;
const mostLines = 3;

function lettering({ bold }: Faces, chassis: string, width: number): Lettering {
  const room = width - margin - stamped * chassis.length;
  const size = fitSize(bold, chassis, { width: Math.max(room, 20), largest: 21, smallest: 10 });
  if (textWidth(bold, size, chassis) <= room + 0.5) return { size, lines: [chassis] };
  return { size, lines: wrap(bold, size, chassis, (width - margin) * 0.8) };
}

/** Whether the plate shows the whole number; one of some sixty characters it does not. */
export function plateHolds(faces: Faces, chassis: string, width: number): boolean {
  return lettering(faces, chassis, width).lines.length <= mostLines;
}

/** The chassis number as a stamped plate: double hairline frame, a rivet in each corner. Answers its height. */
export function drawPlate(page: ContentWriter, place: PlatePlace, chassis: string, faces: Faces): number {
  const { x, top, width } = place;
  const { size, lines: all } = lettering(faces, chassis, width);
  const lines = all.slice(0, mostLines);
  if (all.length > mostLines) lines[mostLines - 1] = `${lines.at(-1)?.slice(0, -2) ?? ""}…`;
  const height = Math.max(33, lines.length * size * 1.15 + 13);
  page.rect([x, top - height, width, height], { stroke: rule.line });
  page.rect([x + 2.2, top - height + 2.2, width - 4.4, height - 4.4], { stroke: rule.hair });
  for (const rivetX of [x + 8.5, x + width - 8.5]) {
    for (const rivetY of [top - 8.5, top - height + 8.5]) {
      page.circle([rivetX, rivetY], 2.3, { stroke: rule.hair });
      page.circle([rivetX, rivetY], 0.9, { fill: "black" });
    }
  }
  page.text({
    face: faces.regular,
    size: 6.5,
    x: x + width / 2,
    y: top - 10.2,
    text: "Chassis",
    align: "centre",
  });
  const block = lines.length * size * 1.15;
  let y = top - 9 - (height - 9 - block) / 2 - size * 0.86;
  for (const text of lines) {
    page.text({ face: faces.bold, size, x: x + width / 2, y, text, align: "centre", spacing: stamped });
    y -= size * 1.15;
  }
  return height;
}

/** The small plate of the identity strip; the whole number stands on the first page. */
export function drawSmallPlate(page: ContentWriter, place: PlatePlace, chassis: string, faces: Faces): void {
  const { x, top, width } = place;
  const height = 18;
  page.rect([x, top - height, width, height], { stroke: rule.line });
  page.rect([x + 1.5, top - height + 1.5, width - 3, height - 3], { stroke: rule.hair });
  for (const rivetX of [x + 5, x + width - 5]) page.circle([rivetX, top - height / 2], 1, { fill: "black" });
  const text = shorten(faces.bold, 10, chassis, width - 22 - chassis.length * 0.6);
  page.text({
    face: faces.bold,
    size: 10,
    x: x + width / 2,
    y: top - 12.6,
    text,
    align: "centre",
    spacing: 0.6,
  });
}

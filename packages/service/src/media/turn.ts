/** Quarter turns clockwise that show a picture upright, by its orientation (Exif 2.32, tag 274); mirrored ones none can. */
const turns: Readonly<Record<number, number>> = { 1: 0, 6: 1, 3: 2, 8: 3 };

export type QuarterTurns = 0 | 1 | 2 | 3;

/** Any count of quarter turns as one of four. */
export function quarterTurnsOf(count: number): QuarterTurns {
  return (((count % 4) + 4) % 4 || 0) as QuarterTurns;
}

/** Turns by an orientation; nothing for a mirrored picture. An orientation that is none counts as upright. */
export function turnsOfOrientation(orientation: number | undefined): QuarterTurns | undefined {
  const upright = orientation === undefined || orientation < 1 || orientation > 8;
  return upright ? 0 : (turns[orientation] as QuarterTurns | undefined);
}

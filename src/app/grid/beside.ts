/** Where something stands beside a cell without covering it. */

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Spot {
  readonly left: number;
  readonly top: number;
  /** How tall it may be there. */
  readonly height: number;
}

const GAP = 4;

/**
 * Where a box of this size stands beside a cell, within an area and over no part of the cell: below it,
 * above it, to its right or to its left, the first of these that has room; else on the side with the
 * most room, not as tall. Without a cell on the screen it stands in the area's lower right corner. All in pixels.
 */
export function beside(cell: Box | null, wide: number, tall: number, area: Box): Spot {
  const into = (at: number, size: number, from: number, to: number) =>
    Math.max(from, Math.min(at, to - size));
  const left = (at: number) => into(at, wide, area.left, area.right);
  const top = (at: number) => into(at, tall, area.top, area.bottom);
  const room = area.bottom - area.top;
  if (!cell) {
    const height = Math.min(tall, room);
    return { left: left(area.right), top: area.bottom - height, height };
  }
  // The part of the cell that is in the area counts: a cell behind the headings is not on the screen.
  const [head, foot] = [cell.top, cell.bottom].map((at) => into(at, 0, area.top, area.bottom)) as [
    number,
    number,
  ];
  const below = area.bottom - foot - GAP;
  const above = head - area.top - GAP;
  if (below >= tall) return { left: left(cell.left), top: foot + GAP, height: tall };
  if (above >= tall) return { left: left(cell.left), top: head - GAP - tall, height: tall };
  const height = Math.min(tall, room);
  if (area.right - cell.right - GAP >= wide) return { left: cell.right + GAP, top: top(head), height };
  if (cell.left - area.left - GAP >= wide) return { left: cell.left - GAP - wide, top: top(head), height };
  if (below >= above) return { left: left(cell.left), top: foot + GAP, height: Math.max(0, below) };
  return { left: left(cell.left), top: area.top, height: above };
}

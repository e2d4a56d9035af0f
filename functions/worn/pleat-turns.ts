/** The pleats of one panel, all round the figure. */
import type { PleatTurn } from "./garment.ts";

interface PanelTurn {
  readonly at: readonly [top: number, hem: number];
  readonly depth: readonly [top: number, hem: number];
  readonly side: -1 | 1;
}

/**
 * The turns of `count` panels one after the other, from centre back. A panel that begins or ends with half
 * a pleat is cut on the fold or meets its like there: every other panel is then its mirror image.
 */
export function pleatTurns(turns: readonly PanelTurn[], top: number, count: number): PleatTurn[] {
  const half = turns.some(
    ({ at, side }) => (at[0] < 1e-9 * top && side > 0) || (at[0] > top * (1 - 1e-9) && side < 0),
  );
  return Array.from({ length: count }, (_, panel) => {
    const mirrored = half && panel % 2 === 1;
    const order = mirrored ? turns.toReversed() : turns;
    return order.map(({ at, depth, side }): PleatTurn => {
      const share = at[0] / top;
      return {
        at: (panel + (mirrored ? 1 - share : share)) / count,
        depth,
        side: mirrored ? (side > 0 ? -1 : 1) : side,
      };
    });
  }).flat();
}

/** The columns that a new page of each stage begins with. */
import type { Column, ColumnKind, Stage } from "./shape.ts";

const column = (heading: string, kind: ColumnKind, width: number): Column => ({ heading, kind, width });

const NOTE = column("Note", "text", 300);

export const STAGE_COLUMNS: Readonly<Record<Stage, readonly Column[]>> = {
  Measure: [
    column("Measurement", "text", 260),
    column("Value", "length", 110),
    column("Taken over", "text", 200),
    column("Taken on", "date", 110),
    NOTE,
  ],
  Draft: [column("What", "text", 260), column("Value", "any", 140), NOTE],
  Fit: [
    column("Date", "any", 120),
    column("Round", "text", 70),
    column("Piece", "text", 130),
    column("Seam", "text", 130),
    column("Amount", "length", 110),
    NOTE,
  ],
  Cut: [
    column("Piece", "text", 200),
    column("Outline", "any", 160),
    column("How many", "number", 105),
    column("Mirrored pair", "any", 125),
    column("On the fold", "any", 110),
    column("Cloth", "text", 140),
    column("Grain", "text", 110),
    NOTE,
  ],
  Trimmings: [
    column("What", "text", 240),
    column("How much", "any", 120),
    column("Price", "money", 90),
    column("From", "text", 160),
    column("Bought on", "date", 110),
    NOTE,
  ],
};

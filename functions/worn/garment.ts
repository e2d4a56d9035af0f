/** A garment to be hung on a figure: what a declaration's `worn` gives. All lengths are in the book's unit. */
import type { FigureMeasures } from "./figure.ts";

/** A turn of a pleat: the fold that shows lies at `at`, the inner fold towards the beginning (−1) or the end (1). */
export interface PleatTurn {
  /** Share of the way round from centre back. */
  readonly at: number;
  /** From the fold to the inner fold, at the top and at the hem. */
  readonly depth: readonly [top: number, hem: number];
  readonly side: -1 | 1;
}

export interface Garment {
  readonly figure: FigureMeasures;
  /** Where the upper edge is sewn: the waist or the neck. */
  readonly from: "waist" | "neck";
  /** How far below that the upper edge lies at a share of the way round from centre back (0.5 is centre front), along the body. */
  readonly drop: (share: number) => number;
  /** From the upper edge down to the hem at a share of the way round, along the cloth. */
  readonly depth: (share: number) => number;
  /** Where cloth lies on a pad and turns over its edge; when left out all of it goes down alike. */
  readonly pad?: {
    /** The share of the way down at which the edge lies. */
    readonly edge: number;
    /** The cloth from the upper edge down to the pad's at a share of the way round. */
    readonly lying: (share: number) => number;
  };
  /** The cloth all round at a share of the way down: 0 the upper edge as sewn, 1 the hem as drafted. */
  readonly round: (share: number) => number;
  /** Whether its cloth is shared out quarter by quarter, as gathers are, so that its sides lie at the sides of the body. */
  readonly quarters?: boolean;
  /** How many soft folds go round, and pleats that are folded. */
  readonly folds: number;
  readonly pleats: readonly PleatTurn[];
  /** Cloth lies over cloth by so much at centre front, as the fronts of a cape do. */
  readonly opening?: { readonly overlap: number };
  /** What was taken from the wearer's measurements in the book, and from where. */
  readonly measured: readonly string[];
  /** What the arguments do not tell and was assumed, in sentences. */
  readonly assumed: readonly string[];
}

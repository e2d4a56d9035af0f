import { CUTTING_RULES, cutRows, PIECES_TO_CUT, unfoldedPiece } from "../cutting/cut-list.ts";
import { CLOTH, cutListForm } from "../cutting/cut-list-block.ts";
import { drawLay } from "../cutting/lay-drawing.ts";
import { layQuestion } from "../cutting/lay-question.ts";
import { layRefusal } from "../cutting/lay-refusal.ts";
import { type CallContext, define, type Take } from "../define.ts";
import { written } from "../phrase.ts";
import { pieceArea } from "../pieces/piece.ts";

const asked = (
  given: Parameters<typeof cutRows>[0] & Wanted,
  { cm, unit, mark }: Pick<CallContext, "cm" | "unit" | "mark">,
) =>
  layQuestion(
    cutRows(given),
    [{ name: written`cloth`, width: given.cloth_width, length: null }],
    { oneWay: given.one_way, gap: given.gap, repeat: given.repeat },
    cm(0.02),
    { unit, mark },
  );

const CLOTH_WIDTH = {
  kind: "length",
  usual: [15, 330],
  about: "usable width of the cloth, between the selvedges",
  from: 5,
  to: 1000,
} as const satisfies Take;

const { one_way, gap, repeat } = CUTTING_RULES;

interface Wanted {
  readonly cloth_width: number;
  readonly one_way: boolean;
  readonly gap: number;
  readonly repeat: number;
}

/**
 * Length of cloth, in the book's unit, that a cut list takes on cloth of one width: its outlines
 * themselves are laid, with their grain along the selvedge, turned end for end unless the cloth
 * is one way, half of each pair mirrored, pieces on the fold opened out. `cloth_width` is the width that can
 * be used, selvedges off. Curves are laid as chords within 0.2 mm of them. Rows blank in both
 * pieces and quantities are skipped. The lengths a shop cuts, shrinkage and flaws are not considered. A lay
 * is found, not proved: a better one may use less. Source: geometry.
 */
export const YARDAGE = define({
  name: "YARDAGE",
  summary: "How much cloth or other fabric a cut list needs; every piece is laid out by its own outline.",
  source: "geometry: the pieces are laid out; no published figure",
  words:
    "cut list, yards metres fabric cloth length needed how much to buy lay layout cutting plan nap fold pairs selvedge how much material",
  takes: { ...PIECES_TO_CUT, cloth_width: CLOTH_WIDTH, ...CUTTING_RULES },
  block: cutListForm({ cloth_width: CLOTH_WIDTH, cloth: CLOTH, one_way, gap, repeat }, [
    {
      formula: "=YARDAGE(cut_list; cloth_width)",
      because: "the list named cut_list, laid on cloth of the width in cloth_width",
    },
    {
      formula: '=YARDAGE(Cut!A1:G9; 54; "linen"; TRUE)',
      because: "the pieces whose cloth is linen, on one-way cloth 54 wide",
    },
  ]),
  returns: "length",
  compute(given, context) {
    const { step, measure, plan } = context;
    const question = asked(given, context);
    const rows = cutRows(given);
    measure(
      "copies",
      "pieces to cut, in all",
      rows.reduce((sum, row) => sum + row.quantity, 0),
    );
    const area = measure(
      "pieces_area",
      "area of all these pieces, allowances included",
      rows.reduce((sum, row) => sum + row.quantity * pieceArea(unfoldedPiece(row)), 0),
    );
    step("bare_length", "pieces_area / cloth_width", area / given.cloth_width);
    const lay = plan(question);
    if ("refusal" in lay) throw layRefusal(lay.refusal, rows, question.cloths, "cloth_width");
    measure("density", "share of the cloth that the pieces cover in the lay", lay.density);
    return measure("length", "length of cloth from the first cut line to the last", lay.lengths[0]!);
  },
  draw(given, _found, _answer, context) {
    const question = asked(given, context);
    const lay = context.plan(question);
    return "refusal" in lay ? [] : drawLay(question, lay, "length");
  },
  examples: [
    {
      given: { pieces: ["M 0 0 L 27 0 L 27 40 L 0 40 Z"], quantities: [2], cloth_width: 54 },
      gives: 40,
      because: "two panels of half the cloth's width lie side by side",
    },
    {
      given: {
        pieces: ["M 30 0 L 40 0 L 40 60 L 0 60 Z", null],
        quantities: [2, null],
        cloth_width: 54,
      },
      gives: 60,
      because:
        "of two gores straight on one side the second is turned end for end, so 54 in are enough instead of 2 × 40",
    },
    {
      given: {
        pieces: ["M 0 0 L 20 0 L 20 100 L 0 100 Z", "M 0 0 L 30 0 L 30 50 L 0 50 Z"],
        quantities: [1, 4],
        cloth_width: 140,
        folds: ["yes", null],
        pairs: [null, "yes"],
        names: ["front", "sleeve"],
      },
      gives: 100,
      unit: "cm",
      because: "a front 40 cm wide once opened out beside four sleeves, three across would need 130 cm",
    },
  ],
});

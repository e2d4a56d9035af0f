import { layQuestion, TURNS } from "../cut.ts";
import { type CutRow, cutRows, HOW_TO_CUT, PIECES_TO_CUT, wholePiece } from "../cutlist.ts";
import { type Bench, define, Refusal } from "../define.ts";
import { drawLay } from "../laid.ts";
import type { Lay, LayCloth, LayQuestion, Planner } from "../lay.ts";
import { pieceBounds, turnPiece } from "../piece.ts";

interface Hand {
  readonly widths: readonly (number | null)[];
  readonly lengths: readonly (number | null)[];
}

function clothsInHand({ widths, lengths }: Hand): LayCloth[] {
  if (widths.length !== lengths.length)
    throw new Refusal(
      `lengths must be as many cells as widths, not ${lengths.length} against ${widths.length}`,
    );
  const cloths = widths.flatMap((width, i): LayCloth[] => {
    const length = lengths[i] ?? null;
    if (width === null && length === null) return [];
    const missing = width === null ? "widths" : length === null ? "lengths" : null;
    if (missing) throw new Refusal(`${missing}, number ${i + 1}, is empty: measure that piece of cloth`);
    return [{ name: `cloth ${i + 1}`, width: width!, length }];
  });
  if (cloths.length === 0)
    throw new Refusal("widths is empty: give the width and length of at least one cloth");
  return cloths;
}

type Ways = Parameters<typeof cutRows>[0] & { one_way: boolean; gap: number; repeat: number };

const asked = (given: Ways, rows: readonly CutRow[], cloths: readonly LayCloth[], cm: Bench["cm"]) =>
  layQuestion(rows, cloths, { oneWay: given.one_way, gap: given.gap, repeat: given.repeat }, cm(0.02));

/** Pieces that no cloth could take even alone, each with what the nearest one lacks. */
function tooLarge(rows: readonly CutRow[], cloths: readonly LayCloth[], say: Bench["say"]): string[] {
  return rows.flatMap((row) => {
    const whole = wholePiece(row);
    const lacks = TURNS[row.grain].oneWay
      .flatMap((turn) => {
        const { left, right, low, high } = pieceBounds(turnPiece(whole, turn));
        return cloths.map(({ name, width, length }) => {
          const [wide, long] = [right - left - width, high - low - length!];
          return { name, wide, long, worst: Math.max(wide, long), size: right - left + high - low };
        });
      })
      .sort((a, b) => a.worst - b.worst);
    const { name, wide, long, worst, size } = lacks[0]!;
    if (worst <= 1e-6 * size) return [];
    const words = [...(wide > 0 ? [`${say(wide)} wider`] : []), ...(long > 0 ? [`${say(long)} longer`] : [])];
    return [`${row.name} is ${words.join(" and ")} than ${cloths.length > 1 ? name : "the cloth"}`];
  });
}

/** The lay on the cloth in hand, and for a single cloth the length it would need if it had no end. */
function layInHand(question: LayQuestion, plan: Planner): { lay: ReturnType<Planner>; needs: number | null } {
  const [cloth, ...others] = question.cloths;
  if (others.length > 0) return { lay: plan(question), needs: null };
  const open = plan({ ...question, cloths: [{ ...cloth!, length: null }] });
  if ("refusal" in open) return { lay: open, needs: null };
  const needs = open.lengths[0]!;
  return { lay: needs <= cloth!.length! * (1 + 1e-9) ? open : plan(question), needs };
}

/**
 * "ok" when a lay of the whole cut list was found on the pieces of cloth in hand, else "look: "
 * with the pieces that found no place and how much more cloth they take. A lay is searched, not
 * proved impossible: "look" with little missing may yet be laid by a better search or by a join.
 * Widths are usable widths. Source: geometry.
 */
export const CLOTH_CHECK = define({
  name: "CLOTH_CHECK",
  summary: "Do all the pieces fit the cloth in hand, and if not, which do not and by how much.",
  source: "geometry: the pieces are laid out; no published figure",
  words: "enough fabric stash remnant offcut fit verdict short of cloth piecing",
  takes: {
    ...PIECES_TO_CUT,
    widths: {
      kind: "length",
      about: "usable width of each piece of cloth in hand",
      from: 5,
      to: 1000,
      many: true,
      blanks: true,
    },
    lengths: { kind: "length", about: "its length", from: 1, to: 100_000, many: true, blanks: true },
    ...HOW_TO_CUT,
  },
  returns: "verdict",
  work(given, { measure, plan, say, cm }) {
    const rows = cutRows(given);
    const cloths = clothsInHand(given);
    measure("cloths", "pieces of cloth in hand", cloths.length);
    const copies = rows.reduce((sum, row) => sum + row.quantity, 0);
    measure("copies", "pieces to cut, all told", copies);
    const large = tooLarge(rows, cloths, say);
    if (large.length > 0)
      return measure("verdict", "what no cloth takes even alone", `look: ${large.join("; ")}`);

    const question = asked(given, rows, cloths, cm);
    const { lay, needs } = layInHand(question, plan);
    if ("refusal" in lay) throw new Refusal(lay.refusal);
    const out = lay.missing.reduce((sum, [, count]) => sum + count, 0);
    measure("without_place", "pieces that found no place in the lay", out);
    if (out === 0) return measure("verdict", "every piece has its place", "ok");

    const missing = lay.missing.map(([piece, quantity]) => ({ ...question.pieces[piece]!, quantity }));
    const list = missing.map(({ name, quantity }) => `${quantity} of ${name}`).join(", ");
    const found = `look: no place for ${list}`;
    const first = cloths[0]!;
    if (needs !== null)
      return measure(
        "verdict",
        "the whole list laid on such cloth without an end, against the length in hand",
        `${found}; all together take ${say(needs)} of ${say(first.width)} cloth, ${say(needs - first.length!)} more than there is`,
      );
    const widest = cloths.reduce((a, b) => (b.width > a.width ? b : a));
    const more = plan({ ...question, pieces: missing, cloths: [{ ...widest, length: null }] });
    if ("refusal" in more) throw new Refusal(more.refusal);
    return measure(
      "verdict",
      "what found no place, laid by itself on the widest of these cloths",
      `${found}; by themselves they take ${say(more.lengths[0]!)} more of ${say(widest.width)} cloth`,
    );
  },
  draw(given, _found, _answer, { plan, say, cm }) {
    const rows = cutRows(given);
    const cloths = clothsInHand(given);
    const question = asked(given, rows, cloths, cm);
    const all: Lay = {
      placements: [],
      lengths: [],
      density: 0,
      missing: question.pieces.map(({ quantity }, i) => [i, quantity]),
    };
    const lay = tooLarge(rows, cloths, say).length > 0 ? all : layInHand(question, plan).lay;
    return "refusal" in lay ? [] : drawLay(question, lay);
  },
  examples: [
    {
      given: {
        pieces: ["M 0 0 L 27 0 L 27 40 L 0 40 Z"],
        quantities: [3],
        widths: [54, 30],
        lengths: [45, 50],
      },
      gives: "ok",
      because: "two panels side by side on one cloth, the third on the other",
    },
    {
      given: {
        pieces: ["M 0 0 L 27 0 L 27 40 L 0 40 Z"],
        quantities: [3],
        widths: [54],
        lengths: [60],
        names: ["back"],
      },
      gives: "look: no place for 1 of back; all together take 80 in of 54 in cloth, 20 in more than there is",
      because: "the third panel would begin at 40 in and end at 80",
    },
    {
      given: {
        pieces: ["M 0 0 L 60 0 L 60 40 L 0 40 Z"],
        quantities: [1],
        widths: [140],
        lengths: [100],
        folds: ["yes"],
        names: ["cape"],
      },
      gives: "ok",
      unit: "cm",
      because: "opened out the cape is 120 cm wide and lies on 140",
    },
    {
      given: {
        pieces: ["M 0 0 L 60 0 L 60 40 L 0 40 Z"],
        quantities: [1],
        widths: [54, 45],
        lengths: [90, 120],
        names: ["cape"],
      },
      gives: "look: cape is 6 in wider than cloth 1",
      because: "60 in across the grain against 54 in on the wider cloth",
    },
  ],
});

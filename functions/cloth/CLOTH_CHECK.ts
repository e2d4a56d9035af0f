import { clothsInStock } from "../cutting/cloth-in-stock.ts";
import { CUTTING_RULES, cutRows, PIECES_TO_CUT } from "../cutting/cut-list.ts";
import { CLOTH, cutListForm } from "../cutting/cut-list-block.ts";
import { drawLay } from "../cutting/lay-drawing.ts";
import { layQuestion, rowsLaid } from "../cutting/lay-question.ts";
import { layRefusal, pieceCell } from "../cutting/lay-refusal.ts";
import { proofOfTooLittle, tooLarge } from "../cutting/not-enough.ts";
import { copiesText, piecesByCloth, piecesOn } from "../cutting/pieces-on-cloth.ts";
import { hasTooManyToJoin, joinsText, MOST_JOINED } from "../cutting/piecing.ts";
import { JOB_TAKE, STOCK_TAKE } from "../cutting/stock-form.ts";
import {
  doubtStock,
  type OfStock,
  type OfTape,
  stockQuestion,
  stockToLay,
} from "../cutting/stock-question.ts";
import { type CallContext, define, type Takes } from "../define.ts";
import { markSize } from "../fractions.ts";
import { type Lay, type LayQuestion, originText } from "../lay.ts";
import { phrase, written } from "../phrase.ts";
import type { CellOfList } from "../refusal.ts";
import { commaList, semicolonList, shortened, toCheck } from "../verdict.ts";

type StockColumns = Parameters<typeof clothsInStock>[0];
type Ways = Parameters<typeof cutRows>[0] & { one_way: boolean; gap: number; repeat: number };

/** The question of a call, of either form. */
function asked(
  given: Ways & OfStock & Parameters<typeof clothsInStock>[0],
  { cm, unit, mark, doubt }: OfTape & Partial<Pick<CallContext, "doubt">>,
): LayQuestion {
  const { stock, one_way, gap, repeat } = given;
  const rows = cutRows(given);
  const tape = { unit, mark };
  if (!stock)
    return layQuestion(rows, clothsInStock(given, cm), { oneWay: one_way, gap, repeat }, cm(0.02), tape);
  const there = stockToLay({ ...given, stock }, cm);
  if (doubt) doubtStock(there.pieces, doubt);
  return stockQuestion(rows, there, { gap, cloth: given.cloth ?? "" }, { cm, unit, mark });
}

/** So many pieces of a long list are named: those that fit on no cloth, and those that found no place. */
const [MOST_LARGE, MOST_MISSING] = [6, 12];

/** The cell with the length of the only cloth in stock; null where it has none of its own. */
function lengthCell({ lengths, stock }: Ways & OfStock & Pick<StockColumns, "lengths">): CellOfList | null {
  if (stock) return null;
  const cell = lengths?.findIndex((length) => length !== null) ?? -1;
  return cell < 0 ? null : { argument: "lengths", cell };
}

/** Which pieces have no place, and how long one was looked for; a quick lay proves nothing. */
function noPlace(list: string, { origin }: Lay, isProved: boolean): string {
  const none = written`no place for ${list}`;
  if (!origin || origin.by === "quick")
    return isProved
      ? written`${none} in a quick lay`
      : written`${none} in a quick lay, a search may still find one`;
  if (origin.by === "hand") return written`${none} in the lay made by hand`;
  return origin.seconds > 0
    ? written`${none} was found (${originText({ ...origin, proved: false })})`
    : written`${none} was found by a search`;
}

/** Whether a join would do, in words. */
function joined(question: LayQuestion, start: Lay, seam: number, context: CallContext): string {
  const { joins, measure, say, mark, unit } = context;
  if (hasTooManyToJoin(question)) return written`joins are only tried for at most ${MOST_JOINED} pieces`;
  const answer = joins({ question, start, seam, mark: markSize(mark, unit) });
  if ("pending" in answer) return written`whether a join makes it fit is being worked out`;
  const { pieced, tried } = answer;
  measure("lays_with_a_join", "lays tried with pieces joined", tried);
  return pieced
    ? written`with a join it fits: ${joinsText(pieced.joins, say)}, with a seam allowance of ${say(seam)} on either part`
    : written`in ${tried} lays no join was found with which it fits`;
}

const STOCK = {
  widths: {
    kind: "length",
    about: "usable width of each piece of cloth in stock, between the selvedges",
    from: 5,
    to: 1000,
    many: true,
    blanks: true,
  },
  lengths: {
    kind: "length",
    about: "length of each piece of cloth",
    from: 1,
    to: 100_000,
    many: true,
    blanks: true,
  },
} as const satisfies Takes;

const ODD = {
  shapes: {
    kind: "piece",
    about:
      "outline of each odd piece of cloth, its grain down the page, closed lines inside it holes or flaws; its width and length may be blank",
    otherwise: null,
    many: true,
    blanks: true,
  },
  seam: {
    kind: "length",
    usual: [0.3, 8],
    about:
      "seam allowance at a join: when it is given and the cloth is not enough, a join that would make it fit is looked for",
    from: 0.1,
    to: 20,
    otherwise: null,
  },
} as const satisfies Takes;

const { one_way, gap, repeat } = CUTTING_RULES;

/**
 * "ok" when a lay of the whole cut list was found on the pieces of cloth in hand, else "check: "
 * with the pieces that found no place, how that is known, and how much more cloth they take: a
 * piece larger than any cloth and more area than there is are proofs; else it says how long a lay
 * was searched for, and a better search or a join may yet do;
 * with `seam` a join is looked for (functions/cutting/piecing.ts). Widths are usable widths. An odd piece
 * of cloth is drawn like a pattern piece, holes and flaws as closed lines inside. With the list of the stock
 * (functions/cutting/stock-list.ts) the cloth is what is left when the length reserved for other jobs is taken off
 * and the rest is washed. Source: geometry.
 */
export const CLOTH_CHECK = define({
  name: "CLOTH_CHECK",
  summary: "Whether all the pieces fit the cloth in stock, and if not, which do not and by how much.",
  source: "geometry: the pieces are laid out; no published figure",
  words: "cut list in stock, enough fabric stash remnant offcut fit verdict short of cloth piecing",
  takes: { ...PIECES_TO_CUT, ...STOCK, ...CUTTING_RULES, ...ODD },
  block: cutListForm({ ...STOCK, cloth: CLOTH, one_way, gap, repeat, ...ODD }, [
    {
      formula: "=CLOTH_CHECK(cut_list; stock_width; stock_length)",
      because: "whether the list named cut_list fits the cloth in stock",
    },
    {
      formula: '=CLOTH_CHECK(cut_list; widths; lengths; "linen")',
      because:
        "the pieces whose cloth is linen, on cloths whose widths and lengths are the lists of these names",
    },
  ]),
  twoBlocks: cutListForm({ stock: STOCK_TAKE, cloth: CLOTH, job: JOB_TAKE, gap, seam: ODD.seam }, [
    {
      formula: '=CLOTH_CHECK(cut_list; stock; "linen")',
      because:
        "the pieces whose cloth is linen, on all linen of the list named stock: washed, and without what is reserved",
    },
    {
      formula: '=CLOTH_CHECK(cut_list; stock; "linen"; "the miller")',
      because: "the same for the job called the miller, which may cut what is reserved for it",
    },
  ]),
  returns: "verdict",
  alike: { "widths, lengths": "a remnant may be wider than it is long" },
  compute(given, context) {
    const { measure, plan, say, points } = context;
    const rows = cutRows(given);
    const question = asked(given, context);
    const { cloths } = question;
    measure("cloths", "pieces of cloth in stock", cloths.length);
    const copies = rows.reduce((sum, row) => sum + row.quantity, 0);
    measure("copies", "pieces to cut, in all", copies);
    const lay = plan(question);
    if ("refusal" in lay) throw layRefusal(lay.refusal, rows, question.cloths);
    const out = lay.missing.reduce((sum, [, count]) => sum + count, 0);
    measure("without_place", "pieces that found no place in the lay", out);
    cloths.forEach(({ name }, i) => {
      measure(
        `cloth_${i + 1}`,
        () => phrase`cut from ${name}`,
        piecesOn(question, lay, i) || written`nothing`,
      );
    });
    if (out === 0) return measure("verdict", "every piece has its place", "ok");
    const join = given.seam === null ? "" : written`; ${joined(question, lay, given.seam, context)}`;
    const large = tooLarge(rows, cloths, say);
    if (large.length > 0) {
      for (const { row, says } of large) points(pieceCell(row), says);
      const each = large.map(({ says }) => says);
      const list = semicolonList(
        shortened(each, MOST_LARGE, (count) => written`${count} more pieces fit on no cloth either`),
      );
      return measure("verdict", "pieces that fit on no cloth, even alone", toCheck(written`${list}${join}`));
    }

    const missing = lay.missing.map(([piece, quantity]) => ({ ...question.pieces[piece]!, quantity }));
    const each = missing.map(({ name, quantity }) => copiesText(quantity, name));
    const list = commaList(shortened(each, MOST_MISSING, (count) => written`${count} more kinds`));
    const why = proofOfTooLittle(question, context);
    const found = written`${why}${noPlace(list, lay, why !== "")}`;
    const widest = cloths.reduce((a, b) => (b.width > a.width ? b : a));
    const alone = cloths.length === 1 && !widest.outline;
    const { name, width, length } = widest;
    const pieces = alone ? question.pieces : missing;
    const more = plan({ ...question, pieces, cloths: [{ name, width, length: null }] });
    if ("refusal" in more) throw layRefusal(more.refusal, rows, cloths);
    const takes = more.lengths[0]!;
    if (alone && takes <= length! * (1 + 1e-9))
      return measure("verdict", "every piece has its place in a lay on endless cloth of this width", "ok");
    const laid = rowsLaid(rows);
    const short = written`no place for ${list}`;
    const at = alone ? lengthCell(given) : null;
    if (at) points(at, short);
    else for (const row of new Set(lay.missing.map(([piece]) => laid[piece]!))) points(pieceCell(row), short);
    return alone
      ? measure(
          "verdict",
          "length of a lay of the whole list on endless cloth of this width",
          toCheck(
            written`${found}; all together take ${say(takes, length!)} of ${say(width)} cloth, short by ${say(takes - length!, 0)}${join}`,
          ),
        )
      : measure(
          "verdict",
          "length of a lay of the pieces without a place, on the widest of these cloths",
          toCheck(
            written`${found}; by themselves they take ${say(takes)} more of ${say(width)} cloth${join}`,
          ),
        );
  },
  beside(given, answer, { plan, cm, unit, mark }) {
    const question = asked(given, { cm, unit, mark });
    const lay = plan(question);
    // All pieces may have their places in a lay on endless cloth alone, which names no other cloth.
    const isOtherLay = !("refusal" in lay) && lay.missing.length > 0 && answer === "ok";
    return "refusal" in lay || isOtherLay ? "" : piecesByCloth(question, lay);
  },
  draw(given, _found, _answer, { plan, cm, unit, mark }) {
    const question = asked(given, { cm, unit, mark });
    const lay = plan(question);
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
      gives:
        "check: no place for 1 of back in a quick lay, a search may still find one; all together take 80 in of 54 in cloth, short by 20 in",
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
      gives: "check: cape is 6 in wider than cloth 1",
      because: "60 in across the grain against 54 in on the wider cloth",
    },
    {
      given: {
        pieces: ["M 0 0 H 19 V 19 H 0 Z"],
        quantities: [3],
        widths: [null],
        lengths: [null],
        shapes: ["M 0 0 H 40 V 20 H 20 V 40 H 0 Z"],
      },
      gives: "ok",
      because:
        "an L of cloth, 20 in wide either way, holds a square of 19 in its corner and one in either arm",
    },
    {
      given: {
        pieces: ["M 0 0 L 60 0 L 60 40 L 0 40 Z"],
        quantities: [1],
        widths: [54],
        lengths: [90],
        names: ["cape"],
        seam: 0.5,
      },
      gives: "check: cape is 6 in wider than the cloth; with a join it fits: 1 of cape in two, ",
      because: "54 in of it and a strip of 6 in, with half an inch on either, lie behind one another",
    },
  ],
});

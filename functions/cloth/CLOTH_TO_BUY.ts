import { asBlock } from "../block.ts";
import { CUTTING_RULES, PIECES_TO_CUT } from "../cutting/cut-list.ts";
import { cutListForm } from "../cutting/cut-list-block.ts";
import { drawLay } from "../cutting/lay-drawing.ts";
import { MOST_COPIES } from "../cutting/least-bought.ts";
import { piecesByCloth, piecesOn } from "../cutting/pieces-on-cloth.ts";
import { SHARED_OUT, sharedOut } from "../cutting/stock-question.ts";
import { define } from "../define.ts";
import { phrase, written } from "../phrase.ts";

const { gap, pairs, folds, names, grains } = CUTTING_RULES;
const { stock, cloth, cloth_width, job } = SHARED_OUT;

/** What is taken of a cloth that the list of the stock does not have. */
const PLAIN = "cloth without nap and repeat";

/**
 * The length of cloth, in the book's unit, that must still be bought when the stock is cut first, of the usable
 * width `cloth_width`: the pieces are shared out between the stock and the bought cloth so that the bought
 * length is least (functions/cutting/least-bought.ts). 0 when all pieces fit on the stock. Which pieces are
 * bought is found by trying ways to share them out, each with a quick lay. Where it is not proved that no way needs
 * less, a sentence beside the answer says so. The stock is as in CLOTH_CHECK: without what is reserved for other
 * jobs, and washed. Nap and repeat of the stock hold for the bought cloth too. The bought length is of washed cloth:
 * SHRINK_ALLOW adds its shrinkage, BUY_LENGTH the shop's steps. A cloth of which nothing is in stock is bought for
 * all pieces, and laid as plain cloth, which is said. Source: geometry.
 */
export const CLOTH_TO_BUY = define({
  name: "CLOTH_TO_BUY",
  summary: "How much of a cloth must still be bought when the pieces are cut from the cloth in stock first.",
  source: "geometry: the pieces are laid out; no published figure",
  words: "stash remnants leftovers use up first shopping how much more fabric needed share out allocate",
  takes: { ...PIECES_TO_CUT, stock, cloth, cloth_width, job, gap, pairs, folds, names, grains },
  block: cutListForm({ stock, cloth, cloth_width, job, gap }, [
    {
      formula: '=CLOTH_TO_BUY(cut_list; stock; "linen"; 54)',
      because: "how much linen 54 wide must be bought when the linen of the list named stock is cut first",
    },
  ]),
  returns: "length",
  compute(given, context) {
    const { measure, doubt, say } = context;
    const { question, lay, length, copies, isProved, isSearched } = sharedOut(given, context);
    question.cloths.forEach(({ name }, i) => {
      measure(
        `cloth_${i + 1}`,
        i < question.cloths.length - 1 ? () => phrase`cut from ${name}` : "cut from bought cloth",
        piecesOn(question, lay, i) || written`nothing`,
      );
    });
    if (question.cloths.length === 1) measure("laid_as", "none of it is in stock: it is laid as", PLAIN);
    if (!isSearched && !isProved())
      doubt(
        phrase`${say(length)} is an estimate: of ${copies} copies, more than ${MOST_COPIES}, those are bought that found no place in one lay of the stock, and no better way to share them out was looked for; divide the cut list to have it looked for`,
      );
    return measure("to_buy", "length of the lay of what the stock does not take", length);
  },
  beside(given, _answer, { plan, cm, unit, mark }) {
    const { question, lay, isProved, mayLie } = sharedOut(given, { plan, cm, unit, mark });
    // The cloth that is bought stands last.
    const cloths = question.cloths.map((cloth, i, { length }) =>
      i === length - 1 && cloth.name === "to buy" ? { ...cloth, name: written`cloth to buy` } : cloth,
    );
    const cut = piecesByCloth({ ...question, cloths }, lay);
    if (question.cloths.length === 1) return phrase`${cut}, laid as ${PLAIN}: none of it is in stock`;
    if (mayLie === 0) return phrase`no piece is small enough for the cloth in stock: ${cut}`;
    return isProved() || mayLie === 0
      ? cut
      : phrase`${cut}: the best way to share them out that was found, not proved least`;
  },
  draw(given, _found, _answer, { plan, cm, unit, mark }) {
    const { question, lay } = sharedOut(given, { plan, cm, unit, mark });
    return drawLay(question, lay);
  },
  examples: [
    {
      given: {
        pieces: ["M 0 0 L 20 0 L 20 40 L 0 40 Z"],
        quantities: [5],
        stock: asBlock(
          [
            ...["Cloth", "Name", "Usable width", "Length", "Reserved"],
            ...["linen", "chest linen", 42, 45, null, "linen", "roll end", 22, 90, 50],
          ],
          5,
          [],
        ),
        cloth: "linen",
        cloth_width: 54,
      },
      gives: 40,
      because:
        "two of five panels lie on the first cloth, one on what is left of the second, two side by side on new cloth",
    },
    {
      given: {
        pieces: ["M 0 0 L 50 0 L 50 30 L 0 30 Z", "M 0 0 L 50 0 L 50 60 L 0 60 Z"],
        quantities: [1, 1],
        stock: asBlock(
          [...["Cloth", "Name", "Usable width", "Length", "Reserved"], ...["wool", "remnant", 50, 60, null]],
          5,
          [],
        ),
        cloth: "wool",
        cloth_width: 54,
        names: ["short", "long"],
      },
      gives: 30,
      because: "the remnant takes either piece: with the longer on it, only 30 in are bought",
    },
  ],
});

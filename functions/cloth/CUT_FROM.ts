import { asBlock } from "../block.ts";
import { sameName } from "../compared-name.ts";
import { CUTTING_RULES, PIECES_TO_CUT } from "../cutting/cut-list.ts";
import { cutListForm } from "../cutting/cut-list-block.ts";
import { drawLay } from "../cutting/lay-drawing.ts";
import { piecesOn } from "../cutting/pieces-on-cloth.ts";
import { stockNamed } from "../cutting/stock-list.ts";
import { SHARED_OUT, sharedOut } from "../cutting/stock-question.ts";
import { define } from "../define.ts";
import { phrase, written } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

const { gap, pairs, folds, names, grains } = CUTTING_RULES;
const { stock, cloth, cloth_width, job } = SHARED_OUT;
const NAME = {
  kind: "text",
  about: "the name of the piece of cloth in stock; a blank gives an empty text",
} as const;

/**
 * Which pieces are cut from one piece of cloth in stock, when the pieces are shared out as CLOTH_TO_BUY
 * shares them out: "2 of front, 1 of sleeve". "nothing" when no piece is cut from it, also when no piece of the cut list is of its cloth.
 * Refuses a name that the stock does not have, and one that is of another cloth. Source: geometry.
 */
export const CUT_FROM = define({
  name: "CUT_FROM",
  summary: "Which pieces to cut from one piece of the cloth in stock, so that least is bought.",
  source: "geometry: the pieces are laid out; no published figure",
  words: "stash remnant which pieces go on which cloth share out allocate stock",
  takes: { ...PIECES_TO_CUT, stock, name: NAME, cloth, cloth_width, job, gap, pairs, folds, names, grains },
  block: cutListForm(
    { stock, name: NAME, cloth, cloth_width, job, gap },
    [
      {
        formula: '=CUT_FROM(cut_list; stock; "chest linen"; "linen"; 54)',
        because: "what is cut from the piece called chest linen when more linen is 54 wide",
      },
    ],
    { mayBeNone: true },
  ),
  returns: "text",
  compute(given, context) {
    const { measure, cm } = context;
    if (given.name.trim() === "") return measure("cut", "no cloth is named", "");
    const piece = stockNamed(given.stock, given.name, given.job, cm);
    const wanted = given.cloth?.trim() ?? "";
    if (wanted !== "" && !sameName(wanted, piece.cloth))
      throw new Refusal(
        phrase`${piece.name} is ${piece.cloth}, not ${wanted}: name a piece of ${wanted}`,
        piece.at("cloth"),
      );
    if (given.pieces.length === 0)
      return measure("cut", () => phrase`no piece is of ${piece.cloth}`, written`nothing`);
    const { question, lay } = sharedOut(given, context);
    const at = question.cloths.findIndex(
      ({ name }, i) => i < question.cloths.length - 1 && sameName(name, piece.name),
    );
    return measure(
      "cut",
      () => phrase`cut from ${piece.name}`,
      (at < 0 ? "" : piecesOn(question, lay, at)) || written`nothing`,
    );
  },
  draw(given, _found, _answer, { plan, cm, unit, mark }) {
    if (given.name.trim() === "" || given.pieces.length === 0) return [];
    const { question, lay } = sharedOut(given, { plan, cm, unit, mark });
    return drawLay(question, lay);
  },
  examples: [
    {
      given: {
        pieces: ["M 0 0 L 50 0 L 50 30 L 0 30 Z", "M 0 0 L 50 0 L 50 60 L 0 60 Z"],
        quantities: [1, 1],
        stock: asBlock(
          [...["Cloth", "Name", "Usable width", "Length", "Reserved"], ...["wool", "remnant", 50, 60, null]],
          5,
          [],
        ),
        name: "remnant",
        cloth: "wool",
        cloth_width: 54,
        names: ["short", "long"],
      },
      gives: "1 of long",
      because: "the remnant takes either piece; the shorter is the less to buy",
    },
  ],
});

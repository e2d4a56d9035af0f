/** The lays of a book on paper, each with what it is of, how it was found and how it lies. */

import { type Lay, type LayQuestion, originText } from "../../functions/lay.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import { convert } from "../../functions/units.ts";
import { placeKey } from "../book/address.ts";
import type { Engine } from "../engine/engine.ts";
import { cellTextWithName } from "../engine/label.ts";
import { laidText } from "../engine/laid.ts";
import { remarksOf } from "../engine/remarks.ts";
import { lengthText, plainNumber, type Rule } from "../engine/show.ts";
import { cellsAsked } from "./cells-asked.ts";
import type { Sheet } from "./document.ts";
import type { Asked, Built } from "./documents.ts";
import { drawnFor } from "./drawn-for.ts";
import { Flow } from "./flow.ts";
import type { NotPrinted } from "./kinds.ts";
import { ABOUT, type LayOnPaper, layOnPaper, longOf } from "./lay-on-paper.ts";
import { setTable } from "./table.ts";
import { tiledSheets } from "./tiled.ts";
import { tilesOfBox } from "./tiles.ts";

/** The parts of full size that a lay is drawn at when no scale is asked for. */
const PARTS = [
  1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 16, 20, 24, 25, 30, 32, 40, 50, 60, 80, 100, 150, 200, 300, 500,
];
const MOST_PART = 500;

/** The part of full size of a scale such as "1/12", or a sentence that says why the text is not a scale. */
function partOf(text: string): number | NotPrinted {
  const [, part] = /^1(?:\/(\d{1,3}))?$/.exec(text.trim()) ?? [null, null];
  const number = part === null ? Number.NaN : Number(part ?? 1);
  return number >= 1 && number <= MOST_PART
    ? number
    : { reason: phrase`the scale of a lay is 1, or 1/2 to 1/${MOST_PART}, not "${text}"` };
}

interface Laid {
  readonly question: LayQuestion;
  readonly lay: Lay;
  /** Sentences about the cell that lays the pieces. */
  readonly remarks: readonly string[];
}

export function layDocument(engine: Engine, asked: Asked): Built | NotPrinted {
  const { request, page } = asked;
  const part = request.scale === undefined ? null : partOf(request.scale);
  if (typeof part === "object" && part) return part;
  const chosen = cellsAsked(engine, request.cells);
  if (chosen && "reason" in chosen) return chosen;
  const keys = chosen && new Set(chosen.map(placeKey));
  const laid = engine
    .laid()
    .filter(({ place }) => (keys ? keys.has(placeKey(place)) : page === null || place.page === page));
  const none = chosen?.find((place) => !laid.some((one) => placeKey(one.place) === placeKey(place)));
  if (none)
    return {
      reason: phrase`${cellTextWithName(engine.book, none)} lays no pieces on cloth: choose a cell with YARDAGE or CLOTH_CHECK`,
    };
  if (laid.length === 0)
    return { reason: phrase`no cell lays pieces on cloth: a cell with =YARDAGE(cut_list; 45) does` };
  const sentences: string[] = [];
  const sheets = laid.flatMap(({ place, lays }) => {
    const called = cellTextWithName(engine.book, place);
    const remarks = remarksOf(engine, place);
    const drawn = lays.flatMap(({ question, answer }) => {
      if (question.start) return [];
      if ("refusal" in answer) {
        sentences.push(phrase`${called} has no lay to draw: ${answer.refusal}`);
        return [];
      }
      return sheetsOf(engine, asked, { question, lay: answer, remarks }, called, part);
    });
    if (drawn.length > 0) sentences.push(...remarks.map((remark) => `${called}: ${remark}`));
    return drawn;
  });
  if (sheets.length === 0) return { reason: sentences.join("; ") };
  return { sheets, says: phrase`the lays of ${plural(laid.length, "# cell", "# cells")}`, sentences };
}

/** The part of full size with which the cloths fit in this room, or the greatest there is. */
function fitting(
  { question, lay }: Laid,
  millimetre: number,
  [wide, tall]: readonly [number, number],
): number {
  const long = Math.max(...longOf(question, lay)) * millimetre;
  const across = question.cloths.reduce((sum, { width }) => sum + width, 0) * millimetre;
  const free = tall - question.cloths.length * (ABOUT.above + ABOUT.below);
  const part = Math.max(long / (wide - ABOUT.left - ABOUT.right - 8), across / Math.max(free, 1));
  return PARTS.find((one) => one >= part) ?? PARTS.at(-1)!;
}

function sheetsOf(engine: Engine, asked: Asked, laid: Laid, called: string, part: number | null): Sheet[] {
  const { letters, manner } = asked;
  const { question, lay } = laid;
  const rule: Rule = engine.book;
  const millimetre = convert(1, rule.unit, "mm");
  const whose = drawnFor(engine);
  const flows = [false, true].map((isTurned) => {
    const flow = new Flow(letters, manner, phrase`Lay`, isTurned);
    facts(flow, rule, laid, { called, whose, scale: null });
    const [wide, tall] = [flow.right - flow.left, flow.bottom - flow.y - 2];
    const whole = fitting(laid, millimetre, [wide, tall]);
    // A little smaller when the list of pieces then stands on the same sheet.
    const list = (question.pieces.length + 2) * 2.5 * flow.size;
    const beside = fitting(laid, millimetre, [wide, tall - list]);
    return { isTurned, fits: beside <= 1.35 * whole ? beside : whole };
  });
  const { isTurned, fits } = flows[1]!.fits < flows[0]!.fits ? flows[1]! : flows[0]!;
  // For translators: a noun, how pieces lie on cloth to be cut.
  const flow = new Flow(letters, manner, phrase`Lay`, isTurned);
  const scale = part ?? fits;
  facts(flow, rule, laid, { called, whose, scale });
  const drawn = layOnPaper(letters, laid, rule, millimetre / scale, manner.large ? 4 : 2.6);
  const isWhole = drawn.width <= flow.right - flow.left && drawn.height <= flow.tall;
  if (isWhole) {
    flow.need(drawn.height);
    drawOn(flow, drawn);
  }
  flow.space(0.5);
  setTable(flow, {
    // For translators: the headings of a list of pieces: its number, its name, how many lie on the cloth, how many don't.
    headings: [phrase`No.`, phrase`Piece`, phrase`Laid`, phrase`Not laid`],
    rows: question.pieces.map(({ name, quantity }, i) => {
      const missing = lay.missing.find(([piece]) => piece === i)?.[1] ?? 0;
      const cells = [`${i + 1}`, name, `${quantity - missing}`, missing > 0 ? `${missing} ▲` : ""];
      return {
        cells: cells.map((text) => ({ text })),
        notes: missing > 0 ? [phrase`▲ ${missing} of ${name} found no place on this cloth`] : [],
      };
    }),
  });
  if (isWhole) return flow.sheets();
  const tiled = tilesOfBox(manner.paper, drawn.width, drawn.height);
  return [
    ...flow.sheets(),
    ...tiledSheets({ ...drawn, ...tiled }, manner.paper, { ...manner, says: phrase`lay, scale 1/${scale}` }),
  ];
}

/** What is known of the lay, above its drawing. */
function facts(
  flow: Flow,
  rule: Rule,
  { question, lay, remarks }: Laid,
  {
    called,
    whose,
    scale,
  }: { readonly called: string; readonly whose: string; readonly scale: number | null },
): void {
  flow.heading(called);
  if (whose !== "") flow.say(whose);
  const millimetre = convert(1, rule.unit, "mm");
  question.cloths.forEach(({ name, width, length }, i) => {
    const used = lay.lengths[i] ?? 0;
    const far =
      rule.unit === "in"
        ? `${plainNumber(used / 36, 2, rule.decimal)} yd`
        : `${plainNumber((used * millimetre) / 1000, 2, rule.decimal)} m`;
    const cloth = /^(cloth)?$/i.test(name) ? phrase`Cloth` : phrase`Cloth: ${name}`;
    const [wide, takes] = [lengthText(width, rule), `${lengthText(used, rule)} (${far})`];
    flow.say(
      length === null
        ? phrase`${cloth}, ${wide} wide. The lay takes ${takes}.`
        : phrase`${cloth}, ${wide} wide, ${lengthText(length, rule)} long in stock. The lay takes ${takes}.`,
    );
  });
  const origin = lay.origin ?? { by: "quick" };
  const more = [
    phrase`How it was found: ${origin.by === "quick" ? laidText(origin) : originText(origin)}.`,
    phrase`${plainNumber(100 * lay.density, 1, rule.decimal)} % of the cloth is used.`,
    question.gap > 0 ? phrase`Pieces lie ${lengthText(question.gap, rule)} apart.` : "",
    question.repeat > 0 ? phrase`The pattern repeats every ${lengthText(question.repeat, rule)}.` : "",
    scale === 1 ? phrase`Drawn at full size.` : phrase`Drawn at 1/${scale ?? 100} of full size.`,
  ];
  flow.say(more.filter(Boolean).join(" "));
  flow.say(phrase`An arrow on a piece points to its lower end.`);
  for (const remark of remarks) flow.say(`▲ ${remark}`);
  for (const [piece, count] of lay.missing)
    flow.say(phrase`▲ ${count} of ${question.pieces[piece]!.name} found no place.`, { bold: true });
  flow.space(0.3);
}

function drawOn(flow: Flow, { inks, words, height }: LayOnPaper): void {
  const [x, y] = [flow.left, flow.y];
  flow.on((doc) => {
    for (const ink of inks) doc.ink(ink, x, y);
    for (const { text, at, size } of words)
      doc.text(text, x + at[0], y + at[1] + 0.35 * size, { size, align: "middle" });
  });
  flow.y += height;
}

/**
 * Random cut lists of whole garments, from a seed: gored and flared skirts, bodices with sleeves and
 * cuffs, capes, petticoats, waistbands and facings, every outline from the sewing functions
 * themselves, allowances on. Lengths in inches.
 */
import { catalogue } from "../../../functions/catalogue.ts";
import type { CutRow } from "../../../functions/cutting/cut-list.ts";
import { layQuestion } from "../../../functions/cutting/lay-question.ts";
import type { LayQuestion } from "../../../functions/lay.ts";
import { readPiece } from "../../../functions/pieces/piece.ts";
import { type Argument, run } from "../../../functions/run.ts";
import { seeded } from "../../../src/lay/random.ts";
import { refusalOf } from "../../../src/lay/refuse.ts";

/** The path data that a sewing function gives, or null when it refuses. */
const attempt = (name: string, ...args: Argument[]): string | null => {
  const answer = run(catalogue.get(name)!, args, { unit: "in" });
  return typeof answer === "string" ? answer : null;
};

function made(name: string, ...args: Argument[]): string {
  const answer = attempt(name, ...args);
  if (answer === null) throw new Error(`${name} refuses ${JSON.stringify(args)}`);
  return answer;
}

/** A cut list of `least` to `most` copies and the cloth for it. The same seed gives the same list. */
export function garmentList(seed: number, least: number, most: number): LayQuestion {
  const random = seeded(seed * 7919);
  const between = (from: number, to: number) => Math.round((from + random() * (to - from)) * 8) / 8;
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const rows: CutRow[] = [];
  const width = pick([36, 42, 45, 54, 59, 60]);
  const cut = (name: string, outline: string, quantity: number, more: Partial<CutRow> = {}) => {
    const seam = pick([0.5, 0.625]);
    // A deep hem does not go round a narrow point; a facing is drawn with its allowances on.
    const hem = between(0.5, 2);
    const whole =
      attempt("WITH_ALLOWANCE", outline, seam, hem) ?? attempt("WITH_ALLOWANCE", outline, seam) ?? outline;
    rows.push({
      name,
      piece: readPiece(whole),
      quantity,
      paired: false,
      folded: false,
      grain: "straight",
      ...more,
    });
  };
  const sleeve = (wide: number, long: number) =>
    made(
      "OUTLINE",
      [0, wide * 0.22, wide / 2, wide * 0.76, wide, wide * 0.82, wide * 0.2],
      [long * 0.28, long * 0.08, 0, long * 0.07, long * 0.28, long, long],
      "1-5",
    );
  const bodice = (wide: number, long: number, neck: number) =>
    made(
      "OUTLINE",
      [0, neck * 0.7, neck, wide * 0.72, wide * 0.7, wide, wide * 0.86, 0],
      [neck, neck * 0.9, 0, long * 0.06, long * 0.28, long * 0.42, long, long * 1.03],
      "1-3, 4-6",
    );
  const garments: (() => void)[] = [
    () => {
      const count = pick([4, 6, 6, 7, 8]);
      const gore = made("GORE", between(3.5, 7), between(9, 22), between(24, 43));
      cut("gore", gore, count);
      if (random() < 0.4) cut("lining gore", gore, count);
      cut("waistband", made("WAISTBAND", between(24, 34), between(1, 2)), 1);
    },
    () => {
      cut("bodice front", bodice(between(9, 12), between(16, 20), between(3, 4.5)), 2, { paired: true });
      cut("bodice back", bodice(between(8, 11), between(16, 19), between(2.5, 3.5)), 2, { paired: true });
      cut("sleeve", sleeve(between(13, 19), between(18, 25)), 2, { paired: true });
      cut("cuff", made("CUFF", between(6, 8), between(1.5, 4), 1, 1), 2);
    },
    () => {
      const panel = made("FLARED_PANEL", between(12, 20), between(20, 33), between(16, 36));
      cut("skirt panel", panel, pick([2, 3, 4]));
      cut("facing", made("FACING", panel, 1, between(1.5, 3)), pick([2, 4]));
    },
    () => {
      cut("cape", made("CAPE", between(17, 22), between(14, 30), pick([0.5, 0.75])), 2, { paired: true });
      cut("collar", made("RECTANGLE", between(3, 5), between(17, 22)), 2);
    },
    () => {
      const back = between(36, 42);
      cut("petticoat half", made("PETTICOAT_PANEL", between(20, 32), back, back - 0.5, back - 1.5), 2, {
        paired: true,
      });
      cut("frill", made("RECTANGLE", between(5, 9), between(30, 44)), pick([2, 3, 4]));
    },
    () => {
      cut("peplum", made("SLASHED_PANEL", between(13, 18), between(6, 10), [1, 1.5, 1.5, 1]), pick([2, 4]), {
        paired: true,
      });
      cut("godet", made("GODET", between(6, 12), between(10, 18)), pick([2, 4, 6]));
    },
    () => {
      cut("circle panel", made("CIRCLE_PANEL", between(24, 30), between(14, 24), 1, 4), 4);
      cut("pocket", made("RECTANGLE", between(5, 7), between(6, 8)), pick([2, 4]));
    },
  ];
  const oneWay = random() < 0.35;
  const gap = pick([0, 0, 0.25]);
  const asked = () =>
    layQuestion(rows, [{ name: "the cloth", width, length: null }], { oneWay, gap, repeat: 0 }, 0.008);
  const copies = () => rows.reduce((sum, { quantity }) => sum + quantity, 0);
  const goal = least + Math.floor(random() * (most - least + 1));
  for (let tries = 0; copies() < goal && tries < 60; tries++) {
    const before = rows.length;
    pick(garments)();
    // Pieces that are too wide or have no sound outline, or more copies than asked for, go out again.
    while (rows.length > before && (copies() > most || refusalOf(asked()) !== null)) rows.pop();
  }
  return asked();
}

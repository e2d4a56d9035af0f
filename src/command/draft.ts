import { phrase } from "../../functions/phrase.ts";
import { writePiece } from "../../functions/pieces/piece.ts";
import { cautionsAt } from "../engine/cautions.ts";
import { canWear, type WornAt, wornAt } from "../engine/drawn.ts";
import type { Engine } from "../engine/engine.ts";
import { type FoundPiece, piecesOf } from "../engine/pieces.ts";
import { show } from "../engine/show.ts";
import { trueScaleSheet } from "../engine/true-scale-sheet.ts";
import { wornSheet } from "../engine/worn-sheet.ts";
import { fileNames } from "./file-names.ts";
import { fileName } from "./machine.ts";
import { openBook, setCells } from "./open.ts";
import { needsBook, readOptions } from "./options.ts";
import { JSON_OPTION, SET_OPTION, type Verb, type VerbOptions, Wrong } from "./verb.ts";

const OPTIONS = {
  out: { type: "string", value: "DIR", about: phrase`the folder to write to; it is created if missing` },
  worn: {
    type: "boolean",
    about: phrase`write the garments as worn too: front, side and back on a plain figure, one SVG file each`,
  },
  ...SET_OPTION,
  ...JSON_OPTION,
} as const satisfies VerbOptions;

export const draft: Verb = {
  name: "draft",
  usage: "BOOK --out DIR [--worn] [--set NAME=VALUE]... [--json]",
  about: phrase`Writes every pattern piece of a book to true scale, one SVG file each.`,
  options: OPTIONS,
  examples: [
    "draft templates/peplum-bodice.json --out pieces",
    "draft templates/peplum-bodice.json --set hip=46 --worn --out pieces --json",
  ],
  writes: phrase`One SVG file to true scale for each pattern piece, in DIR; their list on standard output.`,
  problems: phrase`a piece could not be drawn; the others are written`,
  async run(args, io) {
    const { values, positionals } = readOptions(args, OPTIONS, 1);
    const [path] = positionals;
    if (path === undefined) throw needsBook("draft");
    const folder = values.out?.trim() ?? "";
    if (folder === "") throw new Wrong(phrase`${"draft"} needs a folder to write to, such as --out pieces`);
    const engine = openBook(path, io);
    setCells(engine, values.set ?? []);
    const { found, lost } = piecesOf(engine);
    if (found.length === 0)
      throw new Wrong(
        lost[0]
          ? phrase`no piece of ${fileName(path)} can be drawn: ${lost[0].title}: ${lost[0].sentence}`
          : phrase`${fileName(path)} has no pattern pieces: a cell with ${"=RECTANGLE(10; 20)"} or another function that makes a piece is one`,
      );
    const toCheck = [
      ...lost.map(({ title, sentence }) => phrase`${title} is not drawn: ${sentence}`),
      ...found.flatMap(({ title, remarks }) => remarks.map((sentence) => `${title}: ${sentence}`)),
    ];
    const { book } = engine;
    const files = fileNames(
      found.map(({ name, title, address }) =>
        name !== undefined || title === address ? title : `${title} ${address}`,
      ),
      ".svg",
    );
    const written = found.map((one, i) => {
      const { svg, unit, width, height } = trueScaleSheet(book, one, cautionsAt(engine, [one.place]));
      const file = `${folder.replace(/[\\/]+$/, "") || folder}/${files[i]}`;
      io.write(file, svg);
      const [wide, tall] = [width, height].map((length) => Number(length.toFixed(3)));
      return {
        file,
        piece: one.name === undefined ? one.address : one.title,
        title: one.title,
        sheet: { width: wide, height: tall, unit },
        one,
      };
    });
    const { garments, perhaps } = values.worn ? garmentsOf(engine, found) : { garments: [], perhaps: [] };
    const names = fileNames(
      garments.map(({ title }) => `${title} as worn`),
      ".svg",
    );
    const worn = garments.map((garment, i) => {
      const file = `${folder.replace(/[\\/]+$/, "") || folder}/${names[i]}`;
      const { title } = garment;
      const { says, measured, assumed } = garment.worn;
      io.write(file, wornSheet(book, title, garment.worn));
      return { file, garment: title, says, measured, assumed };
    });
    if (values.json)
      io.out(
        JSON.stringify(
          {
            files: written.map(({ one: _, ...file }) => file),
            ...(values.worn ? { worn, notWorn: perhaps } : {}),
            check: [
              ...lost.map(({ address, title, sentence }) => ({ address, title, sentence })),
              ...found.flatMap(({ address, title, remarks }) =>
                remarks.map((sentence) => ({ address, title, sentence })),
              ),
            ],
          },
          null,
          2,
        ),
      );
    else {
      for (const { file, title, one, sheet } of written)
        io.out(
          phrase`${file}  ${title}, ${show(writePiece(one.piece), "piece", book)}, on ${sheet.width!} × ${sheet.height!} ${sheet.unit}`,
        );
      for (const { file, garment, says } of worn) io.out(phrase`${file}  ${garment} as worn: ${says}`);
      for (const title of perhaps)
        io.out(phrase`${title} is not drawn as worn: nothing in the book says that it goes round the waist`);
      for (const sentence of toCheck) io.out(phrase`check: ${sentence}`);
    }
    return toCheck.length > 0 ? 1 : 0;
  },
};

/** The garments that the pieces make, each once, and the titles of pieces that may be no skirts. */
function garmentsOf(engine: Engine, pieces: readonly FoundPiece[]) {
  const garments = new Map<string, WornAt & { title: string }>();
  const perhaps: string[] = [];
  for (const { place, title } of pieces) {
    const wears = canWear(engine, place);
    if (wears === "perhaps") perhaps.push(title);
    const one = wears === "yes" ? wornAt(engine, place) : null;
    if (!one || garments.has(one.address)) continue;
    const piece = pieces.find(({ address }) => address === one.address);
    garments.set(one.address, { ...one, title: piece?.title ?? one.called });
  }
  return { garments: [...garments.values()], perhaps };
}

/** A book of a cast: a chart of wearers, a table of garments that runs down it, and its cloth. */
import { type Book, blankBook, type ColumnKind } from "../../../src/book/shape.ts";

const column = (heading: string, kind: ColumnKind) => ({ heading, kind, width: 100 });

/** A wearer's two rows: over the shift, then over stays and petticoat. Bodies grow a little from wearer to wearer. */
function chartRows(i: number): string[][] {
  const grown = (length: number, each: number) => String(length + (i % 10) * each);
  const verdict = (row: number) => `=WEARER_CHECK(figures; B${row}; C${row}; DATE(2026;5;20))`;
  return [
    [verdict(2 * i + 1), `role ${i + 1}`, "shift", "2026-05-01", grown(64, 0.25), grown(36, 0.5), grown(29, 0.5), grown(39, 0.5)],
    [verdict(2 * i + 2), `role ${i + 1}`, "shift, stays, petticoat", "2026-05-01", "", "", grown(27, 0.5), grown(40, 0.5)],
  ]; // biome-ignore format: a table
}

/** `wearers` wearers, and `garments` skirts of six gores, each for the next wearer in turn. */
export function castBook(wearers: number, garments: number): Book {
  const chart = Array.from({ length: wearers }, (_, i) => chartRows(i)).flat();
  const row = (i: number) => i + 1;
  const skirts = Array.from({ length: garments }, (_, i) => {
    const at = row(i);
    return [
      `role ${(i % wearers) + 1}`,
      `=MEASURE_OF(figures; A${at}; "waist girth"; "stays, petticoat, shift")`,
      `=MEASURE_OF(figures; A${at}; "hip girth"; "shift, stays, petticoat")`,
      `=GORE(B${at}/6; C${at}/6 + 6; 40)`,
      "6",
      i % 3 === 2 ? "linen" : "wool",
      `=A${at}&", skirt"`,
    ];
  });
  return {
    ...blankBook("Withy Green", "in", "1/8"),
    pages: [
      {
        title: "Measure",
        stage: "Measure",
        columns: [
          column("Check", "any"),
          column("Wearer", "text"),
          column("Worn beneath", "text"),
          column("Taken on", "date"),
          ...["Stature", "Bust girth", "Waist girth", "Hip girth"].map((one) => column(one, "any")),
        ],
        rows: chart,
        notes: {},
      },
      {
        title: "Skirts",
        stage: "Draft",
        columns: [
          column("Wearer", "text"),
          column("Waist", "length"),
          column("Hip", "length"),
          column("Outline", "any"),
          column("How many", "number"),
          column("Cloth", "text"),
          column("Piece", "any"),
        ],
        rows: skirts,
        notes: {},
      },
    ],
    names: {
      figures: `Measure!B1:H${chart.length}`,
      cut_list: `Skirts!D1:G${garments}`,
    },
  };
}

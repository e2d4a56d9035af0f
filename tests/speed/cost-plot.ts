/** A plot of cost against size: panels side by side, both scales logarithmic, one line for each program. */

export interface Panel {
  readonly title: string;
  /** What the figures are: "ms", "MB". */
  readonly unit: string;
  readonly lines: readonly Line[];
}

export interface Line {
  readonly name: string;
  /** Sizes and costs, both above 0. */
  readonly points: readonly (readonly [size: number, cost: number])[];
}

const [WIDE, HIGH] = [360, 320];
const ROOM = { left: 56, right: 12, top: 34, bottom: 78 };
/** Dashes tell the lines apart where there is no colour. */
const STYLES = [
  { stroke: "#7a2e1d", dashes: "" },
  { stroke: "#2f5d62", dashes: "6 3" },
  { stroke: "#6b6b6b", dashes: "2 3" },
] as const;

const tens = (low: number, high: number): number[] =>
  Array.from({ length: high - low + 1 }, (_, i) => 10 ** (low + i));
const short = (figure: number): string => (figure >= 1000 ? `${figure / 1000}k` : String(figure));
const at = (figure: number): string => figure.toFixed(1);

/** The logarithm of a figure, from 0 to 1 between two powers of ten. */
function scale(figures: readonly number[]): { readonly marks: number[]; readonly share: (f: number) => number } {
  const low = Math.floor(Math.log10(Math.min(...figures)) + 1e-9);
  const high = Math.max(low + 1, Math.ceil(Math.log10(Math.max(...figures)) - 1e-9));
  return { marks: tens(low, high), share: (figure) => (Math.log10(figure) - low) / (high - low) };
} // biome-ignore format: a signature

function panel({ title, unit, lines }: Panel, left: number): string {
  const points = lines.flatMap((one) => one.points);
  const [sizes, costs] = [scale(points.map(([size]) => size)), scale(points.map(([, cost]) => cost))];
  const x = (size: number) => ROOM.left + sizes.share(size) * (WIDE - ROOM.left - ROOM.right);
  const y = (cost: number) => HIGH - ROOM.bottom - costs.share(cost) * (HIGH - ROOM.top - ROOM.bottom);
  const [foot, head, end] = [HIGH - ROOM.bottom, ROOM.top, WIDE - ROOM.right];
  const grid = [
    ...sizes.marks.map(
      (mark) =>
        `<path d="M${at(x(mark))} ${foot}V${head}"/><text x="${at(x(mark))}" y="${foot + 16}" text-anchor="middle">${short(mark)}</text>`,
    ),
    ...costs.marks.map(
      (mark) =>
        `<path d="M${ROOM.left} ${at(y(mark))}H${end}"/><text x="${ROOM.left - 6}" y="${at(y(mark) + 4)}" text-anchor="end">${short(mark)}</text>`,
    ),
  ];
  const drawn = lines.map(({ name, points: own }, i) => {
    const { stroke, dashes } = STYLES[i % STYLES.length]!;
    const [legend, row] = [ROOM.left, foot + 34 + 14 * i];
    const style = `fill="none" stroke="${stroke}" stroke-width="2"${dashes && ` stroke-dasharray="${dashes}"`}`;
    return [
      `<polyline ${style} points="${own.map(([size, cost]) => `${at(x(size))},${at(y(cost))}`).join(" ")}"/>`,
      ...own.map(
        ([size, cost]) => `<circle cx="${at(x(size))}" cy="${at(y(cost))}" r="2.5" fill="${stroke}"/>`,
      ),
      `<path ${style} d="M${legend} ${row - 4}h26"/><text x="${legend + 32}" y="${row}">${name}</text>`,
    ].join("");
  });
  return [
    `<g transform="translate(${left} 0)">`,
    `<text x="${ROOM.left}" y="20" font-weight="bold">${title}, ${unit}</text>`,
    `<g stroke="#d5cfc4" fill="#333">${grid.join("").replaceAll("<text", '<text stroke="none"')}</g>`,
    ...drawn,
    "</g>",
  ].join("\n");
}

/** The whole plot as an SVG. */
export const costPlot = (panels: readonly Panel[]): string =>
  [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDE * panels.length} ${HIGH}" width="${WIDE * panels.length}" font-family="sans-serif" font-size="11">`,
    "<title>What a book costs against its number of formulas</title>",
    '<rect width="100%" height="100%" fill="#fffdf8"/>',
    ...panels.map((one, i) => panel(one, i * WIDE)),
    "</svg>\n",
  ].join("\n");

import { isAbove, isBelow } from "../compared-figures.ts";
import { define } from "../define.ts";
import { twoSeams } from "../drawing/seam-pair.ts";
import { phrase, written } from "../phrase.ts";
import { askedSeam, listFault, SEAM_ASKED } from "../seams/asked-seam.ts";
import { EXAMPLE_PIECES, EXAMPLE_SEAMS } from "../seams/example-lists.ts";
import { miscounted } from "../seams/miscounted.ts";
import { sideKey, sideName } from "../seams/seam-list.ts";
import {
  doubtCounts,
  isBias,
  type MeasuredSeam,
  measuredSeam,
  type SeamSide,
  seamsBeside,
  seamsText,
  sideAngle,
  wantedDifference,
} from "../seams/seam-sides.ts";
import { joinedByAnd, toCheck, wantedText } from "../verdict.ts";

/** Without a wanted difference an eased or stretched edge may differ by this share of the other, and a gathered one must by the second. */
const MOST_EASED = 0.1;
const LEAST_GATHERED = 0.15;

/**
 * Whether the two sides of a seam of the list can be sewn together: "ok", or a sentence. Lengths are those
 * of the garment: a piece on the fold has an edge that meets the fold once, twice as long as drawn, and every
 * other edge twice; a piece of which the garment has several has each edge as often. How many such seams there
 * are is what all these numbers can be divided by; both sides are compared for one of them. The difference is
 * the first edge less the second. Plain edges must be equally long; others differ by the wanted difference or
 * fullness, and where neither is given by up to a tenth when eased or stretched, by more than a seventh when
 * gathered. `tolerance` is 1.5 mm or 1/16 in when it is left out. An edge near the bias sewn to one that is
 * not is answered with a caution, unless it is the fuller edge and is eased or gathered. Source: common practice.
 */
export const SEAM_VERDICT = define({
  name: "SEAM_VERDICT",
  summary:
    "Checks one row of the list of seams: whether both edges are as long as they should be, as the garment has them.",
  source: "common practice",
  words: "walk true up page of seams sewn together edges match waistband eased gathered list verdict",
  takes: {
    ...SEAM_ASKED,
    tolerance: {
      kind: "length",
      about: "the largest difference from what is wanted that is still ok",
      from: 0,
      to: 100,
      otherwise: { cm: 0.15, in: 1 / 16 },
    },
  },
  returns: "verdict",
  compute({ tolerance, ...asked }, context) {
    const { measure, step, say, doubt, points } = context;
    const { seam, all } = askedSeam(asked);
    const fault = listFault(seam, all);
    if (fault) {
      points({ argument: "seams", cell: fault.seam.places.piece! }, fault.sentence);
      return toCheck(fault.sentence);
    }
    const measured = measuredSeam(seam, asked.pieces);
    doubtCounts(measured, doubt);
    const { sides, seams } = measured;
    const [first, second] = sides;
    measure("such_seams", () => seamsText(seams), seams);
    const [a, b] = [
      measure("first_edge", () => phrase`along ${first.text}`, first.length),
      measure("second_edge", () => phrase`along ${second.text}`, second.length),
    ];
    const angles = sides.map(sideAngle) as [number, number];
    measure("first_to_grain", "mean angle of the first edge to the grain, in degrees", angles[0]);
    measure("second_to_grain", "mean angle of the second edge to the grain, in degrees", angles[1]);
    if (isBias(angles[0]) !== isBias(angles[1])) {
      const [bias, other] = isBias(angles[0]) ? [first, second] : [second, first];
      // A fuller edge is drawn up to the other, and a stay would hold it back.
      const isDrawnUp = (seam.how === "eased" || seam.how === "gathered") && bias.length > other.length;
      if (!isDrawnUp) doubt(stayFirst(bias, other, Math.round(Math.max(...angles.filter(isBias)))));
    }
    const allowed = step("allowed", "tolerance", tolerance);
    const difference = step("difference", "first_edge - second_edge", a - b);
    const wanted = wantedDifference(seam, b);
    const found = sidesText(measured, say(a, b), say(b, a));
    const longer = (by: number, ...beside: number[]) => {
      const figure = say(Math.abs(by), ...beside);
      return by > 0 ? written`the first ${figure} longer` : written`the first ${figure} shorter`;
    };
    if (wanted !== null) {
      measure("wanted", "the wanted difference of the row", wanted);
      const off = step("off", "difference - wanted", difference - wanted);
      if (Math.abs(off) <= allowed * (1 + 1e-9)) return "ok";
      blame((one, other) => Math.abs(one - other - wantedDifference(seam, other)!) <= allowed);
      const should = wantedText(wanted, say(Math.abs(wanted), Math.abs(difference), 0));
      const is = difference === 0 ? written`equally long` : longer(difference, Math.abs(wanted), 0);
      return toCheck(written`${found}, ${is}; ${should}${succession()}`);
    }
    const share = step("share", "difference / second_edge", difference / b);
    if (seam.how === "eased" && isAbove(Math.abs(share), MOST_EASED, 1)) {
      blame((one, other) => Math.abs(one - other) <= MOST_EASED * other);
      return toCheck(
        written`${found}, ${longer(difference, 0)}: more than a tenth can hardly be eased in; write the wanted difference, or gather it`,
      );
    }
    if (seam.how === "stretched" && (isAbove(share, 0, 1) || isBelow(share, -MOST_EASED, 1)))
      return toCheck(
        written`${found}: an edge that is stretched is up to a tenth shorter than the other; write the wanted difference`,
      );
    if (seam.how === "gathered" && isBelow(Math.abs(share), LEAST_GATHERED, 1))
      return toCheck(
        written`${found}: the difference is too little to gather; write the wanted difference or fullness, or ease it`,
      );
    return "ok";

    /** Leads to the number of a piece where another one makes the seam come out. */
    function blame(fits: (first: number, second: number) => boolean): void {
      for (const { piece, count } of miscounted(measured, fits))
        if (piece.countCell)
          points(
            piece.countCell,
            phrase`there are ${piece.count} of ${piece.name}, and with ${count} its seams come out: is the number right?`,
          );
    }

    /** Where one side is sewn to several others in other rows, it may be meant that they follow one another. */
    function succession(): string {
      for (const side of seam.sides) {
        const key = sideKey(side);
        const others = all.flatMap(({ sides: [one, other] }) =>
          sideKey(one) === key ? [sideName(other)] : sideKey(other) === key ? [sideName(one)] : [],
        );
        if (others.length > 1)
          return written`. ${sideName(side)} stands in ${others.length} rows: where it is sewn to ${joinedByAnd(others)} one after the other, write them in one row, joined by +`;
      }
      return "";
    }
  },
  beside(given, _answer, { say }) {
    const { seam, all } = askedSeam(given);
    if (listFault(seam, all)) return "";
    const { sides, seams } = measuredSeam(seam, given.pieces);
    return phrase`compared: ${seamsBeside(seams, sides[0].length, say)}`;
  },
  draw(given, { first_edge, second_edge }) {
    if (first_edge === undefined || second_edge === undefined) return [];
    const { seam } = askedSeam(given);
    return twoSeams(first_edge, second_edge, {
      names: seam.sides.map(sideName) as [string, string],
      differenceShows: first_edge > second_edge ? "difference" : undefined,
    });
  },
  examples: [
    {
      given: { seams: EXAMPLE_SEAMS, pieces: EXAMPLE_PIECES, piece: "front", edge: "side" },
      gives: "ok",
      because: "both side seams, 15 in against 15 in",
      formula: '=SEAM_VERDICT(seams; pieces; "front"; "side")',
    },
    {
      given: {
        seams: EXAMPLE_SEAMS,
        pieces: EXAMPLE_PIECES,
        piece: "skirt",
        edge: "waist",
        sewn_to: "front + back",
        its_edge: "waist",
      },
      gives: "ok",
      because:
        "two fronts of 8 in and a back of 13 in from half its outline are 29 in, and so are two skirt halves",
      formula: "=SEAM_VERDICT(seams; pieces; A2; B2; C2; D2)",
    },
    {
      given: { seams: EXAMPLE_SEAMS, pieces: EXAMPLE_PIECES, piece: "sleeve", edge: "cap" },
      gives: "ok",
      because: "9 in against 8 1/2 in, half an inch of ease as wanted, in each sleeve",
      formula: '=SEAM_VERDICT(seams; pieces; "sleeve"; "cap")',
    },
  ],
});

/** What both sides measure, in words; `first` and `second` are their lengths. */
function sidesText({ sides: [one, other], seams }: MeasuredSeam, first: string, second: string): string {
  if (seams > 1)
    return one.several
      ? written`at each of ${seams} such seams ${one.text} are together ${first} and ${other.text} ${second}`
      : written`at each of ${seams} such seams ${one.text} is ${first} and ${other.text} ${second}`;
  return one.several
    ? written`${one.text} are together ${first} and ${other.text} ${second}`
    : written`${one.text} is ${first} and ${other.text} ${second}`;
}

/** Says that edges near the bias, at this angle to the grain, are stayed before they are sewn to others. */
function stayFirst(bias: SeamSide, other: SeamSide, degrees: number): string {
  if (bias.several)
    return other.several
      ? phrase`${bias.text} lie near the bias (${degrees} degrees to the grain) and ${other.text} do not: stay them before sewing, because they stretch`
      : phrase`${bias.text} lie near the bias (${degrees} degrees to the grain) and ${other.text} does not: stay them before sewing, because they stretch`;
  return other.several
    ? phrase`${bias.text} lies near the bias (${degrees} degrees to the grain) and ${other.text} do not: stay it before sewing, because it stretches`
    : phrase`${bias.text} lies near the bias (${degrees} degrees to the grain) and ${other.text} does not: stay it before sewing, because it stretches`;
}

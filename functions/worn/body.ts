import { phrase } from "../phrase.ts";
/**
 * The wearer's measurements that a book has beside the arguments of a function. A garment takes from
 * them what its figure needs; what was taken, and from where, is said, and so is what could not be taken.
 */

export const BODY_MEASURES = [
  "waist", "hip", "hip_over_pad", "hip_drop", "stature", "waist_height", "bust", "shoulder", "neck",
] as const; // biome-ignore format: a list
export type BodyMeasure = (typeof BODY_MEASURES)[number];

/** What each is called in a sentence. */
export const BODY_WORDS: Readonly<Record<BodyMeasure, string>> = {
  waist: phrase`waist girth`,
  hip: phrase`hip girth`,
  hip_over_pad: phrase`hip girth over the pad`,
  hip_drop: phrase`waist to hip`,
  stature: phrase`stature`,
  waist_height: phrase`waist height`,
  bust: phrase`bust girth`,
  shoulder: phrase`shoulder length`,
  neck: phrase`neck girth`,
};

export interface Measured {
  /** In the book's unit. */
  readonly length: number;
  /** The cell's address: "Measure!B5". */
  readonly from: string;
}

export interface Body {
  readonly known: Readonly<Partial<Record<BodyMeasure, Measured>>>;
  /** Why a measurement that the book may have is not known, in a sentence. */
  readonly unsure: Readonly<Partial<Record<BodyMeasure, string>>>;
}

/** A book that says nothing of the wearer. */
export const NO_BODY: Body = { known: {}, unsure: {} };

/** What a garment needs of a call: lengths known in centimetres, lengths in words, and the wearer's measurements. */
export interface Lengths {
  cm(figure: number): number;
  say(length: number, ...beside: number[]): string;
  readonly body: Body;
}

/** The measurements taken for one garment. */
export interface Taken {
  /** The wearer's measurement; undefined when it is not known. */
  take(measure: BodyMeasure): number | undefined;
  /** What was taken, and from where, in words. */
  readonly measured: readonly string[];
  /** Why others were not, in sentences. */
  readonly unsure: readonly string[];
}

export function taking({ body, say }: Lengths): Taken {
  const [measured, unsure]: [string[], string[]] = [[], []];
  return {
    measured,
    unsure,
    take(measure) {
      const known = body.known[measure];
      if (known) measured.push(phrase`${BODY_WORDS[measure]} ${say(known.length)} from ${known.from}`);
      else if (body.unsure[measure]) unsure.push(body.unsure[measure]);
      return known?.length;
    },
  };
}

import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase, written } from "../phrase.ts";
import { fromTape } from "../units.ts";
import { toCheck } from "../verdict.ts";

/** Least ease for wearing, as printed in inches, and in round centimetres. */
const LEAST = {
  bust: { in: 1.5, cm: 4 },
  "dress waist": { in: 0.75, cm: 2 },
  "skirt waist": { in: 0.5, cm: 1.5 },
  hip: { in: 2, cm: 5 },
  seat: { in: 1.5, cm: 4 },
  thigh: { in: 1, cm: 2.5 },
  "shirt chest": { in: 1.5, cm: 4 },
  "bodice over stays": { in: -0.5, cm: -1 },
} as const;

type Place = keyof typeof LEAST;

/**
 * Whether a garment of firm woven cloth has the ease to be worn at all: "ok", or by how much it
 * falls short of the usual minimum: 1 1/2 in at the bust, 3/4 in at the waist of a dress, 1/2 in
 * at the waist of a skirt or trousers, 2 in at the hip, 1 1/2 in at the seat of trousers, 1 in at
 * the thigh, 1 1/2 in at the chest of a fitted shirt. More ease than that is a matter of fashion
 * and is not checked. A bodice fitted over stays is measured over them and has no ease, or is up
 * to 1/2 in smaller: common practice. Stays themselves and knitted cloth have less by intent.
 * Source of the others: Central Washington University's costume text, ch. 16.
 */
export const EASE_CHECK = define({
  name: "EASE_CHECK",
  summary: "Whether a garment has at least the ease it needs to be worn, at bust, waist, hip, seat or thigh.",
  source:
    "Central Washington University, costume construction text, ch. 16: wearing ease; over stays: common practice",
  words: "too tight room minimum wearing ease sit breathe corset stays bodice over stays",
  takes: {
    place: { kind: "text", about: "where on the body", choices: Object.keys(LEAST) as Place[] },
    body: {
      kind: "length",
      about: "girth of the body there; over the stays for a bodice worn over them",
      from: 1,
      to: 500,
    },
    garment: { kind: "length", about: "girth of the sewn garment there", from: 1, to: 5000 },
  },
  returns: "verdict",
  usual: ["garment >= 0.6 * body", "garment <= 5 * body"],
  compute({ place, body, garment }, { step, measure, unit, say }) {
    const least = measure(
      "least",
      () => phrase`the usual minimum of ease at the ${place}`,
      fromTape(LEAST[place], unit),
    );
    const ease = step("ease", "garment - body", garment - body);
    const short = step("short", "least - ease", least - ease);
    if (short <= 1e-9 * body) return "ok";
    const finding =
      ease < 0 && least < 0
        ? written`the garment is ${say(-ease, -least)} smaller than the body over the stays, more than the usual ${say(-least, -ease)}`
        : ease < 0
          ? written`the garment is ${say(-ease, 0)} smaller than the body at the ${place}: is it meant to draw in, or to stretch?`
          : written`ease of ${say(ease, least)} at the ${place} is ${say(short, 0)} less than the usual minimum, ${say(least, ease)}`;
    return toCheck(finding);
  },
  draw({ body, garment }, { least = 0 }) {
    const low = Math.max(body, garment) / 20;
    return [
      stroke([[0, 0], [body, 0]], "guide", { label: phrase`body` }),
      stroke([[0, low], [garment, low]], "seam", { label: phrase`garment` }),
      dimension([body, 2 * low], [body + least, 2 * low], { label: phrase`minimum ease`, ...(least >= 0 ? { shows: "least" } : {}) }),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    {
      given: { place: "bust", body: 36, garment: 38 },
      gives: "ok",
      because: "2 in of ease, where 1 1/2 to 2 are usual",
    },
    {
      given: { place: "hip", body: 100, garment: 103 },
      gives: "check: ease of 3 cm at the hip is 2 cm less",
      unit: "cm",
      because: "5 cm, for the text gives 2 in as the minimum",
    },
    {
      given: { place: "bodice over stays", body: 34, garment: 34 },
      gives: "ok",
      because: "common practice: a bodice fitted over stays has no ease",
    },
  ],
});

import { define } from "../define.ts";
import { dimension, stroke } from "../drawing.ts";

/** Least ease for wearing, in inches. */
const LEAST = {
  bust: 1.5,
  "dress waist": 0.75,
  "skirt waist": 0.5,
  hip: 2,
  seat: 1.5,
  thigh: 1,
  "shirt chest": 1.5,
} as const;

type Place = keyof typeof LEAST;

/**
 * Whether a garment of firm woven cloth has the ease to be worn at all: "ok", or by how much it
 * falls short of the least usual one, 1 1/2 in at the bust, 3/4 in at the waist of a dress, 1/2
 * in at that of a skirt or trousers, 2 in at the hip, 1 1/2 in at the seat of trousers, 1 in at
 * the thigh, 1 1/2 in at the chest of a fitted shirt. More than that is a matter of fashion and
 * not looked at. Stays and knitted cloth have less by intent. Source: Central Washington
 * University's costume text, ch. 16.
 */
export const EASE_CHECK = define({
  name: "EASE_CHECK",
  summary: "Whether a garment has at least the ease it needs to be worn, at bust, waist, hip, seat or thigh.",
  source: "Central Washington University, costume construction text, ch. 16: wearing ease",
  words: "too tight room minimum wearing ease sit breathe",
  takes: {
    place: { kind: "text", about: "where", choices: Object.keys(LEAST) as Place[] },
    body: { kind: "length", about: "girth of the body there", from: 1, to: 500 },
    garment: { kind: "length", about: "girth of the garment there, seamed", from: 1, to: 5000 },
  },
  returns: "verdict",
  usual: ["garment >= 0.6 * body"],
  work({ place, body, garment }, { step, measure, cm, say }) {
    const least = measure("least", `the least usual ease at the ${place}`, cm(2.54 * LEAST[place]));
    const ease = step("ease", "garment - body", garment - body);
    const short = step("short", "least - ease", least - ease);
    if (short <= 1e-9 * body) return "ok";
    const told =
      ease < 0
        ? `the garment is ${say(-ease)} smaller than the body at the ${place}: meant to draw in, or to stretch?`
        : `ease of ${say(ease)} at the ${place} is ${say(short)} less than the usual least, ${say(least)}`;
    return `look: ${told}`;
  },
  draw({ body, garment }, { least = 0 }) {
    const low = Math.max(body, garment) / 20;
    return [
      stroke([[0, 0], [body, 0]], "guide", { label: "body" }),
      stroke([[0, low], [garment, low]], "seam", { label: "garment" }),
      dimension([body, 2 * low], [body + least, 2 * low], { label: "least ease", shows: "least" }),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    { given: { place: "bust", body: 36, garment: 38 }, gives: "ok", because: "2 in, 1 1/2 to 2 being usual" },
    {
      given: { place: "hip", body: 100, garment: 103 },
      gives: "look: ease of 3 cm at the hip is 2.1 cm less",
      unit: "cm",
      because: "2 in are 5.1 cm",
    },
  ],
});

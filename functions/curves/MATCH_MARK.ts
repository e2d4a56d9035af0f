import { isAbove } from "../compared-figures.ts";
import { define } from "../define.ts";
import { twoSeams } from "../drawing/seam-pair.ts";
import { dimension, type Shape } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { easedShare, matchPlace } from "../seams/match-place.ts";

/**
 * Where the notch of one edge meets the edge it is sewn to, measured along that other edge from the same
 * end, in the book's unit. The amount by which the notched edge is longer is eased in evenly between
 * `ease_from` and `ease_to` along it (over all of it when both are left out); the rest matches length
 * for length.
 * Source: geometry.
 */
export const MATCH_MARK = define({
  name: "MATCH_MARK",
  summary:
    "Where a notch on one edge falls on the edge it is sewn to, when the ease lies between two places.",
  source: "geometry",
  words: "notch walk seams balance mark match ease in sleeve cap armhole gathers",
  takes: {
    at: { kind: "length", about: "place of the notch along the notched edge", from: 0, to: 5000 },
    notched_edge: { kind: "length", about: "length of the edge that has the notch", from: 0.5, to: 5000 },
    other_edge: { kind: "length", about: "length of the edge it is sewn to", from: 0.5, to: 5000 },
    ease_from: {
      kind: "length",
      about: "where along the notched edge the easing begins",
      from: 0,
      to: 5000,
      otherwise: 0,
    },
    ease_to: {
      kind: "length",
      about: "where along the notched edge the easing ends; its end when left out",
      from: 0.1,
      to: 5000,
      otherwise: null,
    },
  },
  returns: "length",
  usual: ["other_edge >= 0.7 * notched_edge", "other_edge <= 1.4 * notched_edge"],
  alike: {
    "at, ease_from": "the notch may lie before the easing or within it",
    "at, ease_to": "the notch may lie within the easing or beyond it",
    "notched_edge, other_edge": "either edge may be the longer",
  },
  compute({ at, notched_edge, other_edge, ease_from, ease_to }, { step }) {
    const end = step("ease_end", 'IF(ease_to=""; notched_edge; ease_to)', ease_to ?? notched_edge);
    if (isAbove(at, notched_edge))
      throw new Refusal(
        (say) =>
          phrase`at must be at most ${say(notched_edge, at)}, the length of the notched edge, not ${say(at, notched_edge)}`,
      );
    if (isAbove(end, notched_edge))
      throw new Refusal(
        (say) =>
          phrase`ease_to must be at most ${say(notched_edge, end)}, the length of the notched edge, not ${say(end, notched_edge)}`,
      );
    if (!isAbove(end, ease_from))
      throw new Refusal(
        (say) =>
          phrase`ease_from must be less than ${say(end, ease_from)}, where the easing ends, not ${say(ease_from, end)}`,
      );
    const ease = step("ease", "notched_edge - other_edge", notched_edge - other_edge);
    if (isAbove(ease, end - ease_from, end))
      throw new Refusal(
        (say) =>
          phrase`ease_from must leave more than ${say(ease, end - ease_from)} of the notched edge for easing in, not ${say(end - ease_from, ease)}`,
      );
    const eased = { first: notched_edge, second: other_edge, from: ease_from, to: end };
    step("eased_share", "MIN(1; MAX(0; (at - ease_from) / (ease_end - ease_from)))", easedShare(eased, at));
    return step("place", "at - ease * eased_share", matchPlace(eased, at));
  },
  draw({ at, notched_edge, other_edge, ease_from, ease_to }, { place = 0 }): Shape[] {
    const apart = Math.max(notched_edge, other_edge) / 10;
    return [
      ...twoSeams(notched_edge, other_edge),
      { kind: "marks", at: [[at, 0]], mark: "notch" },
      { kind: "marks", at: [[place, apart]], mark: "notch" },
      dimension([ease_from, -apart / 2], [ease_to ?? notched_edge, -apart / 2], { label: phrase`eased` }),
      dimension([0, 1.5 * apart], [place, 1.5 * apart], { shows: "place" }),
    ];
  },
  strip: ({ other_edge }, { place = 0 }) => ({
    length: other_edge,
    marks: [{ at: place, role: "notch", says: phrase`notch` }],
  }),
  examples: [
    {
      given: { at: 9, notched_edge: 18, other_edge: 17 },
      gives: 8.5,
      because: "half-way, so half of the inch of ease counts",
    },
    {
      given: { at: 14, notched_edge: 18, other_edge: 17, ease_from: 4, ease_to: 12 },
      gives: 13,
      because: "past the eased part, so all the ease counts",
    },
    {
      given: { at: 3, notched_edge: 46, other_edge: 43, ease_from: 8, ease_to: 38 },
      gives: 3,
      because: "before the eased part, so no ease counts yet",
      unit: "cm",
    },
  ],
});

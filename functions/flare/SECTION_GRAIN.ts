import { define } from "../define.ts";
import { type Shape, stroke } from "../drawing/shapes.ts";
import { type Point, polarPoint, radians } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * How far the grain of one section of an evenly spread panel leans, in degrees, when another
 * section lies along the grain: the sections share the panel's angle equally. A positive angle
 * leans away from the beginning, a negative one back towards it. Near 45 degrees a section hangs
 * on the bias and drops. Source: geometry.
 */
export const SECTION_GRAIN = define({
  name: "SECTION_GRAIN",
  summary: "How far off the straight grain a section of a spread panel lies when another lies straight.",
  source: "geometry",
  words: "grain lean bias slash spread section degrees off grain hang",
  takes: {
    section: { kind: "count", about: "the section asked about, counted from one side", from: 1, to: 500 },
    sections: { kind: "count", about: "sections in the panel", from: 1, to: 500 },
    angle: { kind: "angle", about: "the whole panel's angle, as FLARE_ANGLE gives it", from: -360, to: 360 },
    straight_section: {
      kind: "count",
      about: "the section that lies along the grain",
      from: 1,
      to: 500,
      otherwise: 1,
    },
  },
  returns: "angle",
  alike: { "section, straight_section": "any section may lie straight" },
  compute({ section, sections, angle, straight_section }, { step }) {
    for (const [name, number] of [["section", section], ["straight_section", straight_section]] as const) {
      if (number > sections) throw new Refusal(phrase`${name} must be at most ${sections}, as there are ${sections} sections, not ${number}`);
    } // biome-ignore format: names with their values
    const each = step("each", "angle / sections", angle / sections);
    return step("lean", "(section - straight_section) * each", (section - straight_section) * each);
  },
  draw({ section, sections, straight_section }, { each = 0, lean = 0 }, _, { cm }) {
    const [near, far] = [cm(20), cm(50)];
    const ray = (turn: number): [Point, Point] => {
      const angle = Math.PI / 2 - radians(turn);
      return [polarPoint([0, 0], near, angle), polarPoint([0, 0], far, angle)];
    };
    const shapes: Shape[] = Array.from({ length: sections }, (_, i) =>
      stroke(ray((i + 1 - straight_section) * each), i + 1 === section ? "grain" : "guide"),
    );
    shapes.push(stroke(ray(0), "grain", { label: phrase`straight` }));
    if (Math.abs(lean) > 0.01 && Math.abs(lean) <= 360) {
      shapes.push({
        kind: "angle",
        at: [0, 0],
        from: ray(0)[1],
        to: ray(lean)[1],
        reflex: Math.abs(lean) > 180,
        ...(lean > 0 ? { shows: "lean" } : {}),
      });
    }
    return shapes;
  },
  examples: [
    {
      given: { section: 5, sections: 5, angle: 50, straight_section: 1 },
      gives: 40,
      because: "four sections on, 10 degrees each",
    },
    {
      given: { section: 1, sections: 6, angle: 90, straight_section: 3 },
      gives: -30,
      because: "two sections back, 15 degrees each",
    },
  ],
});

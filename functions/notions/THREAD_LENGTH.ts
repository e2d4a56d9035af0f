import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";

/**
 * Thread for a machine-sewn seam, needle and bobbin thread together, in the book's unit. Each
 * stitch of a lockstitch (stitch type 301 of ISO 4915) takes, of either thread, its own length
 * plus the thickness of the cloth. Ends and broken threads are only included as far as `spare`
 * covers them.
 */
export const THREAD_LENGTH = define({
  name: "THREAD_LENGTH",
  summary: "How much thread a machine-sewn seam takes.",
  source: "geometry of the lockstitch (ISO 4915, type 301)",
  words: "thread spool reel bobbin consumption stitches per inch sewing machine",
  takes: {
    seam: { kind: "length", about: "length of all the seams", from: 0, to: 1_000_000 },
    stitch: { kind: "length", usual: [0.1, 0.8], about: "length of one stitch", from: 0.05, to: 3 },
    thickness: { kind: "length", about: "thickness of the layers under the foot", from: 0, to: 3 },
    spare: {
      kind: "share",
      about: "extra share for ends and breaks: 0.1 is 10 %",
      from: 0,
      to: 5,
      otherwise: 0,
    },
  },
  returns: "length",
  alike: { "stitch, thickness": "a short stitch may hold thick cloth" },
  compute({ seam, stitch, thickness, spare }, { step }) {
    const ratio = step(
      "per_length",
      "2 * (stitch + thickness) / stitch",
      (2 * (stitch + thickness)) / stitch,
    );
    return step("thread", "seam * per_length * (1 + spare)", seam * ratio * (1 + spare));
  },
  draw({ stitch, thickness }) {
    // Three stitches from the side: the needle thread above, locked half-way with the bobbin's below.
    const way = (from: number, to: number): [number, number][] =>
      [0, 1, 2].flatMap((i): [number, number][] => [
        [i * stitch, to],
        [i * stitch, from],
        [(i + 1) * stitch, from],
        [(i + 1) * stitch, to],
      ]);
    return [
      stroke(way(0, thickness / 2), "stitch", { label: phrase`needle thread` }),
      stroke(way(thickness, thickness / 2), "placement", { label: phrase`bobbin thread` }),
      dimension([0, -stitch / 2], [stitch, -stitch / 2], { label: phrase`stitch` }),
    ];
  },
  examples: [
    {
      given: { seam: 100, stitch: 0.1, thickness: 0.025 },
      gives: 250,
      because: "ten stitches to the inch: two and a half times the seam",
    },
    {
      given: { seam: 200, stitch: 0.25, thickness: 0.1, spare: 0.1 },
      gives: 616,
      unit: "cm",
      because: "2.8 times 2 m, and a tenth",
    },
  ],
});

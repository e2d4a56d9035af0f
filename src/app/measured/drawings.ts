/**
 * Small drawings of what a measurement or an argument means: a plain figure or a plain piece, and
 * what is measured on it. They explain; nothing in them is to scale. All share a box of 120 by 150.
 */

/** What is drawn beneath: a figure seen from the front or the side, an arm, or a piece of cloth. */
export type Ground = keyof typeof GROUNDS;

export const GROUNDS = {
  front:
    "M 60 6 a 8 10 0 1 1 -0.01 0 M 56 25 L 56 30 L 40 35 L 43 54 Q 46 62 47 68 Q 40 78 39 88 L 44 118 L 46 144 L 54 144 L 58 96 L 62 96 L 66 144 L 74 144 L 76 118 L 81 88 Q 80 78 73 68 Q 74 62 77 54 L 80 35 L 64 30 L 64 25 M 40 35 L 32 62 L 27 88 M 80 35 L 88 62 L 93 88",
  side: "M 60 6 a 9 10 0 1 1 -0.01 0 M 56 25 L 55 31 Q 48 36 47 48 Q 52 62 53 68 Q 45 80 47 90 L 53 118 L 53 144 L 68 144 L 64 138 L 65 118 Q 70 96 69 84 Q 67 72 65 67 Q 75 58 73 48 Q 66 40 64 31 L 65 25",
  arm: "M 30 24 Q 22 28 22 40 L 40 78 L 88 112 L 104 128 M 46 24 Q 54 36 56 66 L 96 100 L 110 118 M 30 24 L 46 24 M 104 128 L 110 118",
  skirt: "M 46 24 Q 60 28 74 24 Q 84 40 92 126 Q 60 138 28 126 Q 36 40 46 24 Z",
  bodice: "M 42 12 L 40 66 Q 52 76 60 92 Q 68 76 80 66 L 78 12",
  panel: "M 34 40 Q 60 50 86 40 L 108 112 Q 60 134 12 112 Z",
  cloth: "M 20 20 L 100 20 L 100 134 L 20 134 Z M 26 20 L 26 134 M 94 20 L 94 134",
  strip: "M 10 60 L 110 60 L 110 92 L 10 92 Z",
  ring: "M 60 10 a 60 60 0 1 1 -0.01 0 M 60 48 a 22 22 0 1 1 -0.01 0",
  hoops: "M 50 20 Q 60 24 70 20 Q 88 50 104 126 M 50 20 Q 32 50 16 126",
  opening: "M 44 12 L 44 138 M 76 12 L 76 138",
  pleats: "M 8 62 L 46 62 L 26 72 L 78 72 L 58 82 L 112 82",
  // An edge with buttons; a dart; a hem seen from its end; a round edge; a piece and its allowance; a slashed strip;
  // cloth cut on the bias; a sleeve; a row of tucks; a band with its overlap.
  buttons:
    "M 44 10 L 44 140 M 60 28 a 6 6 0 1 1 -0.01 0 M 60 64 a 6 6 0 1 1 -0.01 0 M 60 100 a 6 6 0 1 1 -0.01 0",
  dart: "M 14 40 L 44 40 L 60 110 L 76 40 L 106 40 L 106 140 L 14 140 Z",
  hem_fold: "M 44 10 L 44 122 Q 44 134 55 134 Q 66 134 66 122 L 66 64 Q 66 58 71 58 Q 76 58 76 64 L 76 80",
  arc: "M 14 100 A 58 58 0 0 1 106 100",
  allowance: "M 16 20 L 104 20 L 104 134 L 16 134 Z M 30 34 L 90 34 L 90 116 L 30 116 Z",
  slashed:
    "M 34 40 Q 60 50 86 40 L 112 108 Q 60 138 8 108 Z M 47 44 L 34 120 M 51 45 L 46 123 M 69 45 L 74 123 M 73 44 L 86 120",
  bias: "M 16 30 L 104 30 L 104 118 L 16 118 Z M 16 118 L 104 30 M 16 90 L 76 30",
  sleeve: "M 14 78 Q 36 74 44 44 Q 60 8 76 44 Q 84 74 106 78 L 92 140 L 28 140 Z",
  tucks:
    "M 8 36 L 112 36 L 112 120 L 8 120 Z M 34 36 L 34 120 M 48 36 L 48 120 M 72 36 L 72 120 M 86 36 L 86 120",
  band: "M 8 60 L 112 60 L 112 92 L 8 92 Z M 98 60 L 98 92",
  edge: "M 10 110 L 110 110 M 10 40 L 110 40 L 110 110 M 10 40 L 10 110",
} as const;

/** What is measured, on its ground. */
export type Mark =
  /** All round: the near half in full, the far half dashed. */
  | { readonly is: "round"; readonly from: number; readonly to: number; readonly y: number }
  /** A straight distance, with a stroke at each end. */
  | {
      readonly is: "length";
      readonly from: readonly [number, number];
      readonly to: readonly [number, number];
    }
  /** Along a line, such as a curve. */
  | { readonly is: "along"; readonly d: string };

export interface Drawing {
  readonly ground: Ground;
  readonly marks: readonly Mark[];
}

const round = (y: number, from: number, to: number): Mark => ({ is: "round", y, from, to });
const length = (x: number, y: number, x2: number, y2: number): Mark => ({
  is: "length",
  from: [x, y],
  to: [x2, y2],
});
const down = (x: number, y: number, y2: number): Mark => length(x, y, x, y2);
const across = (y: number, x: number, x2: number): Mark => length(x, y, x2, y);
const along = (d: string): Mark => ({ is: "along", d });
const on = (ground: Ground, ...marks: readonly Mark[]): Drawing => ({ ground, marks });

const WAIST = round(68, 47, 73);
const PANEL_TOP = along("M 34 40 Q 60 50 86 40");
const PANEL_HEM = along("M 12 112 Q 60 134 108 112");
const SKIRT_HEM = along("M 28 126 Q 60 138 92 126");
const PLEAT = along("M 46 62 L 26 72 L 78 72");

/** By the name of the measurement, question or argument. */
const DRAWINGS: Readonly<Record<string, Drawing>> = {
  waist: on("front", WAIST),
  hip: on("front", round(86, 39, 81)),
  bust: on("front", round(50, 43, 77)),
  neck: on("front", round(28, 56, 64)),
  head: on("front", round(14, 52, 68)),
  thigh: on("front", round(102, 42, 57)),
  calf: on("front", round(126, 45, 56)),
  ankle: on("front", round(140, 46, 54)),
  knee: on("front", round(116, 44, 56)),
  small: on("front", round(122, 45, 56)),
  rise: on("front", down(98, 68, 98)),
  knee_length: on("front", down(98, 68, 116)),
  hip_drop: on("front", down(90, 68, 86), WAIST, round(86, 39, 81)),
  skirt_length: on("front", down(96, 68, 134)),
  skirt_front: on("side", down(86, 68, 126)),
  skirt_back: on("side", down(36, 68, 140)),
  floor: on("front", down(100, 68, 144)),
  floor_side: on("front", down(100, 68, 144)),
  floor_front: on("side", down(86, 68, 144)),
  floor_back: on("side", down(36, 68, 144)),
  off_floor: on("front", down(100, 132, 144), across(132, 30, 90)),
  pad_thickness: on("side", across(78, 30, 46), along("M 47 70 Q 28 70 30 84 Q 40 88 47 86")),
  stature: on("front", down(104, 6, 144)),
  cervical_height: on("side", down(36, 28, 144)),
  waist_height: on("front", down(104, 68, 144)),
  hip_height: on("front", down(104, 86, 144)),
  knee_height: on("front", down(104, 116, 144)),
  back_waist_length: on("side", down(40, 30, 68)),
  shoulder_length: on("front", length(64, 30, 80, 35)),
  // Seen from the front as well: only the words say that it is the back.
  back_width: on("front", length(41, 43, 79, 43)),
  chest_width: on("front", length(43, 43, 77, 43)),
  back_depth: on("side", down(40, 30, 50)),
  front_depth: on("side", down(80, 32, 50)),
  front_waist_length: on("side", down(80, 32, 68)),
  arm: on("arm", along("M 24 48 Q 40 56 55 48")),
  arm_length: on("arm", along("M 26 24 L 30 40 L 46 76 L 92 106 L 107 123")),
  wrist: on("arm", along("M 96 122 Q 104 118 104 110")),
  hand: on("arm", along("M 104 128 Q 112 126 110 118")),
  armhole: on("bodice", along("M 78 12 Q 68 24 80 40")),
  front_drop: on("bodice", down(92, 66, 92), across(66, 40, 92)),
  back_drop: on("bodice", down(96, 66, 74), across(66, 30, 96)),
  cape_length: on("side", down(36, 30, 110)),
  apron_length: on("front", down(96, 68, 124)),
  depth: on("panel", down(60, 46, 122)),
  top: on("panel", PANEL_TOP),
  hem: on("skirt", SKIRT_HEM),
  panel_hem: on("panel", PANEL_HEM),
  fullness: on("skirt", SKIRT_HEM, along("M 46 24 Q 60 28 74 24")),
  gathers: on("edge", across(40, 10, 110), across(110, 36, 84)),
  gores: on("skirt", along("M 54 26 Q 50 60 46 132"), along("M 66 26 Q 70 60 74 132")),
  panels: on("skirt", along("M 60 27 L 60 134")),
  part: on("ring", along("M 60 70 L 60 10"), along("M 60 70 L 120 70")),
  inner: on("ring", length(60, 70, 82, 70)),
  flounce_depth: on("ring", length(82, 70, 118, 70)),
  ease: on("front", round(68, 43, 77), WAIST),
  pleats: on("pleats", PLEAT, along("M 78 72 L 58 82 L 112 82")),
  pleat_kind: on("pleats", PLEAT),
  fold_depth: on("pleats", across(50, 26, 46)),
  cloth_width: on("cloth", across(12, 26, 94)),
  one_way: on("cloth", along("M 60 110 L 60 44 M 50 56 L 60 44 L 70 56")),
  pattern_repeat: on("cloth", along("M 44 46 h 12 M 50 40 v 12 M 44 96 h 12 M 50 90 v 12"), down(72, 46, 96)),
  have: on("cloth", down(110, 20, 134)),
  length: on("cloth", down(110, 20, 134)),
  edge: on("strip", across(104, 10, 110)),
  strip: on("strip", down(60, 60, 92)),
  ruffle_depth: on("strip", down(60, 60, 92)),
  cuff_depth: on("strip", down(60, 60, 92)),
  facing_depth: on("panel", down(60, 106, 122), along("M 15 104 Q 60 118 105 104")),
  tiers: on("skirt", along("M 40 54 Q 60 60 80 54"), along("M 34 88 Q 60 96 86 88")),
  top_hoop: on("hoops", along("M 36 46 Q 60 54 84 46 Q 60 38 36 46")),
  bottom_hoop: on("hoops", along("M 16 126 Q 60 142 104 126 Q 60 112 16 126")),
  hoop_shape: on("hoops", along("M 70 20 Q 88 50 104 126")),
  garment: on("opening", across(60, 44, 76)),
  spacing: on("opening", down(84, 40, 58)),
  lacing: on("opening", along("M 44 30 L 76 48 L 44 66 L 76 84 L 44 102 L 76 120")),
  lacing_edge: on("opening", down(88, 12, 138)),
  button_edge: on("buttons", down(84, 10, 140)),
  button_gap: on("buttons", down(84, 34, 70)),
  button_top: on("buttons", down(84, 10, 34)),
  button_bottom: on("buttons", down(84, 106, 140)),
  button: on("buttons", across(84, 54, 66)),
  button_inset: on("buttons", across(52, 44, 54)),
  eyelet_inset: on("opening", down(88, 12, 30)),
  dart_length: on("dart", down(60, 40, 110)),
  dart_intake: on("dart", across(30, 44, 76)),
  dart_place: on("dart", across(26, 14, 60)),
  edge_with_dart: on("dart", along("M 14 40 L 44 40 M 76 40 L 106 40")),
  hem_depth: on("hem_fold", down(96, 58, 134)),
  hem_turning: on("hem_fold", down(96, 58, 80)),
  chord: on("arc", across(110, 14, 106)),
  arc_rise: on("arc", down(60, 66, 100)),
  seam_allowance: on("allowance", across(66, 16, 30)),
  hem_allowance: on("allowance", down(60, 116, 134)),
  slash_gap: on("slashed", length(34, 120, 46, 123)),
  sections: on("slashed", along("M 60 47 L 60 128")),
  slashed_top: on("slashed", PANEL_TOP),
  slashed_hem: on("slashed", along("M 8 108 Q 60 138 112 108")),
  bias_strip: on("bias", length(46, 60, 60, 74)),
  bias_along: on("bias", down(8, 90, 118)),
  bias_side: on("bias", across(20, 16, 104)),
  bias_other_side: on("bias", down(112, 30, 118)),
  cap: on("sleeve", along("M 14 78 Q 36 74 44 44 Q 60 8 76 44 Q 84 74 106 78")),
  collar_depth: on("front", along("M 53 30 Q 60 38 67 30"), length(66, 32, 70, 42)),
  yoke_front: on("front", along("M 41 43 L 79 43"), length(72, 33, 70, 43)),
  yoke_back: on("front", along("M 42 46 L 78 46"), down(60, 30, 46)),
  sleeve_width: on("sleeve", across(78, 14, 106)),
  sleeve_wrist: on("sleeve", across(146, 28, 92)),
  sleeve_length: on("sleeve", down(60, 26, 140)),
  tuck_width: on("tucks", across(130, 34, 48)),
  tuck_space: on("tucks", across(130, 48, 72)),
  tucked_width: on("tucks", across(26, 8, 112)),
  band_depth: on("band", down(60, 60, 92)),
  band_length: on("band", across(104, 8, 98)),
  overlap: on("band", across(104, 98, 112)),
  pleats_flat: on("pleats", along("M 8 62 L 46 62 L 26 72 L 78 72 L 58 82 L 112 82")),
  pleats_finished: on("pleats", across(100, 8, 112)),
  rectangle_width: on("cloth", across(12, 20, 100)),
  gore_top: on("panel", length(34, 34, 86, 34)),
  gore_side: on("panel", length(94, 40, 116, 112)),
  piece_hip: on("panel", across(76, 24, 96)),
  cape_hem: on("ring", along("M 60 10 a 60 60 0 1 1 -0.01 0")),
  channel: on("bodice", along("M 60 18 L 60 82")),
};

/** Other names for what is drawn above. */
const ALSO: Readonly<Record<string, string>> = {
  waist_girth: "waist", hip_girth: "hip", bust_girth: "bust", neck_girth: "neck", head_girth: "head", thigh_girth: "thigh",
  calf_girth: "calf", ankle_girth: "ankle", upper_arm_girth: "arm", wrist_girth: "wrist", hand_girth: "hand", body: "waist",
  waist_to_floor: "floor", clearance: "off_floor", girth: "waist", cap: "armhole", armscye: "armhole", amount: "ease",
  hem_length: "panel_hem", ratio: "gathers", flat: "gathers", finished_edge: "gathers", share: "apron_length", circle: "part",
  radius: "inner", fold: "fold_depth", pleat_depth: "fold_depth", style: "lacing", bones: "channel", hoop_width: "channel",
  bound: "edge", finished: "strip", binding_style: "strip", shape: "hoop_shape", width: "cloth_width", gap: "garment",
  passes: "hip", opening: "waist", thickness: "pad_thickness",
}; // biome-ignore format: in pairs

/** The drawing of what a name means, or null for a name without a drawing. */
export const drawingOf = (name: string): Drawing | null =>
  own(DRAWINGS, name) ?? own(DRAWINGS, own(ALSO, name) ?? "") ?? null;

const own = <T>(table: Readonly<Record<string, T>>, name: string): T | undefined =>
  Object.hasOwn(table, name) ? table[name] : undefined;

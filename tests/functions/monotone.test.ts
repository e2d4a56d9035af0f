import fc from "fast-check";
import { expect, test } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import type { Declaration } from "../../functions/define.ts";
import { type Argument, isRefused, run } from "../../functions/run.ts";
import { anyArguments, argumentsOf, measuresOf, setting } from "./laws.ts";

const SEED = 20261127;

/**
 * What the trade expects when one figure grows and all others stay: "+" the answer never becomes
 * less, "-" never more. A piece is judged by its area.
 */
const EXPECTED: Record<string, string> = {
  EASE: "body- garment+", WITH_EASE: "body+ amount+", GIRTH_OVER: "girth+ thickness+ layers+",
  PAD_GIRTH: "girth+ thickness+ share+", OVAL_GIRTH: "width+ depth+", DRAFT_SCALE: "wearer+",
  HEM_AT: "hip+ fullness+", SPREAD_PER_GAP: "top- hem+ sections-", SPREAD_TOTAL: "gap+ sections+ edge_share+",
  CIRCLE_RADIUS: "waist+ circle- ease+", CIRCLE_HEM: "radius+ length+ circle+", TOP_RADIUS: "top+ hem- depth+",
  FLARE_ANGLE: "top- hem+", GORE_EDGE: "length+", TIER_WIDTH: "edge+ ratio+ tier+", FLOUNCE_COUNT: "edge+ radius- seam+",
  SKIRT_LENGTH: "waist_to_floor+ clearance- heel+", FLARED_PANEL: "top+ hem+ depth+", RECTANGLE: "width+ length+",
  CAPE: "length+ circle+", CIRCLE_PANEL: "length+", PETTICOAT_PANEL: "width+ back+ front+", DISC: "radius+ less-",
  PLEAT_ALLOWANCE: "count+ depth+", PLEAT_DEPTH: "flat+ finished- count-", FLAT_WIDTH: "finished+ count+ depth+ seam+",
  PLEAT_COUNT: "flat+ finished- depth-", PLEATS_ACROSS: "finished+ width-", FULLNESS: "flat+ finished-",
  GATHER_WIDTH: "finished+ ratio+", PANELS: "flat+ cloth_width- seam+", TUCK_ALLOWANCE: "count+ width+",
  TUCK_COUNT: "finished+ gap- edge-", TAKE_UP: "flat+ finished-", SMOCK_WIDTH: "finished+ ratio+",
  STRIP_YARDAGE: "flat+ depth+ cloth_width- seam+", BIAS_SQUARE: "length+ strip+ seam+", BIAS_CUT_WIDTH: "finished+ turning+ ease+",
  BUY_LENGTH: "length+ spare+", CLOTH_COST: "length+ price+ per-", CUT_SIZE: "finished+ turning+ edges+",
  REPEAT_LENGTH: "length+ count+", SHRINK_ALLOW: "length+ share+", SHRUNK: "length+ share-", WIDTH_CHANGE: "length+ from+ to- extra+",
  DRAPE_ROOM: "size+ width+ share+", SLANT_LENGTH: "out+ up+ extra+", LAY_DENSITY: "cloth_width- length-",
  BAND_LENGTH: "waist+ extra+", BAND_WIDTH: "depth+ parts+ turning+", CAP_EASE: "cap+ armscye-",
  DART_INTAKE: "edge+ finished- darts- at_seams-", DART_LEG: "intake+ length+", DART_ANGLE: "intake+ length-",
  HEM_TURN: "depth+ turning+", HEM_EXCESS: "depth+ circle+", TURN_OF_CLOTH: "thickness+ layers+ angle+",
  CUFF: "wrist+ depth+ ease+ overlap+", WAISTBAND: "waist+ depth+ ease+ overlap+", WITH_ALLOWANCE: "seam+ hem+",
  FRONT_GAP: "girth+ fronts- overlap+", LACING_GAP: "body+ garment- drawn_in-", LET_OUT_ROOM: "keep-",
  PLACKET_LENGTH: "opening- passes+ ease+", TAKE_IN_EACH: "total+ seams-", FITTED: "flat+ change+",
  BINDING_LENGTH: "overlap+ corners+ width+", BONE_CUT: "channel+ clear-", BUTTON_COUNT: "edge+ spacing-",
  BUTTON_LOOP: "diameter+ thickness+ seam+ count+", BUTTON_COVER: "diameter+ thickness+ turning+", CASING_DEPTH: "width+ ease+ turning+",
  DRAWSTRING_LENGTH: "opening+ tails+", ELASTIC_LENGTH: "girth+ less- overlap+", EYELET_COUNT: "edge+ spacing- inset-",
  HOOK_COUNT: "edge+ spacing- inset-", HOOP_CUT: "girth+ overlap+", HOOP_GIRTH: "top+ bottom+", LACE_LENGTH: "gap+ pairs+ spacing+ tails+",
  PIPING_WIDTH: "cord+ seam+", PLACKET_STRIP: "opening+ extra+", STOCK_COUNT: "stock- loss+", THREAD_LENGTH: "seam+ thickness+ spare+",
  BODICE_FOUNDATION: "bust+ bust_ease+ back_length+", BREECHES_FOUNDATION: "seat+ knee+ side_length+ fullness+",
  SET_IN_SLEEVE: "length+ wrist+", TWO_PIECE_SLEEVE: "length+", STAND_COLLAR: "neck+ height+ overlap+", FLAT_COLLAR: "depth+",
  HIP_YOKE: "waist+ depth+", UNEVEN_GORE: "hem+", SHOULDER_YOKE: "front_depth+ back_depth+",
  TRIM_LENGTH: "edge+ ratio+ corners+ width+ ends+ spare+",
}; // biome-ignore format: a table

function figureOf(declaration: Declaration, args: readonly Argument[]): number | null {
  const answer = run(declaration, args, setting("cm"));
  if (isRefused(answer) || answer === "") return null;
  return declaration.returns === "piece" ? measuresOf(String(answer)).area : (answer as number);
}

const cases = Object.entries(EXPECTED).flatMap(([name, words]) =>
  words.split(" ").map((word) => [name, word.slice(0, -1), word.at(-1) === "+" ? 1 : -1] as const),
);

test.each(cases)("%s follows %s: %i", (name, argument, sign) => {
  const declaration = catalogue.get(name)!;
  const index = Object.keys(declaration.takes).indexOf(argument);
  expect(index, argument).toBeGreaterThanOrEqual(0);
  const { kind } = declaration.takes[argument]!;
  let compared = 0;
  const follows = (args: readonly Argument[], times: number) => {
    const value = args[index];
    if (typeof value !== "number") return;
    const more =
      kind === "count"
        ? value + Math.ceil(times)
        : value + Math.abs(value) * (times - 1) + (value === 0 ? 0.1 : 0);
    const [before, after] = [figureOf(declaration, args), figureOf(declaration, args.with(index, more))];
    if (before === null || after === null) return;
    compared += 1;
    const what = `${name}(${JSON.stringify(args).slice(0, 200)}), ${argument} ${value} to ${more}: ${before} to ${after}`;
    expect(sign * (after - before), what).toBeGreaterThanOrEqual(-1e-9 * Math.max(1, Math.abs(before)));
  };
  for (const example of declaration.examples) {
    // An example need not give an argument that may be left out.
    const args = argumentsOf(declaration, example);
    const { otherwise, from = 0 } = declaration.takes[argument]!;
    if (args[index] === null) args[index] = typeof otherwise === "number" ? otherwise : from;
    for (const times of [1.02, 1.3]) follows(args, times);
  }
  fc.assert(
    fc.property(anyArguments(declaration), fc.constantFrom(1.02, 1.5), (args, times) => {
      follows(args, times);
    }),
    { seed: SEED, numRuns: 12 },
  );
  expect(compared, "figures compared").toBeGreaterThan(0);
});

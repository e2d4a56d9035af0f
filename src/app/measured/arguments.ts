/** Which small drawing shows what an argument of a function measures. One name means different things in different functions. */
import { type Drawing, drawingOf } from "./drawings.ts";

/** By drawing: the arguments that it shows, each as FUNCTION.argument. What stands nowhere here has no drawing. */
export const SHOWN_BY: Readonly<Record<string, string>> = {
  waist:
    "BAND_LENGTH.waist CIRCLE_PANEL.waist CIRCLE_RADIUS.waist DIPPED_PANEL.waist GIRTH_AT.waist HIP_YOKE.waist SEAM_GIRTH.waist UNEVEN_GORE.waist WAISTBAND.waist FRONT_GAP.girth ELASTIC_LENGTH.girth EASE.body EASE_CHECK.body EASE_SHARE.body LACING_GAP.body BODICE_FOUNDATION.waist BREECHES_FOUNDATION.waist",
  hip: "DIPPED_PANEL.hip GIRTH_AT.hip HEM_AT.hip HIP_YOKE.hip SEAM_GIRTH.hip UNEVEN_GORE.hip PAD_GIRTH.girth BREECHES_FOUNDATION.seat",
  hip_drop:
    "DIPPED_PANEL.hip_drop GIRTH_AT.hip_drop GORE.hip_drop HEM_AT.hip_drop HIP_YOKE.hip_drop SEAM_GIRTH.hip_drop UNEVEN_GORE.hip_drop",
  front_drop: "DIPPED_PANEL.front_drop SEAM_GIRTH.front_drop",
  back_drop: "DIPPED_PANEL.back_drop SEAM_GIRTH.back_drop",
  ease: "EASE.garment EASE_CHECK.garment EASE_SHARE.garment WITH_EASE.amount WAISTBAND.ease CIRCLE_PANEL.ease CIRCLE_RADIUS.ease",
  pad_thickness: "PAD_GIRTH.thickness",
  neck: "CAPE.neck STAND_COLLAR.neck BODICE_FOUNDATION.neck",
  knee: "BREECHES_FOUNDATION.knee",
  small: "BREECHES_FOUNDATION.small",
  rise: "BREECHES_FOUNDATION.rise",
  knee_length: "BREECHES_FOUNDATION.knee_length",
  bust: "BODICE_FOUNDATION.bust",
  back_width: "BODICE_FOUNDATION.back_width",
  chest_width: "BODICE_FOUNDATION.chest",
  back_depth: "BODICE_FOUNDATION.back_depth",
  front_depth: "BODICE_FOUNDATION.front_depth",
  front_waist_length: "BODICE_FOUNDATION.front_length",
  wrist: "CUFF.wrist",
  cape_length: "CAPE.length",
  back_waist_length: "BALANCE.back BODICE_FOUNDATION.back_length",
  shoulder_length: "SHOULDER_SLOPE.shoulder BODICE_FOUNDATION.shoulder",
  floor: "SKIRT_LENGTH.waist_to_floor",
  off_floor: "SKIRT_LENGTH.clearance",
  skirt_front: "UNEVEN_GORE.front_length PETTICOAT_PANEL.front",
  skirt_back: "UNEVEN_GORE.back_length PETTICOAT_PANEL.back",
  gores: "UNEVEN_GORE.gores",
  skirt_length: "HEM_AT.depth DIPPED_PANEL.depth",
  armhole: "CAP_CHECK.armscye CAP_EASE.armscye SET_IN_SLEEVE.armhole TWO_PIECE_SLEEVE.armhole",
  collar_depth: "FLAT_COLLAR.depth",
  yoke_front: "SHOULDER_YOKE.front_depth",
  yoke_back: "SHOULDER_YOKE.back_depth",
  cap: "CAP_CHECK.cap CAP_EASE.cap",
  sleeve_width: "SET_IN_SLEEVE.bicep TWO_PIECE_SLEEVE.bicep",
  sleeve_wrist: "SET_IN_SLEEVE.wrist TWO_PIECE_SLEEVE.wrist",
  sleeve_length: "SET_IN_SLEEVE.length TWO_PIECE_SLEEVE.length",
  fullness: "HEM_AT.fullness DIPPED_PANEL.fullness",
  hem: "DIPPED_PANEL.hem_length UNEVEN_GORE.hem",
  top: "CURVED_HEM.top FLARED_PANEL.top FLARE_ANGLE.top PLEATED_PANEL.top TOP_RADIUS.top HEM_AT.top",
  panel_hem: "FLARED_PANEL.hem FLARE_ANGLE.hem GORE.hem GORE_EDGE.hem PLEATED_PANEL.hem TOP_RADIUS.hem",
  depth:
    "CURVED_HEM.depth FLARED_PANEL.depth FLARE_ANGLE.depth PLEATED_PANEL.depth TOP_RADIUS.depth GORE.length GORE_EDGE.length",
  gore_top: "GORE.top GORE_EDGE.top",
  piece_hip: "GORE.hip",
  slashed_top: "SPREAD_PER_GAP.top SLASHED_PANEL.top",
  slashed_hem: "SPREAD_PER_GAP.hem",
  sections: "SPREAD_PER_GAP.sections SPREAD_TOTAL.sections SECTION_GRAIN.sections",
  slash_gap: "SPREAD_TOTAL.gap SLASHED_PANEL.gaps",
  part: "CAPE.circle CIRCLE_HEM.circle CIRCLE_PANEL.circle CIRCLE_RADIUS.circle FLOUNCE_COUNT.circle HEM_EXCESS.circle",
  inner: "CIRCLE_HEM.radius FLOUNCE_COUNT.radius",
  flounce_depth: "CIRCLE_HEM.length CIRCLE_PANEL.length",
  panels: "CIRCLE_PANEL.panels",
  gathers:
    "GATHER_WIDTH.ratio RUFFLE_STRIP.ratio TIER_WIDTH.ratio TRIM_LENGTH.ratio SMOCK_WIDTH.ratio GATHER_WIDTH.finished CARTRIDGE_STITCH.finished CARTRIDGE_STITCH.flat FULLNESS.flat FULLNESS.finished",
  edge: "RUFFLE_STRIP.edge FLOUNCE_COUNT.edge TRIM_LENGTH.edge TIER_WIDTH.edge GATHER_MARK.edge",
  ruffle_depth: "RUFFLE_STRIP.depth STRIP_YARDAGE.depth",
  strip: "STRIP_YARDAGE.flat",
  tiers: "TIER_WIDTH.tier",
  fold_depth:
    "FINISHED_WIDTH.depth FLAT_WIDTH.depth JOIN_CHECK.depth PLEAT_ALLOWANCE.depth PLEAT_COUNT.depth PLEAT_MARK.depth PLEAT_MARKS.depth OPEN_PLEATS.fold_depth PLEATED_PANEL.fold_depth UNEVEN_ALLOWANCE.depths UNEVEN_MARK.depths",
  pleats:
    "FINISHED_WIDTH.style FLAT_WIDTH.style JOIN_CHECK.style OPEN_PLEATS.style PLEATED_PANEL.style PLEAT_ALLOWANCE.style PLEAT_COUNT.style PLEAT_MARK.style UNEVEN_ALLOWANCE.style UNEVEN_MARK.style",
  pleats_flat: "FINISHED_WIDTH.flat PLEAT_COUNT.flat PLEAT_DEPTH.flat TAKE_UP.flat",
  pleats_finished:
    "FLAT_WIDTH.finished JOIN_CHECK.finished PLEATS_ACROSS.finished PLEAT_COUNT.finished PLEAT_DEPTH.finished PLEAT_MARK.finished UNEVEN_MARK.finished TAKE_UP.finished",
  cloth_width:
    "YARDAGE.cloth_width CLOTH_TO_BUY.cloth_width CUT_FROM.cloth_width LAY_DENSITY.cloth_width JOIN_MARK.cloth_width PANELS.cloth_width RUFFLE_STRIP.cloth_width STRIP_YARDAGE.cloth_width CLOTH_CHECK.widths WIDTH_CHANGE.from WIDTH_CHANGE.to WIDTH_CHART.from WIDTH_CHART.to",
  length: "LAY_DENSITY.length CLOTH_CHECK.lengths BUY_LENGTH.length CLOTH_COST.length RECTANGLE.length",
  rectangle_width: "RECTANGLE.width",
  one_way: "CLOTH_CHECK.one_way YARDAGE.one_way",
  seam_allowance: "WITH_ALLOWANCE.seam",
  hem_allowance: "WITH_ALLOWANCE.hem",
  facing_depth: "FACING.depth",
  hem_depth: "HEM_CHECK.depth HEM_EXCESS.depth HEM_STITCH.depth HEM_TURN.depth",
  hem_turning: "HEM_TURN.turning",
  band_depth: "CUFF.depth STAND_COLLAR.height WAISTBAND.depth BAND_WIDTH.depth",
  overlap: "CUFF.overlap STAND_COLLAR.overlap WAISTBAND.overlap",
  dart_length: "DART_ANGLE.length DART_LEG.length DART_PEAK.length WITH_DART.length",
  dart_intake: "DART_ANGLE.intake DART_LEG.intake DART_PEAK.intake WITH_DART.intake",
  dart_place: "WITH_DART.at",
  edge_with_dart: "DART_INTAKE.edge",
  chord: "ARC_LENGTH.chord ARC_RADIUS.chord ARC_RISE.chord",
  arc_rise: "ARC_CHORD.rise ARC_LENGTH.rise ARC_RADIUS.rise",
  bias_strip: "BIAS_SPACING.strip BIAS_SQUARE.strip BIAS_TUBE.strip BIAS_YIELD.strip",
  bias_side: "BIAS_TUBE.side BIAS_YIELD.width",
  bias_other_side: "BIAS_YIELD.length",
  button_edge: "BUTTON_COUNT.edge BUTTON_MARK.edge BUTTON_MARKS.edge",
  button_gap: "BUTTON_COUNT.spacing",
  button_top: "BUTTON_COUNT.top BUTTON_MARK.top",
  button_bottom: "BUTTON_COUNT.bottom BUTTON_MARK.bottom",
  button: "BUTTONHOLE.diameter BUTTON_COVER.diameter BUTTON_INSET.diameter BUTTON_LOOP.diameter",
  button_inset: "BUTTON_INSET.margin",
  lacing_edge: "EYELET_COUNT.edge EYELET_MARK.edge EYELET_MARKS.edge HOOK_COUNT.edge",
  spacing: "EYELET_COUNT.spacing LACE_LENGTH.spacing HOOK_COUNT.spacing",
  eyelet_inset: "EYELET_COUNT.inset EYELET_MARK.inset HOOK_COUNT.inset",
  lacing: "LACE_LENGTH.style",
  garment: "LACE_LENGTH.gap",
  channel: "BONE_CUT.channel",
  top_hoop: "HOOP_GIRTH.top",
  bottom_hoop: "HOOP_GIRTH.bottom HOOP_CUT.girth",
  hoop_shape: "HOOP_GIRTH.shape",
  tuck_width: "TUCK_ALLOWANCE.width TUCK_CREASE.width TUCK_MARK.width TUCK_MARKS.width",
  tuck_space: "TUCK_MARK.space TUCK_CREASE.space TUCK_COUNT.gap",
  tucked_width: "TUCK_COUNT.finished",
};

const drawingNames: ReadonlyMap<string, string> = new Map(
  Object.entries(SHOWN_BY).flatMap(([drawing, shown]) =>
    shown.split(" ").map((argument) => [argument, drawing] as const),
  ),
);

/** The drawing of what an argument of a function measures, or null for one without a drawing. */
export function argumentDrawing(name: string, argument: string): Drawing | null {
  const drawing = drawingNames.get(`${name}.${argument}`);
  return drawing === undefined ? null : drawingOf(drawing);
}

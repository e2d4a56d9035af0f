import { describe, expect, it } from "vitest";
import { ENTRIES } from "../../../../src/app/help/entries.ts";
import { Finder, stem } from "../../../../src/app/help/find.ts";
import { AMONG_THREE, FIRST } from "./wishes.ts";

const finder = new Finder(ENTRIES);
const first = (question: string, count = 3) =>
  finder
    .find(question)
    .slice(0, count)
    .map(({ name }) => name);

describe("the search in the help", () => {
  // The questions are ours, in the words of people who sew; the answers are what each is for.
  it.each([
    ["how much to cut for a ruffle", "GATHER_WIDTH"],
    ["how many eyelets down the back", "EYELET_COUNT"],
    ["how many yards of cloth do I need", "YARDAGE"],
    ["how long a lace for the corset", "LACE_LENGTH"],
    ["box pleats", "PLEAT_ALLOWANCE"],
    ["seam allowance round a piece", "WITH_ALLOWANCE"],
    ["sleeve cap ease", "CAP_EASE"],
    ["length of bias binding", "BINDING_LENGTH"],
  ])("“%s” finds %s among the first five", (question, name) => {
    expect(first(question, 5)).toContain(name);
  });

  // A wish may be met by more than one function; any of those named will do.
  it.each([
    ["how much to cut for a ruffle", "GATHER_WIDTH RUFFLE_STRIP STRIP_YARDAGE"],
    ["how much fabric", "YARDAGE"],
    ["velvet nap one way", "YARDAGE"],
    ["does it fit on my cloth", "CLOTH_CHECK"],
    ["narrower fabric", "WIDTH_CHANGE WIDTH_CHART"],
    ["fabric will shrink in the wash", "SHRINK_ALLOW"],
    ["match stripes", "REPEAT_LENGTH PLEAT_TO_STRIPE"],
    ["bias strips from a square", "BIAS_TUBE BIAS_YIELD BIAS_SQUARE"],
    ["gathered skirt how many widths", "PANELS"],
    ["cuff too tight", "EASE_CHECK EASE CUFF"],
    ["stays too tight", "LACING_GAP EASE_CHECK EASE"],
    ["corset gap at back", "LACING_GAP"],
    ["lace for corset", "LACE_LENGTH"],
    ["boning length", "BONE_CUT"],
    ["how long to cut the bones of a corset", "BONE_CUT"],
    ["take in waist", "TAKE_IN_EACH"],
    ["let out", "LET_OUT_ROOM"],
    ["too small in front", "FRONT_GAP"],
    ["pleats at the back", "OPEN_PLEATS PLEATED_PANEL"],
    ["where to fold the pleats", "PLEAT_MARK"],
    ["kilt", "PLEAT_TO_STRIPE"],
    ["cartridge pleats", "CARTRIDGE_STITCH"],
    ["ruff collar", "CARTRIDGE_STITCH GATHER_WIDTH"],
    ["gathering evenly", "GATHER_MARK"],
    ["skirt hem circle", "CIRCLE_HEM"],
    ["hem too deep for circle skirt", "HEM_CHECK"],
    ["slash and spread", "SPREAD_PER_GAP SLASHED_PANEL"],
    ["puff sleeve", "GATHER_WIDTH SLASHED_PANEL"],
    ["pointed bodice waist", "SEAM_GIRTH DIPPED_PANEL"],
    ["skirt longer at back over a pad", "PETTICOAT_PANEL SKIRT_LENGTH"],
    ["bum roll", "PAD_GIRTH PETTICOAT_PANEL"],
    ["hoop skirt", "HOOP_GIRTH HOOP_CUT"],
    ["lining shorter", "TURN_OF_CLOTH"],
    ["interfacing", "FACING"],
    ["sleeve does not fit the armhole", "CAP_CHECK CAP_EASE"],
    ["seams do not match", "SEAM_CHECK SEAM_DIFFERENCE"],
    ["move a dart", "DART_ANGLE"],
    ["trace a paper pattern", "OUTLINE"],
    ["scale a pattern from a book", "DRAFT_SCALE FULL_SIZE"],
    ["wrong measurement", "MEASURE_CHECK"],
    ["where do the buttons go", "BUTTON_MARK"],
    ["placket", "PLACKET_LENGTH PLACKET_STRIP"],
    ["ell of cloth", "OLD_MEASURE"],
  ])("“%s” finds %s among the first three", (question, names) => {
    expect(first(question).some((name) => names.split(" ").includes(name))).toBe(true);
  });

  it.each(FIRST)("“%s” finds %s first", (wish, answers) => {
    expect(answers.split("|")).toContain(first(wish, 1)[0]);
  });

  it.each(AMONG_THREE)("“%s” finds %s among the first three", (wish, answers) => {
    const found = first(wish);
    expect(
      answers.split("|").some((name) => found.includes(name)),
      found.join(", "),
    ).toBe(true);
  });

  it("every wish names entries that there are", () => {
    const names = new Set(ENTRIES.map(({ name }) => name));
    const meant = [...FIRST, ...AMONG_THREE].flatMap(([, answers]) => answers.split("|"));
    expect(meant.filter((name) => !names.has(name))).toEqual([]);
  });

  it("a name, whole or begun, comes first, in any case", () => {
    expect(first("yardage", 1)).toEqual(["YARDAGE"]);
    expect(first("seam_gir", 1)).toEqual(["SEAM_GIRTH"]);
  });

  it("without a question everything is there, in its order", () => {
    expect(finder.find(" ")).toEqual(ENTRIES);
  });

  it("everything is found first by its own name, and among the first five by its own summary", () => {
    for (const { name, summary } of ENTRIES) {
      expect(first(name, 1)).toEqual([name]);
      expect(first(summary, 5)).toContain(name);
    }
  });

  it("words that have nothing to do with sewing find nothing", () => {
    expect(finder.find("zeppelin")).toEqual([]);
  });
});

describe("endings of words", () => {
  it.each([
    ["gathering", "gathered"],
    ["pleats", "pleat"],
    ["hemming", "hem"],
    ["sleeves", "sleeve"],
    ["taking", "take"],
  ])("%s and %s are the same word", (a, b) => {
    expect(stem(a)).toBe(stem(b));
  });
});

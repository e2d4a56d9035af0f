import { expect, test } from "vitest";
import { DRESS_MAKING } from "../../functions/sources.ts";
import type { Unit } from "../../functions/units.ts";
import { register } from "../../src/engine/register.ts";
import { evaluate } from "./laws.ts";

register();

/*
 * The published figures, each typed from its source and asked for as a maker would ask: a formula
 * in a cell. The names (PL-01) are ours; other tests cite them. How a figure is known: printed in
 * the source; rule printed there, the answer worked from it; computed from geometry in 50 digits.
 */
const NIMI = DRESS_MAKING;
const STEPHENSON = "Stephenson, Cutting and Draping, 1905";
const CONOVER = "Conover, Complete Course in Dressmaking, vol. 5, 1921-22";
const KINNE = "Kinne & Cooley, Clothing and Health, 1916";
const MCGLAUFLIN = "McGlauflin, Handicraft for Girls, 1910";
const FRYER = "Fryer, Mary Frances Sewing Book, 1913";
const JOHNSON = "Johnson, It's Fun to Sew Aprons and Skirts, Oregon/Utah State extension L-86, 1964";
const SCHOOL_DRESS = "It's Fun to Sew a Cotton School Dress, Oregon State extension L-87, 1961";
const BALDT = "Baldt, Clothing for Women, 1916";
const INGALLS = "Ingalls, Text-Book on Domestic Art, 1911";
const HANDS = "Hands, Church Needlework, 1907";
const CENTRAL = "Central Washington University, costume text, ch. 16";
const ANSUR = "ANSUR II public release, NATICK/TR-15/007, 1986 women and 4082 men";
const GEOMETRY = "geometry";
const DLMF = "NIST Digital Library of Mathematical Functions, 19.30";
const NICHOLSON = "Nicholson, Men and Measures, 1912";

type Known = "printed" | "rule printed, answer worked" | "computed" | "common practice";
type Row = readonly [
  id: string, unit: Unit, formula: string, gives: number | string, within: number, known: Known, source: string, where: string,
]; // biome-ignore format: a table

// biome-ignore format: a table
const PUBLISHED: readonly Row[] = [
  // Pleats
  ["PL-01", "cm", "PLEATS_ACROSS(92; 5)", 18, 0, "printed", NIMI, "p. 203 ex. 1a"],
  ["PL-02", "cm", "92 / PLEATS_ACROSS(92; 5)", 5.11, 0.005, "printed", NIMI, "p. 203, shown as 5.11 and then 5.1"],
  ["PL-03", "cm", "FLAT_WIDTH(92; 18; 4)", 236, 0, "printed", NIMI, "p. 203 ex. 1b"],
  ["PL-03", "cm", "92 + PLEAT_ALLOWANCE(18; 4)", 236, 0, "printed", NIMI, "p. 203 ex. 1b"],
  ["PL-03", "cm", "PLEAT_COUNT(236; 92; 4)", 18, 0, "printed", NIMI, "p. 203 ex. 1b, backwards"],
  ["PL-03", "cm", "PLEAT_DEPTH(236; 92; 18)", 4, 0, "printed", NIMI, "p. 203 ex. 1b, backwards"],
  ["PL-03", "cm", 'PIECE_WIDTH(PLEATED_PANEL(92; 92; 15; {10|40|70}; 4))', 92 + 24, 0, "rule printed, answer worked", NIMI, "p. 203: twice the depth a pleat"],
  ["PL-04", "cm", "PANELS(236; 90; 2)", 3, 0, "printed", NIMI, "p. 203 ex. 1c"],
  ["PL-04", "cm", "STRIP_YARDAGE(236; 15; 90; 2)", 45, 0, "printed", NIMI, "p. 203 ex. 1c"],
  ["PL-04", "cm", "JOIN_MARK(3; 236; 90; 2)", "", 0, "printed", NIMI, "p. 203 ex. 1c: three strips have two joins"],
  ["PL-05", "cm", "PLEATS_ACROSS(50; 2.5)", 20, 0, "printed", NIMI, "p. 204 a"],
  ["PL-06", "cm", 'FLAT_WIDTH(50; 20; 2.5; "knife"; 2)', 152, 0, "printed", NIMI, "p. 204 b"],
  ["PL-09", "in", 'FLAT_WIDTH(12; 3; 2; "box") / 12', 3, 0, "printed", STEPHENSON, "Pleated Valances: pleats as wide as the spaces, about 3 ft to the foot; folds as deep as a pleat is wide"],
  ["PL-10", "in", "TAKE_UP(44; 14)", 30, 0, "printed", CONOVER, "p. 63"],
  ["PL-11", "in", "TAKE_UP(44; 20)", 24, 0, "printed", CONOVER, "p. 63"],
  ["PL-12", "in", "TAKE_UP(44; 27.5)", 16.5, 0, "printed", CONOVER, "p. 64"],
  ["PL-13", "in", 'ROUND_TAPE(2 * PLEAT_DEPTH(44; 27.5; 8); "1/8")', 2.125, 0, "printed", CONOVER, "p. 69, in eighths; 2 1/16 exactly"],
  ["PL-14", "in", "2 * PLEAT_DEPTH(44 - 2.125; 20; 7)", 3.125, 0, "printed", CONOVER, "p. 69"],
  ["PL-16", "cm", "FLAT_WIDTH(95; PLEATS_ACROSS(95; 5); 5)", 285, 0, "rule printed, answer worked", NIMI, "p. 205 ex. 8"],
  ["PL-18", "cm", "PLEAT_DEPTH(46.5; 15.5; 5)", 3.1, 0, "rule printed, answer worked", NIMI, "p. 205 ex. 5"],
  ["PL-18", "cm", "FLAT_WIDTH(15.5; 5; 3.1)", 46.5, 0, "rule printed, answer worked", NIMI, "p. 205 ex. 5"],
  ["PL-20", "in", 'GATHER_WIDTH(36; FULLNESS_GUIDE("french ruffle"))', 84, 0, "rule printed, answer worked", STEPHENSON, "Pleated Valances: 2 1/3 times; 36 in is ours"],
  // Gathers
  ["GA-01", "cm", "GATHER_WIDTH(180; 3)", 540, 0, "printed", NIMI, "p. 212 a"],
  ["GA-01", "cm", "FULLNESS(540; 180)", 3, 0, "printed", NIMI, "p. 212 a, density 1/3"],
  ["GA-01", "cm", 'FULLNESS_GUIDE("frill")', 3, 0, "printed", NIMI, "p. 212 a"],
  ["GA-03", "cm", "STRIP_YARDAGE(940; 7.5 + 2; 119)", 76, 0, "rule printed, answer worked", NIMI, "p. 212 ex. 2"],
  ["GA-03", "cm", "PIECE_LENGTH(RUFFLE_STRIP(470; 2; 7.5 + 2; 119)) * PANELS(940; 119)", 76, 0, "rule printed, answer worked", NIMI, "p. 212 ex. 2"],
  ["GA-05", "in", 'GATHER_WIDTH(90; FULLNESS_GUIDE("ruffle")) / 36', 3.75, 0, "rule printed, answer worked", KINNE, "pt II lessons 12-13"],
  ["GA-06", "in", 'TRIM_LENGTH(24; FULLNESS_GUIDE("lace"))', 36, 0, "rule printed, answer worked", FRYER, "no. 25"],
  ["GA-07", "in", "TRIM_LENGTH(0; 1; 1; 3)", 6, 0, "printed", MCGLAUFLIN, "Sewing on Lace A: round a corner twice the width, here 3 in"],
  ["GA-08", "in", "TRIM_LENGTH(0; 1.5; 1; 1)", 2.5, 0, "printed", MCGLAUFLIN, "Sewing on Lace A: gathered by half"],
  ["GA-09", "in", "SMOCK_WIDTH(12; 0.25)", 48, 6, "rule printed, answer worked", "Construction of Clothing, University of Wisconsin digital collection", "about one-fourth"],
  ["GA-09", "in", '12 * FULLNESS_GUIDE("smocking")', 48, 6, "rule printed, answer worked", "Construction of Clothing, University of Wisconsin digital collection", "about one-fourth"],
  ["GA-10", "in", 'GATHER_WIDTH(30; FULLNESS_GUIDE("neck frill"))', 60, 0, "rule printed, answer worked", "Ladies' Work-Table Book, 1844", "Frills"],
  ["GA-11", "in", 'GATHER_WIDTH(40; FULLNESS_GUIDE("curtain"))', 80, 0, "rule printed, answer worked", STEPHENSON, "Lace Curtains, Piano"],
  ["GA-12", "in", 'FULLNESS_GUIDE("hat facing")', 3, 0, "printed", "Archer, Needlecraft, 1911", "millinery"],
  ["GA-13", "in", "(25 - 1) / GATHER_MARK(1; 25; ; 1)", 8, 0, "printed", JOHNSON, "Gather in fullness: eight parts, 1 in of overlap left out"],
  // Tucks
  ["TU-01", "cm", "TUCK_COUNT(39; 1.2; 1.5)", 31, 0, "printed", NIMI, "p. 209 ex. 1"],
  ["TU-03", "cm", "TUCK_COUNT(44; 2; 2)", 21, 0, "rule printed, answer worked", NIMI, "p. 209 exercise 1a"],
  ["TU-05", "in", "TUCK_ALLOWANCE(3; 1/2)", 3, 0, "rule printed, answer worked", KINNE, "lesson 11 problem 2"],
  ["TU-06", "in", "TUCK_CREASE(1/8; 1/8)", 0.375, 0, "printed", MCGLAUFLIN, "exercise 41"],
  ["TU-07", "in", "TUCK_ALLOWANCE(32; 1/4)", 16, 0, "rule printed, answer worked", "Complete Arithmetic (author from memory)", "problem 5"],
  ["TU-08", "in", "TUCK_CREASE(1; 1/4)", 2.25, 0, "printed", MCGLAUFLIN, "exercise 41"],
  ["TU-09", "in", "TUCK_ALLOWANCE(1; 3/8)", 0.75, 0, "printed", FRYER, "To Tuck Dress"],
  ["TU-09", "in", "TUCK_MARK(2; 3/8; 3/8) - TUCK_MARK(1; 3/8; 3/8)", 1.5, 0, "printed", FRYER, "To Tuck Dress; that 3/8 in shows is derived"],
  // Hems and bands
  ["HE-01", "in", "HEM_STITCH(1; 1/4)", 2.25, 0, "rule printed, answer worked", KINNE, "How to make the hemstitch"],
  ["HE-02", "in", "HEM_TURN(1 + 1/2; 1/2)", 2, 0, "printed", SCHOOL_DRESS, "Swimming robe step 3"],
  ["HE-03", "in", "BAND_WIDTH(2; 3; 1/2)", 6.5, 0, "printed", JOHNSON, "Make your band"],
  ["HE-04", "in", "BAND_LENGTH(24)", 26.5, 0, "rule printed, answer worked", JOHNSON, "Make the skirt band step 1"],
  ["HE-05", "in", "PLACKET_STRIP(10)", 21, 0, "rule printed, answer worked", KINNE, "bloomers"],
  ["HE-06", "in", 'BIAS_CUT_WIDTH(1; "single"; 1/4)', 2.5, 0, "printed", KINNE, "bloomers; bias band, lesson 11"],
  ["HE-06", "in", "BAND_WIDTH(1)", 2.5, 0, "printed", KINNE, "bloomers"],
  ["HE-07", "in", "CUT_SIZE(2 * 55; 3)", 116, 0, "rule printed, answer worked", KINNE, "kimono nightdress: twice shoulder to floor with 3 in of hem, 3 2/9 yd"],
  ["HE-09", "cm", "HEM_EXCESS(3)", 18.8495559215, 1e-9, "computed", GEOMETRY, "2π × 3"],
  ["HE-10", "in", 'HEM_CHECK(1/4; "circle")', "ok", 0, "printed", SCHOOL_DRESS, "Hems, table"],
  ["HE-10", "in", 'LEFT(HEM_CHECK(1/2; "circle"); 6)', "check:", 0, "printed", SCHOOL_DRESS, "Hems, table: 1/4 in or rolled"],
  ["HE-10", "in", 'HEM_CHECK(1.5; "flared")', "ok", 0, "printed", SCHOOL_DRESS, "Hems, table"],
  ["HE-10", "in", 'HEM_CHECK(3; "slightly flared")', "ok", 0, "printed", SCHOOL_DRESS, "Hems, table: 2 to 3 in"],
  ["HE-10", "in", 'HEM_CHECK(4; "straight")', "ok", 0, "printed", SCHOOL_DRESS, "Hems, table: up to 4 in"],
  // Circles and sectors
  ["CI-02", "cm", "TOP_RADIUS(72; 112; 12) + 12", 33.6, 1e-9, "rule printed, answer worked", BALDT, "flounce: AB is the radius and the depth"],
  ["CI-03", "cm", "FLARE_ANGLE(72; 112; 12)", 190.98593171, 1e-7, "computed", GEOMETRY, "72/21.6 radians"],
  ["CI-04", "cm", "CIRCLE_RADIUS(72)", 11.4591559026, 1e-9, "computed", GEOMETRY, "full circle"],
  ["CI-04", "cm", "CIRCLE_HEM(CIRCLE_RADIUS(72); 60) / (2 * PI())", 71.4591559026, 1e-9, "computed", GEOMETRY, "full circle"],
  ["CI-04", "cm", "PIECE_LENGTH(CIRCLE_PANEL(72; 60; 1; 2)) - 60", 11.4591559026, 1e-9, "computed", GEOMETRY, "full circle in two halves: as deep as its outer radius"],
  ["CI-05", "cm", "CIRCLE_RADIUS(72; 1/2)", 22.9183118052, 1e-9, "computed", GEOMETRY, "half circle"],
  ["CI-05", "cm", "CIRCLE_HEM(CIRCLE_RADIUS(72; 1/2); 60; 1/2) / PI()", 82.9183118052, 1e-9, "computed", GEOMETRY, "half circle"],
  ["CI-06", "cm", "CIRCLE_RADIUS(72; 3/4)", 15.2788745368, 1e-9, "computed", GEOMETRY, "three-quarter circle"],
  ["CI-07", "cm", "CIRCLE_RADIUS(72; 1/4)", 45.8366236105, 1e-9, "computed", GEOMETRY, "quarter circle"],
  ["CI-09", "cm", "CIRCLE_HEM(CIRCLE_RADIUS(72; 1/2); 60; 1/2) - 72", 188.4955592154, 1e-9, "computed", GEOMETRY, "2π f L"],
  ["CI-09", "cm", "CURVED_HEM(72; 60; 180) - 72", 188.4955592154, 1e-9, "computed", GEOMETRY, "2π f L"],
  ["CI-09", "cm", "2 * EDGE_LENGTH(CAPE(72; 60; 1/2); 3) - 72", 188.4955592154, 1e-9, "computed", GEOMETRY, "2π f L"],
  ["CI-10", "cm", "PIECE_AREA(FLARED_PANEL(72; 112; 12))", 1104, 1e-9, "computed", GEOMETRY, "ring sector"],
  ["CI-10", "cm", "PIECE_AREA(SLASHED_PANEL(72; 12; {8|8|8|8}))", 1104, 1e-9, "computed", GEOMETRY, "ring sector: 40 cm in four gaps and two halves"],
  ["CI-11", "cm", "FLARE_ANGLE(72; 200; 60)", 122.2309962946, 1e-9, "computed", GEOMETRY, "128/60 radians"],
  ["CI-11", "cm", "TOP_RADIUS(72; 200; 60)", 33.75, 1e-9, "computed", GEOMETRY, "w L/(h − w)"],
  ["CI-11", "cm", "TOP_RADIUS(72; 200; 60) + 60", 93.75, 1e-9, "computed", GEOMETRY, "h L/(h − w)"],
  ["CI-13", "in", "PIECE_WIDTH(DISC(3 + 5/8; 1/4)) / 2", 3.375, 0, "printed", MCGLAUFLIN, "A round holder and case"],
  ["SP-01", "cm", "SPREAD_PER_GAP(70; 100; 6)", 5, 0, "computed", GEOMETRY, "30 cm over six slits"],
  ["SP-01", "cm", "SPREAD_TOTAL(5; 6)", 30, 0, "computed", GEOMETRY, "30 cm over six slits"],
  // Bias
  ["BI-01", "in", "PIECE_WIDTH(TURN(RECTANGLE(36; 36); 45))", 50.9116882454, 1e-9, "computed", GEOMETRY, `S √2; the cut: ${KINNE}`],
  ["BI-07", "in", "BIAS_SPACING(1.5)", 2.1213203436, 1e-9, "computed", GEOMETRY, "w √2"],
  ["BI-09", "in", "BIAS_YIELD(36; 36; 1.5)", 861.174024, 1e-5, "computed", GEOMETRY, "centre lines of the strips"],
  // Cloth
  ["YA-01", "in", "REPEAT_LENGTH(36; 36; 4) / 36", 4, 0, "printed", HANDS, "How to make up a frontal"],
  ["YA-01", "in", "PANELS(100; 25)", 4, 0, "printed", HANDS, "How to make up a frontal: 25 to 27 in cloth, 100 in wide"],
  ["YA-04", "in", "CUT_SIZE(9; 1)", 11, 0, "printed", HANDS, "1 in all round"],
  ["YA-04", "in", 'PIECE_WIDTH(WITH_ALLOWANCE(RECTANGLE(9; 9); 1))', 11, 0, "printed", HANDS, "1 in all round"],
  ["YA-05", "in", "DRAPE_ROOM(60; 60) / 12", 7.5, 0, "printed", STEPHENSON, "figure 111"],
  ["YA-05", "in", "DRAPE_ROOM(96; 60) / 12", 10.5, 0, "printed", STEPHENSON, "figure 111"],
  ["YA-06", "in", "FESTOON_CLOTH(60) / 36", 5, 0, "printed", STEPHENSON, "French Festoon"],
  ["YA-06", "in", 'FESTOON_CLOTH(60; "fringe") / 36', 8, 0, "printed", STEPHENSON, "French Festoon"],
  ["YA-08", "in", "TRIM_LENGTH(100; ; ; ; ; 0.1)", 110, 1e-9, "rule printed, answer worked", STEPHENSON, "French Festoon: a tenth more fringe"],
  ["YA-09", "in", "SLANT_LENGTH(3; 3)", 4.2426, 1e-4, "rule printed, answer worked", STEPHENSON, "plate 155"],
  ["YA-09", "in", "SLANT_LENGTH(36; 36; 12)", 63, 0.1, "printed", STEPHENSON, "plate 155: 5 ft 3 in"],
  ["YA-09", "in", "LINE_LENGTH({0|3}; {0|3})", 4.2426, 1e-4, "rule printed, answer worked", STEPHENSON, "plate 155"],
  ["YA-10", "in", 'FULLNESS_GUIDE("light valance")', 2, 0, "printed", STEPHENSON, "Flat Valances"],
  ["YA-10", "in", 'FULLNESS_GUIDE("medium valance")', 1.5, 0, "printed", STEPHENSON, "Flat Valances"],
  ["YA-11", "in", 'FESTOON_TAIL(72; "front") / 12', 3, 0, "printed", STEPHENSON, "Irregular Festoon"],
  ["YA-11", "in", 'FESTOON_TAIL(72; "top") / 12', 1, 0, "printed", STEPHENSON, "Irregular Festoon"],
  ["YA-11", "in", 'FESTOON_TAIL(72; "widest")', 16, 0, "printed", STEPHENSON, "Irregular Festoon"],
  ["YA-12", "in", "STRIP_YARDAGE(GATHER_WIDTH(2 * 20; 1.5); 6; 36)", 12, 0, "rule printed, answer worked", BALDT, "Quantity of material; legs of 20 in and 6 in of depth are ours"],
  ["YA-13", "in", "PANELS(4 * 36; 36)", 4, 0, "rule printed, answer worked", INGALLS, "Kilted skirt"],
  ["YA-14", "in", "STRIP_YARDAGE(4 * 36; 45; 36) / 36", 5, 0, "rule printed, answer worked", INGALLS, "Kilted skirt: 5 yd in four breadths of 45 in"],
  ["YA-16", "in", "CUT_SIZE(9; 1.5; 1)", 10.5, 0, "printed", JOHNSON, "TV slippers"],
  ["SH-01", "in", "100 * SHRINK_SHARE(20; 19)", 5, 1e-12, "rule printed, answer worked", "Dooley, Textiles, 1910-14", "experiment 36; numbers ours"],
  ["SH-04", "cm", "SHRINK_ALLOW(100; 0.05)", 105.2631578947, 1e-9, "computed", GEOMETRY, "100/0.95"],
  ["SH-06", "cm", "SHRUNK(110; 0.1)", 99, 1e-9, "computed", GEOMETRY, "a tenth added does not make up for a tenth lost"],
  // Notions
  ["BU-01", "in", "BUTTONHOLE_MARK(1; 3; 3/4; 3/4; 1/2)", 0.5, 0, "printed", MCGLAUFLIN, "exercise 45"],
  ["BU-01", "in", "BUTTONHOLE_MARK(2; 3; 3/4; 3/4; 1/2)", 2, 0, "printed", MCGLAUFLIN, "exercise 45; starts derived"],
  ["BU-01", "in", "BUTTONHOLE_MARK(3; 3; 3/4; 3/4; 1/2)", 3.5, 0, "printed", MCGLAUFLIN, "exercise 45; starts derived"],
  ["BU-04", "cm", "BUTTON_COUNT(39; 1.2; 1.5; 1.5)", 31, 0, "printed", NIMI, "p. 209: buttons as tucks"],
  ["BU-05", "in", "BUTTON_INSET(3/4)", 0.625, 0, "rule printed, answer worked", JOHNSON, "Buttons and buttonholes"],
  ["BU-07", "in", "BUTTON_COUNT(96; 6)", 17, 0, "rule printed, answer worked", STEPHENSON, "Awnings: every 6 in and at each end; 8 ft is ours"],
  ["BU-07", "in", "EYELET_COUNT(96; 6; 0)", 17, 0, "rule printed, answer worked", STEPHENSON, "Awnings: every 6 in and at each end; 8 ft is ours"],
  ["BU-08", "in", "EYELET_MARK(2; 4; 2) - EYELET_MARK(1; 4; 2)", 3, 0, "printed", MCGLAUFLIN, "book cover exercise: 1/2 in from the edge"],
  ["LA-01", "cm", "LACE_LENGTH(4; 6; 2.5)", 51.1699056603, 1e-9, "computed", GEOMETRY, "4 + 10 √(4² + 2.5²)"],
  ["buttonhole", "in", "BUTTONHOLE(1; 1/4)", 1.25, 0, "common practice", "common practice", "diameter and thickness"],
  ["spread", "in", "SPREAD_PER_GAP(16.5; 23.5; 5)", 1.4, 1e-12, "common practice", "common practice", "half waist to half hip over five sections"],
  // Bodies
  ["EA-01", "in", 'EASE_CHECK("bust"; 36; 37.5)', "ok", 0, "printed", CENTRAL, "bust 1 1/2 to 2"],
  ["EA-01", "in", 'LEFT(EASE_CHECK("bust"; 36; 37.25); 6)', "check:", 0, "printed", CENTRAL, "bust 1 1/2 to 2"],
  ["EA-02", "in", 'EASE_CHECK("dress waist"; 28; 28.75)', "ok", 0, "printed", CENTRAL, "waist of dresses 3/4 to 1"],
  ["EA-02", "in", 'LEFT(EASE_CHECK("skirt waist"; 28; 28.25); 6)', "check:", 0, "printed", CENTRAL, "waist of skirts 1/2 to 3/4"],
  ["EA-03", "in", 'EASE_CHECK("hip"; 40; 42)', "ok", 0, "printed", CENTRAL, "hip 2 to 2 3/4"],
  ["EA-03", "in", 'EASE_CHECK("seat"; 40; 41.5)', "ok", 0, "printed", CENTRAL, "seat 1 1/2 to 2"],
  ["EA-03", "in", 'LEFT(EASE_CHECK("thigh"; 22; 22.75); 6)', "check:", 0, "printed", CENTRAL, "thigh 1 at least"],
  ["EA-04", "in", 'EASE_CHECK("shirt chest"; 40; 41.5)', "ok", 0, "printed", CENTRAL, "fitted shirt 1 1/2 to 2 1/2"],
  ["GI-01", "cm", "GIRTH_OVER(90; 0.3)", 91.88495559215, 1e-9, "computed", "geometry (Steiner)", "+ 2π t"],
  ["GI-01", "cm", "PAD_GIRTH(90; 0.3; 1)", 91.88495559215, 1e-9, "computed", "geometry (Steiner)", "a pad all round: + 2π t"],
  ["GI-01", "cm", "TURN_OF_CLOTH(0.3; 1; 360)", 1.88495559215, 1e-9, "computed", "geometry (Steiner)", "once round: 2π t"],
  ["GI-02", "cm", "OVAL_GIRTH(30; 20)", 79.327197946453, 1e-9, "computed", DLMF, "semi-axes 15, 10"],
  ["GI-02", "cm", "OVAL_GIRTH(4; 2)", 9.688448220548, 1e-9, "computed", DLMF, "semi-axes 2, 1"],
  ["GI-02", "cm", "OVAL_GIRTH(10; 6)", 25.526998863398, 1e-9, "computed", DLMF, "semi-axes 5, 3"],
  ["GI-02", "cm", "OVAL_GIRTH(20; 2)", 40.639741801009, 1e-9, "computed", DLMF, "semi-axes 10, 1"],
  ["AN-01", "cm", 'BODY_PERCENTILE("waist girth"; 0.05; "female")', 71, 1e-9, "computed", ANSUR, "P5"],
  ["AN-01", "cm", 'BODY_PERCENTILE("waist girth"; 0.5; "female")', 85.2, 1e-9, "computed", ANSUR, "P50"],
  ["AN-01", "cm", 'BODY_PERCENTILE("waist girth"; 0.95; "female")', 104, 1e-9, "computed", ANSUR, "P95"],
  ["AN-04", "cm", '(MEASURE_GUESS("thigh girth"; "hip girth"; 110; "female") - MEASURE_GUESS("thigh girth"; "hip girth"; 100; "female")) / 10', 0.690918, 1e-5, "computed", ANSUR, "r(thigh, buttock) 0.93956, as the slope of the line"],
  ["AN-05", "cm", 'LEFT(MEASURE_CHECK("cervical height"; 151; "stature"; 165; "female"); 6)', "check:", 0, "computed", ANSUR, "below stature by 19.7 cm or more in every woman"],
  // Curves
  ["CU-01", "cm", 'EDGE_LENGTH("M 0 0 Q 0.5 0 1 1 L 0 1 Z"; 1)', 1.4789428575446, 1e-10, "computed", GEOMETRY, "y = x², 0 to 1"],
  ["CU-02", "cm", "CURVE_LENGTH({0|0.1|0.2|0.3|0.4|0.5|0.6|0.7|0.8|0.9|1}; {1|1.0050041681|1.0200667556|1.0453385141|1.0810723718|1.1276259652|1.1854652182|1.2551690056|1.3374349463|1.4330863854|1.5430806348})", 1.1752011936438, 3e-5, "computed", GEOMETRY, "y = cosh x, 0 to 1, told by eleven points"],
  ["CU-04", "cm", 'EDGE_LENGTH("M 1 0 C 1 0.5522847498 0.5522847498 1 0 1 L 0 0 Z"; 1)', 1.571016698074, 1e-9, "computed", GEOMETRY, "the cubic quarter circle"],
  // Units
  ["UN-01", "cm", "YD(1)", 91.44, 0, "printed", "NIST Special Publication 811, appendix B", "exact"],
  ["UN-02", "cm", "IN(1)", 2.54, 0, "printed", "NIST Special Publication 811, appendix B", "exact"],
  ["UN-02", "in", "MM(25.4)", 1, 0, "printed", "NIST Special Publication 811, appendix B", "exact"],
  ["UN-02", "in", "CM(2.54)", 1, 0, "printed", "NIST Special Publication 811, appendix B", "exact"],
  ["UN-02", "cm", "FT(1)", 30.48, 0, "printed", "NIST Special Publication 811, appendix B", "exact"],
  ["UN-02", "cm", 'TAPE("1 yd 1 ft 1 in")', 124.46, 1e-12, "printed", "NIST Special Publication 811, appendix B", "exact"],
  ["UN-03", "in", "M(1)", 39.37, 1e-4, "printed", "Wurtele, Standard Measures, 1882", "the act of 1866 had 39.37, today's inch differs in the sixth figure"],
  ["UN-04", "in", 'OLD_MEASURE(1; "nail")', 2.25, 0, "printed", NICHOLSON, "ch. III, XVI"],
  ["UN-04", "in", 'OLD_MEASURE(4; "quarter")', 36, 0, "printed", NICHOLSON, "ch. III, XVI"],
  ["UN-06", "in", 'OLD_MEASURE(1; "english ell")', 45, 0, "printed", NICHOLSON, "five quarters"],
];

test.each(PUBLISHED)("%s, in %s: %s is %s, within %s (%s: %s, %s)", (_, unit, formula, gives, within) => {
  const found = evaluate(`=${formula}`, unit);
  if (typeof gives === "string") expect(found).toBe(gives);
  else {
    expect(typeof found, JSON.stringify(found)).toBe("number");
    // Between functions the engine keeps some ten figures.
    expect(Math.abs((found as number) - gives)).toBeLessThanOrEqual(within + 5e-11 * Math.abs(gives));
  }
});

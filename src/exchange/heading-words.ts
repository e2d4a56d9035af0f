/**
 * What the headings of tables in other languages mean: the heading by which the sewing functions know such a column, and
 * the words of the trade for it in each language. Another language is another key beside these. Words are in small letters;
 * accents make no difference when they are compared. The words are common practice of the trade in that language.
 */

/** What a column holds: a word with two meanings stands over figures in one and over texts in the other. */
type Holds = "figures" | "texts";

export type HeadingLanguage = "de" | "fr" | "es";

export interface Meaning {
  /** The heading as the functions know it. */
  readonly heading: string;
  readonly holds?: Holds;
  /** What is said in its cells, where that has words of its own. */
  readonly cells?: "flag" | "grain";
  readonly words: Readonly<Record<HeadingLanguage, readonly string[]>>;
  /** Words that may also mean something that no function knows, such as a size: their column is asked about. */
  readonly unsure?: readonly string[];
}

const of = (heading: string, de: string, fr: string, es: string, more: Omit<Meaning, "heading" | "words"> = {}): Meaning => {
  const list = (words: string) => words.split(", ").filter((word) => word !== "");
  return { heading, words: { de: list(de), fr: list(fr), es: list(es) }, ...more };
}; // biome-ignore format: a line

const FIGURES = { holds: "figures" } as const;
const TEXTS = { holds: "texts" } as const;

export const MEANINGS: readonly Meaning[] = [
  // Lists of pieces
  of("piece", "teil, teile, schnittteil, schnittteile, stück", "pièce, pièces, morceau, partie", "pieza, piezas, parte", TEXTS),
  of("name", "bezeichnung, benennung", "nom, désignation", "nombre, denominación", TEXTS),
  of("outline", "umriss, kontur, schnitt, schnittmuster", "contour, patron, tracé", "contorno, patrón", TEXTS),
  of("how many", "anzahl, stückzahl, menge, stück, zuzuschneiden", "quantité, nombre, qté, à couper", "cantidad, cant, a cortar", FIGURES),
  of("mirrored pair", "gegengleich, spiegelgleich, paar, paarweise", "paire, en paire, symétrique", "par, pareja, simétrico", { cells: "flag" }),
  of("on the fold", "bruch, im bruch, stoffbruch, im stoffbruch", "au pli, pli, sur le pli, pliure, sur la pliure", "al doblez, doblez, sobre el doblez", { cells: "flag" }),
  of("grain", "fadenlauf", "droit fil, sens du fil", "hilo, recto hilo, sentido del hilo", { cells: "grain" }),
  of("one way", "strich, mit strich, strichrichtung", "sens unique", "sentido único", { cells: "flag" }),
  of("cloth", "stoff, gewebe", "tissu, étoffe", "tela, tejido", TEXTS),
  // Cloth in stock
  of("piece of cloth", "stoffstück, coupon", "coupon", "retal, retazo", TEXTS),
  of("width", "breite, stoffbreite", "largeur, laize", "ancho, anchura", FIGURES),
  of("usable width", "nutzbare breite, nutzbreite", "laize utile, largeur utile", "ancho útil, anchura útil", FIGURES),
  of("length", "länge", "longueur", "largo, longitud", FIGURES),
  of("repeat", "rapport, musterrapport", "raccord, rapport", "rapport, repetición", FIGURES),
  of("shrinkage", "einlauf, einlaufen, krumpf", "rétrécissement", "encogimiento", FIGURES),
  of("price", "preis", "prix", "precio", FIGURES),
  of("colour", "farbe", "couleur", "color", TEXTS),
  // Seams and fittings
  of("seam", "naht", "couture", "costura", TEXTS),
  of("edge", "kante", "bord", "borde"),
  of("sewn to", "genäht an, angenäht an", "cousu à, cousue à", "cosido a, cosida a", TEXTS),
  // Wearers and their measurements
  of("measurement", "maß, maße, körpermaß, körpermaße", "mesure, mesures, mensuration, mensurations", "medida, medidas", TEXTS),
  of("wearer", "träger, trägerin, person, rolle", "porteur, porteuse, personne, rôle", "persona, papel, rol", TEXTS),
  of("worn beneath", "darunter, darunter getragen", "dessous, porté dessous", "debajo, ropa debajo", TEXTS),
  of("date", "datum, gemessen am", "date, mesuré le", "fecha"),
  of("waist girth", "taille, taillenweite, taillenumfang", "tour de taille, taille", "cintura, contorno de cintura, contorno cintura, talle", { ...FIGURES, unsure: ["talle"] }),
  of("hip girth", "hüfte, hüftweite, hüftumfang, gesäßweite", "hanches, tour de hanches, bassin, tour de bassin", "cadera, contorno de cadera, contorno cadera", FIGURES),
  of("bust girth", "brust, brustweite, brustumfang, oberweite", "poitrine, tour de poitrine", "busto, pecho, contorno de busto, contorno de pecho", FIGURES),
  of("neck girth", "hals, halsweite, halsumfang", "cou, tour de cou, encolure", "cuello, contorno de cuello", FIGURES),
  of("upper arm girth", "oberarm, oberarmweite, oberarmumfang", "bras, tour de bras", "brazo, contorno de brazo", FIGURES),
  of("wrist girth", "handgelenk, handgelenkweite, handgelenkumfang", "poignet, tour de poignet", "muñeca, contorno de muñeca", FIGURES),
  of("back waist length", "rückenlänge", "longueur dos, longueur du dos, longueur de dos", "largo de espalda, talle de espalda, talle espalda, talle", { ...FIGURES, unsure: ["talle"] }),
  of("shoulder length", "schulter, schulterlänge", "épaule, longueur épaule, longueur d'épaule", "hombro, largo de hombro", FIGURES),
  of("arm length", "armlänge, ärmellänge", "longueur bras, longueur de bras, longueur du bras", "largo de brazo, largo de manga", FIGURES),
  of("stature", "körpergröße, körperhöhe, größe", "stature, hauteur, taille", "estatura, altura", { ...FIGURES, unsure: ["größe", "hauteur", "altura"] }),
  of("thigh girth", "oberschenkel, oberschenkelweite, oberschenkelumfang", "cuisse, tour de cuisse", "muslo, contorno de muslo", FIGURES),
  of("head girth", "kopf, kopfweite, kopfumfang", "tête, tour de tête", "cabeza, contorno de cabeza", FIGURES),
  of("calf girth", "wade, wadenweite, wadenumfang", "mollet, tour de mollet", "pantorrilla, contorno de pantorrilla", FIGURES),
  of("ankle girth", "knöchel, knöchelumfang, fessel", "cheville, tour de cheville", "tobillo, contorno de tobillo", FIGURES),
  of("inside leg height", "schrittlänge, innere beinlänge", "entrejambe, longueur entrejambe", "entrepierna, largo de entrepierna", FIGURES),
]; // biome-ignore format: a table

/** Words that are English too: they tell no language, but have their meaning once the language is known. */
export const ALSO_ENGLISH: readonly string[] = ["person", "color", "contour", "coupon", "rapport", "par"];

/** What the cells of some columns say, as the functions know it. */
export const CELL_WORDS: Readonly<Record<"flag" | "grain", Readonly<Record<string, Readonly<Record<HeadingLanguage, string>>>>>> = {
  flag: {
    yes: { de: "ja", fr: "oui", es: "sí" },
    no: { de: "nein", fr: "non", es: "no" },
  },
  grain: {
    straight: { de: "gerade", fr: "droit fil", es: "recto" },
    cross: { de: "quer", fr: "travers", es: "atravesado" },
    bias: { de: "schräg", fr: "biais", es: "bies" },
  },
}; // biome-ignore format: a table

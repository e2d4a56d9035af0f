/** What was worn beneath the tape, as a set of layers. */
import { remember, rememberWithObject } from "../memo.ts";
import { phrase, written } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { orderedList } from "../verdict.ts";

/** Kept because every row of a chart and every figure taken from it names the layers of a few sets. */
const textsRead = remember<string, readonly string[]>(500);

/**
 * The layers that a text names, each once. They are separated by commas, "and", "+", "&", "/", "with" or
 * "over"; capitals and articles make no difference; "skin", "nothing", "none" and "bare" are no layer.
 */
export const layersIn = (text: string): readonly string[] => textsRead(text, () => readLayers(text));

function readLayers(text: string): string[] {
  const words = text
    .toLowerCase()
    .split(/[,;+&/]|\band\b|\bover\b|\bwith\b/)
    .map((layer) =>
      layer
        .replace(/\b(the|a|an|only|taken)\b/g, " ")
        .replace(/\s+/g, " ")
        .trim(),
    )
    .filter((layer) => layer !== "" && !/^(skin|nothing|none|bare|naked|bare skin|no layers?)$/.test(layer));
  return [...new Set(words)];
}

/** As `layersIn`; refuses a blank text, which does not say whether anything was worn. */
export function layersOf(text: string, name: string): readonly string[] {
  if (text.trim() === "")
    throw new Refusal(phrase`${name} is empty: say over which layers it was taken, or "skin"`);
  return layersIn(text);
}

const keys = rememberWithObject<readonly string[], { readonly key: string }>();

/** The same text for the same layers in any order. */
export const layersKey = (layers: readonly string[]): string =>
  keys(layers, () => ({ key: layers.toSorted().join(", ") })).key;

/** "shift", "shift and stays", "shift, stays and petticoat"; no layer is the skin. */
export const layersText = (layers: readonly string[]): string =>
  layers.length === 0 ? written`skin` : orderedList(layers, "and");

/** Whether a layer is laced or shapes the body, so that it may make a girth smaller. */
export const isShaping = (layer: string): boolean =>
  /\b(stays|corset|corselet|bodice|bodies|jumps|basque|girdle|binder|cincher|bra|brassiere|laced|lacing)\b/.test(
    layer,
  );

/** Whether a layer is so thin that a girth over it is the body's own. */
export const isThin = (layer: string): boolean =>
  /^(linen |cotton |silk )?(shift|chemise|smock|shirt|undershirt|drawers|vest|stockings|hose|tights|leotard|underwear|underclothes|undergarments|briefs|slip|bodysuit)$/.test(
    layer,
  );

import { define } from "../define.ts";
import { written } from "../phrase.ts";
import { joinedByAnd, toCheck } from "../verdict.ts";
import { layersOf } from "../wearers/layer-set.ts";

/**
 * Whether two measurements were taken over the same layers of clothes, so that they may be added
 * or compared: "ok", or which layer only one of them has. Layers are listed in words, separated by
 * commas, "and", "+", "&", "/" or "over"; order, capitals and articles make no difference; "skin",
 * "nothing", "none" and "bare" mean no layer. Source: common practice.
 */
export const LAYERS_CHECK = define({
  name: "LAYERS_CHECK",
  summary: "Whether two measurements were taken over the same layers of clothes.",
  source: "common practice",
  words: "stays corset shift underwear petticoat over skin same",
  takes: {
    first_layers: { kind: "text", about: 'the layers under the first measurement, such as "shift, stays"' },
    second_layers: { kind: "text", about: "the layers under the second measurement" },
  },
  returns: "verdict",
  compute({ first_layers, second_layers }, { measure }) {
    const first = layersOf(first_layers, "first_layers");
    const second = layersOf(second_layers, "second_layers");
    const onlyFirst = first.filter((layer) => !second.includes(layer));
    const onlySecond = second.filter((layer) => !first.includes(layer));
    measure("only_first", "layers under the first measurement only", onlyFirst.length);
    measure("only_second", "layers under the second measurement only", onlySecond.length);
    if (onlyFirst.length + onlySecond.length === 0) return "ok";
    const parts = [
      ...(onlyFirst.length > 0
        ? [written`the first has ${joinedByAnd(onlyFirst)} under it, the second does not`]
        : []),
      ...(onlySecond.length > 0
        ? [written`the second has ${joinedByAnd(onlySecond)} under it, the first does not`]
        : []),
    ];
    return toCheck(
      parts.length === 1
        ? written`${parts[0]!}; please measure both over the same layers`
        : written`${parts[0]!}; ${parts[1]!}; please measure both over the same layers`,
    );
  },
  examples: [
    {
      given: { first_layers: "shift, stays", second_layers: "Stays over shift" },
      gives: "ok",
      because: "the same two layers",
    },
    {
      given: { first_layers: "shift, stays, hip pad", second_layers: "shift and stays" },
      gives: "check: the first has hip pad under it, the second does not",
      because: "only the first was taken over the pad",
    },
  ],
});

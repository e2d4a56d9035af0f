/** What is to be known of a cell beside its figure. */
import type { Place } from "../book/address.ts";
import type { Engine } from "../engine/engine.ts";
import { estimateText } from "../engine/estimates.ts";

/** The sentences of a cell's problem and of the estimates that it rests on; empty when there is neither. */
export const remarksOf = (engine: Engine, place: Place): string[] =>
  [engine.view(place).problem?.sentence ?? "", estimateText(engine, place)].filter(Boolean);

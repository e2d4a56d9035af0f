/** What a reader should know about a cell besides its value. */
import type { Place } from "../book/address.ts";
import type { Engine } from "./engine.ts";
import { estimateText } from "./estimates.ts";

/** The sentences about the cell's problem and about the estimates that the cell rests on; empty when it has neither. */
export const remarksOf = (engine: Engine, place: Place): string[] =>
  [engine.view(place).problem?.sentence ?? "", estimateText(engine, place)].filter(Boolean);

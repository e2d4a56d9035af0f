/** Where a function is from, which is loaded with the texts of the help. */
import type { Declaration } from "../../../functions/define.ts";
import { phrase } from "../../../functions/phrase.ts";
import { withTexts } from "../function-texts.ts";

export const Source = ({ of }: { of: Declaration }) => (
  <p className="source">{phrase`Source: ${withTexts(of).source}`}</p>
);

/** How a garment is drawn: flat as it is cut, or as worn, from one side or from three. */

import type { Shape } from "../../../functions/drawing/shapes.ts";
import { phrase } from "../../../functions/phrase.ts";
import { SIDES, type Side } from "../../../functions/worn/view.ts";
import type { Worn } from "../../../functions/worn/worn-drawing.ts";

export interface Manner {
  readonly as: "flat" | "worn";
  /** The side a garment is seen from; "" for all three in a row. */
  readonly seen: Side | "";
}

/** Where three views in a row would be too small to read. */
const NARROW = "(max-width: 43.75em)";

export const AS_FLAT: Manner = { as: "flat", seen: "" };

const SIDE_WORDS: Record<Side | "", string> = {
  "": phrase`All three`,
  front: phrase`Front`,
  side: phrase`Side`,
  back: phrase`Back`,
};

const SEEN_FROM: Record<Side | "", string> = {
  "": phrase`front, side and back`,
  front: phrase`the front`,
  side: phrase`the side`,
  back: phrase`the back`,
};

export const seenWords = ({ seen }: Manner): string => SEEN_FROM[seen];

export const shapesIn = (worn: Worn, { seen }: Manner): readonly Shape[] =>
  worn.views.find(({ side }) => side === seen)?.shapes ?? worn.together;

interface Props {
  readonly manner: Manner;
  readonly onManner: (manner: Manner) => void;
}

export function MannerChoice({ manner, onManner }: Props) {
  const { as, seen } = manner;
  const toWorn = () =>
    onManner({ as: "worn", seen: seen === "" && window.matchMedia(NARROW).matches ? "front" : seen });
  return (
    <div className="manner">
      <Choices
        label={phrase`Draw it`}
        options={[
          { value: "flat", words: phrase`Flat` },
          { value: "worn", words: phrase`As worn` },
        ]}
        chosen={as}
        onChoose={(value) => (value === "worn" ? toWorn() : onManner({ as: "flat", seen }))}
      />
      {as === "worn" && (
        <Choices
          label={phrase`Seen from`}
          options={["" as const, ...SIDES].map((value) => ({ value, words: SIDE_WORDS[value] }))}
          chosen={seen}
          onChoose={(value) => onManner({ as, seen: value })}
        />
      )}
    </div>
  );
}

interface ChoicesProps<T extends string> {
  readonly label: string;
  readonly options: readonly { readonly value: T; readonly words: string }[];
  readonly chosen: T;
  readonly onChoose: (value: T) => void;
}

function Choices<T extends string>({ label, options, chosen, onChoose }: ChoicesProps<T>) {
  return (
    <fieldset className="choices">
      <legend className="unseen">{label}</legend>
      {options.map(({ value, words }) => (
        <label key={value}>
          <input type="radio" name={label} checked={value === chosen} onChange={() => onChoose(value)} />
          <span>{words}</span>
        </label>
      ))}
    </fieldset>
  );
}

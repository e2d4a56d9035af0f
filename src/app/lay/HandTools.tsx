/** The tools for laying by hand: which piece, where it lies, its pin and its turn. */

import type { Lay, LayQuestion, Placement } from "../../../functions/lay.ts";
import { phrase, plural } from "../../../functions/phrase.ts";
import type { FreePlaces } from "../../lay/free-places.ts";
import { handOn } from "../keyboard.ts";
import { boxOf, copyKey, copyName, replaced, turnedRound } from "./arrange.ts";

interface Props {
  readonly question: LayQuestion;
  readonly lay: Lay;
  readonly freePlaces: FreePlaces;
  readonly chosen: string | null;
  readonly pins: ReadonlySet<string>;
  readonly nearer: number;
  readonly say: (length: number) => string;
  readonly onNearer: (times: number) => void;
  readonly onChoose: (key: string | null) => void;
  readonly onMove: (placements: readonly Placement[]) => void;
  readonly onPin: (key: string) => void;
}

const NEAREST = 8;

export function HandTools(props: Props) {
  const { question, lay, freePlaces, chosen, pins, nearer, say } = props;
  const one = lay.placements.find((placement) => copyKey(placement) === chosen);
  const turn = one && turnedRound(freePlaces, question, lay.placements, one);
  const scale = (times: number) => {
    handOn(".lay-row");
    props.onNearer(times);
  };
  const many = lay.placements.length > 1;
  return (
    <>
      <div className="lay-row">
        <label>
          <span>{phrase`Piece`}</span>
          <select value={one ? chosen! : ""} onChange={(event) => props.onChoose(event.target.value || null)}>
            <option value="">{phrase`choose one`}</option>
            {lay.placements.map((placement) => (
              <option key={copyKey(placement)} value={copyKey(placement)}>
                {copyName(question, placement)}
              </option>
            ))}
          </select>
        </label>
        <button
          type="button"
          disabled={!one || !many}
          aria-pressed={one !== undefined && pins.has(copyKey(one))}
          onClick={() => one && props.onPin(copyKey(one))}
        >
          {one && pins.has(copyKey(one)) ? phrase`Unpin` : phrase`Pin`}
        </button>
        <button
          type="button"
          disabled={!turn}
          onClick={() => turn && props.onMove(replaced(lay.placements, turn))}
        >{phrase`Turn round`}</button>
        <span className="lay-zoom">
          <button type="button" disabled={nearer <= 1} onClick={() => scale(nearer / 2)}>
            <span aria-hidden="true">−</span>
            <span className="unseen">{phrase`Zoom out`}</span>
          </button>
          <button type="button" disabled={nearer >= NEAREST} onClick={() => scale(nearer * 2)}>
            <span aria-hidden="true">+</span>
            <span className="unseen">{phrase`Zoom in`}</span>
          </button>
        </span>
      </div>
      <p className="lay-place" role="status">
        {one ? placeText(question, one, pins.has(copyKey(one)), say) : pinText(pins.size)}
      </p>
    </>
  );
}

function placeText(
  question: LayQuestion,
  one: Placement,
  pinned: boolean,
  say: (length: number) => string,
): string {
  const { left, low } = boxOf(question, one);
  const name = copyName(question, one);
  const sentences = [
    phrase`${name} begins ${say(Math.max(0, left))} along the cloth, ${say(Math.max(0, low))} from the selvedge.`,
    // For translators: "it" is a piece on the cloth
    ...(one.turn === 180 ? [phrase`It is turned end for end.`] : []),
    // For translators: "it" is a piece on the cloth
    ...(one.turn !== 180 && one.turn !== 0 ? [phrase`It is turned ${one.turn}°.`] : []),
    // For translators: "it" is a piece on the cloth
    ...(pinned ? [phrase`It is pinned.`] : []),
  ];
  return sentences.join(" ");
}

const pinText = (count: number): string =>
  count === 0
    ? phrase`Drag a piece (by touch: tap it, then drag it), or choose it and move it with the arrow keys.`
    : phrase`${plural(count, "# piece is", "# pieces are")} pinned; a search lays the rest about ${plural(count, "it", "them")}.`;

/** One piece as each trial has it, the outlines laid over one another, each in a line of its own. */
import { phrase } from "../../../functions/phrase.ts";
import { outlinePath, type Piece, pieceBounds, readPiece } from "../../../functions/pieces/piece.ts";

interface Props {
  readonly label: string;
  readonly titles: readonly string[];
  /** Path data; anything else is a trial without this piece. */
  readonly pieces: readonly unknown[];
}

/** Lines told apart without colour. */
const DASHES = ["", "9 4", "2 3", "12 4 2 4", "5 2", "1 5", "16 6", "8 3 2 3 2 3"];

function pieceIn(value: unknown): Piece | null {
  if (typeof value !== "string") return null;
  try {
    return readPiece(value);
  } catch {
    return null;
  }
}

export function Overlay({ label, titles, pieces }: Props) {
  const drawn = pieces.flatMap((value, i) => {
    const piece = pieceIn(value);
    if (!piece) return [];
    const d = outlinePath(piece);
    return [{ title: titles[i]!, dash: DASHES[i % DASHES.length]!, d, box: pieceBounds(piece) }];
  });
  if (drawn.length < 2) return null;
  const left = Math.min(...drawn.map(({ box }) => box.left));
  const low = Math.min(...drawn.map(({ box }) => box.low));
  const wide = Math.max(...drawn.map(({ box }) => box.right)) - left;
  const tall = Math.max(...drawn.map(({ box }) => box.high)) - low;
  const edge = 0.02 * Math.max(wide, tall);
  return (
    <figure className="overlay">
      <figcaption>
        <b>{label}</b>
      </figcaption>
      <svg
        viewBox={`${left - edge} ${low - edge} ${wide + 2 * edge} ${tall + 2 * edge}`}
        role="img"
        aria-label={phrase`${label} of ${drawn.map(({ title }) => title).join(", ")}, laid over one another`}
      >
        {drawn.map(({ title, dash, d }) => (
          <path key={title} d={d} strokeDasharray={dash} />
        ))}
      </svg>
      <ul className="legend">
        {drawn.map(({ title, dash }) => (
          <li key={title}>
            <svg width="40" height="10" aria-hidden="true">
              <path d="M 1 5 H 39" strokeDasharray={dash} />
            </svg>
            {title}
          </li>
        ))}
      </ul>
    </figure>
  );
}

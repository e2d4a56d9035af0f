/** The small drawing of what a measurement or an argument means. It adds to the words beside it. */
import "./measured.css";
import { type Drawing, GROUNDS, type Mark } from "./drawings.ts";

export function Measured({ drawing }: { drawing: Drawing }) {
  return (
    <svg className="measured" viewBox="0 0 120 150" aria-hidden="true">
      <path className="measured-ground" d={GROUNDS[drawing.ground]} />
      {drawing.marks.map((mark) => (
        <MarkPath key={JSON.stringify(mark)} mark={mark} />
      ))}
    </svg>
  );
}

function MarkPath({ mark }: { mark: Mark }) {
  if (mark.is === "along") return <path className="measured-mark" d={mark.d} />;
  if (mark.is === "round") {
    const { from, to, y } = mark;
    const [wide, tall] = [(to - from) / 2, (to - from) / 7];
    return (
      <>
        <path className="measured-mark" d={`M ${from} ${y} A ${wide} ${tall} 0 0 0 ${to} ${y}`} />
        <path
          className="measured-mark measured-far"
          d={`M ${from} ${y} A ${wide} ${tall} 0 0 1 ${to} ${y}`}
        />
      </>
    );
  }
  const [[x, y], [x2, y2]] = [mark.from, mark.to];
  const long = Math.hypot(x2 - x, y2 - y);
  const [ax, ay] = [(4 * (y2 - y)) / long, (-4 * (x2 - x)) / long];
  const end = (px: number, py: number) => `M ${px - ax} ${py - ay} L ${px + ax} ${py + ay}`;
  return <path className="measured-mark" d={`M ${x} ${y} L ${x2} ${y2} ${end(x, y)} ${end(x2, y2)}`} />;
}

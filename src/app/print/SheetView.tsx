/** One sheet as it will be printed: black on white paper, whatever the colours of the page are. */
import { memo, useId } from "react";
import type { Part, SheetPicture } from "./sheet-picture.ts";
import { TYPE } from "./use-printing.ts";

interface Props {
  readonly picture: SheetPicture;
  readonly label: string;
}

/** The size of a sheet before the style fits it to its place, in pixels to the millimetre: larger than any place. */
const SHARP = 10;

export const SheetView = memo(function SheetView({ picture: { width, height, parts }, label }: Props) {
  return (
    <svg
      className="print-sheet-view"
      width={width * SHARP}
      height={height * SHARP}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={label}
    >
      <rect width={width} height={height} fill="#fff" />
      <Parts parts={parts} />
    </svg>
  );
});

/** The parts of a sheet never change their order: their number is their key. */
function Parts({ parts }: { parts: readonly Part[] }) {
  // biome-ignore lint/suspicious/noArrayIndexKey: see above
  return parts.map((part, i) => <One key={i} part={part} />);
}

function One({ part }: { part: Part }) {
  const id = useId();
  switch (part.is) {
    case "lines":
      return part.filled ? (
        <path d={part.d} fill="#000" />
      ) : (
        <path
          d={part.d}
          fill="none"
          stroke="#000"
          strokeWidth={part.width}
          strokeLinejoin="round"
          strokeDasharray={part.dashes || undefined}
        />
      );
    case "shade": {
      const grey = Math.round(part.grey * 255);
      return <path d={part.d} fill={`rgb(${grey},${grey},${grey})`} />;
    }
    case "text":
      return (
        <text
          x={part.x}
          y={part.y}
          fontFamily={`"${TYPE}", sans-serif`}
          fontSize={part.size}
          fontWeight={part.bold ? 700 : 400}
          textLength={part.wide > 0 ? part.wide : undefined}
          lengthAdjust="spacingAndGlyphs"
          fill="#000"
        >
          {part.text}
        </text>
      );
    case "window":
      return (
        <>
          <clipPath id={id}>
            <path d={part.d} />
          </clipPath>
          <g clipPath={`url(#${id})`}>
            <Parts parts={part.parts} />
          </g>
        </>
      );
    default:
      return part satisfies never;
  }
}

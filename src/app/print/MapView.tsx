/** The map of a pattern: which sheet lies where, the shown one marked; a press on a sheet shows it. */

import { memo, type PointerEvent } from "react";
import { phrase } from "../../../functions/phrase.ts";
import type { PageMap } from "./page-map.ts";

interface Props {
  readonly map: PageMap;
  readonly sheet: number;
  readonly onSheet: (sheet: number) => void;
}

export function MapView({ map, sheet, onSheet }: Props) {
  const { width, height, tiles } = map;
  const press = ({ currentTarget, clientX, clientY }: PointerEvent<SVGSVGElement>) => {
    const inverse = currentTarget.getScreenCTM()?.inverse();
    if (!inverse) return;
    const { x, y } = new DOMPoint(clientX, clientY).matrixTransform(inverse);
    const tile = tiles.find(
      (one) => x >= one.left && x < one.left + one.width && y >= one.top && y < one.top + one.height,
    );
    if (tile) onSheet(tile.sheet);
  };
  const here = tiles.find((one) => one.sheet === sheet);
  return (
    <figure className="print-map">
      <svg
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={
          here
            ? phrase`Map of ${tiles.length} sheets; ${here.name} is shown`
            : phrase`Map of ${tiles.length} sheets`
        }
        onPointerUp={press}
      >
        <Sheets map={map} />
        {here && (
          <rect
            className="print-map-here"
            x={here.left}
            y={here.top}
            width={here.width}
            height={here.height}
          />
        )}
      </svg>
      <figcaption className="aside">{phrase`Map: press a sheet to see it`}</figcaption>
    </figure>
  );
}

/** What does not change with the shown sheet. */
const Sheets = memo(function Sheets({ map: { tiles, bands, outlines, width, height } }: { map: PageMap }) {
  const letter = Math.min(tiles[0]!.width / 5, Math.max(width, height) / 20);
  const line = Math.max(width, height) / 250;
  return (
    <>
      {tiles.map((one) => (
        <g key={one.name}>
          <rect
            x={one.left}
            y={one.top}
            width={one.width}
            height={one.height}
            fill="#fff"
            stroke="#888"
            strokeWidth={line / 2}
          />
          <text x={one.left + letter / 4} y={one.top + 1.1 * letter} fontSize={letter} fill="#666">
            {one.name}
          </text>
        </g>
      ))}
      {bands.map((band) => (
        <svg
          key={band.left}
          x={band.left}
          width={band.width}
          height={band.height}
          viewBox={`0 ${band.from} ${band.width} ${band.height}`}
          aria-hidden="true"
        >
          <path d={outlines} fill="none" stroke="#000" strokeWidth={line} />
        </svg>
      ))}
    </>
  );
});

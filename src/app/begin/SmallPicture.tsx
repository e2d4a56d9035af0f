/** A drawing to scale without words, as large as its place allows. */
import type { Picture } from "../../engine/picture.ts";

export function SmallPicture({ picture, label }: { picture: Picture; label: string }) {
  const { left, right, low, high } = picture.box;
  const margin = 0.04 * Math.max(right - left, high - low);
  const box = [left - margin, low - margin, right - left + 2 * margin, high - low + 2 * margin];
  return (
    <svg className="picture begin-picture" viewBox={box.join(" ")} role="img" aria-label={label}>
      {picture.outlines.map((d, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two outlines may be the same
        <path key={i} className="outline" d={d} />
      ))}
      {picture.lines.map(({ d, role }, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two lines may be the same
        <path key={i} className={`line line-${role}`} d={d} />
      ))}
    </svg>
  );
}

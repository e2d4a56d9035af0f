/** A part that follows the book after the grid: while it is behind, it says that it shows what was there before. */
import "./follower.css";
import type { ReactNode } from "react";

export function Follower({
  isBehind,
  children,
}: {
  readonly isBehind: boolean;
  readonly children: ReactNode;
}) {
  return (
    <div className="follower" aria-busy={isBehind}>
      {children}
    </div>
  );
}

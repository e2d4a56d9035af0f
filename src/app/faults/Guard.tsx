/** Keeps a fault in one part of the page to that part: the others, and the book, go on. */

import { Component, type ReactNode } from "react";
import { phrase } from "../../../functions/phrase.ts";
import { handOn } from "../keyboard.ts";
import { reasonOf } from "./in-time.ts";
import { loadAnew } from "./lazily.tsx";

interface Props {
  /** The part, as it stands at the beginning of a sentence. */
  readonly name: string;
  /** When this changes, the part is tried again. */
  readonly of?: unknown;
  /** The part's place on the page, so that the others stay where they are. */
  readonly className?: string;
  /** For what can be closed: closes it. */
  readonly onDone?: () => void;
  /** More that can be done about it. */
  readonly ways?: ReactNode;
  readonly children: ReactNode;
}

interface State {
  readonly fault: string | null;
}

export class Guard extends Component<Props, State> {
  override state: State = { fault: null };

  static getDerivedStateFromError(fault: unknown): State {
    return { fault: reasonOf(fault) };
  }

  override componentDidMount() {
    loadAnew();
  }

  override componentDidUpdate(before: Props) {
    if (before.of !== this.props.of && this.state.fault !== null) this.#tryAgain();
  }

  #tryAgain() {
    loadAnew();
    this.setState({ fault: null });
  }

  override render() {
    const { name, className = "", onDone, ways, children } = this.props;
    const { fault } = this.state;
    if (fault === null) return children;
    return (
      <div className={`look guard ${className}`} role="alert">
        {phrase`${name} cannot be shown (${fault}). Your book is not affected: select another cell, undo the last change, or save the book to a file and reload the page. `}
        <button
          type="button"
          onClick={() => {
            handOn("body");
            this.#tryAgain();
          }}
        >{phrase`Try again`}</button>
        {ways}
        {onDone && <button type="button" onClick={onDone}>{phrase`Close`}</button>}
      </div>
    );
  }
}

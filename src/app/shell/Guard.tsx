/** Keeps a fault in one part of the page to that part: the others, and the book, go on. */
import { Component, type ReactNode } from "react";

interface Props {
  /** The part, as it is called. */
  readonly name: string;
  /** When this changes, the part is tried again. */
  readonly of: unknown;
  readonly children: ReactNode;
}

interface State {
  readonly fault: string | null;
}

export class Guard extends Component<Props, State> {
  override state: State = { fault: null };

  static getDerivedStateFromError(fault: unknown): State {
    return { fault: fault instanceof Error ? fault.message : String(fault) };
  }

  override componentDidUpdate(before: Props) {
    if (before.of !== this.props.of && this.state.fault !== null) this.setState({ fault: null });
  }

  override render() {
    const { fault } = this.state;
    if (fault === null) return this.props.children;
    return (
      <p className="look guard">
        {this.props.name} can't be shown just now ({fault}). The book is kept; choose another cell or undo the
        last change.
      </p>
    );
  }
}

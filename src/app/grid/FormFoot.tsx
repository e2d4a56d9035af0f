/** The end of a small form: why it was refused, the button that does it, and the way out. */

import { phrase } from "../../../functions/phrase.ts";

interface Props {
  /** What the form does, on its button. */
  readonly act: string;
  readonly refusal: string | null;
  readonly onCancel: () => void;
}

export function FormFoot({ act, refusal, onCancel }: Props) {
  return (
    <>
      {refusal && (
        <p className="look" role="alert">
          {refusal}
        </p>
      )}
      <p className="column-form-keys">
        <button type="submit">{act}</button>
        <button type="button" onClick={onCancel}>{phrase`Cancel`}</button>
      </p>
    </>
  );
}

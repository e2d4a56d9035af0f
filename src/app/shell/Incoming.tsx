/** A file of another program, shown before its content comes into a book. Each dialog is loaded when it is first needed. */
import { type ComponentType, Suspense } from "react";
import type { Place } from "../../book/address.ts";
import type { Book } from "../../book/shape.ts";
import type { FileKind } from "../../exchange/file-kind.ts";
import type { Store } from "../../store/store.ts";
import { withAllFunctions } from "../all-functions.ts";
import { lazily } from "../faults/lazily.tsx";

/** What the dialog of a kind of file is given. */
export interface IncomingProps {
  readonly file: File;
  readonly store: Store;
  /** The chosen cell. */
  readonly place: Place;
  /** Takes what was read as a book of its own or, with `label`, as pages of the open book, in one step. */
  readonly onBook: (book: Book, label?: string) => void;
  readonly onDone: () => void;
}

type ForeignKind = Exclude<FileKind, "book">;

export interface IncomingFile {
  readonly file: File;
  readonly kind: ForeignKind;
}

/** The dialogs, by kind. */
const DIALOGS: Readonly<Partial<Record<ForeignKind, ComponentType<IncomingProps>>>> = {
  outline: lazily(() =>
    withAllFunctions(() => import("../outlines/Outlines.tsx")).then((module) => module.Outlines),
  ),
  table: lazily(() => withAllFunctions(() => import("../import/Import.tsx")).then((module) => module.Import)),
};

/** Whether there is a dialog for files of this kind. */
export const isReadHere = (kind: ForeignKind): boolean => DIALOGS[kind] !== undefined;

export function Incoming({ kind, ...props }: IncomingProps & { readonly kind: ForeignKind }) {
  const Dialog = DIALOGS[kind];
  return Dialog ? (
    <Suspense fallback={null}>
      <Dialog {...props} />
    </Suspense>
  ) : null;
}

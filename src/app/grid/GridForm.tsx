/** The form that is open over the grid: what it is about, and where it goes on to. */
import { phrase } from "../../../functions/phrase.ts";
import type { Block, Place } from "../../book/address.ts";
import { Guard } from "../faults/Guard.tsx";
import { lazily } from "../faults/lazily.tsx";
import { NamesForm } from "../naming/NamesForm.tsx";
import { CellForm } from "./CellForm.tsx";
import { ColumnForm } from "./ColumnForm.tsx";
import type { EditSession } from "./edit-session.ts";
import { FindForm } from "./FindForm.tsx";
import { NoteForm } from "./NoteForm.tsx";
import type { Form } from "./RowsAndColumns.tsx";
import { SortForm } from "./SortForm.tsx";

const PhotoForm = lazily(async () => (await import("./photo/PhotoForm.tsx")).PhotoForm);

export interface OpenForm {
  readonly is: Form;
  /** The cells that it is about. */
  readonly block: Block;
  /** The photograph that was dropped or pasted. */
  readonly file?: File;
}

interface Props {
  readonly session: EditSession;
  readonly form: OpenForm;
  /** The page of the book that the grid shows. */
  readonly page: number;
  /** Closes the form and goes to a cell. */
  readonly onGo: (place: Place) => void;
  readonly onDone: () => void;
}

export function GridForm({ session, form: { is, block, file }, page, onGo, onDone }: Props) {
  const place = { page: block.page, row: block.top, column: block.left };
  switch (is) {
    case "note":
      return <NoteForm session={session} place={place} onDone={onDone} />;
    case "column":
      return <ColumnForm session={session} place={place} onDone={onDone} />;
    case "photo":
      return (
        <Guard name={phrase`The photograph`} className="guard-over" onDone={onDone}>
          <PhotoForm session={session} place={place} file={file} onDone={onDone} />
        </Guard>
      );
    case "sort":
      return <SortForm session={session} block={block} onDone={onDone} />;
    case "cells":
      return <CellForm session={session} block={block} onDone={onDone} />;
    case "names":
      return <NamesForm store={session.store} block={session.selected ?? block} onDone={onDone} />;
    case "find":
      return <FindForm session={session} page={page} onGo={onGo} onDone={onDone} />;
  }
}

/** Sorting the rows of a block: which rows move, by which column, which way. */

import { type FormEvent, useEffect, useRef, useState } from "react";
import { phrase, plural } from "../../../functions/phrase.ts";
import { type Block, cellAddress, columnLetters, type Place } from "../../book/address.ts";
import { blockAround } from "../../book/block-around.ts";
import { isFormula } from "../../book/formula.ts";
import { type Book, typedAt } from "../../book/shape.ts";
import { sortBlock } from "../../store/changing-cells.ts";
import { cellsOf, saidIfMany } from "../progress/large-steps.ts";
import type { EditSession } from "./edit-session.ts";
import { FormFoot } from "./FormFoot.tsx";

interface Props {
  readonly session: EditSession;
  readonly block: Block;
  readonly onDone: () => void;
}

/** A single cell stands for the filled block around it. */
export function blockToSort(book: Book, block: Block): Block {
  const single = block.top === block.bottom && block.left === block.right;
  return single ? blockAround(book, { page: block.page, row: block.top, column: block.left }) : block;
}

/** Whether the first row of a block reads like headings: texts only, above a row that holds something else. */
export function hasHeadings(book: Book, { page, top, left, right, bottom }: Block): boolean {
  if (top === bottom) return false;
  const plain = (row: number, column: number) => {
    const typed = typedAt(book, page, row, column).trim();
    return typed === "" || (/\p{L}/u.test(typed) && !/^\d/.test(typed) && !isFormula(typed));
  };
  const columns = Array.from({ length: right - left + 1 }, (_, i) => left + i);
  return columns.every((column) => plain(top, column)) && columns.some((column) => !plain(top + 1, column));
}

export function SortForm({ session, block, onDone }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  const book = session.store.shown;
  const [whole] = useState(() => blockToSort(book, block));
  const [headings, setHeadings] = useState(() => hasHeadings(book, whole));
  const [column, setColumn] = useState(block.left);
  const [descending, setDescending] = useState(false);
  const [refusal, setRefusal] = useState<string | null>(null);
  useEffect(() => dialog.current?.showModal(), []);

  const rows = { ...whole, top: whole.top + (headings ? 1 : 0) };
  const page = book.pages[block.page]!;
  const nameOf = (one: number) => {
    const heading = headings ? typedAt(book, block.page, whole.top, one) : (page.columns[one]?.heading ?? "");
    return heading.trim() ? `${columnLetters(one)}: ${heading}` : phrase`Column ${columnLetters(one)}`;
  };
  const beside = [whole.left - 1, whole.right + 1].filter(
    (one) =>
      one >= 0 && page.rows.slice(rows.top, rows.bottom + 1).some((row) => (row[one] ?? "").trim() !== ""),
  );
  const keep = (event: FormEvent) => {
    event.preventDefault();
    const what = () => phrase`Sorting ${plural(rows.bottom - rows.top + 1, "# row", "# rows")}`;
    saidIfMany(session.store, cellsOf(rows), what, () => {
      const { engine } = session.store;
      const sentence = session.store.run(
        sortBlock(rows, column, descending, (at: Place) => engine.value(at)),
      );
      setRefusal(sentence);
      if (sentence === null) dialog.current?.close();
    });
  };
  return (
    <dialog
      ref={dialog}
      className="column-form"
      aria-labelledby="sort-form-title"
      onClose={onDone}
      onKeyDown={(event) => event.stopPropagation()}
    >
      <form onSubmit={keep}>
        <h2 id="sort-form-title">
          {phrase`Sort ${cellAddress(rows.top, rows.left)}:${cellAddress(rows.bottom, rows.right)}`}
        </h2>
        <label>
          <span>{phrase`By column`}</span>
          <select value={column} onChange={(event) => setColumn(Number(event.target.value))}>
            {Array.from({ length: whole.right - whole.left + 1 }, (_, i) => whole.left + i).map((one) => (
              <option key={one} value={one}>
                {nameOf(one)}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span>{phrase`Order`}</span>
          <select
            value={String(descending)}
            onChange={(event) => setDescending(event.target.value === "true")}
          >
            <option value="false">{phrase`smallest first, A to Z`}</option>
            <option value="true">{phrase`largest first, Z to A`}</option>
          </select>
        </label>
        <label>
          <span>{phrase`Row ${whole.top + 1} holds headings`}</span>
          <input type="checkbox" checked={headings} onChange={(event) => setHeadings(event.target.checked)} />
        </label>
        <p className="form-about">
          {phrase`Whole rows of the block move together, with their notes and names; formulas elsewhere follow their row.`}
          {beside.length > 0 &&
            (beside.length === 1
              ? phrase` Column ${columnLetters(beside[0]!)} beside the block is filled and stays where it is.`
              : phrase` Columns ${columnLetters(beside[0]!)} and ${columnLetters(beside[1]!)} beside the block are filled and stay where they are.`)}
        </p>
        <FormFoot act={phrase`Sort`} refusal={refusal} onCancel={() => dialog.current?.close()} />
      </form>
    </dialog>
  );
}

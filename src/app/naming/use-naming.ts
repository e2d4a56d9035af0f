/** The names that labels offer, as they are looked at, changed and given. */

import { useMemo, useState } from "react";
import { phrase } from "../../../functions/phrase.ts";
import type { Block } from "../../book/address.ts";
import { blockAround } from "../../book/block-around.ts";
import { type LabelsIn, labelsIn, type NameProposal } from "../../book/label-names.ts";
import { blockAddress, cornerOf, isCell } from "../../book/names.ts";
import { type Book, typedAt } from "../../book/shape.ts";
import { namingFault } from "../../store/names.ts";
import { nameAll, offeredNames } from "../../store/names-from-labels.ts";
import type { Store } from "../../store/store.ts";

/** An offered name as it stands in the dialog. */
export interface NameRow extends NameProposal {
  /** What is to be the name; the offered one until it is changed. */
  readonly text: string;
  readonly given: boolean;
  /** Why this name can't be given, or null; only for one that is to be given. */
  readonly fault: string | null;
}

/** A single cell stands for the filled block around it. */
const blockToName = (book: Book, block: Block): Block =>
  isCell(block) ? blockAround(book, cornerOf(block)) : block;

/** The rows and columns of a block that can hold something: of a whole column, the rows of its page. */
function clipped(book: Book, block: Block): Block {
  const { rows, columns } = book.pages[block.page]!;
  return {
    ...block,
    bottom: Math.max(block.top, Math.min(block.bottom, rows.length - 1)),
    right: Math.max(block.left, Math.min(block.right, columns.length - 1)),
  };
}

/** What was changed in an offered name, by the address of what it names. */
interface Change {
  readonly text?: string;
  readonly given?: boolean;
}

export function useNaming(store: Store, chosen: Block) {
  const { book } = store;
  const [block] = useState(() => blockToName(book, chosen));
  const [by, setBy] = useState<LabelsIn>(() => labelsIn(book, block));
  const [of, setOf] = useState<number | null>(null);
  const [changes, setChanges] = useState<Readonly<Record<string, Change>>>({});
  const [refusal, setRefusal] = useState<string | null>(null);
  const offered = useMemo(
    () => offeredNames(book, by === "block" ? block : clipped(book, block), of, by),
    [book, block, of, by],
  );

  const wanted = offered.names.map((one) => {
    const { text = one.name, given = !isBlank(book, one.block) } =
      changes[blockAddress(book, one.block)] ?? {};
    return { ...one, text: text.trim(), given };
  });
  const counts = new Map<string, number>();
  for (const { given, text } of wanted)
    if (given) counts.set(text.toLowerCase(), (counts.get(text.toLowerCase()) ?? 0) + 1);
  const rows: NameRow[] = wanted.map((row) => {
    const isTwice = (counts.get(row.text.toLowerCase()) ?? 0) > 1;
    const fault = isTwice
      ? phrase`${row.text} is given twice here`
      : namingFault(book, row.block, row.text, of);
    return { ...row, fault: row.given ? fault : null };
  });
  const naming = rows.filter(({ given }) => given);

  return {
    block,
    by,
    of,
    rows,
    left: offered.left,
    refusal,
    /** How many names are to be given, and how many of these can't be. */
    count: naming.length,
    faults: naming.filter(({ fault }) => fault !== null).length,
    chooseBy: (next: LabelsIn) => {
      setBy(next);
      setChanges({});
    },
    chooseOf: setOf,
    change: (row: NameRow, change: Change) => {
      const at = blockAddress(book, row.block);
      setChanges((all) => ({ ...all, [at]: { ...all[at], ...change } }));
    },
    /** Gives the names; false when they were refused. */
    give: (): boolean => {
      const sentence = store.run(
        nameAll(
          naming.map(({ block: to, text }) => ({ block: to, name: text })),
          of,
        ),
      );
      setRefusal(sentence);
      return sentence === null;
    },
  };
}

const isBlank = (book: Book, block: Block): boolean =>
  isCell(block) && typedAt(book, block.page, block.top, block.left).trim() === "";

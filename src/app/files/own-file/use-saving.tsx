/** Saving the open book to a file: into the same file again where the browser can, else as a download. */

import { type ReactElement, Suspense, useRef, useState } from "react";
import { phrase } from "../../../../functions/phrase.ts";
import type { Place } from "../../../book/address.ts";
import { reasonOf } from "../../faults/in-time.ts";
import { lazily } from "../../faults/lazily.tsx";
import type { Keeper } from "../keeper.ts";
import { canWriteFiles } from "./pickers.ts";
import type { How, Question } from "./saving.ts";

const FileQuestion = lazily(async () => (await import("./FileQuestion.tsx")).FileQuestion);

interface Saving {
  readonly save: (how?: How) => Promise<void>;
  /** The dialog that asks what is to happen; null while nothing is asked. */
  readonly question: ReactElement | null;
}

export function useSaving(
  keeper: Keeper,
  say: (sentence: string) => void,
  onPlace: (place: Place) => void,
): Saving {
  const [asked, setAsked] = useState<Question | null>(null);
  const busy = useRef(false);
  const copy = () => say(phrase`Saved as ${keeper.saveCopy()}`);
  const save = async (how: How = "again") => {
    if (!canWriteFiles()) return copy();
    // While the browser's own dialog is open a second press does nothing.
    if (busy.current) return;
    busy.current = true;
    setAsked(null);
    try {
      const { saveToFile } = await import("./saving.ts");
      const saved = await saveToFile(keeper, how);
      if (saved && "question" in saved) setAsked(saved.question);
      else if (saved) say(phrase`Saved to ${saved.name}`);
    } catch (fault) {
      say(phrase`No file could be chosen (${reasonOf(fault)}); a copy is saved as ${keeper.saveCopy()}`);
    } finally {
      busy.current = false;
    }
  };
  const question = asked && (
    <Suspense fallback={null}>
      <FileQuestion
        question={asked}
        open={keeper.book}
        onSave={(how) => save(how)}
        onCopy={() => {
          setAsked(null);
          copy();
        }}
        onPlace={(place) => {
          setAsked(null);
          onPlace(place);
        }}
        onDone={() => setAsked(null)}
      />
    </Suspense>
  );
  return { save, question };
}

/** The field in which the title of a page is changed: Enter keeps what is typed, Escape the title as it was. */

import { useEffect, useRef } from "react";
import { phrase } from "../../../functions/phrase.ts";

export function TitleForm({ title, onTitle }: { title: string; onTitle: (title: string) => void }) {
  const field = useRef<HTMLInputElement>(null);
  const done = useRef(false);
  const finish = (text: string) => {
    if (done.current) return;
    done.current = true;
    onTitle(text.trim());
  };
  useEffect(() => {
    // Late: a page just added takes the focus into its grid first.
    const later = setTimeout(() => {
      field.current?.focus();
      field.current?.select();
    });
    return () => clearTimeout(later);
  }, []);
  return (
    <input
      ref={field}
      dir="auto"
      aria-label={phrase`Title of the page`}
      maxLength={80}
      defaultValue={title}
      onBlur={(event) => finish(event.target.value)}
      onKeyDown={(event) => {
        if (event.key === "Enter") finish(event.currentTarget.value);
        if (event.key === "Escape") finish(title);
      }}
    />
  );
}

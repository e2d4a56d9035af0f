/** What can be done with one version. */

import { useState } from "react";
import { phrase } from "../../../../functions/phrase.ts";
import { reasonOf } from "../../faults/in-time.ts";
import { handOn } from "../../keyboard.ts";
import type { Version } from "./rule.ts";
import { deleteVersion, nameVersion } from "./version-shelf.ts";

interface Props {
  readonly version: Version;
  /** What the version is called in the list. */
  readonly title: string;
  readonly shown: "pages" | "compared" | null;
  readonly onShow: (what: "pages" | "compared") => void;
  readonly canReplace: boolean;
  readonly canCompare: boolean;
  readonly onBringBack: () => void;
  readonly onOpen: () => void;
  /** Called when the version has been named or deleted, or with the sentence why not. */
  readonly onChanged: (refusal: string | null) => void;
}

export function VersionActs(props: Props) {
  const { version, title, shown, onShow, canReplace, canCompare, onBringBack, onOpen, onChanged } = props;
  const [doing, setDoing] = useState<"name" | "delete" | null>(null);
  const of = <span className="unseen">{phrase` the version ${title}`}</span>;
  const turn = (to: typeof doing) => {
    handOn("dialog");
    setDoing(to);
  };
  const act = async (work: Promise<string | null | undefined>) => {
    turn(null);
    onChanged(await work.then((fault) => (fault ? phrase`Not named: ${fault}.` : null)).catch(reasonOf));
  };

  if (doing === "name")
    return (
      <form
        className="book-copy"
        onSubmit={(event) => {
          event.preventDefault();
          const text = new FormData(event.currentTarget).get("name");
          void act(nameVersion(version, String(text).trim()));
        }}
        onKeyDown={(event) => {
          if (event.key !== "Escape") return;
          event.preventDefault();
          turn(null);
        }}
      >
        <input
          name="name"
          dir="auto"
          aria-label={phrase`Name of the version ${title}`}
          maxLength={80}
          defaultValue={version.name ?? ""}
          // biome-ignore lint/a11y/noAutofocus: the maker has just asked to type here
          autoFocus
        />
        <button type="submit">{phrase`Keep the name`}</button>
        <button type="button" className="quiet" onClick={() => turn(null)}>{phrase`Cancel`}</button>
      </form>
    );
  if (doing === "delete")
    return (
      <span className="book-leaving">
        <button type="button" onClick={() => act(deleteVersion(version).then(() => null))}>
          {phrase`Delete permanently`}
          {of}
        </button>
        <button type="button" onClick={() => turn(null)}>{phrase`Cancel`}</button>
      </span>
    );
  return (
    <span className="book-leaving">
      <button
        type="button"
        className="quiet"
        aria-expanded={shown === "pages"}
        onClick={() => onShow("pages")}
      >
        {phrase`Look at`}
        {of}
      </button>
      {canCompare && (
        <button
          type="button"
          className="quiet"
          aria-expanded={shown === "compared"}
          onClick={() => onShow("compared")}
        >
          {phrase`Compare`}
          {of}
        </button>
      )}
      {canReplace && (
        <button type="button" className="quiet" onClick={onBringBack}>
          {phrase`Bring back`}
          {of}
        </button>
      )}
      <button type="button" className="quiet" onClick={onOpen}>
        {phrase`Open as a copy`}
        {of}
      </button>
      <button type="button" className="quiet" onClick={() => turn("name")}>
        {phrase`Name …`}
        {of}
      </button>
      <button type="button" className="quiet" onClick={() => turn("delete")}>
        {phrase`Delete …`}
        {of}
      </button>
    </span>
  );
}

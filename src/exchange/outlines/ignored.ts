/** What a file has beside lines: counted, and said in one sentence for each kind. */
import type { SvgElement } from "./svg-elements.ts";
import { movesLines } from "./svg-style.ts";

/** Elements that are passed over and said, by the kind that the sentence is about. */
const KINDS: Readonly<Record<string, keyof typeof SENTENCES>> = {
  text: "text",
  image: "image",
  script: "script",
  style: "style",
  foreignObject: "foreign",
  video: "foreign",
  audio: "foreign",
  iframe: "foreign",
  animate: "animation",
  animateMotion: "animation",
  animateTransform: "animation",
  set: "animation",
};

const many = (count: number, one: string, more: string): string =>
  count === 1 ? `${/^[aeiou]/.test(one) ? "An" : "A"} ${one} is` : `${count} ${more} are`;

const SENTENCES = {
  text: (count: number) => `${many(count, "text", "texts")} ignored: a text has no outline.`,
  image: (count: number) => `${many(count, "picture", "pictures")} ignored, and not fetched.`,
  script: (count: number) => `${many(count, "script", "scripts")} ignored, and not run.`,
  style: () => "The style sheet of the file is ignored.",
  moves: () =>
    "The style sheet of the file is ignored, and it may move or hide lines: compare the pieces with the drawing.",
  foreign: (count: number) => `${many(count, "foreign part", "foreign parts")} ignored.`,
  animation: (count: number) =>
    `${many(count, "animation", "animations")} ignored: lines are read as they stand at first.`,
  clip: (count: number) =>
    `${many(count, "clip path or mask", "clip paths or masks")} ignored: what they cover is read whole.`,
  marker: () => "Arrow heads and other markers on lines are ignored.",
  hidden: (count: number) => `${many(count, "hidden part", "hidden parts")} left out.`,
  outside: (count: number) =>
    `${many(count, "reference to another file", "references to other files")} ignored, and not fetched.`,
  stretched: () =>
    "The file stretches its drawing more in one direction than in the other, and so it was read.",
} as const;

/** The most sentences about single lines that were left out. */
const MOST_LEFT_OUT = 5;

export class Ignored {
  readonly #counts = new Map<keyof typeof SENTENCES, number>();
  readonly #leftOut: string[] = [];

  note(kind: keyof typeof SENTENCES): void {
    this.#counts.set(kind, (this.#counts.get(kind) ?? 0) + 1);
  }

  /** Counts what an element is or has beside its line; true when the element is not drawn. */
  element(element: SvgElement): boolean {
    const kind = KINDS[element.name];
    if (kind) {
      this.note(kind === "style" && movesLines(element.text) ? "moves" : kind);
      return true;
    }
    for (const name of Object.keys(element.attributes)) {
      if (/^on/i.test(name)) this.note("script");
      else if (name === "clip-path" || name === "mask") this.note("clip");
      else if (/^marker(?:-|$)/.test(name)) this.note("marker");
    }
    return false;
  }

  /** A line that could not be read: what it is, what it is called, why. */
  leaveOut(what: string, name: string, why: string): void {
    const kind = what === "svg" ? "nested drawing" : what;
    const article = /^[aeiou]/.test(kind) && kind !== "use" ? "An" : "A";
    this.#leftOut.push(`${name ? `The ${kind} of “${name}”` : `${article} ${kind}`} is left out: ${why}.`);
  }

  sentences(): string[] {
    const more = this.#leftOut.length - MOST_LEFT_OUT;
    return [
      ...this.#leftOut.slice(0, MOST_LEFT_OUT),
      ...(more > 0 ? [`${more} more ${more === 1 ? "line is" : "lines are"} left out.`] : []),
      ...[...this.#counts].map(([kind, count]) => SENTENCES[kind](count)),
    ];
  }
}

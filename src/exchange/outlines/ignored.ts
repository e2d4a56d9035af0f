/** What a file has beside lines: counted, and said in one sentence for each kind. */
import { phrase, plural } from "../../../functions/phrase.ts";
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

const SENTENCES = {
  text: (count: number) =>
    phrase`${plural(count, "A text is", "# texts are")} ignored: a text has no outline.`,
  image: (count: number) =>
    phrase`${plural(count, "A picture is", "# pictures are")} ignored, and not fetched.`,
  script: (count: number) => phrase`${plural(count, "A script is", "# scripts are")} ignored, and not run.`,
  style: () => phrase`The style sheet of the file is ignored.`,
  moves: () =>
    phrase`The style sheet of the file is ignored, and it may move or hide lines: compare the pieces with the drawing.`,
  foreign: (count: number) => phrase`${plural(count, "A foreign part is", "# foreign parts are")} ignored.`,
  animation: (count: number) =>
    phrase`${plural(count, "An animation is", "# animations are")} ignored: lines are read as they stand at first.`,
  clip: (count: number) =>
    phrase`${plural(count, "A clip path or mask is", "# clip paths or masks are")} ignored: what they cover is read whole.`,
  marker: () => phrase`Arrow heads and other markers on lines are ignored.`,
  hidden: (count: number) => phrase`${plural(count, "A hidden part is", "# hidden parts are")} left out.`,
  outside: (count: number) =>
    phrase`${plural(count, "A reference to another file is", "# references to other files are")} ignored, and not fetched.`,
  stretched: () =>
    phrase`The file stretches its drawing more in one direction than in the other, and so it was read.`,
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
    const kind = what === "svg" ? phrase`nested drawing` : what;
    const isVowel = /^[aeiou]/.test(kind) && kind !== "use";
    const nameless = isVowel
      ? phrase`An ${kind} is left out: ${why}.`
      : phrase`A ${kind} is left out: ${why}.`;
    this.#leftOut.push(name ? phrase`The ${kind} of “${name}” is left out: ${why}.` : nameless);
  }

  sentences(): string[] {
    const more = this.#leftOut.length - MOST_LEFT_OUT;
    return [
      ...this.#leftOut.slice(0, MOST_LEFT_OUT),
      ...(more > 0 ? [phrase`${plural(more, "# more line is", "# more lines are")} left out.`] : []),
      ...[...this.#counts].map(([kind, count]) => SENTENCES[kind](count)),
    ];
  }
}

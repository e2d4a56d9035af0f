/** The shape of a page of help about Ellwand itself. */

export interface Topic {
  /** What it is about, as the list shows it. */
  readonly name: string;
  /** The answer in one or two sentences. */
  readonly summary: string;
  /** Words a maker might search by, beyond those of the name and the summary; parted by commas where phrases matter. */
  readonly words: string;
  /** Paragraphs. A label of the page stands in *stars*, what is typed or pressed in `backticks`. */
  readonly says: readonly string[];
  /** Pairs of a sign or keys and what they mean or do. */
  readonly table?: readonly (readonly [sign: string, says: string])[];
  /** Names of other topics and of functions that go on from here. */
  readonly see?: readonly string[];
}

/** Topics that belong together. */
export interface Chapter {
  readonly title: string;
  readonly topics: readonly Topic[];
}

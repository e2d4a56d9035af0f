/** The styles of a spreadsheet file of ISO/IEC 26300 that are read: widths, hidden sheets, how numbers are shown, and lists of choices. */
import type { ForeignChoices, ShownAs } from "./foreign-book.ts";
import { pixels } from "./ods-values.ts";

export type Attributes = Readonly<Record<string, string>>;

/** What the styles of numbers show; one of plain numbers may have a fraction in it. */
const STYLES: Readonly<Record<string, ShownAs>> = {
  "number:date-style": "date", "number:time-style": "time", "number:percentage-style": "share", "number:currency-style": "money",
}; // biome-ignore format: a table

export class ReadStyles {
  readonly #widths = new Map<string, number>();
  readonly #hiddenTables = new Set<string>();
  /** What the numbers of a cell's style are shown as, and of a style of numbers. */
  readonly #shown = new Map<string, ShownAs>();
  readonly #dataStyles = new Map<string, ShownAs>();
  /** The decimal places that numbers of a cell's style are always shown with, and of a style of numbers. */
  readonly #places = new Map<string, number>();
  readonly #dataPlaces = new Map<string, number>();
  readonly #choices = new Map<string, ForeignChoices["list"]>();
  #style: { readonly name: string; readonly family: string } | null = null;
  #dataStyle: string | null = null;

  /** Reads the beginning of an element; false when the element is no style. */
  open(name: string, attributes: Attributes): boolean {
    switch (name) {
      case "style:style":
        this.#style = { name: attributes["style:name"] ?? "", family: attributes["style:family"] ?? "" };
        this.#cellStyle(this.#style, attributes["style:data-style-name"]);
        return true;
      case "style:table-column-properties":
        if (this.#style?.family === "table-column")
          this.#widths.set(this.#style.name, pixels(attributes["style:column-width"]));
        return true;
      case "style:table-properties":
        if (this.#style && attributes["table:display"] === "false") this.#hiddenTables.add(this.#style.name);
        return true;
      case "number:number-style":
      case "number:date-style":
      case "number:time-style":
      case "number:percentage-style":
      case "number:currency-style": {
        this.#dataStyle = attributes["style:name"] ?? "";
        const shown = STYLES[name];
        if (shown) this.#dataStyles.set(this.#dataStyle, shown);
        return true;
      }
      case "number:number": {
        const places = attributes["number:min-decimal-places"] ?? attributes["number:decimal-places"];
        if (this.#dataStyle !== null && /^[1-6]$/.test(places ?? ""))
          this.#dataPlaces.set(this.#dataStyle, Number(places));
        return true;
      }
      case "number:fraction":
        if (this.#dataStyle !== null) this.#dataStyles.set(this.#dataStyle, "fraction");
        return true;
      case "table:content-validation":
        this.#validation(attributes);
        return true;
      default:
        return false;
    }
  }

  /** The style that was begun has ended. */
  close(): void {
    this.#style = null;
  }

  #cellStyle({ name, family }: { name: string; family: string }, data: string | undefined): void {
    const shown = data === undefined ? undefined : this.#dataStyles.get(data);
    if (shown && family === "table-cell") this.#shown.set(name, shown);
    const places = data === undefined ? undefined : this.#dataPlaces.get(data);
    if (places && family === "table-cell") this.#places.set(name, places);
  }

  #validation(attributes: Attributes): void {
    const name = attributes["table:name"];
    const found = /cell-content-is-in-list\((.*)\)\s*$/s.exec(attributes["table:condition"] ?? "");
    if (name === undefined || !found) return;
    const words = [...found[1]!.matchAll(/"((?:[^"]|"")*)"/g)].map(([, word]) => word!.replaceAll('""', '"'));
    this.#choices.set(name, words.length > 0 ? words : { formula: found[1]! });
  }

  /** The width of columns of a style in pixels; undefined when the style has no width. */
  width(style: string | undefined): number | undefined {
    return this.#widths.get(style ?? "");
  }

  hidesTable(style: string | undefined): boolean {
    return this.#hiddenTables.has(style ?? "");
  }

  /** What the numbers of cells of a style are shown as. */
  shown(style: string | undefined): ShownAs {
    return this.#shown.get(style ?? "") ?? "plain";
  }

  /** The decimal places that the numbers of cells of a style are always shown with. */
  places(style: string | undefined): { readonly places?: number } {
    const places = this.#places.get(style ?? "");
    return places === undefined ? {} : { places };
  }

  /** The choices that a validation gives; undefined when it gives no list. */
  choices(validation: string | undefined): ForeignChoices["list"] | undefined {
    return this.#choices.get(validation ?? "");
  }
}

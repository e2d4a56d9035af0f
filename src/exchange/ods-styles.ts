/** Formats of numbers as styles of ISO/IEC 26300-3, 16.29: each once, with a style of cells that uses it. */

export class NumberStyles {
  /** The style of headings. */
  readonly bold = "heading";
  readonly #names = new Map<string, string>();

  /** The style of cells with this format; null for the general one. */
  nameOf(format: string | undefined): string | null {
    if (format === undefined || format === "General") return null;
    const known = this.#names.get(format);
    if (known !== undefined) return known;
    const name = `ce${this.#names.size + 1}`;
    this.#names.set(format, name);
    return name;
  }

  get xml(): string {
    const styles = [...this.#names].map(
      ([format, name]) =>
        `${numberStyle(format, `N${name}`)}<style:style style:name="${name}" style:family="table-cell" style:data-style-name="N${name}"/>`,
    );
    return `${styles.join("")}<style:style style:name="${this.bold}" style:family="table-cell"><style:text-properties fo:font-weight="bold"/></style:style>`;
  }
}

function numberStyle(format: string, name: string): string {
  const named = `style:name="${name}"`;
  if (format === "yyyy-mm-dd")
    return `<number:date-style ${named}><number:year number:style="long"/><number:text>-</number:text><number:month number:style="long"/><number:text>-</number:text><number:day number:style="long"/></number:date-style>`;
  const under = /\/(\d+)/.exec(format)?.[1];
  if (under !== undefined)
    return `<number:number-style ${named}><number:fraction number:min-integer-digits="0" number:min-numerator-digits="1" number:min-denominator-digits="${under.length}" number:denominator-value="${under}"/></number:number-style>`;
  const places = (/\.(0+)/.exec(format)?.[1] ?? "").length;
  const number = `<number:number number:min-integer-digits="1" number:decimal-places="${format.includes("#") ? 2 : places}" number:min-decimal-places="${places}"/>`;
  return format.endsWith("%")
    ? `<number:percentage-style ${named}>${number}<number:text>%</number:text></number:percentage-style>`
    : `<number:number-style ${named}>${number}</number:number-style>`;
}

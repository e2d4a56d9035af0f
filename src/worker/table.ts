/** Reads tables of other programs: what a worker is asked and what it answers, all plain data. */

import type { Decimal } from "../../functions/decimal.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Unit } from "../../functions/units.ts";
import type { Refused } from "../exchange/decode.ts";
import { type ReadTable, readTable, understandTable } from "../exchange/read-table.ts";
import type { TableForm, Understood } from "../exchange/table-form.ts";
import { layDesk } from "../lay/desk.ts";

/** A file to read, once, or another way to understand the file that was read. */
export type TableOrder =
  | {
      readonly bytes: Uint8Array;
      readonly name: string;
      readonly form: TableForm;
      readonly decimal: Decimal;
      readonly unit: Unit;
    }
  | { readonly form: TableForm };

export type TableAnswer = Understood | Refused;

/** Keeps the file that was read last, so that each change of the form is answered without reading it again. */
export class TableReading {
  #read: ReadTable | null = null;
  #decimal: Decimal = "point";
  #unit: Unit = "in";

  async answer(order: TableOrder): Promise<TableAnswer> {
    if ("bytes" in order) {
      const read = await readTable(order.bytes, order.name);
      if ("refusal" in read) return read;
      this.#read = read;
      this.#decimal = order.decimal;
      this.#unit = order.unit;
    }
    if (!this.#read) return { refusal: phrase`no file was read; open it again` };
    return understandTable(this.#read, order.form, {
      decimal: this.#decimal,
      unit: this.#unit,
      desk: layDesk,
    });
  }
}

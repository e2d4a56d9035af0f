/**
 * The edit session at the grid: the text being typed, an edit that was refused, a copied
 * block. One owner; the cell's editor and the bar above the grid are two views.
 */
import { phrase } from "../../../functions/phrase.ts";
import { type Block, type Place, placeKey } from "../../book/address.ts";
import { isFormula } from "../../book/formula.ts";
import { type Book, typedAt } from "../../book/shape.ts";
import { isWhole, whenWhole } from "../../engine/late.ts";
import { typeCells } from "../../store/commands.ts";
import type { Command, Store } from "../../store/store.ts";
import { isKeyboardFree } from "../keyboard.ts";
import { type Caret, caretIn } from "./caret.ts";
import { Offering } from "./offering.ts";

/** Text being typed and not yet in the book. */
export interface Draft {
  readonly place: Place;
  readonly text: string;
  readonly caret: number;
  readonly where: "cell" | "bar";
  readonly field: HTMLTextAreaElement;
}

/** What was typed and could not be kept, and why. */
export interface Refused {
  readonly place: Place;
  /** Null when several cells were meant. */
  readonly text: string | null;
  readonly sentence: string;
}

/** A copied or cut block, with the book as it was then: later edits do not change what was copied. */
export interface Clip {
  readonly book: Book;
  readonly block: Block;
  readonly text: string;
  /** Whether the next paste moves the block. */
  readonly cut: boolean;
}

/** A paste that could have been taken otherwise. */
export interface Pasted {
  /** The book after it. */
  readonly book: Book;
  readonly doubt: string;
  readonly other: { readonly label: string; readonly paste: () => void } | null;
}

export interface Cell {
  readonly row: number;
  readonly column: number;
}

/** What an edit session, and the parts around the grid, ask of the grid on the screen. */
export interface ShownGrid {
  /** Ends what is being typed in a cell, as Enter would. */
  readonly finish: () => void;
  /** Closes the editor of a cell without typing its text into the book. */
  readonly closeEditor: () => void;
  /** Marks a cell and gives the grid the keyboard. */
  readonly take: (place: Place) => void;
  /** Gives the grid the keyboard at the chosen cell. */
  readonly takeBack: () => void;
  /** Leaves the keyboard to another field. */
  readonly leave: () => void;
  /** Shows another page, or another place of this one. */
  readonly turnTo: (place: Place) => void;
  /** Where a cell is on the screen; null for one of another page, or one that is scrolled out of sight. */
  readonly boxOf: (place: Place) => DOMRect | null;
  /** Whether whole rows or whole columns were selected by their heads. */
  readonly wholly: "rows" | "columns" | null;
}

/** What pointing with the mouse put into the draft: the cell it began at, and where it stands in the text. */
interface Pointed {
  readonly from: Cell;
  readonly start: number;
  readonly end: number;
}

export const samePlace = (a: Place, b: Place): boolean =>
  a.page === b.page && a.row === b.row && a.column === b.column;

export class EditSession {
  readonly store: Store;
  readonly offers: Offering;
  /** The grid on the screen, if there is one. */
  grid: ShownGrid | null = null;
  /** The field above the grid, where an unfinished formula goes on when its cell is left. */
  bar: HTMLTextAreaElement | null = null;
  /** Opens the menu of rows and columns at a point of the window. */
  openMenu: ((x: number, y: number) => void) | null = null;
  /** Opens the note of a cell. */
  openNote: ((place: Place) => void) | null = null;
  #selected: Block | null = null;
  #clip: Clip | null = null;
  #pasted: Pasted | null = null;
  /** To be stretched or replaced by pointing again; forgotten when the text is changed otherwise. */
  pointed: Pointed | null = null;
  #draft: Draft | null = null;
  /** Texts that could not be kept, by cell, until something else is kept there. */
  readonly #unkept = new Map<string, Refused>();
  /** Why something that meant several cells, or no text, was refused last. */
  #refusal: Refused | null = null;
  #caret: Caret | null = null;
  #version = 0;
  readonly #listeners = new Set<() => void>();

  constructor(store: Store) {
    this.store = store;
    this.offers = new Offering(store, () => this.#tell());
    // What is being typed may begin with the name of a function that was not there yet.
    if (!isWhole()) whenWhole(() => this.#follow());
    store.beforeLeaving = () => this.settle();
    // A command may move cells: a formula that waits in the bar is put into its cell while that is where it was.
    store.beforeStep = () => {
      if (this.#draft?.where === "bar") this.#end(this.#draft);
    };
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly version = (): number => this.#version;

  get draft(): Draft | null {
    return this.#draft;
  }

  /** What was refused at a cell, or else what was refused just now. */
  refusedAt(place: Place): Refused | null {
    return this.#unkept.get(placeKey(place)) ?? this.#refusal;
  }

  /** Where the caret of the draft stands, when it is a formula. */
  get caret(): Caret | null {
    return this.#caret;
  }

  #tell(): void {
    this.#version += 1;
    for (const listener of [...this.#listeners]) listener();
  }

  write(draft: Draft | null): void {
    const old = this.#draft;
    if (draft && old && samePlace(draft.place, old.place) && draft.text === old.text) {
      if (draft.caret === old.caret && draft.where === old.where && draft.field === old.field) return;
    }
    // Another cell is typed in while a formula waits in the bar: the formula waits at its cell from now on.
    if (old?.where === "bar" && draft && !samePlace(old.place, draft.place)) this.#setAside(old);
    this.#draft = draft;
    if (draft?.text !== old?.text) this.pointed = null;
    this.#follow();
  }

  /** Offers what fits the draft. */
  #follow(): void {
    const draft = this.#draft;
    this.#caret = draft && caretIn(draft.text, draft.caret);
    this.offers.follow(draft && { ...draft, caret: this.#caret, before: this.#keptAt(draft.place) });
    this.#tell();
  }

  /** The block that is selected in the grid, whole columns and rows with all their cells; null before the first. */
  get selected(): Block | null {
    return this.#selected;
  }

  set selected(block: Block | null) {
    this.#selected = block;
    this.#tell();
  }

  get clip(): Clip | null {
    return this.#clip;
  }

  set clip(clip: Clip | null) {
    this.#clip = clip;
    this.#tell();
  }

  get pasted(): Pasted | null {
    return this.#pasted;
  }

  set pasted(pasted: Pasted | null) {
    this.#pasted = pasted;
    this.#tell();
  }

  /** The block that is cut and not yet pasted. It stays where it is until then, and any edit of the pages ends it. */
  get cutBlock(): Block | null {
    const clip = this.#clip;
    return clip?.cut && clip.book.pages === this.store.book.pages ? clip.block : null;
  }

  /** The text that stands for a cell in an editor: what was refused there, else what is typed. */
  textAt(place: Place): string {
    if (this.#draft?.where === "bar" && samePlace(this.#draft.place, place)) return this.#draft.text;
    return this.#keptAt(place);
  }

  #keptAt(place: Place): string {
    const { page, row, column } = place;
    return this.#unkept.get(placeKey(place))?.text ?? typedAt(this.store.shown, page, row, column);
  }

  /** Whether a cell holds this text in the book, and no other text waits to be kept there. */
  isKept(place: Place, text: string): boolean {
    const { page, row, column } = place;
    return !this.#unkept.has(placeKey(place)) && typedAt(this.store.shown, page, row, column) === text;
  }

  /** Types a text into a cell. On a refusal the text is kept here with the reason; false then. */
  type(place: Place, text: string): boolean {
    return this.isKept(place, text) || this.run(typeCells([{ ...place, typed: text }]), place, text);
  }

  /** Runs a command; a refusal is kept here, to be shown beside the formula. */
  run(command: Command, place: Place, text: string | null = null): boolean {
    const sentence = this.store.run(command);
    this.#refusal = null;
    if (sentence === null) this.#unkept.delete(placeKey(place));
    else if (text === null) this.#refusal = { place, text, sentence };
    else {
      this.#unkept.set(placeKey(place), { place, text, sentence });
      if (!isWhole()) whenWhole(() => this.#typeAgain(place, text));
    }
    this.#tell();
    return sentence === null;
  }

  /** Types a text that had to wait for its functions, unless it was let go of or is being changed. */
  #typeAgain(place: Place, text: string): void {
    const waits = this.#unkept.get(placeKey(place))?.text === text;
    const typing = this.#draft !== null && samePlace(this.#draft.place, place);
    if (waits && !typing) this.type(place, text);
  }

  /** Puts everything that is half typed into the book as it is: before a copy is saved, and before the book is left. */
  settle(): void {
    if (this.#draft) this.#end(this.#draft);
    for (const { place, text } of [...this.#unkept.values()]) {
      if (text !== null && this.#unfinished({ place, text }) !== null)
        this.run(typeCells([{ ...place, typed: text }]), place, text);
    }
  }

  /** Puts what is being typed into its cell. */
  #end({ where, place, text }: Draft): void {
    if (where === "cell") this.grid?.finish();
    else {
      this.write(null);
      this.type(place, text);
    }
  }

  /** Whether the formula being typed can't be read as it stands, so that leaving its cell must not end it. */
  get isUnfinished(): boolean {
    return this.#draft !== null && this.#unfinished(this.#draft) !== null;
  }

  /**
   * Called when the keyboard goes elsewhere. What is finished is kept; a formula that is not finished
   * goes on in the bar, whatever cell or page is looked at meanwhile.
   */
  leave(): void {
    const draft = this.#draft;
    if (!draft) return;
    if (!this.isUnfinished) this.#end(draft);
    else if (draft.where === "cell") {
      this.grid?.closeEditor();
      if (this.bar) this.write({ ...draft, where: "bar", field: this.bar });
      else this.#setAside(draft);
    }
  }

  /** Gives the keyboard back to a formula in the bar, its caret where it was. Late, as `take` of the grid. */
  resume(): void {
    setTimeout(() => {
      const draft = this.#draft;
      if (draft?.where !== "bar") return;
      draft.field.focus();
      draft.field.setSelectionRange(draft.caret, draft.caret);
      // Another page may be shown by now: the hint looks for its place anew.
      this.#tell();
    });
  }

  /** Gives the keyboard, if nothing has it by then, to the formula that waits in the bar, or else to the chosen cell. */
  takeBack(): void {
    setTimeout(() => {
      if (!isKeyboardFree()) return;
      if (this.#draft?.where === "bar") this.resume();
      else this.grid?.takeBack();
    });
  }

  #setAside({ place, text }: Draft): void {
    const why = this.#unfinished({ place, text });
    const sentence =
      why === null
        ? phrase`this formula is not in the book yet: press F2 to continue, or Escape to discard it`
        : phrase`this formula is not finished (${why}) and is not in the book yet: press F2 to continue, or Escape to discard it`;
    this.#unkept.set(placeKey(place), { place, text, sentence });
    this.#tell();
  }

  /** Why a formula being typed can't be read yet; null for a text, a value or a whole formula. */
  #unfinished({ place, text }: Pick<Draft, "place" | "text">): string | null {
    if (/^\s*=\s*$/.test(text)) return phrase`there is nothing after =`;
    return isFormula(text) ? this.store.engine.unreadable(text, place.page) : null;
  }

  /** Begins anew, for another book. */
  clear(): void {
    this.#unkept.clear();
    this.#refusal = null;
    this.write(null);
  }

  /** Lets go of a text that could not be kept. */
  drop(place: Place): void {
    if (this.#unkept.delete(placeKey(place))) this.#tell();
  }
}

const sessions = new WeakMap<Store, EditSession>();

/** The edit session of a store: there is one for each. */
export function sessionOf(store: Store): EditSession {
  let session = sessions.get(store);
  if (!session) {
    session = new EditSession(store);
    sessions.set(store, session);
  }
  return session;
}

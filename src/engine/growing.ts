/** A list of whole numbers of 32 bits that grows at its end: a fraction of what an array of numbers takes. */
export class Growing {
  #numbers: Int32Array;
  #length = 0;

  constructor(room = 16) {
    this.#numbers = new Int32Array(room);
  }

  get length(): number {
    return this.#length;
  }

  at(index: number): number {
    return this.#numbers[index]!;
  }

  set(index: number, value: number): void {
    this.#numbers[index] = value;
  }

  push(value: number): void {
    if (this.#length === this.#numbers.length) {
      const larger = new Int32Array(this.#length * 2);
      larger.set(this.#numbers);
      this.#numbers = larger;
    }
    this.#numbers[this.#length] = value;
    this.#length += 1;
  }
}

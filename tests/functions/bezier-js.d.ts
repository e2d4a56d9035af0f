/** What the tests use of bezier-js, which brings no types. */
declare module "bezier-js" {
  export class Bezier {
    constructor(...coordinates: number[]);
    length(): number;
    get(t: number): { x: number; y: number };
    bbox(): { x: { min: number; max: number }; y: { min: number; max: number } };
    split(from: number, to: number): Bezier;
  }
}

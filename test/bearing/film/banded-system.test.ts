import { describe, expect, it } from "vitest";
import { bandedSystem } from "../../../kernel-helpers/bearing/film/banded-system.js";
import { expectClose } from "../../support/expect-close.js";

const [band, size] = [4, 24];
const diagonal = Float64Array.from({ length: size }, (_, i) => 4.2 + 0.1 * (i % 3));
const beside = Float64Array.from({ length: size }, (_, i) => (i % band === band - 1 ? 0 : -1));
const ahead = Float64Array.from({ length: size }, (_, i) => (i + band < size ? -0.8 : 0));
const right = Float64Array.from({ length: size }, (_, i) => 1 + (i % 5));
const make = () => bandedSystem(diagonal, beside, ahead, right, band);

/** Row i of the matrix times x. */
function row(x: Float64Array, i: number): number {
  let sum = diagonal[i]! * x[i]!;
  if (i > 0) sum += beside[i - 1]! * x[i - 1]!;
  if (i + 1 < size) sum += beside[i]! * x[i + 1]!;
  if (i >= band) sum += ahead[i - band]! * x[i - band]!;
  if (i + band < size) sum += ahead[i]! * x[i + band]!;
  return sum;
}

describe("bandedSystem(…).solve(held, changedFrom)", () => {
  it("meets every equation, and leaves what is held at 0", () => {
    const held = new Uint8Array(size);
    for (const i of [0, 7, 8, 20]) held[i] = 1;
    const x = make().solve(held, 0);
    for (let i = 0; i < size; i++)
      if (held[i] === 1) expect(x[i]).toBe(0);
      else expectClose(row(x, i), right[i]!, { rel: 1e-13, because: "a few roundings in a small system" });
  });
  it("solved on from the first unknown that changed gives what solving anew gives, to the last bit", () => {
    const held = new Uint8Array(size);
    const going = make();
    going.solve(held, 0);
    for (const i of [17, 13, 22]) {
      held[i] = 1;
      expect([...going.solve(held, i)]).toEqual([...make().solve(held, 0)]);
    }
    held[13] = 0;
    expect([...going.solve(held, 13)]).toEqual([...make().solve(held, 0)]);
  });
});

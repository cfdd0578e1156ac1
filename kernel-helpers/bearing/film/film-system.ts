import { type FilmLines, turnedRound } from "./film-lines.js";
import { sumOfProducts } from "./sum-of-products.js";
import { type WholeLines, wholeLines } from "./whole-lines.js";

/** Equations of a film of which some nodes are held at no pressure. */
export interface FilmSystem {
  /**
   * Pressure where all other nodes meet their equations.
   *
   * @param empty  1 where the pressure is held at 0, by lines
   * @returns the pressure, by lines; the same array at every call
   */
  solve(empty: Uint8Array): Float64Array;
}

/**
 * Solves the equations of an oil film with some of its nodes held at no pressure, exactly: the lines without a gap by
 * waves along them (`wholeLines`), from whichever end of the film has more of them; the few lines where the film breaks
 * by Cholesky within the profile of their free nodes; lines that are all empty cost nothing.
 *
 * @param lines  the equations
 * @source A. George & J. W. Liu, Computer Solution of Large Sparse Positive Definite Systems, 1981, chapter 4 (profile; from memory)
 */
export function filmSystem(lines: FilmLines): FilmSystem {
  const { around, along } = lines;
  const onward = oneWay(lines);
  let backward: OneWay | undefined;
  const pressure = new Float64Array(around * along);
  return Object.freeze({
    solve(empty: Uint8Array): Float64Array {
      const fromFirst = wholeFrom(empty, along, 0, 1);
      const fromLast = wholeFrom(empty, along, around - 1, -1);
      if (fromFirst >= fromLast) {
        onward(empty, fromFirst, pressure);
        return pressure;
      }
      backward ??= oneWay(turnedRound(lines));
      const turned = new Float64Array(around * along);
      backward(linesTurned(empty, new Uint8Array(around * along), along), fromLast, turned);
      return linesTurned(turned, pressure, along);
    },
  });
}

type OneWay = (empty: Uint8Array, whole: number, pressure: Float64Array) => void;

/** Solves with the whole lines at the beginning. */
function oneWay(lines: FilmLines): OneWay {
  const { around, along } = lines;
  const size = around * along;
  const waves: WholeLines = wholeLines(lines);
  const place = new Int32Array(size); // among the free nodes
  const node = new Int32Array(size); // of a free node
  const begins = new Int32Array(size); // first column of a row of the factor
  const row = new Int32Array(size); // L(r, c) stands at row[r] + c; 1/L(r, r) at c = r
  const x = new Float64Array(size);
  let factor = new Float64Array(0);

  return (empty, whole, pressure) => {
    const first = whole * along;
    let free = 0;
    let room = 0;
    for (let at = first; at < size; at++) {
      if (empty[at] === 1) continue;
      place[at] = free;
      node[free] = at;
      const beside = at % along > 0 && empty[at - 1] === 0 ? free - 1 : free;
      const before = at - along;
      // The first line behind whole ones feels all its nodes through them.
      if (before < first) begins[free] = whole > 0 ? 0 : beside;
      else begins[free] = empty[before] === 0 ? place[before]! : beside;
      row[free] = room - begins[free]!;
      room += free - begins[free]! + 1;
      free++;
    }
    if (factor.length < room) factor = new Float64Array(room);
    else factor.fill(0, 0, room);
    enter(empty, whole, free);
    solveProfile(free);
    pressure.fill(0, first);
    for (let r = 0; r < free; r++) pressure[node[r]!] = x[r]!;
    waves.fill(whole, pressure);
  };

  /** Writes the matrix into the profile and the right side into x. */
  function enter(empty: Uint8Array, whole: number, free: number): void {
    const { turn, out, right } = lines;
    const first = whole * along;
    const left = whole > 0 && free > 0 ? waves.leave(whole) : undefined;
    for (let r = 0; r < free; r++) {
      const at = node[r]!;
      const [i, j] = [Math.floor(at / along), at % along];
      const share = j === 0 ? 0.5 : 1;
      factor[row[r]! + r] = share * (turn[i]! + turn[i + 1]!) + (j === 0 ? 1 : 2) * out[i]!;
      x[r] = share * right[i]!;
      if (j > 0 && empty[at - 1] === 0) factor[row[r]! + r - 1] = -out[i]!;
      const before = at - along;
      if (before >= first && empty[before] === 0) factor[row[r]! + place[before]!]! -= share * turn[i]!;
      if (left === undefined || before >= first) continue;
      x[r]! += left.right[j]!;
      for (let c = 0; c <= r; c++) factor[row[r]! + c]! -= left.matrix[j * along + (node[c]! % along)]!;
    }
  }

  function solveProfile(free: number): void {
    for (let r = 0; r < free; r++) {
      const [own, start] = [row[r]!, begins[r]!];
      let square = factor[own + r]!;
      let sum = x[r]!;
      for (let c = start; c < r; c++) {
        const other = row[c]!;
        const from = Math.max(start, begins[c]!);
        const value =
          (factor[own + c]! - sumOfProducts(factor, own + from, factor, other + from, c - from)) *
          factor[other + c]!;
        factor[own + c] = value;
        square -= value * value;
        sum -= value * x[c]!;
      }
      const inverse = 1 / Math.sqrt(square);
      factor[own + r] = inverse;
      x[r] = sum * inverse;
    }
    for (let r = free - 1; r >= 0; r--) {
      const own = row[r]!;
      const value = x[r]! * factor[own + r]!;
      x[r] = value;
      for (let c = begins[r]!; c < r; c++) x[c]! -= factor[own + c]! * value;
    }
  }
}

/** How many lines on end have no empty node, from a line on, one way or the other. */
function wholeFrom(empty: Uint8Array, along: number, line: number, way: 1 | -1): number {
  const around = empty.length / along;
  let count = 0;
  for (let i = line; i >= 0 && i < around; i += way, count++)
    for (let at = i * along; at < (i + 1) * along; at++) if (empty[at] === 1) return count;
  return count;
}

/** Copies lines in the opposite order. */
function linesTurned<T extends Uint8Array | Float64Array>(from: T, to: T, along: number): T {
  for (let at = 0; at < from.length; at += along)
    to.set(from.subarray(at, at + along), from.length - along - at);
  return to;
}

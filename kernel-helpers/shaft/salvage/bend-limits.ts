import type { Length, Measured, Quantity, RotationalSpeed } from "../../quantity/index.js";
import { isQuantity, measured, quantityFromSi } from "../../quantity/index.js";
import { type ShaftModel, type ShaftStretch, turnedDown } from "../beam/index.js";
import { type BendDrawn, type BendResponse, bendResponse } from "./bend-response.js";
import type { CaseNumbers } from "./case-numbers.js";
import { loadedShaft } from "./loaded-shaft.js";
import type { SalvageWay } from "./salvage-ways.js";
import type { ShaftCase } from "./shaft-case.js";
import type { PlainNumbers, WeighedLimit } from "./weigh-types.js";

/** What the shaft's lean and its whirls are reckoned from. */
export interface WeighedBending {
  /** Stretches of the whole shaft as it is found, and as it was made: DIAMETERS from end to end. */
  readonly found: readonly ShaftStretch[];
  readonly made: readonly ShaftStretch[];
  readonly material: ShaftModel["material"];
  /** The speed it runs at; without it no whirl is too near. */
  readonly speed?: RotationalSpeed;
  /** How far the shaft may lean in a box [-]; default 0.001. */
  readonly slopeAllowed?: number;
  /** How far the speed is to stay from every whirl, as a share of that; default 0.2 [-]. */
  readonly keepAway?: number;
  /** The least that boxes and their foundations may be as stiff as; default they are stiff. */
  readonly softest?: Quantity<"stiffness or line load">;
}

/** What the steel that carries in the boxes is turned to: DIAMETERS [m]. */
export type SizesOf = (way: SalvageWay, x: PlainNumbers) => readonly number[];

interface BendState {
  readonly stiff: BendResponse;
  readonly soft: BendResponse;
  readonly sizes: readonly number[];
}

const modulusName = "modulus of elasticity";

/**
 * The limits of lean and whirl for every way: the slope in each box, and how far the running speed stays from every
 * whirl of any sense.
 *
 * slope's margin = 1000 (allowed − slope); whirl's = 100 (share − keepAway), with share the distance of the speed from the
 * nearest whirl over that whirl. Where boxes may give, a whirl lies anywhere between that of stiff boxes and that of the
 * softest: the speed must stay clear of all between. What is put on a journal carries nothing and weighs nothing.
 *
 * Valid when: see `bendResponse`; the slope is that of boxes that do not give, as in `compareShafts`.
 *
 * @throws RangeError  as `shaftBending`; a limit out of its range
 */
export function bendLimits(
  where: string,
  shaft: ShaftCase,
  ways: readonly SalvageWay[],
  { found, made, material, speed, slopeAllowed = 0.001, keepAway = 0.2, softest }: WeighedBending,
  numbers: CaseNumbers,
  { estimates, sizesOf }: { readonly estimates: PlainNumbers; readonly sizesOf: SizesOf },
  perShaft: <V>(x: PlainNumbers, key: string, work: () => V) => V,
): { readonly limits: readonly WeighedLimit[]; readonly inputs: Readonly<Record<string, Measured<number>>> } {
  if (!(slopeAllowed > 0 && slopeAllowed < 0.1))
    throw new RangeError(`${where}: slopeAllowed must lie between 0 and 0.1, got ${String(slopeAllowed)}`);
  if (!(keepAway > 0 && keepAway < 1))
    throw new RangeError(`${where}: keepAway must lie between 0 and 1, got ${String(keepAway)}`);
  if (speed !== undefined && !(isQuantity(speed, "rotational speed") && speed.si > 0))
    throw new RangeError(`${where}: speed must be more than 0, got ${String(speed)}`);
  const boxes = shaft.boxes.map(({ from, to }) => ({ from: from.si, to: to.si }));
  // Ways that leave the same steel are one state.
  const keyOf = ({ undercut }: SalvageWay): string => (undercut === undefined ? "new" : String(undercut.si));
  const states = new Map<string, BendState>();
  for (const way of ways) {
    if (states.has(keyOf(way))) continue;
    const sizes = sizesOf(way, estimates);
    const cut = (shape: readonly ShaftStretch[], i: number): readonly ShaftStretch[] => {
      const { from, to } = shaft.boxes[i]!;
      return turnedDown(shape, { from, to, diameter: lengthOf(sizes[i]!) });
    };
    const shape = way.undercut === undefined ? made : boxes.reduce((now, _, i) => cut(now, i), found);
    const of = (stiffness: typeof softest): BendResponse => {
      const held = shaft.boxes.map(({ name, from, to }) => ({
        name,
        from,
        to,
        ...(stiffness === undefined ? {} : { stiffness }),
      }));
      return bendResponse(where, loadedShaft({ ...shaft, boxes: held }, shape, material), boxes);
    };
    const stiff = of(undefined);
    states.set(keyOf(way), { stiff, soft: softest === undefined ? stiff : of(softest), sizes });
  }
  const { si, u } = states.values().next().value!.stiff.modulus;
  const byName = new Map(ways.map((way) => [way.name, way]));
  const inState = <V>(
    what: string,
    x: PlainNumbers,
    option: string,
    of: (state: BendState, drawn: BendDrawn) => V,
  ): V => {
    const way = byName.get(option)!;
    const state = states.get(keyOf(way))!;
    return perShaft(x, `${what}\n${keyOf(way)}`, () => {
      const sizes = sizesOf(way, x).map((size, i) => size / state.sizes[i]!);
      return of(state, {
        wheels: perShaft(x, "wheels", () => numbers.wheels(x)),
        modulus: x[modulusName] ?? 1,
        sizes,
      });
    });
  };
  const slopes = (x: PlainNumbers, option: string): readonly number[] =>
    inState("slopes", x, option, ({ stiff }, drawn) => stiff.slopes(drawn));
  const clear = (x: PlainNumbers, option: string): number =>
    inState("whirls", x, option, ({ stiff, soft }, drawn) =>
      clearOf(speed!.si, stiff.whirls(drawn), soft.whirls(drawn)),
    );
  return {
    inputs: { [modulusName]: measured(1, u / si) },
    limits: [
      ...shaft.boxes.map(
        ({ name }, i): WeighedLimit => ({
          name: `slope in ${name}, in 1000`,
          kind: "number",
          margin: (x, option) => 1000 * (slopeAllowed - slopes(x, option)[i]!),
        }),
      ),
      ...(speed === undefined
        ? []
        : [
            {
              name: "speed away from whirls, %",
              kind: "number",
              margin: (x, option) => 100 * (clear(x, option) - keepAway),
            } satisfies WeighedLimit,
          ]),
    ],
  };
}

/**
 * How far a speed stays from the nearest whirl, as a share of that; below 0 within what boxes that give leave open.
 *
 * @param speed  > 0 [rad/s]
 * @param stiff  whirls of stiff boxes [rad/s]
 * @param soft   the same whirls of the softest boxes, none above [rad/s]
 * @returns share [-]
 */
export function clearOf(speed: number, stiff: readonly number[], soft: readonly number[]): number {
  return Math.min(
    ...stiff.map((high, k) => {
      const low = Math.min(high, soft[k] ?? high);
      return Math.max((low - speed) / low, (speed - high) / high);
    }),
  );
}

function lengthOf(si: number): Length {
  return quantityFromSi("length", si, "mm");
}

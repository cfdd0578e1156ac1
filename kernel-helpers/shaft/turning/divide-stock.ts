import type { PassName } from "./cut-plan-types.js";

/** Depths [m], ON RADIUS, of cuts that share the metal on one side. */
export interface Depths {
  readonly total: number;
  readonly deepest: number;
  readonly finishing: number;
  /** Below it the tool rubs. */
  readonly least: number;
}

/**
 * Divides the metal on one side into cuts: roughing cuts of equal depth, then a measuring and a finishing cut of the
 * same depth as each other, so that both spring alike and the first tells what the last will leave.
 *
 * @throws RangeError  less is there than the tool can cut, or the depths contradict one another
 */
export function divideStock({
  total,
  deepest,
  finishing,
  least,
}: Depths): readonly { readonly name: PassName; readonly depth: number }[] {
  const um = (depth: number): string =>
    `${Number((depth * 1e6).toPrecision(3))} µm (${Number((depth / 25.4e-6).toPrecision(3))} thou)`;
  if (!(finishing >= least))
    throw new RangeError(
      `cutPlan: the finishing cut, ${um(finishing)} on radius, is thinner than the tool cuts, ${um(least)}; take a deeper one or a sharper tool`,
    );
  // Then a rest too thin for a cut of its own always goes into the last two.
  if (!(deepest >= finishing + least / 2))
    throw new RangeError(
      `cutPlan: the deepest cut, ${um(deepest)} on radius, must be above the finishing cut, ${um(finishing)}, by half of what the tool cuts at least, ${um(least)}`,
    );
  if (!(total >= least))
    throw new RangeError(
      `cutPlan: only ${um(total)} on radius are there to be cut, less than the tool cuts, ${um(least)}: bring it to size by file, emery or grinding, or choose a smaller size`,
    );
  if (total < 2 * least) return [{ name: "finishing", depth: total }];
  const roughing = total - 2 * finishing;
  if (roughing < least) {
    const half = total / 2;
    return [
      { name: "measuring", depth: half },
      { name: "finishing", depth: half },
    ];
  }
  const count = Math.ceil(roughing / deepest - 1e-9);
  return [
    ...Array.from({ length: count }, () => ({ name: "rough" as const, depth: roughing / count })),
    { name: "measuring", depth: finishing },
    { name: "finishing", depth: finishing },
  ];
}

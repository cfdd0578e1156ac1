import { setImmediate as nextTurn } from "node:timers/promises";

/** How far a long reckoning is. */
export interface Step {
  /** What is counted, e.g. "shafts drawn". */
  readonly what: string;
  readonly done: number;
  readonly of: number;
}

/** Shows how far a reckoning is; undefined when it has ended. It may throw to stop it. */
export type StepTeller = (step: Step | undefined) => void;

let teller: StepTeller = () => {};

/** Where steps are shown from now on. The kernel sets it; without one nobody is told. */
export function tellStepsTo(next: StepTeller | undefined): void {
  teller = next ?? (() => {});
}

/**
 * Goes through the steps of a long reckoning, and lets the sheet show how far it is.
 *
 * Between steps the kernel may do what else there is to do: send what was shown, hear that the cell is to stop. The
 * result is the same as without being watched.
 *
 * Valid when: nothing else of the sheet runs beside it that changes what is reckoned with.
 *
 * @param steps  of a helper that ends in `InSteps` [{ what, done, of }, of numbers]
 * @returns what the helper returns in the end
 * @throws whatever the helper throws
 * @example
 * const limits = [{ name: "strength", kind: "number", margin: ({ load }) => 1 - load }];
 * const steps = weighOptionsInSteps({ inputs: { load: measured(0.8, 0.1) }, options: ["old"], limits: limits, draws: 1000, seed: 1 });
 * (await inSteps(steps)).chosen // "old"
 */
export async function inSteps<Result>(steps: Generator<Step, Result>): Promise<Result> {
  try {
    for (;;) {
      const step = steps.next();
      if (step.done === true) return step.value;
      teller(step.value);
      await nextTurn();
    }
  } finally {
    teller(undefined);
  }
}

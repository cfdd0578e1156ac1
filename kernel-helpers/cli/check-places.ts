import { availableParallelism } from "node:os";
import { join } from "node:path";
import { Worker } from "node:worker_threads";
import { checkPlace, type PlaceCheck } from "./check-place.js";

/** A thread takes as long to start as some ten rebuilds to check: for fewer it is not worth while. */
const fewest = 16;

/**
 * Checks many bundles and rebuilds, on as many threads as the machine runs at once.
 *
 * @param tell  is called once a place, in the order of places, as soon as it and all before it are checked
 * @throws Error  a thread broke down
 */
export async function checkPlaces(
  places: readonly string[],
  tell: (check: PlaceCheck) => void,
  threads: number = places.length < fewest ? 1 : Math.min(availableParallelism(), places.length),
): Promise<void> {
  if (threads <= 1) {
    for (const place of places) tell(checkPlace(place));
    return;
  }
  const checks: PlaceCheck[] = [];
  let [next, told] = [0, 0];
  const workOff = (thread: Worker): Promise<void> =>
    new Promise((done, failed) => {
      let at = 0;
      const goOn = (): void => {
        if (next < places.length) {
          at = next;
          next += 1;
          thread.postMessage(places[at]!);
        } else done();
      };
      thread.on("message", (check: PlaceCheck) => {
        checks[at] = check;
        for (; checks[told] !== undefined; told += 1) tell(checks[told]!);
        goOn();
      });
      thread.on("error", failed);
      goOn();
    });
  const program = join(__dirname, "check-thread.js");
  const all = Array.from({ length: threads }, () => new Worker(program, { execArgv: [] }));
  try {
    await Promise.all(all.map(workOff));
  } finally {
    await Promise.all(all.map((thread) => thread.terminate()));
  }
}

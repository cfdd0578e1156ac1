import { parentPort } from "node:worker_threads";
import { checkPlace } from "./check-place.js";

// A thread of checkPlaces: it is told a place, and answers what it found there.
parentPort!.on("message", (place: string) => parentPort!.postMessage(checkPlace(place)));

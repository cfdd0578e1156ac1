import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import type { RunIn, RunningPrediction } from "../kernel-helpers/bearing/index.js";
import { publishedValue, readSheetRecord } from "../kernel-helpers/record/sheet-record.js";
import { expectClose } from "./support/expect-close.js";
import { copyOfDemo, runThrough } from "./support/run-demo.js";

const sheet = "11-run-in";

// What the invented readings were made from: rises over the room at full speed [K].
const truths = [
  { demo: "demo", rises: [16 / 1.8, 13 / 1.8] },
  { demo: "demo-metric", rises: [13.5, 10.5] },
] as const;

describe.each(truths)("11-run-in on $demo", ({ demo, rises }) => {
  let folder: string;
  const published = <T>(name: string, from = sheet): T =>
    publishedValue(readSheetRecord(folder, from)!, name) as T;

  beforeAll(async () => {
    folder = copyOfDemo(demo, ["04-shaft-survey", "06-shaft-salvage", "08-bearing-pour", sheet]);
    await runThrough(folder);
  }, 240_000);

  it("finds where each box was heading, and that it was foretold", () => {
    const { boxes, state } = published<RunIn>("runIn");
    expect(state).toBe("go on");
    boxes.forEach((box, i) => {
      const found = box.end!.temperature.kelvin - box.readings.at(-1)!.room.kelvin;
      expectClose(found, rises[i]!, { rel: 0.08, because: "three standard uncertainties of the end" });
      expect(box.agreement).toBe("as foretold");
    });
  });
  it("takes its forecast from the film: a full one in both boxes", () => {
    const { boxes } = published<RunningPrediction>("running", "08-bearing-pour");
    expect(boxes.map(({ film }) => film.state)).toEqual(["full film", "full film"]);
  });
  it("cannot tell yet from the first readings alone, and says when to read again", async () => {
    const path = join(folder, "tables", "run-in.csv");
    const lines = readFileSync(path, "utf8").split("\n");
    const header = lines.findIndex((line) => line.startsWith("time"));
    writeFileSync(path, `${lines.slice(0, header + 4).join("\n")}\n`);
    await runThrough(folder);
    const early = published<RunIn>("runIn");
    expect(early.state).toBe("cannot tell yet");
    expect(early.readNext.in("minute")).toBeGreaterThanOrEqual(5);
  }, 240_000);
});

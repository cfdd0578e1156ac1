import { basename, join } from "node:path";
import {
  type RebuildFacts,
  RebuildFileFaults,
  readRebuildFile,
  rebuildFileName,
} from "../../record/index.js";
import { listTables, tablesFolder } from "./rebuild-files.js";
import { rebuildId } from "./rebuild-id.js";
import { type Route, route } from "./router.js";
import { listedSheets } from "./sheet-states.js";

/** What the overview shows. A rebuild.json with faults is told as such; sheets and tables are listed all the same. */
export function rebuildRoute(directory: string, notice: string): Route {
  return route("GET", "/api/rebuild", () => ({
    json: {
      id: rebuildId(directory),
      ...facts(directory),
      notice,
      sheets: listedSheets(directory),
      tables: listTables(directory).map((name) => ({ name, file: `${tablesFolder}/${name}.csv` })),
    },
  }));
}

function facts(directory: string): Readonly<Record<string, unknown>> {
  try {
    const { title, invented, unitSystem }: RebuildFacts = readRebuildFile(join(directory, rebuildFileName));
    return { title, invented, unitSystem, faults: [] };
  } catch (error) {
    const faults = error instanceof RebuildFileFaults ? error.faults : [String(error)];
    return { title: basename(directory), invented: false, unitSystem: "metric", faults };
  }
}

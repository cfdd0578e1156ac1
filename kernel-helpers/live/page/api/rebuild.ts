import { request } from "./request.js";

export type SheetStateName = "fresh" | "stale" | "failed" | "never run";

/** One worksheet as the overview lists it. */
export interface SheetSummary {
  readonly name: string;
  readonly title: string;
  readonly state: SheetStateName;
  /** What makes it stale or failed, in words. */
  readonly why: string;
  /** Whether it is the rebuild's own file; else a template of the package. */
  readonly own: boolean;
}

export interface TableSummary {
  readonly name: string;
  readonly file: string;
}

/** The rebuild that the server shows. */
export interface Rebuild {
  /** Tells the rebuild from others that the same address may show, also when its title changes. */
  readonly id: string;
  readonly title: string;
  readonly invented: boolean;
  readonly notice: string;
  readonly unitSystem: string;
  /** What is wrong with rebuild.json. */
  readonly faults?: readonly string[];
  readonly sheets: readonly SheetSummary[];
  readonly tables: readonly TableSummary[];
}

export async function fetchRebuild(): Promise<Rebuild> {
  return (await request<Rebuild>("GET", "/api/rebuild")).json;
}

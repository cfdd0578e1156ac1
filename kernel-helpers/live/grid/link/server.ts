import type { ReportedFault } from "../model/index.js";

export interface TableFile {
  readonly text: string;
  /** SHA-256 of the file; null where there is none yet. */
  readonly sha256: string | null;
}

export interface Checked {
  readonly faults: readonly ReportedFault[];
  readonly warnings: readonly string[];
}

export interface SheetState {
  readonly name: string;
  readonly title?: string;
  readonly state: "fresh" | "stale" | "failed" | "never run";
  readonly why: string;
}

export interface RebuildState {
  readonly title: string;
  readonly unitSystem: "inch" | "metric";
  readonly sheets: readonly SheetState[];
}

/** The server gave no answer at all. */
export class ServerAway extends Error {}

/** The server answered that it will not. */
export class Refused extends Error {
  readonly status: number;

  constructor(status: number, message: string) {
    super(message);
    this.status = status;
  }
}

/** The file of a table; an empty text where there is none yet. */
export async function loadTable(name: string): Promise<TableFile> {
  const { status, json } = await ask("GET", tablePath(name));
  if (status === 404) return { text: "", sha256: null };
  return json as unknown as TableFile;
}

/** Saves a table over the file that was loaded; where another one stands there by now, that is given back. */
export async function saveTable(
  name: string,
  text: string,
  base: string | null,
): Promise<{ readonly saved: string } | { readonly conflict: TableFile }> {
  const { status, json } = await ask("PUT", tablePath(name), { text, base });
  if (status !== 409) return { saved: String(json.sha256) };
  if (!("sha256" in json)) throw new Refused(409, messageOf(json, 409));
  return { conflict: { text: String(json.text ?? ""), sha256: (json.sha256 as string | null) ?? null } };
}

/** What the table reader says of a text. */
export async function checkTable(name: string, text: string): Promise<Checked> {
  const { json } = await ask("POST", `${tablePath(name)}/check`, { text });
  return json as unknown as Checked;
}

export async function loadRebuild(): Promise<RebuildState> {
  const { json } = await ask("GET", "/api/rebuild");
  return json as unknown as RebuildState;
}

/** Lets worksheets run; how far they are comes as events. */
export async function runSheets(names: readonly string[]): Promise<void> {
  await ask("POST", "/api/run", { sheets: names });
}

function tablePath(name: string): string {
  return `/api/tables/${encodeURIComponent(name)}`;
}

/** Answers a caller understands; other refusals are thrown. */
const understood: readonly string[] = ["GET 404", "PUT 409"];

async function ask(
  method: string,
  path: string,
  body?: object,
): Promise<{ readonly status: number; readonly json: Record<string, unknown> }> {
  let response: Response;
  try {
    response = await fetch(path, {
      method,
      headers: { "X-Journalbox": "1", ...(body === undefined ? {} : { "Content-Type": "application/json" }) },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      cache: "no-store",
    });
  } catch (cause) {
    throw new ServerAway("the server does not answer", { cause });
  }
  const json = (await response.json().catch(() => ({}))) as Record<string, unknown>;
  const { ok, status } = response;
  if (ok || understood.includes(`${method} ${status}`)) return { status, json };
  throw new Refused(status, messageOf(json, status));
}

function messageOf(json: Record<string, unknown>, status: number): string {
  const { message, error } = json;
  if (typeof message === "string") return message;
  return typeof error === "string" ? error : `the server answered ${status}`;
}

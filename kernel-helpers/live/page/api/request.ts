/** The server does not answer at all: it was stopped, or is being started anew. */
export class ServerAway extends Error {
  constructor() {
    super("The server does not answer.");
    this.name = "ServerAway";
  }
}

/** The server answers, and says no. */
export class Refused extends Error {
  readonly status: number;

  constructor(status: number, message: string) {
    super(message);
    this.name = "Refused";
    this.status = status;
  }
}

export interface Reply<T> {
  readonly status: number;
  readonly json: T;
}

/**
 * Asks the page's own server, with the header that tells a page of it from any other.
 *
 * @param expected further statuses that are an answer and no failure, such as 409
 * @throws ServerAway there is no answer
 * @throws Refused another status; the message is the server's own where it gives one
 */
export async function request<T>(
  method: "GET" | "PUT" | "POST" | "DELETE",
  path: string,
  body?: unknown,
  expected: readonly number[] = [],
): Promise<Reply<T>> {
  const headers: Record<string, string> = { "X-Journalbox": "1" };
  if (body !== undefined) headers["Content-Type"] = "application/json";
  const text = body === undefined ? undefined : JSON.stringify(body);
  let response: Response;
  let said: string;
  try {
    response = await fetch(path, {
      method,
      headers,
      body: text,
      credentials: "same-origin",
      cache: "no-store",
    });
    said = await response.text();
  } catch {
    throw new ServerAway();
  }
  const json = parsed(said);
  if (response.ok || expected.includes(response.status)) return { status: response.status, json: json as T };
  throw new Refused(response.status, messageOf(json) ?? `The server said ${response.status}.`);
}

function parsed(text: string): unknown {
  if (text === "") return undefined;
  try {
    return JSON.parse(text);
  } catch {
    return undefined; // not for us: an error page of something in between
  }
}

function messageOf(json: unknown): string | undefined {
  const message = (json as { message?: unknown } | null | undefined)?.message;
  return typeof message === "string" && message !== "" ? message : undefined;
}

/** What to tell the user of a failure. */
export function wordsOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

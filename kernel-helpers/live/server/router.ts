import type { IncomingMessage } from "node:http";
import { readJsonBody } from "./body.js";
import { HttpError } from "./http-error.js";

/** A request as handlers see it. */
export interface Asked {
  /** What stands in the place of each `:name` of the route's path, decoded. */
  readonly params: Readonly<Record<string, string>>;
  readonly request: IncomingMessage;
  /** The JSON it brings along, of at most so many bytes. */
  body(limit: number): Promise<Record<string, unknown>>;
}

/** An answer: JSON, or a text or bytes of some type; neither means that there is nothing to say. */
export interface Answer {
  readonly status?: number;
  readonly json?: unknown;
  readonly content?: string | Uint8Array;
  readonly type?: string;
  readonly headers?: Readonly<Record<string, string>>;
}

/** What is done when a method is asked of a path, such as `/api/sheets/:name`; `*` at the end takes the rest. */
export interface Route {
  readonly method: string;
  readonly path: string;
  readonly handle: (asked: Asked) => Answer | Promise<Answer>;
}

/** A method, a path and what is done, in one line of a table of routes. */
export function route(method: string, path: string, handle: Route["handle"]): Route {
  return { method, path, handle };
}

/**
 * Answers a request by the first route that fits.
 *
 * @throws HttpError 404 no route has this path; 405 none has this method; 400 the path cannot be decoded
 */
export async function answer(routes: readonly Route[], request: IncomingMessage): Promise<Answer> {
  const steps = stepsOf(request.url ?? "/");
  const method = request.method === "HEAD" ? "GET" : (request.method ?? "GET");
  const fitting = routes.filter(({ path }) => match(path, steps) !== undefined);
  const found = fitting.find((each) => each.method === method);
  if (found === undefined) {
    if (fitting.length === 0) throw new HttpError(404, "there is nothing at this address");
    throw new HttpError(405, `${method} cannot be asked of this address`);
  }
  return found.handle({
    params: match(found.path, steps)!,
    request,
    body: (limit) => readJsonBody(request, limit),
  });
}

/**
 * The steps of an address, each decoded. A step that would be a path by itself once decoded, or go up, is nothing
 * that was ever handed out here.
 */
export function stepsOf(url: string): readonly string[] {
  const [path = ""] = url.split("?", 1);
  return path
    .split("/")
    .slice(1)
    .map((step) => {
      let decoded: string;
      try {
        decoded = decodeURIComponent(step);
      } catch {
        throw new HttpError(400, "the address cannot be decoded");
      }
      if (/^\.{1,2}$|[/\\\0]/.test(decoded)) throw new HttpError(404, "there is nothing at this address");
      return decoded;
    });
}

function match(pattern: string, steps: readonly string[]): Record<string, string> | undefined {
  const parts = pattern.split("/").slice(1);
  const open = parts.at(-1) === "*";
  if (open ? steps.length < parts.length : steps.length !== parts.length) return undefined;
  const params: Record<string, string> = open ? { rest: steps.slice(parts.length - 1).join("/") } : {};
  for (const [i, part] of (open ? parts.slice(0, -1) : parts).entries()) {
    if (part.startsWith(":")) params[part.slice(1)] = steps[i]!;
    else if (part !== steps[i]) return undefined;
  }
  return params;
}

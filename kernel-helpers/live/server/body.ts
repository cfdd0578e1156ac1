import type { IncomingMessage } from "node:http";
import { HttpError } from "./http-error.js";

const megabyte = 1024 * 1024;

/** What a request may bring along at most [bytes]. */
export const bodyLimits: Readonly<Record<"small" | "table" | "sheet" | "outputs", number>> = {
  /** Commands. */
  small: megabyte,
  /** A table of some hundred thousand rows. */
  table: 32 * megabyte,
  /** A worksheet without outputs. */
  sheet: 16 * megabyte,
  /** A worksheet with its figures. */
  outputs: 128 * megabyte,
};

/**
 * The JSON object a request brings along; an empty one where it brings nothing.
 *
 * @throws HttpError 413 it is larger than the limit; 415 it says it is no JSON; 400 it is no JSON object
 */
export async function readJsonBody(
  request: IncomingMessage,
  limit: number,
): Promise<Record<string, unknown>> {
  if (Number(request.headers["content-length"] ?? 0) > limit) throw tooLarge(limit);
  const chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    length += chunk.length;
    if (length > limit) throw tooLarge(limit);
    chunks.push(chunk);
  }
  if (length === 0) return {};
  // Scripts that do not say what they send are made to say text/plain by the browser.
  const type = request.headers["content-type"];
  if (type !== undefined && !/^(application\/json|text\/plain)\b/i.test(type))
    throw new HttpError(415, `a body must be JSON, got ${type}`);
  return parse(Buffer.concat(chunks));
}

function parse(bytes: Buffer): Record<string, unknown> {
  let value: unknown;
  try {
    value = JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
  } catch {
    throw new HttpError(400, "a body must be JSON in UTF-8");
  }
  if (typeof value !== "object" || value === null || Array.isArray(value))
    throw new HttpError(400, "a body must be a JSON object");
  return value as Record<string, unknown>;
}

function tooLarge(limit: number): HttpError {
  return new HttpError(413, `a body may have ${Math.round(limit / megabyte)} MB at most`);
}

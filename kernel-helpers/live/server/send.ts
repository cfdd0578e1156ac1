import { createHash } from "node:crypto";
import type { IncomingMessage, ServerResponse } from "node:http";
import type { Answer } from "./router.js";
import { securityHeaders } from "./security-headers.js";

/** Sends an answer, or just says that the browser has it already. */
export function send(request: IncomingMessage, response: ServerResponse, answer: Answer, port: number): void {
  const { status = 200, json, content, headers = {} } = answer;
  const type = json === undefined ? (answer.type ?? "text/plain; charset=utf-8") : "application/json";
  const body = Buffer.from(json === undefined ? (content ?? "") : JSON.stringify(json));
  // Unless it is said otherwise: what has a mark may be kept, but asked for; all else is not kept at all.
  const cache = headers.ETag === undefined ? "no-store" : "no-cache";
  const all: Record<string, string> = {
    ...securityHeaders(port),
    "Cache-Control": cache,
    "Content-Type": type,
    ...headers,
  };
  if (status === 200 && headers.ETag !== undefined && request.headers["if-none-match"] === headers.ETag) {
    response.writeHead(304, all).end();
    return;
  }
  if (status !== 204) all["Content-Length"] = String(body.length);
  response.writeHead(status, all).end(request.method === "HEAD" || status === 204 ? undefined : body);
}

/** A mark of the content, by which a browser asks whether it has changed. */
export function etagOf(bytes: Uint8Array): string {
  return `"${createHash("sha256").update(bytes).digest("base64url").slice(0, 27)}"`;
}

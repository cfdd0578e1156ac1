import type { IncomingMessage, ServerResponse } from "node:http";
import {
  type Access,
  accessCookie,
  changeRefusal,
  isToken,
  type Refusal,
  showsToken,
  strangerRefusal,
} from "./access.js";
import type { EventHub } from "./event-hub.js";
import { HttpError } from "./http-error.js";
import { plainPage } from "./page-shell.js";
import { type Answer, answer, type Route } from "./router.js";
import { securityHeaders } from "./security-headers.js";
import { send } from "./send.js";
import type { Tickets } from "./tickets.js";

export interface RequestSettings {
  readonly access: Access;
  readonly tickets: Tickets;
  readonly routes: readonly Route[];
  readonly events: EventHub;
}

/** Answers one request, whatever it is: first whether it may be looked at at all, then what it asks. */
export async function handleRequest(
  request: IncomingMessage,
  response: ServerResponse,
  settings: RequestSettings,
): Promise<void> {
  const { access, routes, events } = settings;
  let reply: Answer;
  try {
    const entry = entryBy(request, settings);
    if (entry !== undefined) reply = entry;
    else if (request.method === "GET" && pathOf(request) === "/api/events")
      return events.addStream(response, securityHeaders(access.port));
    else reply = await answer(routes, request);
  } catch (error) {
    reply = answerTo(error, request);
  }
  // What is still on its way in of a body that was not wanted is not waited for.
  if (!request.complete) response.shouldKeepAlive = false;
  send(request, response, reply, access.port);
}

/** The answer to one who is let in by the token in the address, or turned away; undefined for one who is in. */
function entryBy(
  request: IncomingMessage,
  { access, tickets }: Pick<RequestSettings, "access" | "tickets">,
): Answer | undefined {
  const strange = strangerRefusal(request, access);
  if (strange !== undefined) return refused(request, strange);
  const query = new URLSearchParams(request.url!.split("?")[1]);
  const [token, ticket] = [query.get("token"), query.get("ticket")];
  if (request.method === "GET" && (token ?? ticket) !== null && !pathOf(request).startsWith("/api/")) {
    const isGood = token !== null ? isToken(token, access) : tickets.use(ticket!);
    // A ticket is used up when the page is loaded anew; then the cookie counts.
    if (!isGood && !showsToken(request, access)) return refused(request, noToken);
    return { status: 303, headers: { Location: pathOf(request), "Set-Cookie": accessCookie(access) } };
  }
  if (!showsToken(request, access)) return refused(request, noToken);
  const reads = request.method === "GET" || request.method === "HEAD";
  const change = reads ? undefined : changeRefusal(request, access);
  return change === undefined ? undefined : refused(request, change);
}

const noToken: Refusal = {
  status: 403,
  message: "This address needs its token: open the one that `journalbox open` has printed.",
};

function refused(request: IncomingMessage, { status, message }: Refusal): Answer {
  return wantsPage(request) ? pageSaying("Not let in", status, message) : { status, json: { message } };
}

function pageSaying(title: string, status: number, message: string): Answer {
  return { status, content: plainPage(title, message), type: "text/html; charset=utf-8" };
}

function wantsPage({ headers }: IncomingMessage): boolean {
  return headers.accept?.includes("text/html") === true;
}

function answerTo(error: unknown, request: IncomingMessage): Answer {
  if (error instanceof HttpError) {
    const { status, message, details } = error;
    const isPage = wantsPage(request) && !pathOf(request).startsWith("/api/");
    return isPage ? pageSaying("Not to be had", status, message) : { status, json: { message, ...details } };
  }
  const message = error instanceof Error ? error.message : String(error);
  console.error(`journalbox: ${request.method} ${pathOf(request)}: ${message}`);
  return { status: 500, json: { message } };
}

/** The path alone: what stands behind it may be a secret. */
function pathOf(request: IncomingMessage): string {
  return request.url!.split("?", 1)[0]!;
}

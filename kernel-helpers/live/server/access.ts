import { createHash, randomBytes, timingSafeEqual } from "node:crypto";
import type { IncomingMessage } from "node:http";

/** Who may talk to the server: whoever knows the token, at this one address. */
export interface Access {
  readonly token: string;
  readonly port: number;
}

/** Why a request is turned away. */
export interface Refusal {
  readonly status: number;
  readonly message: string;
}

/** A token that cannot be guessed: 256 random bits, in letters an address can hold. */
export function newToken(): string {
  return randomBytes(32).toString("base64url");
}

/** The only origin pages of this server have. */
export function originOf({ port }: Access): string {
  return `http://127.0.0.1:${port}`;
}

/** Cookies do not tell ports apart, so the name does. */
export function cookieName({ port }: Access): string {
  return `journalbox-${port}`;
}

/** Lets the browser that showed the token in again; scripts of the page cannot read it, other sites not use it. */
export function accessCookie(access: Access): string {
  return `${cookieName(access)}=${access.token}; HttpOnly; SameSite=Strict; Path=/`;
}

/**
 * Why a request must not even be looked at, or undefined.
 *
 * The Host must be this address: a foreign name that was made to point to this machine (DNS rebinding) shows
 * itself there. An Origin, where there is one, must be this server's own; browsers also say in Sec-Fetch-Site
 * whose page asks, and only opening a page may come from elsewhere.
 */
export function strangerRefusal(request: IncomingMessage, access: Access): Refusal | undefined {
  const { host, origin } = request.headers;
  if (request.url === undefined || !/^\/(?![/\\])/.test(request.url))
    return { status: 400, message: "the address must begin with one slash" };
  if (host !== `127.0.0.1:${access.port}`)
    return { status: 403, message: `open this server as ${originOf(access)}` };
  if (origin !== undefined && origin !== originOf(access))
    return { status: 403, message: "a page of another origin must not ask" };
  const site = request.headers["sec-fetch-site"];
  const opensPage = request.method === "GET" && request.headers["sec-fetch-mode"] === "navigate";
  if (site !== undefined && site !== "same-origin" && site !== "none" && !opensPage)
    return { status: 403, message: "a page of another site must not ask" };
  return undefined;
}

/** Whether a request shows the token: in its cookie, or as `Authorization: token ...`. */
export function showsToken(request: IncomingMessage, access: Access): boolean {
  const { authorization, cookie } = request.headers;
  const told = /^token (.+)$/i.exec(authorization ?? "")?.[1];
  if (told !== undefined) return isToken(told, access);
  return (cookie ?? "").split(";").some((part) => {
    const [name, value] = part.trim().split("=", 2);
    return name === cookieName(access) && value !== undefined && isToken(value, access);
  });
}

/**
 * Why a request must not change anything, or undefined: it must say its Origin, and carry a header that a form
 * or an image of a foreign page cannot send.
 */
export function changeRefusal(request: IncomingMessage, access: Access): Refusal | undefined {
  if (request.headers.origin !== originOf(access))
    return { status: 403, message: `a change must come with Origin: ${originOf(access)}` };
  if (request.headers["x-journalbox"] !== "1")
    return { status: 403, message: "a change must come with the header X-Journalbox: 1" };
  return undefined;
}

/** Compares in a time that tells nothing about where the two differ, nor about their lengths. */
export function isToken(given: string, { token }: Access): boolean {
  return timingSafeEqual(digest(given), digest(token));
}

function digest(text: string): Buffer {
  return createHash("sha256").update(text).digest();
}

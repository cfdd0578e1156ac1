import type { Line, ServerLine } from "../api/server-line.js";
import type { Notices } from "./notices.js";

/** A bar for as long as the server is away; it goes by itself when the server is back. */
export function sayHowServerStands(line: ServerLine, notices: Notices): void {
  line.changed.connect((_, state: Line) => {
    if (state === "open") return notices.clear("server");
    notices.show("server", { kind: "trouble", text: words[state] });
  });
}

const words: Readonly<Record<Exclude<Line, "open">, string>> = {
  away: "The server does not answer. You can go on writing: what you type is kept in this browser, and this page connects again by itself when the server is back.",
  locked:
    "The server was started again and wants its new key: open the address that it shows where you started it. What you typed is kept in this browser.",
};

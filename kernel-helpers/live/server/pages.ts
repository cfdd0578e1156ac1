import { basename } from "node:path";
import { confinedPath } from "./confined-path.js";
import { HttpError } from "./http-error.js";
import { needsOf } from "./page-needs.js";
import { type PageShell, pageShell, plainPage } from "./page-shell.js";
import { readBytes, sheetNamed, tablePath } from "./rebuild-files.js";
import { rebuildId } from "./rebuild-id.js";
import { type Answer, type Route, route } from "./router.js";
import { reportSecurity } from "./security-headers.js";

/** The pages themselves, and the report as it was last written. */
export function pageRoutes(directory: string): readonly Route[] {
  const rebuild = rebuildId(directory);
  return [
    route("GET", "/", () => shell({ page: "overview", name: "", title: basename(directory), rebuild })),
    route("GET", "/sheet/:name", ({ params }) => {
      const { name } = sheetNamed(directory, params.name!);
      return shell({ page: "sheet", name, title: name, rebuild });
    }),
    route("GET", "/table/:name", ({ params }) => {
      const name = params.name!;
      tablePath(directory, name); // a table that is not there yet may be begun
      return shell({ page: "table", name, title: name, rebuild });
    }),
    route("GET", "/report", () => {
      const file = readBytes(confinedPath(directory, "out", "report.html"));
      if (file === undefined) throw new HttpError(404, "no report has been written yet: run all sheets");
      return {
        content: file.bytes,
        type: "text/html; charset=utf-8",
        headers: { "Content-Security-Policy": reportSecurity },
      };
    }),
  ];
}

function shell(page: Omit<PageShell, "needs">): Answer {
  const type = "text/html; charset=utf-8";
  const needs = needsOf(page.page);
  if (needs !== undefined) return { content: pageShell({ ...page, needs }), type };
  const text =
    "The page itself has not been built. Run npm run build in the folder of Journalbox, then reload.";
  return { status: 503, content: plainPage("Not built yet", text), type };
}

import { readFileSync, statSync } from "node:fs";
import { basename, extname, join } from "node:path";
import { packageRoot } from "../../record/index.js";
import { plotlyFile } from "../../view/plotly-file.js";
import { confinedPath } from "./confined-path.js";
import { HttpError } from "./http-error.js";
import { type Route, route } from "./router.js";
import { etagOf } from "./send.js";

const types: Readonly<Record<string, string>> = {
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json",
  ".map": "application/json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".ttf": "font/ttf",
  ".woff": "font/woff",
  ".woff2": "font/woff2",
};

/** The folder of the page's programs and styles, as built. */
export function pageFolder(): string {
  return join(packageRoot(), "dist", "live", "page");
}

/** The page's own files, and the plotting library under /static/plotly/. */
export function staticRoutes(folder: string = pageFolder()): readonly Route[] {
  return [
    route("GET", "/static/plotly/:file", ({ params }) => {
      const path = plotlyFile();
      if (params.file !== basename(path)) throw new HttpError(404, "there is no such file");
      return fileAnswer(path);
    }),
    route("GET", "/static/*", ({ params }) => fileAnswer(pathIn(folder, params.rest!))),
  ];
}

function pathIn(folder: string, rest: string): string {
  try {
    return confinedPath(folder, ...rest.split("/"));
  } catch (error) {
    if (error instanceof HttpError) throw error;
    throw new HttpError(404, "the page has not been built: run npm run build");
  }
}

function fileAnswer(path: string): { content: Buffer; type: string; headers: Record<string, string> } {
  if (!statSync(path, { throwIfNoEntry: false })?.isFile()) throw new HttpError(404, "there is no such file");
  const content = readFileSync(path);
  const type = types[extname(path).toLowerCase()] ?? "application/octet-stream";
  return { content, type, headers: { ETag: etagOf(content) } };
}

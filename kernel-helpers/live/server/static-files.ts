import { existsSync, readFileSync, statSync } from "node:fs";
import type { IncomingMessage } from "node:http";
import { basename, extname } from "node:path";
import { gunzipSync } from "node:zlib";
import { plotlyFile } from "../../view/plotly-file.js";
import { confinedPath } from "./confined-path.js";
import { HttpError } from "./http-error.js";
import { pageFolder } from "./page-needs.js";
import { type Answer, type Route, route } from "./router.js";
import { etagOf } from "./send.js";

const types: Readonly<Record<string, string>> = {
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".woff2": "font/woff2",
};

/** The name of a built file holds a hash of its content: another content has another name. */
const forGood = { "Cache-Control": "private, max-age=31536000, immutable" };

/** The page's own files, and the plotting library under /static/plotly/. */
export function staticRoutes(folder: string = pageFolder()): readonly Route[] {
  const plotly = markedFile(plotlyFile());
  return [
    route("GET", "/static/plotly/:file", ({ params }) => {
      if (params.file !== basename(plotlyFile())) throw nothingHere();
      return plotly();
    }),
    route("GET", "/static/*", ({ params, request }) => builtFile(pathIn(folder, params.rest!), request)),
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

/** A file as the build wrote it: a text gzipped, a font as it is. */
function builtFile(path: string, request: IncomingMessage): Answer {
  const type = types[extname(path)];
  if (type === undefined) throw nothingHere();
  const packed = `${path}.gz`;
  if (!existsSync(packed)) {
    if (!statSync(path, { throwIfNoEntry: false })?.isFile()) throw nothingHere();
    return { content: readFileSync(path), type, headers: forGood };
  }
  const content = readFileSync(packed);
  const headers = { ...forGood, Vary: "Accept-Encoding" };
  if (!takesGzip(request)) return { content: gunzipSync(content), type, headers };
  return { content, type, headers: { ...headers, "Content-Encoding": "gzip" } };
}

/** Whether the browser takes gzip: all do; other programs may say nothing of it, or refuse it with q=0. */
function takesGzip({ headers }: IncomingMessage): boolean {
  const told = headers["accept-encoding"] ?? "";
  return String(told)
    .split(",")
    .some((each) => /^\s*gzip\s*(;\s*q=(?!0(\.0*)?\s*$)|$)/i.test(each));
}

/** A file of a package, whose name stays when its content changes. It is read, and its mark made, when it is another. */
function markedFile(path: string): () => Answer {
  let last: { readonly time: number; readonly answer: Answer } | undefined;
  return () => {
    const time = statSync(path).mtimeMs;
    if (last?.time !== time) {
      const content = readFileSync(path);
      last = { time, answer: { content, type: types[extname(path)]!, headers: { ETag: etagOf(content) } } };
    }
    return last.answer;
  };
}

function nothingHere(): HttpError {
  return new HttpError(404, "there is no such file");
}

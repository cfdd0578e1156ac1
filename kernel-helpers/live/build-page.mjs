/**
 * Bundles what runs in the browser into dist/live/page: main.js and main.css (overview and worksheets), grid.js
 * and grid.css (tables), chunks/ that are fetched when first needed, and assets/ (fonts of the formulas).
 *
 *   node kernel-helpers/live/build-page.mjs [folder to build into]
 */
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, "..", "..");

/** What may be sent for the first worksheet, packed as the server packs it, without plotly.js [bytes]. */
export const mostBytes = 1_000_000;

/** Entries of the bundle: the table editor has its own, so that a tablet by the lathe loads nothing else. */
const entries = {
  main: join(here, "page", "main.ts"),
  grid: join(here, "grid", "main.ts"),
};

/**
 * Builds beside the folder and then puts the whole in its place, so that no page finds half of it.
 *
 * @param {string} folder  what was in it before is removed
 * @returns {Promise<{ sizes: Record<string, number>, total: number, largest: [string, number][] }>} gzipped bytes
 *   of what each entry needs, and of everything but plotly.js
 */
export async function buildPage(folder) {
  const made = `${folder}.${process.pid}`;
  const present = Object.fromEntries(Object.entries(entries).filter(([, file]) => existsSync(file)));
  const { metafile } = await build({
    absWorkingDir: root,
    entryPoints: present,
    outdir: made,
    bundle: true,
    splitting: true,
    format: "esm",
    platform: "browser",
    target: "es2022",
    minify: true,
    legalComments: "none",
    metafile: true,
    logLevel: "warning",
    publicPath: "/static/",
    chunkNames: "chunks/[name]-[hash]",
    assetNames: "assets/[name]-[hash]",
    loader: { ".woff2": "file", ".png": "dataurl", ".gif": "dataurl" },
    define: { "process.env.NODE_ENV": '"production"', global: "globalThis", __dirname: '"/"' },
    alias: { path: "path-browserify" },
    plugins: [tildeImports, icons, formulaFonts, unused],
  });
  const sizes = sizesOf(metafile, made);
  mkdirSync(dirname(folder), { recursive: true });
  rmSync(folder, { recursive: true, force: true });
  renameSync(made, folder);
  return sizes;
}

/** `~name` in a style sheet means the package of that name. */
const tildeImports = {
  name: "tilde-imports",
  setup(build) {
    build.onResolve({ filter: /^~/ }, ({ path, kind, resolveDir }) =>
      build.resolve(path.slice(1), { kind, resolveDir }),
    );
  },
};

/** JupyterLab's scripts want an icon as its text, its style sheets as an address. */
const icons = {
  name: "icons",
  setup(build) {
    build.onResolve({ filter: /\.svg$/ }, ({ path, kind, resolveDir }) =>
      kind === "url-token" ? { path: resolve(resolveDir, path), suffix: "?address" } : undefined,
    );
    build.onLoad({ filter: /\.svg$/ }, ({ path, suffix }) => ({
      contents: readFileSync(path),
      loader: suffix === "?address" ? "dataurl" : "text",
    }));
  },
};

/** Each font of the formulas once: every browser that can run the page reads woff2. */
const formulaFonts = {
  name: "formula-fonts",
  setup(build) {
    build.onLoad({ filter: /katex(\.min)?\.css$/ }, ({ path }) => ({
      contents: readFileSync(path, "utf8").replace(/,\s*url\([^)]*\.(?:woff|ttf)\)\s*format\([^)]*\)/g, ""),
      loader: "css",
    }));
  },
};

/**
 * Parts that JupyterLab's packages bring along and that no page here shows: toolbars, forms and diagrams of the
 * application JupyterLab. Whatever is taken from them is a function that does nothing.
 */
const unused = {
  name: "unused",
  setup(build) {
    const names = /^(@jupyter\/(web|react)-components|@jupyterlab\/mermaid|@rjsf\/.*)$/;
    build.onResolve({ filter: names }, ({ path }) => ({ path, namespace: "unused" }));
    // Of the many languages the editor knows only those of a worksheet are kept.
    build.onResolve({ filter: /^@codemirror\/(lang-|legacy-modes)/ }, ({ path, importer }) =>
      /@jupyterlab.codemirror/.test(importer) && !/lang-(javascript|json|markdown)$/.test(path)
        ? { path, namespace: "unused" }
        : undefined,
    );
    build.onLoad({ filter: /.*/, namespace: "unused" }, () => ({ contents: nothing, loader: "js" }));
  },
};

const nothing = `
const nothing = new Proxy(function () {}, {
  get: (target, name) => (name === "__esModule" ? true : typeof name === "symbol" ? target[name] : nothing),
  apply: () => nothing,
  construct: () => nothing,
});
module.exports = Object.create(nothing); // importers look up names along the prototypes
`;

function sizesOf({ outputs }, folder) {
  const packed = (file) => gzipSync(readFileSync(resolve(root, file))).length;
  const bytes = Object.fromEntries(
    Object.keys(outputs)
      .filter((file) => !file.endsWith(".map"))
      .map((file) => [file, packed(file)]),
  );
  const sum = (files) => [...files].reduce((total, file) => total + bytes[file], 0);
  const sizes = {};
  for (const [file, { entryPoint, cssBundle }] of Object.entries(outputs)) {
    if (entryPoint === undefined || resolve(root, dirname(file)) !== resolve(folder)) continue;
    const needed = new Set(cssBundle === undefined ? [] : [cssBundle]);
    const visit = (name) => {
      if (needed.has(name) || outputs[name] === undefined) return;
      needed.add(name);
      // Fonts are fetched one by one as formulas need them; all else is counted, late or not.
      for (const each of outputs[name].imports) if (!each.external) visit(each.path);
    };
    visit(file);
    if (file.endsWith(".js"))
      sizes[file.split("/").at(-1)] = sum([...needed].filter((name) => !/\.woff2$/.test(name)));
  }
  const largest = Object.entries(bytes)
    .sort(([, a], [, b]) => b - a)
    .slice(0, 8);
  return { sizes, total: sum(Object.keys(bytes)), largest };
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const folder = resolve(process.argv[2] ?? join(root, "dist", "live", "page"));
  const { sizes } = await buildPage(folder);
  for (const [name, size] of Object.entries(sizes))
    console.log(`live page: ${name} and all it loads, gzipped: ${(size / 1000).toFixed(0)} kB`);
  if ((sizes["main.js"] ?? 0) > mostBytes) {
    console.error(`live page: main.js is larger than ${mostBytes / 1000} kB`);
    process.exitCode = 1;
  }
}

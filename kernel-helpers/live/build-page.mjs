/**
 * Bundles what runs in the browser into dist/live/page: programs and styles of overview and worksheets (main) and of
 * tables (grid), chunks/ that are fetched when first needed, assets/ (fonts of the formulas), and page.json, which
 * tells what each page needs. Every name holds a hash of its content, so that a browser may keep a file for good;
 * texts are written gzipped, which is how they are sent.
 *
 *   node kernel-helpers/live/build-page.mjs [folder to build into]
 */
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, "..", "..");

/** What may be sent for worksheets, late parts and all, gzipped as the server sends it, without plotly.js [bytes]. */
export const mostBytes = 1_000_000;

/** Entries of the bundle: the table editor has its own, so that a tablet by the lathe loads nothing else. */
const entries = {
  main: join(here, "page", "main.ts"),
  grid: join(here, "grid", "main.ts"),
};

/**
 * What each page needs at once besides its entry: the parts an entry fetches by itself come one after another, those
 * the page names come together. Formulas are in nearly every worksheet.
 */
const pages = {
  overview: { entry: "main", parts: [/page\/overview\/overview-page\.ts$/] },
  sheet: {
    entry: "main",
    parts: [
      /page\/sheet\/sheet-page\.ts$/,
      /@codemirror\/lang-(javascript|markdown)\//,
      /node_modules\/marked(-[a-z-]+)?\//,
      /katex\/dist\/contrib\/auto-render/,
    ],
  },
  table: { entry: "grid", parts: [] },
};

/**
 * Builds beside the folder and then puts the whole in its place, so that no page finds half of it.
 *
 * @param {string} folder  what was in it before is removed
 * @returns {Promise<Record<string, number>>} gzipped bytes of what each entry needs, late or not
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
    entryNames: "[name]-[hash]",
    chunkNames: "chunks/[name]-[hash]",
    assetNames: "assets/[name]-[hash]",
    loader: { ".woff2": "file", ".png": "dataurl", ".gif": "dataurl" },
    define: { "process.env.NODE_ENV": '"production"', global: "globalThis", __dirname: '"/"' },
    alias: { path: "path-browserify" },
    plugins: [tildeImports, icons, formulaFonts, unused],
  });
  const outputs = relativeTo(metafile.outputs, made);
  const sizes = packAll(Object.keys(outputs), made);
  writeFileSync(join(made, "page.json"), `${JSON.stringify(needsOf(outputs), null, 1)}\n`);
  mkdirSync(dirname(folder), { recursive: true });
  rmSync(folder, { recursive: true, force: true });
  renameSync(made, folder);
  return Object.fromEntries(Object.keys(present).map((entry) => [entry, sum(allOf(entry, outputs), sizes)]));
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

/** Outputs by their names in the folder. */
function relativeTo(outputs, folder) {
  const name = (file) => relative(folder, resolve(root, file)).replaceAll("\\", "/");
  return Object.fromEntries(
    Object.entries(outputs).map(([file, { imports, cssBundle, entryPoint = "" }]) => [
      name(file),
      {
        entryPoint: entryPoint.replaceAll("\\", "/"),
        style: cssBundle === undefined ? undefined : name(cssBundle),
        imports: imports
          .filter(({ external }) => !external)
          .map(({ path, kind }) => ({ name: name(path), kind })),
      },
    ]),
  );
}

/** Gzips every text where it lies; fonts are packed by themselves. Gives the bytes of each as they are sent. */
function packAll(names, folder) {
  const sizes = {};
  for (const name of names) {
    const file = join(folder, name);
    const bytes = readFileSync(file);
    if (/\.woff2$/.test(name)) sizes[name] = bytes.length;
    else {
      const packed = gzipSync(bytes, { level: 9 });
      writeFileSync(`${file}.gz`, packed);
      rmSync(file);
      sizes[name] = packed.length;
    }
  }
  return sizes;
}

/** An output and all it imports; in these kinds of ways only, where kinds are given. */
function reached(start, outputs, kinds) {
  const found = new Set();
  const visit = (name) => {
    if (found.has(name) || outputs[name] === undefined) return;
    found.add(name);
    for (const each of outputs[name].imports)
      if (kinds === undefined || kinds.includes(each.kind)) visit(each.name);
  };
  visit(start);
  return [...found];
}

function entryNamed(entry, outputs) {
  return Object.keys(outputs).find((name) => new RegExp(`^${entry}-\\w+\\.js$`).test(name));
}

/** All that an entry may fetch. Fonts are fetched one by one as formulas need them, and are not counted. */
function allOf(entry, outputs) {
  const script = entryNamed(entry, outputs);
  return [outputs[script].style, ...reached(script, outputs)].filter((name) => !/\.woff2$/.test(name));
}

/** For each page its script, its style, and the parts it is to fetch at once. */
function needsOf(outputs) {
  return Object.fromEntries(
    Object.entries(pages)
      .map(([page, { entry, parts }]) => [page, entryNamed(entry, outputs), parts])
      .filter(([, script]) => script !== undefined)
      .map(([page, script, parts]) => {
        const starts = parts.flatMap((part) => {
          const named = Object.keys(outputs).filter((name) => part.test(outputs[name].entryPoint));
          if (named.length === 0) throw new Error(`live page: ${page} has no part ${part}`);
          return named;
        });
        const needed = new Set(
          [script, ...starts].flatMap((name) => reached(name, outputs, ["import-statement"])),
        );
        needed.delete(script);
        return [page, { script, style: outputs[script].style, parts: [...needed].sort() }];
      }),
  );
}

function sum(names, sizes) {
  return names.reduce((total, name) => total + sizes[name], 0);
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const folder = resolve(process.argv[2] ?? join(root, "dist", "live", "page"));
  const sizes = await buildPage(folder);
  for (const [name, size] of Object.entries(sizes))
    console.log(`live page: ${name} and all it loads, gzipped: ${(size / 1000).toFixed(0)} kB`);
  if ((sizes.main ?? 0) > mostBytes) {
    console.error(`live page: main is larger than ${mostBytes / 1000} kB`);
    process.exitCode = 1;
  }
}

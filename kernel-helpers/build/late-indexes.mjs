import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join, resolve } from "node:path";
import ts from "typescript";

const require = createRequire(import.meta.url);

/**
 * The tables of contents among the built modules, written anew: a module is loaded when one of its names is first
 * used. As compiled, the first import of the package would load all its modules, four hundred of them.
 *
 * @param {string} sources the folder of the sources
 * @param {string} built the folder they were compiled to, laid out as the sources are
 * @returns {Map<string, string>} the new text by file: of index.js, and of each index it leads to. One that does more
 *   than hand on names is left as it is
 */
export function lateIndexes(sources, built) {
  const texts = new Map();
  const follow = (folder) => {
    const file = join(built, folder, "index.js");
    if (texts.has(file) || !existsSync(file)) return;
    const parts = partsOf(join(sources, folder, "index.ts"), file);
    if (parts === undefined) return;
    texts.set(file, textOf(parts));
    for (const { from } of parts) if (/\/index\.js$/.test(from)) follow(join(folder, dirname(from)));
  };
  follow("");
  return texts;
}

/**
 * What an index hands on: from which module, and each name there with the name here. Undefined where it does anything
 * else as well.
 */
function partsOf(source, file) {
  const { statements } = ts.createSourceFile(source, readFileSync(source, "utf8"), ts.ScriptTarget.Latest);
  if (!statements.every((one) => ts.isExportDeclaration(one) && one.moduleSpecifier !== undefined))
    return undefined;
  const known = new Set();
  return statements.map(({ moduleSpecifier, exportClause, isTypeOnly }) => {
    const from = moduleSpecifier.text;
    const there = new Set(isTypeOnly ? [] : Object.keys(require(resolve(dirname(file), from))));
    const pairs =
      exportClause === undefined
        ? [...there].map((name) => [name, name])
        : exportClause.elements.map(({ name, propertyName }) => [(propertyName ?? name).text, name.text]);
    const names = pairs.filter(([name]) => there.has(name)); // the others are types
    for (const [, name] of names) {
      if (known.has(name))
        throw new Error(`lateIndexes: ${file} must hand on each name once, got ${name} twice`);
      known.add(name);
    }
    return { from, names };
  });
}

/** The last line is never run: it tells Node the names, for an `import` of them in an ES module. */
function textOf(parts) {
  const names = parts.flatMap((part) => part.names.map(([, name]) => name));
  return `"use strict";
Object.defineProperty(exports, "__esModule", { value: true });
const late = (load, names) => {
  for (const [there, here] of names)
    Object.defineProperty(exports, here, {
      configurable: true,
      enumerable: true,
      get: () => {
        const value = load()[there];
        // A module that is still being loaded, in a ring, has no value yet.
        if (value !== undefined) Object.defineProperty(exports, here, { enumerable: true, value });
        return value;
      },
    });
};
${parts
  .filter((part) => part.names.length > 0)
  .map(({ from, names: each }) => `late(() => require(${JSON.stringify(from)}), ${JSON.stringify(each)});\n`)
  .join("")}0 && (module.exports = { ${names.join(", ")} });
`;
}

import type * as TypeScript from "@tslab/typescript-for-tslab";
import { packageRoot } from "../../record/package-root.js";

/**
 * Whose comments TypeScript need not read: those of Node's types; those of the helpers too, until somebody asks for a
 * tooltip; or those of all types, where nobody will.
 */
export type Unread = "of Node's types" | "until asked" | "of all types";

/** Types that are read without comments, until all of their text is asked for. */
export interface QuickTypes {
  /** Lets TypeScript read the comments of the helpers too, from the next program on. */
  readonly readComments: () => void;
}

/**
 * Lets TypeScript read declarations without their comments. It would parse each of them at every start of a
 * kernel, which takes a fifth of the time; types and checks stay the same, only the tooltips lose their prose. The
 * comments of Node's own types are never read; those of the language and of all packages only where somebody will ask
 * for a tooltip.
 */
export function readTypesQuickly(sys: TypeScript.System, unread: Unread): QuickTypes {
  const own = `${packageRoot().replaceAll("\\", "/")}/dist/`;
  /** What TypeScript wants to be told when the text of a file of ours is another. */
  const changed = new Map<string, TypeScript.FileWatcherCallback>();
  let ownUnread = unread !== "of Node's types";
  const isUnread = (path: string): boolean =>
    (unread === "of all types" ? anyTypes : nodeTypes).test(path) ||
    (ownUnread && path.startsWith(own) && anyTypes.test(path));

  const readFile = sys.readFile.bind(sys);
  sys.readFile = (path, encoding) => {
    const text = readFile(path, encoding);
    return isUnread(path) ? text?.replace(comments, "") : text;
  };
  const watchFile = sys.watchFile!.bind(sys);
  sys.watchFile = (path, tell, ...rest) => {
    if (!path.startsWith(own)) return watchFile(path, tell, ...rest);
    // An update under the running kernel is told, not followed: the modules loaded would be those of before.
    changed.set(path, tell);
    return { close: () => void changed.delete(path) };
  };
  return {
    readComments: () => {
      if (!ownUnread || unread === "of all types") return;
      ownUnread = false;
      for (const [path, tell] of changed) tell(path, fileChanged);
    },
  };
}

/** TypeScript's `FileWatcherEventKind.Changed`. */
const fileChanged: TypeScript.FileWatcherEventKind.Changed = 1;
const anyTypes = /\.d\.[cm]?ts$/;
const nodeTypes = /\/@types\/node\/.*\.d\.ts$/;

/** Comments that begin a line: others may lie inside a text. */
const comments = /^[ \t]*\/\*\*[\s\S]*?\*\//gm;

import { basename } from "node:path";
import type { Session } from "../../record/session.js";

/**
 * What a Jupyter front end tells of the notebook being run: it starts the kernel in the notebook's folder, and
 * newer ones name the notebook in JPY_SESSION_NAME.
 */
export function frontEndSession(environment: NodeJS.ProcessEnv, directory: string): Session {
  const name = environment.JPY_SESSION_NAME;
  if (name === undefined || !name.endsWith(".ipynb")) return { directory };
  return { directory, sheet: basename(name, ".ipynb") };
}

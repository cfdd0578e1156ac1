import { spawn } from "node:child_process";

/** How a platform opens an address in the browser its user prefers. */
export interface Opener {
  readonly command: string;
  readonly args: readonly string[];
}

/**
 * The opener of a platform, or undefined where there is nobody to look: in automated runs, over a remote shell, and
 * on a Unix without a display.
 */
export function openerFor(
  platform: NodeJS.Platform,
  environment: NodeJS.ProcessEnv,
  address: string,
): Opener | undefined {
  if (environment.CI || environment.SSH_CONNECTION) return undefined;
  if (platform === "darwin") return { command: "open", args: [address] };
  // The address has no sign that needs quoting; explorer would take what follows a question mark for its own.
  if (platform === "win32") return { command: "rundll32", args: ["url.dll,FileProtocolHandler", address] };
  if (!environment.DISPLAY && !environment.WAYLAND_DISPLAY) return undefined;
  return { command: "xdg-open", args: [address] };
}

/** Opens the address in the default browser. Where that does not work, the printed address is still there. */
export function openBrowser(address: string): void {
  const opener = openerFor(process.platform, process.env, address);
  if (opener === undefined) return;
  const child = spawn(opener.command, opener.args, { stdio: "ignore", detached: true });
  child.once("error", () => console.error("The browser could not be opened; open the address yourself."));
  child.unref();
}

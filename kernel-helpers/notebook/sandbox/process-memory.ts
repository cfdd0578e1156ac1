import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";

/** Memory pages of Linux on the machines Node runs on; larger pages only make the watch stricter [bytes]. */
const page = 4096;

/**
 * The memory a process and its children hold, without what is only reserved [bytes]; 0 where it cannot be told, as for
 * a process that has ended.
 */
export function processMemory(pid: number): number {
  if (process.platform === "linux") return residentOnLinux(pid);
  if (process.platform === "win32") return 0;
  const { stdout } = spawnSync("ps", ["-o", "rss=", "-p", String(pid)], { encoding: "utf8" });
  return (Number(stdout?.trim()) || 0) * 1024;
}

function residentOnLinux(pid: number): number {
  try {
    const own = Number(readFileSync(`/proc/${pid}/statm`, "utf8").split(" ")[1]) * page;
    const children = readFileSync(`/proc/${pid}/task/${pid}/children`, "utf8").split(" ").filter(Boolean);
    return children.reduce((sum, child) => sum + residentOnLinux(Number(child)), own);
  } catch {
    return 0;
  }
}

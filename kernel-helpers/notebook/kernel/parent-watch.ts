/** How often to look [ms]. */
const every = 1000;

/** Names the process that stays beside a kernel it has started, as JPY_PARENT_PID names the front end. */
export const launcherName = "JOURNALBOX_LAUNCHER_PID";

/**
 * Calls `end` when whoever started the kernel is gone: a front end that crashed, or a launcher that was killed, cannot
 * send a shutdown. Starters name themselves; without a name there is nobody to watch.
 */
export function watchParent(environment: NodeJS.ProcessEnv, end: () => void): void {
  const watched = [environment.JPY_PARENT_PID, environment[launcherName]]
    .map(Number)
    .filter((pid) => Number.isInteger(pid) && pid > 1);
  if (watched.length === 0) return;
  const first = process.ppid;
  setInterval(() => {
    // Another parent tells it at once; on Windows a process keeps the number of a parent that is gone.
    if (process.ppid !== first || !watched.every(isAlive)) end();
  }, every);
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "EPERM"; // it lives, as another user
  }
}

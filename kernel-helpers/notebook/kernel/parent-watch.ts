/** How often to look [ms]. */
const every = 1000;

/**
 * Calls `end` when whoever started the kernel is gone: a front end that crashed cannot send a shutdown.
 * Starters name themselves in JPY_PARENT_PID; without it there is nobody to watch.
 */
export function watchParent(environment: NodeJS.ProcessEnv, end: () => void): void {
  const parent = Number(environment.JPY_PARENT_PID);
  if (!Number.isInteger(parent) || parent <= 1) return;
  const first = process.ppid;
  setInterval(() => {
    if (process.ppid !== first || !isAlive(parent)) end();
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

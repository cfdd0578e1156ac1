import { request } from "./request.js";

/** Has the server run sheets as they are on disk, in order; all of them where none are named. */
export async function startRun(sheets?: readonly string[]): Promise<void> {
  await request("POST", "/api/run", sheets === undefined ? {} : { sheets });
}

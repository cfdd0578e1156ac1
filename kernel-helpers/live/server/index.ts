/** The server of the live page: one rebuild, shown to the browsers of this machine and nobody else. */

export type * from "./live-event.js";
export { type LiveServer, type LiveServerOptions, startLiveServer } from "./start-live-server.js";

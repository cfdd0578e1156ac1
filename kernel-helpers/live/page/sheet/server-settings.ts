import { ServerConnection } from "@jupyterlab/services";

/** How JupyterLab's kernel connection reaches our server: with the cookie, and the header changes must carry. */
export const serverSettings: ServerConnection.ISettings = ServerConnection.makeSettings({
  baseUrl: `${location.origin}/`,
  wsUrl: `${location.origin.replace(/^http/, "ws")}/`,
  token: "",
  appendToken: false,
  init: { cache: "no-store", credentials: "same-origin", headers: { "X-Journalbox": "1" } },
});

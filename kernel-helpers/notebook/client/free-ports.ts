import { createServer, type Server } from "node:net";

/** As many different ports of this machine as asked for, free a moment ago. */
export async function freePorts(count: number): Promise<number[]> {
  const servers = await Promise.all(Array.from({ length: count }, listen));
  const ports = servers.map(portOf);
  await Promise.all(servers.map((server) => new Promise((closed) => server.close(closed))));
  return ports;
}

function listen(): Promise<Server> {
  return new Promise((resolve, reject) => {
    const server = createServer().once("error", reject);
    server.listen(0, "127.0.0.1", () => resolve(server));
  });
}

function portOf(server: Server): number {
  const address = server.address();
  if (address === null || typeof address === "string")
    throw new Error(`freePorts: a server must have a port, got ${address}`);
  return address.port;
}

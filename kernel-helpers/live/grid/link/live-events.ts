/** What the server tells without being asked; only what the table editor listens to is spelled out. */
export interface LiveEvent {
  readonly type: string;
  readonly kind?: string;
  readonly name?: string;
  readonly sha256?: string | null;
  readonly stage?: string;
  readonly sheet?: string;
  readonly index?: number;
  readonly cells?: number;
  readonly failed?: readonly string[];
  readonly error?: string;
}

/** Between two tries to reach the server again [ms]. */
const retryAfter = 2000;

/**
 * Listens to the server's events, and goes on trying when it is away. A WebSocket, for a browser keeps at most
 * six ordinary streams to one server over all its tabs.
 *
 * @param onEvent  for each event
 * @param onLink   when the connection has come about, and when it has ended
 */
export function listenToServer(onEvent: (event: LiveEvent) => void, onLink: () => void): void {
  const address = new URL("/api/events", location.href);
  address.protocol = address.protocol === "https:" ? "wss:" : "ws:";
  const connect = (): void => {
    const socket = new WebSocket(address);
    socket.addEventListener("open", onLink);
    socket.addEventListener("message", ({ data }) => {
      const event = eventFrom(data);
      if (event !== undefined) onEvent(event);
    });
    socket.addEventListener("close", () => {
      onLink();
      setTimeout(connect, retryAfter);
    });
  };
  connect();
}

function eventFrom(data: unknown): LiveEvent | undefined {
  try {
    const event = JSON.parse(String(data)) as Partial<LiveEvent> | null;
    return typeof event?.type === "string" ? (event as LiveEvent) : undefined;
  } catch {
    return undefined;
  }
}

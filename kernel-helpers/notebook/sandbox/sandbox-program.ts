import { setSession } from "../../record/session.js";
import { Kernel, type KernelFrontEnd } from "../kernel/kernel.js";
import { loadTslab } from "../kernel/load-tslab.js";
import { StopFlag } from "../kernel/stop-flag.js";
import { type Message, newHeader } from "../wire/message.js";
import type { FromSandbox, ToSandbox } from "./sandbox-messages.js";
import { sealProcess } from "./seal-process.js";

/**
 * The program that runs in the sandbox: the kernel without its sockets, which are a native module. It talks with its
 * starter over the channel Node gives to a child.
 */
const send = process.send!.bind(process);
const tell = (message: FromSandbox): void => void send(message);

const idOf = (request: Message): number => Number(request.header.msg_id);

const frontEnd: KernelFrontEnd = {
  reply: (_, request, content) => tell({ id: idOf(request), type: "reply", content }),
  publish: (request, type, content) => tell({ id: idOf(request), type, content }),
  status: () => {}, // replies tell enough: they come after all outputs
};

sealProcess();
setSession({ directory: process.cwd() });
const stopFlag = new StopFlag();
stopFlag.showToLoops();
const kernel = new Kernel(loadTslab("of all types"), frontEnd, stopFlag, {
  cellEnded: () => {},
  shutDown: () => process.exit(0),
});

process.on("message", ({ id, type, content, cellId }: ToSandbox) => {
  const header = { ...newHeader(type, "sandbox"), msg_id: String(id) };
  kernel.receive("shell", { identities: [], header, parent: {}, content, metadata: { cellId } });
});
// Without its starter it has nothing to live for.
process.on("disconnect", () => process.exit(0));
tell({ id: 0, type: "ready", content: {} });

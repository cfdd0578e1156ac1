import {
  Completer,
  CompleterModel,
  CompletionHandler,
  type ICompletionContext,
  KernelCompleterProvider,
  ProviderReconciliator,
} from "@jupyterlab/completer";
import type { Notebook } from "@jupyterlab/notebook";
import { Widget } from "@lumino/widgets";
import type { KernelDesk } from "./kernel-desk.js";

/** Offers what a name may go on with, as the kernel knows it. */
export class Completion {
  readonly #handler: CompletionHandler;
  readonly #notebook: Notebook;
  readonly #desk: KernelDesk;

  constructor(notebook: Notebook, desk: KernelDesk) {
    this.#notebook = notebook;
    this.#desk = desk;
    const completer = new Completer({ model: new CompleterModel() });
    completer.hide();
    Widget.attach(completer, document.body);
    this.#handler = new CompletionHandler({ completer, reconciliator: this.#provider() });
    notebook.activeCellChanged.connect(() => this.#follow());
    notebook.stateChanged.connect(() => this.#follow());
    this.#follow();
  }

  /** Shows what fits at the cursor. */
  invoke(): void {
    this.#follow();
    this.#handler.reconciliator = this.#provider();
    this.#handler.invoke();
  }

  accept(): void {
    this.#handler.completer.selectActive();
  }

  #follow(): void {
    const cell = this.#notebook.activeCell;
    this.#handler.editor = cell?.model.type === "code" ? cell.editor : null;
  }

  #provider(): ProviderReconciliator {
    // All that the provider needs of a session is its kernel.
    const session = { kernel: this.#desk.kernel ?? null } as unknown as ICompletionContext["session"];
    const editor = this.#notebook.activeCell?.editor ?? null;
    const sanitizer = this.#notebook.rendermime.sanitizer;
    return new ProviderReconciliator({
      context: { widget: this.#notebook, editor, session, sanitizer },
      providers: [new KernelCompleterProvider()],
      timeout: 5000,
    });
  }
}

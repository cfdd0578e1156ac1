/** A request that cannot be answered as asked: the status, words for the page, and what it may need besides. */
export class HttpError extends Error {
  readonly status: number;
  /** Further fields of the answer, such as what is on disk now. */
  readonly details: Readonly<Record<string, unknown>>;

  constructor(status: number, message: string, details: Readonly<Record<string, unknown>> = {}) {
    super(message);
    this.name = "HttpError";
    this.status = status;
    this.details = details;
  }
}

/** A value in the forms a notebook can show, by MIME type. */
export interface Bundle {
  data: Record<string, unknown>;
  metadata: Record<string, unknown>;
}

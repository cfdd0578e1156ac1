/** A piece of JSON has not the shape that was looked for. */
export class WrongShape extends Error {}

export type Fields = Readonly<Record<string, unknown>>;

export function object(value: unknown): Fields {
  if (typeof value !== "object" || value === null || Array.isArray(value)) throw new WrongShape();
  return value as Fields;
}

export function list(value: unknown): readonly unknown[] {
  if (!Array.isArray(value)) throw new WrongShape();
  return value;
}

export function text(value: unknown): string {
  if (typeof value !== "string") throw new WrongShape();
  return value;
}

export function number(value: unknown): number {
  if (typeof value !== "number" || !Number.isFinite(value)) throw new WrongShape();
  return value;
}

export function truth(value: unknown): boolean {
  if (typeof value !== "boolean") throw new WrongShape();
  return value;
}

export function count(value: unknown): number {
  if (typeof value !== "number" || !Number.isInteger(value) || value < 0) throw new WrongShape();
  return value;
}

export function oneOf<T extends string>(value: unknown, allowed: readonly T[]): T {
  const found = allowed.find((one) => one === value);
  if (found === undefined) throw new WrongShape();
  return found;
}

export function optional<T>(value: unknown, check: (given: unknown) => T): T | undefined {
  return value === undefined ? undefined : check(value);
}

/** Leaves out the fields that are undefined. */
export function present<T extends object>(fields: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  const kept = Object.entries(fields).filter(([, value]) => value !== undefined);
  return Object.fromEntries(kept) as { [K in keyof T]?: Exclude<T[K], undefined> };
}

import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { type Exponents, exponentsOf, kindOf } from "../../kernel-helpers/quantity/index.js";
import { kinds } from "../../kernel-helpers/quantity/kinds.js";
import { cellFaults } from "../support/cell-faults.js";

const folder = join(__dirname, "..", "..", "kernel-helpers", "quantity");
const names = Object.keys(kinds);

/** The kind found as the program runs; "never" where its exponents leave the table. */
function atRunTime(operation: (i: number) => number): string {
  try {
    return JSON.stringify(kindOf([0, 1, 2, 3, 4].map(operation) as unknown as Exponents));
  } catch {
    return "never";
  }
}

function checks(type: "Product" | "Quotient", sign: 1 | -1): string {
  const lines = names.flatMap((a) =>
    names.map((b) => {
      const [x, y] = [exponentsOf(a), exponentsOf(b)];
      const kind = atRunTime((i) => x[i]! + sign * y[i]!);
      return `same<${type}<"${a}", "${b}">, ${kind}>(true);`;
    }),
  );
  return lines.join("\n");
}

const roots = names
  .map((a) => {
    const isEven = exponentsOf(a).every((e) => e % 2 === 0);
    return `same<SquareRoot<"${a}">, ${isEven ? atRunTime((i) => exponentsOf(a)[i]! / 2) : "never"}>(true);`;
  })
  .join("\n");

const head = `import type { Product, Quotient, SquareRoot } from "./index.js";
declare function same<A, B>(yes: [A, B] extends [B, A] ? true : false): void;
`;

describe("Product<A, B>, Quotient<A, B>, SquareRoot<A>", () => {
  const faults = cellFaults(
    folder,
    {
      products: head + checks("Product", 1),
      quotients: head + checks("Quotient", -1),
      roots: head + roots,
      wrong: `${head}same<Product<"length", "force">, "power">(true);`,
    },
    true,
  );

  it.each(["products", "quotients", "roots"] as const)("say in types what the run says: all %s", (which) => {
    expect(faults[which]).toEqual([]);
  });
  it("are compared by a check that can fail", () => {
    expect(faults.wrong).toHaveLength(1);
  });
});

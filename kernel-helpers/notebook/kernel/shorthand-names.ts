import { basename } from "node:path";
import type * as TypeScript from "@tslab/typescript-for-tslab";

/** The file in which tslab declares the names of earlier cells. */
const earlierNames = "__prev__.d.ts";

/**
 * Lets a cell write `{ nominal }` for a name of an earlier cell. tslab reads such names from its `exports`
 * and rewrites each mention of them, but overlooks the short form of a property: there the compiler's symbol
 * is the property, not the variable. So the short form is written out before tslab's own step.
 */
export function shorthandStep(
  ts: typeof TypeScript,
  checker: TypeScript.TypeChecker,
): TypeScript.TransformerFactory<TypeScript.SourceFile> {
  const { factory } = ts;
  const isEarlier = (node: TypeScript.ShorthandPropertyAssignment): boolean =>
    checker
      .getShorthandAssignmentValueSymbol(node)
      ?.declarations?.some((declared) => basename(declared.getSourceFile().fileName) === earlierNames) ??
    false;
  return (context) => {
    const visit = (node: TypeScript.Node): TypeScript.Node => {
      if (!ts.isShorthandPropertyAssignment(node) || !isEarlier(node))
        return ts.visitEachChild(node, visit, context);
      const { name, objectAssignmentInitializer: fallback } = node;
      const value = factory.createPropertyAccessExpression(factory.createIdentifier("exports"), name.text);
      // In `({ nominal = 1 } = sizes)` the short form names a target with a fallback.
      const written =
        fallback === undefined
          ? value
          : factory.createAssignment(value, ts.visitNode(fallback, visit) as TypeScript.Expression);
      return ts.setTextRange(factory.createPropertyAssignment(name, written), node);
    };
    return (file) => ts.visitEachChild(file, visit, context);
  };
}

import type * as TypeScript from "@tslab/typescript-for-tslab";
import { lookAtFlag } from "./stop-flag.js";

/**
 * Lets every loop written in a cell, or in a file beside the notebook, look at the stop flag each time round:
 * `while (wait) work();` becomes `while (wait) { if (__stop__.asked[0]) __stop__.now(); work(); }`.
 *
 * So a loop ends wherever it runs, after an `await` and in a timer too, as an error does: `finally` is kept, and
 * the names of earlier cells stay. The engine's own way to break a loop reaches only code that has not awaited
 * yet, and breaking it from an inspector's session ends the whole process where asynchronous contexts are watched.
 */
export function stopLoopsStep(ts: typeof TypeScript): TypeScript.TransformerFactory<TypeScript.SourceFile> {
  const { factory } = ts;
  const member = (name: string): TypeScript.Expression =>
    factory.createPropertyAccessExpression(factory.createIdentifier(lookAtFlag.object), name);
  const look = (): TypeScript.Statement =>
    factory.createIfStatement(
      factory.createElementAccessExpression(member(lookAtFlag.asked), 0),
      factory.createExpressionStatement(
        factory.createCallExpression(member(lookAtFlag.now), undefined, undefined),
      ),
    );
  const looking = (body: TypeScript.Statement): TypeScript.Block =>
    ts.isBlock(body)
      ? factory.updateBlock(body, [look(), ...body.statements])
      : ts.setTextRange(factory.createBlock([look(), body], true), body);

  return (context) => {
    const visit = (node: TypeScript.Node): TypeScript.Node => {
      const seen = ts.visitEachChild(node, visit, context);
      if (ts.isForStatement(seen))
        return factory.updateForStatement(
          seen,
          seen.initializer,
          seen.condition,
          seen.incrementor,
          looking(seen.statement),
        );
      if (ts.isForInStatement(seen))
        return factory.updateForInStatement(seen, seen.initializer, seen.expression, looking(seen.statement));
      if (ts.isForOfStatement(seen))
        return factory.updateForOfStatement(
          seen,
          seen.awaitModifier,
          seen.initializer,
          seen.expression,
          looking(seen.statement),
        );
      if (ts.isWhileStatement(seen))
        return factory.updateWhileStatement(seen, seen.expression, looking(seen.statement));
      if (ts.isDoStatement(seen))
        return factory.updateDoStatement(seen, looking(seen.statement), seen.expression);
      return seen;
    };
    return (file) => ts.visitEachChild(file, visit, context);
  };
}

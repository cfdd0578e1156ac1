/**
 * The texts that stand in quotes in the code of a sheet: among them are the names of the tables and facts it asks for.
 *
 * @example quotedTexts(['rebuild.table("shaft-survey")']) // ["shaft-survey"]
 */
export function quotedTexts(sources: readonly string[]): readonly string[] {
  const found = sources.flatMap((code) => [...code.matchAll(/(["'`])((?:(?!\1)[^\\\n])+)\1/g)]);
  return [...new Set(found.map(([, , text]) => text!))];
}

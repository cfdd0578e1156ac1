import type * as TypeScript from "@tslab/typescript-for-tslab";

/** Makes a step for one program. */
export type StepMaker = (
  checker: TypeScript.TypeChecker,
) => TypeScript.TransformerFactory<TypeScript.SourceFile>;

/**
 * Adds steps of our own to the compilation of cells, before tslab's.
 *
 * @param host what tslab hands to `createWatchProgram`; each program it makes emits with the extra steps
 */
export function addEmitSteps(
  host: TypeScript.WatchCompilerHostOfFilesAndCompilerOptions<TypeScript.BuilderProgram>,
  makers: readonly StepMaker[],
): void {
  const tell = host.afterProgramCreate;
  host.afterProgramCreate = (builder) => {
    const emit = builder.emit.bind(builder);
    builder.emit = (file, write, cancel, declarationsOnly, custom) => {
      const checker = builder.getProgram().getTypeChecker();
      return emit(file, write, cancel, declarationsOnly, {
        ...custom,
        before: [...makers.map((make) => make(checker)), ...(custom?.before ?? [])],
      });
    };
    tell?.call(host, builder);
  };
}

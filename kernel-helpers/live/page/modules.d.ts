// What esbuild takes in and TypeScript does not know.
declare module "*.css";

declare module "katex/contrib/auto-render" {
  interface Options {
    readonly delimiters: readonly {
      readonly left: string;
      readonly right: string;
      readonly display: boolean;
    }[];
    readonly throwOnError: boolean;
    readonly trust: boolean;
  }
  export default function renderMathInElement(element: HTMLElement, options: Options): void;
}
